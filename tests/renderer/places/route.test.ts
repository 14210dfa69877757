import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { STAGES } from "../../../core/cases/stage";
import { RECOGNISING_WAYS } from "../../../core/memory/review";
import { tellApart } from "../../../renderer/state/practise/practised";
import {
  formatRoute,
  isOfClass,
  isShown,
  parseRoute,
  PLACES,
  type Route,
} from "../../../renderer/places/route";

const ROUTES: readonly Route[] = [
  ...PLACES.map((place): Route =>
    place === "cases" ? { place, shelf: "first-layer-edges" } : { place },
  ),
  { place: "practise", page: "show-my-cube" },
  { place: "practise", page: "whole-run" },
  { place: "coach", page: "check", deck: "some/deck?" },
  { place: "coach", page: "sheets" },
  { place: "coach", page: "ticks" },
  { place: "coach", page: "ticks", code: "4A7C-2KMX" },
  { place: "coach", page: "class" },
  { place: "coach", page: "sheets", deck: "some/deck?" },
  ...RECOGNISING_WAYS.map((way): Route => ({
    place: "practise",
    of: tellApart(way),
  })),
  ...STAGES.flatMap((shelf): readonly Route[] => [
    { place: "cases", shelf },
    { place: "practise", of: shelf },
  ]),
  ...FIRST_LAYER_IDS.flatMap((id): readonly Route[] => [
    {
      place: "cases",
      shelf: id.startsWith("E") ? "first-layer-edges" : "first-layer-corners",
      case: id,
    },
    { place: "practise", of: id },
    { place: "coach", deck: "some/deck?", case: id },
    {
      place: "cases",
      shelf: id.startsWith("E") ? "first-layer-edges" : "first-layer-corners",
      case: id,
      page: "show",
      deck: "some/deck?",
    },
    ...[{}, { deck: "some/deck?" }].map((told): Route => ({
      place: "cases",
      shelf: id.startsWith("E") ? "first-layer-edges" : "first-layer-corners",
      case: id,
      page: "show",
      from: "class",
      ...told,
    })),
  ]),
];

describe("addresses", () => {
  it("lead back to the route they were made from", () => {
    for (const route of ROUTES) {
      expect(parseRoute(formatRoute(route))).toEqual(route);
    }
  });

  it("of Show my cube is one to keep", () => {
    expect(parseRoute("#/practise/show-my-cube")).toEqual({
      place: "practise",
      page: "show-my-cube",
    });
  });

  it("of the sheets of a deck is one to keep", () => {
    expect(parseRoute("#/coach/sheets/a-deck")).toEqual({
      place: "coach",
      page: "sheets",
      deck: "a-deck",
    });
    expect(parseRoute("#/coach/sheets")).toEqual({
      place: "coach",
      page: "sheets",
    });
  });

  it("of a case that is shown, and of a deck's check, are ones to keep", () => {
    const shown = parseRoute("#/cases/C1/show");
    expect(shown).toEqual({
      place: "cases",
      shelf: "first-layer-corners",
      case: "C1",
      page: "show",
    });
    expect(isShown(shown) && isOfClass(shown)).toBe(true);
    expect(isShown(parseRoute("#/cases/C1"))).toBe(false);
    expect(parseRoute("#/cases/C99/show")).toEqual({
      place: "cases",
      shelf: "first-layer-edges",
    });
    expect(parseRoute("#/coach/check/a-deck")).toEqual({
      place: "coach",
      page: "check",
      deck: "a-deck",
    });
  });

  it("of what is told apart are ones to keep", () => {
    expect(parseRoute("#/practise/tell-apart/which-is-it")).toEqual({
      place: "practise",
      of: "tell-apart/which-is-it",
    });
    expect(parseRoute("#/practise/tell-apart/nothing")).toEqual({
      place: "practise",
    });
    expect(parseRoute("#/practise/tell-apart")).toEqual({ place: "practise" });
  });

  it("that mean nothing lead to a place all the same", () => {
    expect(parseRoute("")).toEqual({ place: "practise" });
    expect(parseRoute("#/nowhere/at/all")).toEqual({ place: "practise" });
    expect(parseRoute("#/cases/C99")).toEqual({
      place: "cases",
      shelf: "first-layer-edges",
    });
    expect(parseRoute("#/coach/deck/C99")).toEqual({
      place: "coach",
      deck: "deck",
    });
  });
});
