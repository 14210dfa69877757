/**
 * Where in the app the window is, and the address that says so. Addresses
 * live behind the `#`, so that they work under any scheme, survive a reload
 * and fill the window's history.
 */
import type { CaseId } from "../../core/cases/case-ids";
import { caseEntry, parseCaseId } from "../../core/cases/case-table";
import {
  FIRST_LAYER_STAGES,
  parseStage,
  type Stage,
} from "../../core/cases/stage";
import { parsePractised, type Practised } from "../state/practise/practised";

/** The places, in the order of the top bar. */
export const PLACES = [
  "practise",
  "cases",
  "progress",
  "coach",
  "settings",
] as const;

/** One of the places. */
export type PlaceName = (typeof PLACES)[number];

/** The places' names, as people read them. */
export const PLACE_TITLES: Readonly<Record<PlaceName, string>> = {
  practise: "Practise",
  cases: "Cases",
  progress: "Progress",
  coach: "Coach",
  settings: "Settings",
};

/** What the address of that page ends with: it is in links people keep. */
const SHOW_MY_CUBE = "show-my-cube";

/** What the address of the page of whole runs ends with. */
const WHOLE_RUN = "whole-run";

/** What the address of the page of sheets has behind its place. */
const SHEETS = "sheets";

/** And that of the page where the ticks on them are entered. */
const TICKS = "ticks";

/** What the address of the page of the whole class has behind its place. */
const CLASS = "class";

/** What the address of a deck's check has behind its place. */
const CHECK = "check";

/** What the address of a case that is shown to a class has behind the case. */
const SHOW = "show";

/** A place, and what is looked at in it. */
export type Route =
  | {
      readonly place: "practise";
      /** Asked for from elsewhere, instead of the decks' day. */
      readonly of?: Practised;
      /** Somebody is stuck, and shows what their own cube looks like, or makes a whole run; then nothing is asked. */
      readonly page?: typeof SHOW_MY_CUBE | typeof WHOLE_RUN;
    }
  | { readonly place: "cases"; readonly shelf: Stage; readonly case?: CaseId }
  | {
      readonly place: "cases";
      readonly shelf: Stage;
      readonly case: CaseId;
      /** The case is shown to a class, over the whole screen. */
      readonly page: typeof SHOW;
      /** In whose order one goes on from case to case; absent: the shelf's. */
      readonly deck?: string;
      /** Leaving leads back to the class's page; absent: to the case, or to the bench. */
      readonly from?: typeof CLASS;
    }
  | { readonly place: "progress" }
  | {
      readonly place: "coach";
      readonly deck?: string;
      readonly case?: CaseId;
      /** Sheets of the deck are made, ticks are entered, the class is looked at, or five of its cases are asked without help; then no case is looked at. */
      readonly page?:
        typeof SHEETS | typeof TICKS | typeof CLASS | typeof CHECK;
      /** The code of the sheet whose ticks are entered, as somebody wrote it. */
      readonly code?: string;
    }
  | { readonly place: "settings" };

function stageNamed(text: string | undefined): Stage | undefined {
  return text === undefined ? undefined : parseStage(text);
}

function deckNamed(text: string | undefined): { readonly deck?: string } {
  return text === undefined || text === ""
    ? {}
    : { deck: decodeURIComponent(text) };
}

/**
 * The route an address means. An address that means nothing leads to the
 * place it begins with, and else to Practise: nobody is left without a page.
 *
 * Shape: `hash` as in `location.hash`, with or without its `#/`.
 */
export function parseRoute(hash: string): Route {
  const [place, first, second, third, fourth] = hash
    .replace(/^#?\/?/, "")
    .split("/");
  const firstCase = first === undefined ? undefined : parseCaseId(first);
  switch (PLACES.find((known) => known === place)) {
    case "cases":
      if (firstCase !== undefined && second === SHOW)
        return {
          place: "cases",
          shelf: caseEntry(firstCase).stage,
          case: firstCase,
          page: SHOW,
          ...deckNamed(third),
          ...(fourth === CLASS ? { from: CLASS } : {}),
        };
      return firstCase === undefined
        ? { place: "cases", shelf: stageNamed(first) ?? FIRST_LAYER_STAGES[0] }
        : {
            place: "cases",
            shelf: caseEntry(firstCase).stage,
            case: firstCase,
          };
    case "progress":
      return { place: "progress" };
    case "settings":
      return { place: "settings" };
    case "coach": {
      if (first === CLASS) return { place: "coach", page: CLASS };
      if (first === SHEETS)
        return { place: "coach", page: SHEETS, ...deckNamed(second) };
      if (first === CHECK)
        return { place: "coach", page: CHECK, ...deckNamed(second) };
      if (first === TICKS)
        return {
          place: "coach",
          page: TICKS,
          // A code has no sign that an address would have to hide.
          ...(second === undefined || second === "" ? {} : { code: second }),
        };
      const id = second === undefined ? undefined : parseCaseId(second);
      return {
        place: "coach",
        ...deckNamed(first),
        ...(id === undefined ? {} : { case: id }),
      };
    }
    case "practise":
    case undefined: {
      if (first === SHOW_MY_CUBE)
        return { place: "practise", page: SHOW_MY_CUBE };
      if (first === WHOLE_RUN) return { place: "practise", page: WHOLE_RUN };
      const of =
        parsePractised(`${first ?? ""}/${second ?? ""}`) ??
        (first === undefined ? undefined : parsePractised(first));
      return of === undefined
        ? { place: "practise" }
        : { place: "practise", of };
    }
  }
}

/** The address of a route. Shape: begins with `#/`. */
export function formatRoute(route: Route): string {
  const parts: string[] = [route.place];
  switch (route.place) {
    case "practise":
      if (route.page !== undefined) parts.push(route.page);
      else if (route.of !== undefined) parts.push(route.of);
      break;
    case "cases":
      parts.push(route.case ?? route.shelf);
      if ("page" in route) {
        parts.push(route.page);
        if (route.deck !== undefined || route.from !== undefined)
          parts.push(encodeURIComponent(route.deck ?? ""));
        if (route.from !== undefined) parts.push(route.from);
      }
      break;
    case "coach":
      if (route.page !== undefined) parts.push(route.page);
      if (route.code !== undefined) parts.push(route.code);
      if (route.deck !== undefined) {
        parts.push(encodeURIComponent(route.deck));
        if (route.case !== undefined) parts.push(route.case);
      }
      break;
    case "progress":
    case "settings":
      break;
  }
  return `#/${parts.join("/")}`;
}

/** Whether a route leads to one of the pages that only a class has. */
export function isOfClass(route: Route): boolean {
  return (
    isShown(route) ||
    (route.place === "coach" && route.page !== undefined) ||
    (route.place === "practise" && route.page === WHOLE_RUN)
  );
}

/** Whether a case is shown to a class: then nothing else is on the screen. */
export function isShown(route: Route): boolean {
  return route.place === "cases" && "page" in route;
}
