import { describe, expect, it } from "vitest";
import {
  LAST_LAYER_COURSES,
  LAST_LAYER_RULES,
  LAST_LAYER_STAGES,
} from "../../../core/cases/last-layer-stages";
import {
  lastLayerCourseName,
  stageName,
  stageNames,
  stageWords,
} from "../../../core/cases/stage-words";
import { STAGES } from "../../../core/cases/stage";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import { rotationAbout } from "../../../core/cube/symmetries";

const WHITE_FIRST = { first: "white", last: "yellow" };
const MINT_FIRST = { first: "mint", last: "plum" };

describe("words of stages", () => {
  it("give every stage a name and a short form of its own", () => {
    const all = STAGES.map(stageNames);
    expect(new Set(all.map(({ name }) => name)).size).toBe(STAGES.length);
    expect(new Set(all.map(({ short }) => short)).size).toBe(STAGES.length);
    for (const { name, short } of all)
      expect(short.length, name).toBeLessThanOrEqual(name.length);
  });

  it("are sentences in the learner's own colours", () => {
    for (const stage of STAGES) {
      const white = stageWords(stage, WHITE_FIRST);
      const mint = stageWords(stage, MINT_FIRST);
      for (const part of ["asks", "before"] as const)
        expect(mint[part], stage).toBe(
          white[part].replaceAll("white", "mint").replaceAll("yellow", "plum"),
        );
      expect(white.asks).toMatch(/^[A-Z].*\.$/);
      expect(white.before).toMatch(/^[A-Z].*\.$/);
    }
    expect(stageWords("last-layer-edges-turned", MINT_FIRST).asks).toBe(
      "Turn the top edges so that plum faces up.",
    );
  });

  it("speak of edges and corners where the stage's rule asks about them alone", () => {
    for (const stage of LAST_LAYER_STAGES) {
      const asks: readonly string[] = LAST_LAYER_RULES[stage].asks;
      const { name } = stageNames(stage);
      const corners = asks.some((part) => part.startsWith("corner"));
      const edges = asks.some((part) => part.startsWith("edge"));
      if (!corners) expect(name, stage).toMatch(/^Last-layer edges/);
      if (!edges && stage !== "last-layer-corners")
        expect(name, stage).toMatch(/^Last-layer corners: /);
    }
  });

  it("add what the trade calls a stage", () => {
    expect(stageName("last-layer-turned")).toBe("Turning the last layer (OLL)");
    expect(stageName("last-layer-placed")).toBe("Placing the last layer (PLL)");
    expect(stageName("pairs")).toBe("Pairs (F2L)");
    expect(stageName("second-layer-edges")).toBe("Second-layer edges");
  });

  it("name the ways through the last layer", () => {
    expect(lastLayerCourseName("beginners-steps")).toBe("Step by step");
    const names = [
      "beginners-steps",
      "two-looks-each",
      "one-look-each",
    ] as const satisfies readonly (keyof typeof LAST_LAYER_COURSES)[];
    expect(names).toHaveLength(Object.keys(LAST_LAYER_COURSES).length);
    expect(new Set(names.map(lastLayerCourseName)).size).toBe(names.length);
  });
});

describe("a naming of the whole cube", () => {
  const colours = {
    U: "white",
    R: "red",
    F: "green",
    D: "yellow",
    L: "orange",
    B: "blue",
  };

  it("knows the first layer's colour and the one across from it", () => {
    expect(wholeCubeNaming(colours, "up")).toEqual({
      first: "white",
      last: "yellow",
      hold: "up",
    });
  });

  it("names the centres around the cube as it is held", () => {
    expect(
      wholeCubeNaming(colours, "down", rotationAbout("z", 2)).sides,
    ).toEqual({ F: "green", R: "orange", B: "blue", L: "red" });
  });
});
