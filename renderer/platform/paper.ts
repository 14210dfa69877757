/** Which paper lies in printers where this machine is used. */
import type { PaperName } from "../../core/paper/paper-size";

/** Where Letter is the usual paper. Source: common practice; the Unicode CLDR lists the same regions as US-Letter. */
const LETTER_REGIONS: readonly string[] = [
  "BZ",
  "CA",
  "CL",
  "CO",
  "CR",
  "GT",
  "MX",
  "NI",
  "PA",
  "PH",
  "PR",
  "SV",
  "US",
  "VE",
];

/** The paper to propose. */
export function usualPaper(languages = navigator.languages): PaperName {
  const [first = ""] = languages;
  const region = /-([A-Z]{2})\b/.exec(first)?.[1] ?? "";
  return LETTER_REGIONS.includes(region) ? "letter" : "a4";
}
