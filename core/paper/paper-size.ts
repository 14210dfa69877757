/** The papers that sheets are made for, and where a page may be printed on. */

/**
 * The papers, upright. Units: millimetres.
 *
 * Source: ISO 216 (A4); ANSI/ASME Y14.1 (Letter, 8.5 by 11 inches).
 */
export const PAPERS = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;

/** One of the papers. */
export type PaperName = keyof typeof PAPERS;

/** All papers, in the order in which they are offered. */
export const PAPER_NAMES: readonly PaperName[] = ["a4", "letter"];

/** What stays free around a page: more than any common printer needs. Units: millimetres. */
export const MARGIN = { side: 14, top: 12, bottom: 10 } as const;

/** How wide what stands on a page may be. Units: millimetres. */
export function contentWidth(paper: PaperName): number {
  return PAPERS[paper].width - 2 * MARGIN.side;
}
