/** Arithmetic on colours written as `#rrggbb`, and their contrast. */

/** Red, green and blue. Units: 0–255. */
type Channels = readonly [red: number, green: number, blue: number];

function channels(hex: string): Channels {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

function toHex(parts: Channels): string {
  const value = parts.reduce(
    (sum, part) => sum * 256 + Math.round(Math.min(255, Math.max(0, part))),
    0,
  );
  return `#${value.toString(16).padStart(6, "0")}`;
}

/** A colour with every channel multiplied. */
export function shaded(hex: string, factor: number): string {
  const [red, green, blue] = channels(hex);
  return toHex([red * factor, green * factor, blue * factor]);
}

/** A colour with `share` (0–1) of another in it. */
export function mixed(hex: string, other: string, share: number): string {
  const a = channels(hex);
  const b = channels(other);
  const part = (i: 0 | 1 | 2) => a[i] * (1 - share) + b[i] * share;
  return toHex([part(0), part(1), part(2)]);
}

function linear(channel: number): number {
  const share = channel / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/**
 * Relative luminance.
 *
 * Units: 0 (black) to 1 (white).
 * Source: W3C WCAG 2.2, definition of relative luminance.
 */
export function luminance(hex: string): number {
  const [red, green, blue] = channels(hex);
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

/**
 * Contrast of two colours.
 *
 * Units: 1 (none) to 21.
 * Source: W3C WCAG 2.2, definition of contrast ratio.
 */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((p, q) => p - q);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}
