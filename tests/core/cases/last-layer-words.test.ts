import { describe, expect, it } from "vitest";
import {
  type LastLayerCase,
  lastLayerCases,
} from "../../../core/cases/last-layer-cases";
import { lastLayerFamilies } from "../../../core/cases/last-layer-families";
import { stateOfLook } from "../../../core/cases/last-layer-look";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import {
  lastLayerFamilyName,
  lastLayerNameInFamily,
  lastLayerTitle,
  lastLayerTradeTitle,
} from "../../../core/cases/last-layer-words";
import { formatFacelets } from "../../../core/cube/facelets";
import { rotationAbout } from "../../../core/cube/symmetries";
import { onSide } from "./seen-pieces";
import {
  layerOf,
  mustTurn,
  roundsSeen,
  timesAround,
  turnedUnder,
} from "./seen-last-layer";
import { LAST_LAYER_ORIENTATIONS } from "../../reference/published-values";

const YELLOW = { last: "yellow" };

function faceletsOf(one: LastLayerCase): string {
  return formatFacelets({
    cubies: stateOfLook(one.lookAt(0)),
    hold: rotationAbout("z", 2),
  });
}

function titles(stage: LastLayerStage): readonly string[] {
  return lastLayerCases(stage).map((one) => lastLayerTitle(one, YELLOW));
}

describe.each(LAST_LAYER_STAGES)("words of %s", (stage) => {
  it("give each case a title of its own, short enough for a shelf", () => {
    const all = titles(stage);
    expect(new Set(all).size).toBe(all.length);
    expect(all.filter((title) => title.length > 60)).toEqual([]);
    expect(all.filter((title) => !/^[A-Z]/.test(title))).toEqual([]);
  });

  it("give each family a name of its own, and each case another within it", () => {
    const families = lastLayerFamilies(stage);
    const names = families.map(({ family }) =>
      lastLayerFamilyName(family, YELLOW),
    );
    expect(new Set(names).size).toBe(names.length);
    for (const { cases } of families) {
      const inside = cases.map((one) => lastLayerNameInFamily(one, YELLOW));
      expect(inside.filter((name, i) => inside.indexOf(name) !== i)).toEqual(
        [],
      );
    }
  });

  it("name the last layer's colour as the learner does", () => {
    for (const one of lastLayerCases(stage).slice(0, 200))
      for (const words of [lastLayerTitle, lastLayerNameInFamily])
        expect(words(one, { last: "plum" })).toBe(
          words(one, YELLOW)
            .replaceAll("yellow", "plum")
            .replaceAll("Yellow", "Plum"),
        );
  });
});

const COUNT = ["no", "one", "two", "three", "all"];

/** "two corners up", from the picture. */
function upSaid(facelets: string, pieces: "corners" | "edges"): string {
  const up = layerOf(facelets, pieces).filter(({ facing }) => facing[1] === 1);
  const kind = up.length < 2 ? pieces.slice(0, -1) : pieces;
  return `${COUNT[up.length]} ${kind} up`;
}

