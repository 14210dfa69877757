/** How full a ring is where it is drawn in eighths: the scale of `MemoryRing`, logarithmic and full at half a year. Units: days; the result 0 to 8. */
export function ringStep(days: number): number {
  const fill = Math.log(1 + Math.max(0, days)) / Math.log(181);
  return Math.round(8 * Math.min(1, fill));
}
