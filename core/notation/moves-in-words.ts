/** How a piece and its home move, in words: "comes up", "goes down together". */
import type { Face } from "../cube/faces";
import type { Standing } from "./followed-piece";
import { placeInWords } from "./place-words";

/** The way from one height to another. */
type Rise = "up" | "down" | "level";

/** Whether a place is higher than another, as the learner sees both. */
export function rise(from: readonly Face[], to: readonly Face[]): Rise {
  const height = (place: readonly Face[]) =>
    place.includes("U") ? 1 : place.includes("D") ? -1 : 0;
  const climbed = height(to) - height(from);
  if (climbed === 0) return "level";
  return climbed > 0 ? "up" : "down";
}

/** Where a piece and its home go as one: "rise together". */
export function together(from: readonly Face[], to: readonly Face[]): string {
  switch (rise(from, to)) {
    case "up":
      return "rise together";
    case "down":
      return "go down together";
    case "level":
      return `go to the ${placeInWords(to)} together`;
  }
}

/** Where a home goes: "comes up", "goes back down", "goes to the bottom back right". */
export function homeGoes(from: Standing, to: Standing): string {
  const isBack = from.isHomeTakenAlong && !to.isHomeTakenAlong;
  const way = rise(from.home, to.home);
  if (way === "level")
    return `goes ${isBack ? "back " : ""}to the ${placeInWords(to.home)}`;
  return isBack ? `goes back ${way}` : `comes ${way}`;
}

/** Where a piece goes: "comes down to the middle front right". */
export function pieceGoes(from: Standing, to: Standing): string {
  const way = rise(from.at, to.at);
  const verb = way === "level" ? "goes" : `comes ${way}`;
  return `${verb} to the ${placeInWords(to.at)}`;
}