describe("titles of turning", () => {
  it("say how many edges and corners the picture has up, and the number of last-layer.json", () => {
    for (const one of lastLayerCases("last-layer-turned")) {
      const facelets = faceletsOf(one);
      const listed = LAST_LAYER_ORIENTATIONS.find(
        ({ cornerTwists, edgeFlips }) =>
          cornerTwists === one.lookAt(0).cornerTwists &&
          edgeFlips === one.lookAt(0).edgeFlips,
      );
      expect(lastLayerTitle(one, YELLOW)).toBe(
        `OLL ${listed?.number}: ${upSaid(facelets, "edges")}, ${upSaid(facelets, "corners")}`,
      );
    }
  });

  /** Corners by how they are turned, from the picture: [how many are up, what tells them apart]. */
  function twistsSeen(facelets: string) {
    const corners = layerOf(facelets, "corners");
    const turned = corners.filter(({ facing }) => facing[1] === 0);
    const [a, b] = corners.filter(({ facing }) => facing[1] === 1);
    const up = corners.length - turned.length;
    const areAcross =
      up === 2 && a?.at[0] !== b?.at[0] && a?.at[2] !== b?.at[2];
    const sides = new Set(turned.map(({ facing }) => onSide(facing))).size;
    const ways = new Set(turned.map(mustTurn));
    return { up, areAcross, sides, way: [...ways].join(" and ") };
  }

  it.each([
    "last-layer-corners-turned",
    "last-layer-corners-turned-last",
  ] as const)("say of %s what the picture shows", (stage) => {
    for (const one of lastLayerCases(stage)) {
      const { up, areAcross, sides, way } = twistsSeen(faceletsOf(one));
      const onSides = `yellow on ${["no", "one", "two", "three"][sides]} side${sides === 1 ? "" : "s"}`;
      const words =
        up === 0
          ? `no corner up, ${onSides}`
          : up === 1
            ? `one corner up, the others turn ${way}`
            : areAcross
              ? "two corners up across from each other"
              : `two neighbouring corners up, ${onSides}`;
      const title = lastLayerTitle(one, YELLOW);
      expect(title.replace(/^OLL \d+: | \(OLL \d+\)$/, "").toLowerCase()).toBe(
        words,
      );
      // Who solves it in two looks does not know the trade's names yet.
      expect(title.endsWith(")")).toBe(stage === "last-layer-corners-turned");
      expect(title.startsWith("OLL")).toBe(false);
    }
  });

  /** What must change places among the corners, told with the fewest. */
  function swapSeen(facelets: string, allUp: boolean): string {
    const found = turnedUnder(facelets)
      .map((way) => roundsSeen(way, "corners").flat())
      .toSorted((a, b) => a.length - b.length)[0];
    if (found === undefined || found.length === 0) return "none swap";
    const [a, b] = found.map((at) => layerOf(facelets, "corners")[at]?.at);
    if (found.length !== 2 || a === undefined || b === undefined)
      throw new Error("at most two corners need to change places");
    const side =
      a[2] === b[2]
        ? a[2] === 1
          ? "front two"
          : "back two"
        : a[0] === b[0]
          ? a[0] === 1
            ? "right two"
            : "left two"
          : "diagonal";
    return `${allUp && side !== "diagonal" ? "neighbours" : side} swap`;
  }

  function cornersSeen(facelets: string): string {
    const { up, areAcross, sides, way } = twistsSeen(facelets);
    const onSides = `yellow on ${["no", "one", "two", "three"][sides]} side${sides === 1 ? "" : "s"}`;
    const words = [
      `No corner up, ${onSides}`,
      `One corner up, others ${way}`,
      areAcross ? "Two across up" : `Two neighbours up, ${onSides}`,
      "",
      "All corners up",
    ][up];
    return `${words}; ${swapSeen(facelets, up === 4)}`;
  }

  it("of the corners alone say what the picture shows", () => {
    for (const one of lastLayerCases("last-layer-corners"))
      expect(lastLayerTitle(one, YELLOW), one.code).toBe(
        cornersSeen(faceletsOf(one)),
      );
  });

  it("of the two largest stages begin with the smaller case that the picture shows", () => {
    for (const one of lastLayerCases("last-layer-but-edges-turned")) {
      const facelets = faceletsOf(one);
      const title = lastLayerTitle(one, YELLOW);
      const isTurned = layerOf(facelets, "corners").every(
        ({ facing }) => facing[1] === 1,
      );
      if (isTurned) expect(title).toMatch(/^PLL [A-Z]/);
      else expect(title.split(" · ")[0]).toBe(cornersSeen(facelets));
    }
    for (const one of lastLayerCases("last-layer-whole")) {
      const { cornerTwists, edgeFlips } = one.lookAt(0);
      const listed = LAST_LAYER_ORIENTATIONS.find(
        (other) =>
          cornerTwists === other.cornerTwists && edgeFlips === other.edgeFlips,
      );
      const title = lastLayerTitle(one, YELLOW);
      if (listed === undefined) {
        expect([cornerTwists, edgeFlips]).toEqual(["0000", "0000"]);
        expect(title).toMatch(/^PLL [A-Z]/);
      } else expect(title.split(" · ")[0]).toBe(`OLL ${listed.number}`);
    }
  });

  it("of the two largest stages call by the same letters what places a turned layer", () => {
    const placing = titles("last-layer-placed");
    const whole = titles("last-layer-whole").filter((title) =>
      title.startsWith("PLL"),
    );
    expect(new Set(whole)).toEqual(new Set(placing));
    const edgesUp = titles("last-layer-but-edges-turned").filter((title) =>
      title.startsWith("PLL"),
    );
    expect(new Set(edgesUp)).toEqual(new Set(placing));
  });
});

