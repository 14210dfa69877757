/**
 * Where in the app the window is, and the address that says so. Addresses
 * live behind the `#`, so that they work under any scheme, survive a reload
 * and fill the window's history.
 */
import { type CaseId, parseCaseId } from "../../core/cases/case-ids";

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

/** The shelves of cases that there are. */
export const SHELVES = ["edges", "corners"] as const;

/** One shelf. */
export type Shelf = (typeof SHELVES)[number];

/** A place, and what is looked at in it. */
export type Route =
  | {
      readonly place: "practise";
      /** Asked for from elsewhere: this case or this shelf, instead of the decks' day. */
      readonly of?: CaseId | Shelf;
    }
  | { readonly place: "cases"; readonly shelf: Shelf; readonly case?: CaseId }
  | { readonly place: "progress" }
  | { readonly place: "coach"; readonly deck?: string; readonly case?: CaseId }
  | { readonly place: "settings" };

function shelfNamed(text: string | undefined): Shelf | undefined {
  return SHELVES.find((shelf) => shelf === text);
}

/** The shelf a case stands on. */
export function shelfOf(id: CaseId): Shelf {
  return id.startsWith("E") ? "edges" : "corners";
}

/**
 * The route an address means. An address that means nothing leads to the
 * place it begins with, and else to Practise: nobody is left without a page.
 *
 * Shape: `hash` as in `location.hash`, with or without its `#/`.
 */
export function parseRoute(hash: string): Route {
  const [place, first, second] = hash.replace(/^#?\/?/, "").split("/");
  const firstCase = first === undefined ? undefined : parseCaseId(first);
  switch (PLACES.find((known) => known === place)) {
    case "cases":
      return firstCase === undefined
        ? { place: "cases", shelf: shelfNamed(first) ?? "edges" }
        : { place: "cases", shelf: shelfOf(firstCase), case: firstCase };
    case "progress":
      return { place: "progress" };
    case "settings":
      return { place: "settings" };
    case "coach": {
      const id = second === undefined ? undefined : parseCaseId(second);
      return {
        place: "coach",
        ...(first === undefined || first === ""
          ? {}
          : { deck: decodeURIComponent(first) }),
        ...(id === undefined ? {} : { case: id }),
      };
    }
    case "practise":
    case undefined: {
      const of = firstCase ?? shelfNamed(first);
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
      if (route.of !== undefined) parts.push(route.of);
      break;
    case "cases":
      parts.push(route.case ?? route.shelf);
      break;
    case "coach":
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
