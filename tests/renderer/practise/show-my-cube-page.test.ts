import "fake-indexeddb/auto";
import { render, screen, waitFor } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import ShownCube from "../../../renderer/places/practise/show-my-cube/ShownCube.svelte";
import TellPiece from "../../../renderer/places/practise/show-my-cube/TellPiece.svelte";
import WholeSolve from "../../../renderer/places/practise/show-my-cube/WholeSolve.svelte";
import { openApp } from "../../../renderer/state/app-state.svelte";
import type { LearnerState } from "../../../renderer/state/learner.svelte";
import {
  cubeShownBy,
  type ShowMyCube,
} from "../../../renderer/state/practise/show-my-cube.svelte";
import { turnsOf } from "../../core/notation/turns-of";
import { forgetDatabases } from "../storage/fresh-database";
import { windowLocks } from "../storage/window-locks";

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
  vi.stubGlobal("scrollTo", () => undefined);
  // A worker that is busy for as long as the test runs.
  vi.stubGlobal(
    "Worker",
    class {
      postMessage = () => undefined;
      addEventListener = () => undefined;
    },
  );
});

async function learnerAtDesk(): Promise<LearnerState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value.current;
}

/** A cube of which two first-layer edges are out: one a quarter turn from lined up, one flipped. */
async function shownCube(): Promise<{
  readonly learner: LearnerState;
  readonly shown: ShowMyCube;
}> {
  const learner = await learnerAtDesk();
  const shown = cubeShownBy(learner);
  const solved = { cubies: SOLVED, hold: NO_ROTATION };
  shown.show(applyTurns(solved, turnsOf("R U2 F2 D")));
  return { learner, shown };
}

const page = { still: () => true, oncolours: () => undefined };

describe("the page of a whole cube", () => {
  it("has the stages in order, the first open one with its cases, each leading to its page", async () => {
    const { learner, shown } = await shownCube();
    render(ShownCube, { shown, learner, ...page });
    const stages = screen.getByRole("list", { name: "Stages" });
    expect(stages.tagName).toBe("OL");
    expect(stages.textContent).toMatch(
      /First edges.*of four home.*First corners.*later/s,
    );
    const links = screen.getAllByRole("link");
    expect(links.length).toBeGreaterThan(0);
    for (const link of links)
      expect(link.getAttribute("href")).toMatch(/^#\/cases\/E\d/);
    await userEvent.click(
      screen.getByRole("radio", { name: "In one look each" }),
    );
    expect(shown.course).toBe("one-look-each");
    await userEvent.click(
      screen.getByRole("button", { name: "Show me the first step" }),
    );
    expect(shown.page).toBe("step");
  });
});

describe("the page of a step", () => {
  it("has the focus at its heading, and again when the next step opens", async () => {
    const { learner, shown } = await shownCube();
    shown.open(0);
    render(WholeSolve, { shown, learner, ...page });
    const heading = () => screen.getByRole("heading", { level: 1 });
    await waitFor(() => expect(document.activeElement).toBe(heading()));
    const first = heading().textContent;
    await userEvent.keyboard("{Enter}");
    await waitFor(() => expect(heading().textContent).not.toBe(first));
    await waitFor(() => expect(document.activeElement).toBe(heading()));
    expect(shown.at).toBe(1);
    await userEvent.click(screen.getByRole("button", { name: "Step before" }));
    expect(shown.at).toBe(0);
  });

  it("says how to hold the cube at the start, and reads out the turn that is gone to", async () => {
    const { learner, shown } = await shownCube();
    shown.open(0);
    const { container } = render(WholeSolve, { shown, learner, ...page });
    expect(
      screen.getByText(
        "Hold your cube with white on top and green in front, and follow the turns.",
      ),
    ).toBeTruthy();
    const live = container.querySelector("[aria-live=polite]");
    expect(live?.textContent).toBe("");
    await userEvent.click(screen.getByRole("button", { name: "One turn on" }));
    expect(live?.textContent).not.toBe("");
  });

  it("has all steps in order, and each can be opened", async () => {
    const { learner, shown } = await shownCube();
    shown.open(0);
    render(WholeSolve, { shown, learner, ...page });
    await userEvent.click(screen.getByText(/^All \d+ steps$/));
    const rows = screen
      .getAllByRole("button")
      .filter((row) => row.closest("details") !== null);
    expect(rows).toHaveLength(shown.steps.length);
    expect(rows[0]?.getAttribute("aria-current")).toBe("step");
    const last = rows.at(-1);
    if (last !== undefined) await userEvent.click(last);
    expect(shown.at).toBe(shown.steps.length - 1);
  });

  it("leads back to the stickers where the cube looks different", async () => {
    const { learner, shown } = await shownCube();
    shown.open(0);
    render(WholeSolve, { shown, learner, ...page });
    await userEvent.click(
      screen.getByRole("button", { name: "My cube looks different" }),
    );
    expect(shown.page).toBe("stickers");
    expect(shown.entry.cube).toEqual(shown.cube);
  });

  it("tells turns in words alone to who reads no notation", async () => {
    const { learner, shown } = await shownCube();
    await learner.changeSettings({ notation: "words" });
    shown.open(0);
    const { container } = render(WholeSolve, { shown, learner, ...page });
    for (const move of container.querySelectorAll(".move"))
      expect(move.textContent).toBe("");
  });
});

describe("the page of one piece", () => {
  it("asks which, then where, and says what it takes for granted", async () => {
    const learner = await learnerAtDesk();
    const shown = cubeShownBy(learner);
    render(TellPiece, { shown, learner, ...page });
    await userEvent.click(screen.getByRole("radio", { name: "First corners" }));
    expect(screen.getByText(/The white edges are home\./)).toBeTruthy();
    await userEvent.click(
      screen.getByRole("button", { name: "The white, green and red corner" }),
    );
    expect(
      screen.getByRole("heading", {
        name: "Where is the white, green and red corner?",
      }),
    ).toBeTruthy();
    // Bottom front right, white on the front.
    shown.piece.found(4, 1);
    await screen.findByRole("heading", {
      name: "Bring the white, green and red corner home.",
    });
    expect(
      screen.getByText(
        "Taken as true for your cube: The white edges are home.",
      ),
    ).toBeTruthy();
    expect(
      screen.getByRole("link", { name: "Under its home, white on the front" }),
    ).toBeTruthy();
    await userEvent.click(
      screen.getByRole("button", { name: "It is somewhere else" }),
    );
    expect(
      screen.getByRole("heading", { name: /^Where is the white, green/ }),
    ).toBeTruthy();
    await userEvent.click(
      screen.getByRole("button", { name: "It is in its home already" }),
    );
    expect(
      screen.getByRole("heading", {
        name: "The white, green and red corner is home already.",
      }),
    ).toBeTruthy();
  });
});

describe("what a learner showed", () => {
  it("is there again, until the colours or the hold are others", async () => {
    const { learner, shown } = await shownCube();
    expect(cubeShownBy(learner)).toBe(shown);
    await learner.changeSettings({ paints: "greys" });
    expect(cubeShownBy(learner)).toBe(shown);
    await learner.changeSettings({ hold: "down" });
    const after = cubeShownBy(learner);
    expect(after).not.toBe(shown);
    expect(after.cube).toBeUndefined();
    await learner.changeSettings({ firstColour: "yellow" });
    expect(cubeShownBy(learner)).not.toBe(after);
  });
});