describe("titles of placing", () => {
  /** What must move, told with the fewest pieces, from the picture. */
  function placingSeen(
    facelets: string,
    kinds: readonly ("corners" | "edges")[],
    mayTurn: boolean,
  ): string {
    const ways = (mayTurn ? turnedUnder(facelets) : [facelets])
      .map((way) => kinds.map((kind) => roundsSeen(way, kind)))
      .toSorted((a, b) => {
        const moved = (rounds: typeof a) => rounds.flat(2).length;
        const longest = (rounds: typeof a) =>
          Math.max(...rounds.flat().map((round) => round.length));
        return moved(a) - moved(b) || longest(a) - longest(b);
      });
    const moving = (ways[0] ?? []).flatMap((rounds, i) =>
      rounds.length === 0 ? [] : [{ kind: kinds[i] ?? "?", rounds }],
    );
    const number = ["", "", "two", "three", "four"];
    if (moving.length === 2)
      return `${moving
        .map(({ kind, rounds }) => `${number[rounds.flat().length]} ${kind}`)
        .join(" and ")} ${
        moving[0]?.rounds[0]?.length === 3 ? "go round" : "change places"
      }`;
    const [{ kind, rounds } = { kind: "?", rounds: [] }] = moving;
    const [round = []] = rounds;
    if (round.length === 3)
      return `three ${kind} go round ${timesAround(round) === 1 ? "clockwise" : "anticlockwise"}`;
    const isAcross = ((round[1] ?? 0) - (round[0] ?? 0)) % 2 === 0;
    const lie = isAcross ? "across from each other" : "next to each other";
    return rounds.length === 2
      ? `${kind} ${lie} change places in pairs`
      : `two ${kind} ${lie} change places`;
  }

  it.each([
    ["last-layer-placed", ["corners", "edges"], true],
    ["last-layer-edges-placed", ["edges"], true],
    ["last-layer-corners-placed-first", ["corners"], true],
    ["last-layer-corners-placed", ["corners"], false],
    ["last-layer-edges-placed-last", ["edges"], false],
  ] as const)("say of %s what must move", (stage, kinds, mayTurn) => {
    for (const one of lastLayerCases(stage)) {
      const words = placingSeen(faceletsOf(one), kinds, mayTurn);
      const title = lastLayerTitle(one, YELLOW);
      expect(
        title
          .replace(/^PLL [A-Z][a-z]?: | \(PLL [A-Z][a-z]?\)$/, "")
          .toLowerCase(),
      ).toBe(words);
    }
  });

  // Source: common practice: which way the edges and corners go.
  it("go the way the letters say", () => {
    const all = titles("last-layer-placed");
    expect(all).toContain("PLL Ua: three edges go round anticlockwise");
    expect(all).toContain("PLL Ub: three edges go round clockwise");
    expect(all).toContain("PLL Aa: three corners go round clockwise");
    expect(all).toContain("PLL Ab: three corners go round anticlockwise");
    expect(all).toContain("PLL T: two corners and two edges change places");
  });
});

describe("names of families", () => {
  it("are such as these", () => {
    expect(lastLayerFamilyName({ kind: "up", edges: "two-next" }, YELLOW)).toBe(
      "Two edges up, next to each other",
    );
    expect(
      lastLayerFamilyName(
        { kind: "up", edges: "all", corners: "two-across" },
        YELLOW,
      ),
    ).toBe("All edges up; two corners up across from each other");
    expect(
      lastLayerFamilyName(
        { kind: "moved", corners: "two-next", edges: "two-across" },
        YELLOW,
      ),
    ).toBe(
      "Two corners next to each other change places; two edges across from each other change places",
    );
    expect(
      lastLayerFamilyName(
        { kind: "shows", stage: "last-layer-turned", code: "0000-0000" },
        { last: "plum" },
      ),
    ).toBe("The whole top is plum");
  });

  it("are the trade's where it has one", () => {
    const [first] = lastLayerCases("last-layer-edges-placed");
    expect(first && lastLayerTradeTitle(first)).toBeUndefined();
    expect(
      lastLayerCases("last-layer-corners-turned")
        .map(lastLayerTradeTitle)
        .toSorted(),
    ).toEqual([21, 22, 23, 24, 25, 26, 27].map((number) => `OLL ${number}`));
  });
});
