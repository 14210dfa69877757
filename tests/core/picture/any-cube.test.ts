import { describe, expect, it } from "vitest";
import { FACES } from "../../../core/cube/faces";
import { NO_ROTATION, rotationAbout } from "../../../core/cube/symmetries";
import {
  anyCubeNames,
  anyCubePalette,
  SIDE_MARKS,
  SIDES_TOLD,
} from "../../../core/picture/any-cube";
import { COLOUR_NAMES, colourHex } from "../../../core/picture/colour-sets";

describe("a cube of any make", () => {
  it("tells each side by a sign and a shade of its own, and by no letter, which would be read as a turn", () => {
    const marks = FACES.map((face) => SIDE_MARKS[face]);
    expect(new Set(marks.map(({ sign }) => sign)).size).toBe(6);
    expect(anyCubePalette(NO_ROTATION, "light").letters).toBeUndefined();
    expect(new Set(marks.map(({ shade }) => shade)).size).toBe(6);
    expect([...SIDES_TOLD].sort()).toEqual([...FACES].sort());
  });

  it("shows no colour that a cube could have but white: every shade is a grey", () => {
    const colours = COLOUR_NAMES.filter(
      (name) => !["white", "grey", "black"].includes(name),
    ).map((name) => colourHex(name));
    for (const theme of ["light", "dark"] as const)
      for (const shade of Object.values(
        anyCubePalette(NO_ROTATION, theme).faces,
      )) {
        const [red, green, blue] = shade.match(/[0-9a-f]{2}/g) ?? [];
        expect([green, blue]).toEqual([red, red]);
        expect(colours).not.toContain(shade);
      }
  });

  it("names sides as they are seen, however the cube is held", () => {
    expect(anyCubeNames(NO_ROTATION)).toMatchObject({
      U: "top colour",
      F: "front colour",
    });
    const turnedOver = rotationAbout("z", 2);
    expect(anyCubeNames(turnedOver)).toMatchObject({
      U: "bottom colour",
      D: "top colour",
      R: "left colour",
      F: "front colour",
    });
    expect(anyCubePalette(turnedOver, "light").signs).toMatchObject({
      U: "bar",
      D: "disc",
      R: "two-bars",
    });
  });
});
