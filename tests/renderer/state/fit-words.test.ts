import { describe, expect, it } from "vitest";
import { default_w } from "ts-fsrs";
import { LEAST_ANSWERS } from "../../../core/memory/fit";
import { TRY_AGAIN_AFTER } from "../../../renderer/state/fit-desk.svelte";
import {
  fitTroubleText,
  fitWords,
  nextFitWords,
} from "../../../renderer/state/fit-words";

const weights = [...default_w];

describe("what a fit came to, in words", () => {
  it("says how many answers there are and how many are needed", () => {
    const words = fitWords(undefined, 212);
    expect(words).toContain("how people usually forget");
    expect(words).toContain(
      `needs ${LEAST_ANSWERS.toLocaleString("en")} answers`,
    );
    expect(words).toContain("So far there are 212");
    expect(fitWords(undefined, LEAST_ANSWERS)).toContain("often enough now");
  });

  it("says what was taken, and by how much it foretells better", () => {
    const fit = {
      weightsVersion: 2,
      weights,
      tried: { answers: 1234, isTaken: true, gain: 0.062 },
    };
    expect(fitWords(fit, 1300)).toContain("how you forget");
    expect(fitWords(fit, 1300)).toContain("1,234 of your answers");
    expect(fitWords(fit, 1300)).toContain("6.2% better");
  });

  it("says what was kept where the new was no better", () => {
    const tried = { answers: 900, isTaken: false, gain: -0.01 };
    expect(fitWords({ weightsVersion: 1, tried }, 950)).toContain(
      "how people usually forget",
    );
    expect(fitWords({ weightsVersion: 2, weights, tried }, 950)).toContain(
      "as found out before",
    );
  });

  it("says after how many more answers it is tried again", () => {
    const fit = {
      weightsVersion: 1,
      tried: { answers: 900, isTaken: false, gain: 0 },
    };
    expect(nextFitWords(undefined, 400)).toBeUndefined();
    expect(nextFitWords(fit, 950)).toContain(`${TRY_AGAIN_AFTER - 50} more`);
    expect(nextFitWords(fit, 900 + TRY_AGAIN_AFTER)).toBeUndefined();
  });

  it("says why it came to nothing, and that nothing was changed", () => {
    const failed = fitTroubleText({ code: "fit-failed", reason: "no memory" });
    expect(failed).toContain("no memory");
    expect(failed).toContain("Nothing was changed");
    expect(fitTroubleText({ code: "full" })).toContain("no room left");
  });
});
