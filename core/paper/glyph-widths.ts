/**
 * How wide the letters of the app's own typeface are.
 *
 * A sheet is laid out where there is no screen to measure on, and the same
 * input must make the same sheet on every machine: so the widths are a table.
 * Kerning is left out; over a sentence it comes to less than 0.1%.
 *
 * Source: measured in Chromium on Atkinson Hyperlegible Next 5.3.0, kerned
 *         pairs apart; a browser test holds the table against the font.
 */

/** The two weights that sheets are set in. */
export const PAPER_WEIGHTS = [400, 640] as const;

/** One of the weights. */
export type PaperWeight = (typeof PAPER_WEIGHTS)[number];

/** The first letter of the tables: a space. */
export const FIRST_GLYPH = 32;

/** Widths of the letters from code 32 on. Units: thousandths of the type size. */
export const GLYPH_WIDTHS: Readonly<Record<PaperWeight, readonly number[]>> = {
  400: [
    280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210,
    387, 648, 407, 548, 576, 614, 588, 598, 510, 615, 595, 210, 210, 553, 628,
    553, 480, 778, 626, 613, 645, 669, 569, 552, 694, 694, 392, 512, 631, 541,
    824, 693, 714, 592, 724, 614, 592, 558, 690, 593, 856, 623, 575, 607, 317,
    387, 344, 552, 372, 243, 525, 566, 485, 564, 538, 314, 558, 550, 252, 245,
    492, 262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449,
    460, 344, 237, 344, 555,
  ],
  640: [
    307, 300, 373, 744, 607, 959, 726, 201, 328, 328, 485, 597, 260, 371, 260,
    430, 657, 434, 573, 595, 622, 604, 621, 532, 622, 575, 260, 260, 566, 615,
    566, 534, 781, 668, 638, 656, 685, 592, 563, 714, 700, 419, 552, 658, 550,
    852, 713, 741, 622, 751, 643, 607, 598, 687, 635, 881, 673, 636, 616, 336,
    430, 344, 577, 395, 279, 547, 591, 506, 590, 559, 356, 586, 567, 291, 256,
    544, 308, 875, 567, 571, 591, 595, 371, 501, 366, 562, 517, 730, 529, 508,
    497, 374, 251, 374, 540,
  ],
};

/** Widths of the few signs beyond those that sheets themselves use. Units: as above. */
export const OTHER_WIDTHS: Readonly<Record<string, number>> = {
  "’": 263,
  "–": 504,
  "“": 465,
  "”": 465,
  "·": 284,
  "×": 535,
};

/** What a letter that no table has is taken to be: as wide as it is high. Units: as above. */
export const WIDEST = 1000;
