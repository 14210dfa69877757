import "fake-indexeddb/auto";
import { render, screen, within } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { beforeEach, describe, expect, it } from "vitest";
import { STAGES, type Stage } from "../../../../core/cases/stage";
import { CASES_ON_SHELF } from "../../../../core/cases/shelf-counts";
import {
  nameInGroup,
  SHELF_GROUPS,
} from "../../../../renderer/components/shelf-groups";
import ShelfSelect from "../../../../renderer/components/ShelfSelect.svelte";
import CasePage from "../../../../renderer/places/cases/CasePage.svelte";
import Shelf from "../../../../renderer/places/cases/Shelf.svelte";
import { openApp } from "../../../../renderer/state/app-state.svelte";
import type { LearnerState } from "../../../../renderer/state/learner.svelte";
import { forgetDatabases } from "../../storage/fresh-database";
import { windowLocks } from "../../storage/window-locks";
import type { CaseId } from "../../../../core/cases/case-ids";
import type { Review } from "../../../../core/memory/review";
import { sampleReview } from "../../storage/sample-review";

let learner: LearnerState;

/** Boards come a few in each frame, and machines are busy. */
const PATIENCE = { timeout: 30_000 };

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
  // Nothing leaves a page that is not laid out: pictures are made at once.
  Reflect.deleteProperty(globalThis, "IntersectionObserver");
  // A set-up is not what is looked at here.
  globalThis.Worker = class {
    addEventListener() {
      /* It never answers. */
    }
    postMessage() {
      /* It never answers. */
    }
  } as never;
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  learner = opened.value.current;
});

function show(stage: Stage) {
  render(Shelf, { stage, learner, returned: undefined });
}

/** The links to cases, once they are all there. */
async function links(count: number): Promise<HTMLElement[]> {
  await screen.findByText("How well you know a case", {}, PATIENCE);
  return expect
    .poll(() => document.querySelectorAll("[data-case]").length, PATIENCE)
    .toBe(count)
    .then(() => [...document.querySelectorAll<HTMLElement>("[data-case]")]);
}

describe("the list of shelves", () => {
  it("has every stage once, under a group, with a name of its own", () => {
    const stages = SHELF_GROUPS.flatMap((group) => group.stages);
    expect(stages.toSorted()).toEqual(STAGES.toSorted());
    expect(new Set(stages.map(nameInGroup)).size).toBe(STAGES.length);
  });

  it("is the platform's own list where there is little room", async () => {
    const chosen: Stage[] = [];
    render(ShelfSelect, {
      value: "pairs",
      kept: () => 2,
      onchange: (stage: Stage) => chosen.push(stage),
    });
    const list = screen.getByRole("combobox", { name: "Shelf" });
    expect(within(list).getAllByRole("option")).toHaveLength(STAGES.length);
    expect(list).toHaveProperty("value", "pairs");
    expect(
      within(list).getByRole("option", {
        name: "Pairs (F2L): 41 cases, 2 kept",
      }),
    ).toBeTruthy();
    await userEvent.selectOptions(list, "last-layer-turned");
    expect(chosen).toEqual(["last-layer-turned"]);
  });
});

describe("a shelf", () => {
  it.each([
    "first-layer-edges",
    "second-layer-edges",
    "last-layer-corners-placed",
    "last-layer-turned",
    "last-layer-placed",
  ] as const)("of %s shows each of its cases", async (stage) => {
    show(stage);
    expect(await links(CASES_ON_SHELF[stage])).toHaveLength(
      CASES_ON_SHELF[stage],
    );
  });

  it("of the pairs shows 41, and the others when they are asked for", async () => {
    show("pairs");
    await links(41);
    await userEvent.click(screen.getByText("Pieces in other slots"));
    await expect
      .poll(() => document.querySelectorAll("[data-case]").length, PATIENCE)
      .toBe(167);
  });

  it("of the last layer shows plans, and the trade's names", async () => {
    show("last-layer-placed");
    const all = await links(21);
    await expect
      .poll(
        () => all.every((link) => link.querySelector("svg.plan") !== null),
        PATIENCE,
      )
      .toBe(true);
    expect(screen.getByText("PLL T")).toBeTruthy();
    expect(
      screen.getByRole("heading", { name: /Three edges go round/ }),
    ).toBeTruthy();
  });

  it("of 3,915 has its heading at once and one family open at a time", async () => {
    show("last-layer-whole");
    expect(
      screen.getByRole("heading", { name: /Whole last layer in one go/ }),
    ).toBeTruthy();
    const seven = await screen.findByRole(
      "button",
      { name: /^OLL 28:/ },
      PATIENCE,
    );
    expect(document.querySelectorAll("[data-case]")).toHaveLength(0);
    await userEvent.click(seven);
    expect(seven.getAttribute("aria-expanded")).toBe("true");
    await expect
      .poll(() => document.querySelectorAll("[data-case]").length, PATIENCE)
      .toBe(72);
    const next = screen.getByRole("button", { name: /^OLL 57:/ });
    await userEvent.click(next);
    expect(seven.getAttribute("aria-expanded")).toBe("false");
    await expect
      .poll(() => document.querySelectorAll("[data-case]").length, PATIENCE)
      .toBe(40);
  });

  it("shows a case that is put back where it is, its family open", async () => {
    const returned: CaseId = "last-layer-whole:0012-0011-0123-0123";
    render(Shelf, { stage: "last-layer-whole", learner, returned });
    await expect
      .poll(() => document.querySelector(`[data-case="${returned}"]`), PATIENCE)
      .not.toBeNull();
  });
});

describe("the page of a case", () => {
  function open(id: CaseId) {
    render(CasePage, { id, learner });
  }

  it("of the second layer has its usual way, step by step", async () => {
    open("second-layer-edges:DF-F");
    expect(screen.getByRole("heading", { level: 1 }).textContent).toMatch(
      /^Above the/,
    );
    const [usual] = screen.getAllByRole("button", { name: /^Step by step: / });
    await userEvent.click(usual ?? document.body);
    const steps = screen
      .getAllByRole("button")
      .filter((button) => button.hasAttribute("aria-current"));
    expect(steps).toHaveLength(1);
    expect(
      screen.getByRole("group", { name: "Go through the way" }),
    ).toBeTruthy();
  });

  it("of a pair tells what is seen, how often it comes up and its twin", () => {
    open("pairs:DFR-R.FR-F");
    expect(screen.getByText(/Comes up twice in 75/)).toBeTruthy();
    expect(screen.getByRole("heading", { name: "Twin" })).toBeTruthy();
    expect(
      screen.getByRole("img", { name: /The corner is top front right/ }),
    ).toBeTruthy();
  });

  it("of turning the last layer has its trade name and four look-alikes", () => {
    open("last-layer-turned:1212-1111");
    expect(
      screen.getByRole("heading", { level: 1, name: /^OLL 1:/ }),
    ).toBeTruthy();
    expect(screen.getByText(/Comes up once in 108/)).toBeTruthy();
    const alike = screen.getByRole("region", { name: "Easily mistaken for" });
    expect(within(alike).getAllByRole("link")).toHaveLength(4);
    expect(screen.queryByRole("heading", { name: "Inverse" })).toBeNull();
  });

  it("says how often the learner mixed it up, by turning or by choosing, and with what else", async () => {
    const took = async (answeredAs: CaseId, told: Partial<Review> = {}) => {
      const review = sampleReview({
        case: "C1",
        learner: learner.learner.id,
        localDay: learner.today,
        verdict: "missed",
        answeredAs,
        ...told,
      });
      const stored = await learner.acknowledge({ review });
      if (!stored.ok) throw new Error(stored.error.code);
    };
    await took("C3");
    await took("C3", { asking: "extra", answerWay: "which-is-it" });
    await took("C6");
    open("C1");
    const alike = screen.getByRole("region", { name: "Easily mistaken for" });
    const [first, ...others] = within(alike)
      .getAllByRole("link")
      .map((link) => link.textContent.replaceAll(/\s+/g, " ").trim());
    // C1's look-alikes are C2 and C3; C6 was taken for it all the same.
    expect(first).toMatch(
      /^White on the bottom look underneath to tell; mixed up twice$/,
    );
    expect(others[0]).toMatch(/^Top front left, white on top mixed up once$/);
    expect(others[1]).toMatch(/^White on the right its twin$/);
    expect(others).toHaveLength(2);
    // Of what was chosen no time is shown, for it says nothing of turning.
    expect(screen.getByText("Which is it?")).toBeTruthy();
  });

  it("of placing has its inverse where that is another case", () => {
    open("last-layer-placed:0132-3012");
    expect(
      screen.getByRole("heading", { name: "Twin and inverse" }),
    ).toBeTruthy();
  });

  it("of the largest stages offers to find a way, and gives it up", async () => {
    open("last-layer-whole:0012-0011-0123-0123");
    await userEvent.click(
      screen.getByRole("button", { name: "Find a way in one go" }),
    );
    expect(
      screen.getByRole("progressbar", { name: "Looking for ways" }),
    ).toBeTruthy();
    await userEvent.click(screen.getByRole("button", { name: "Cancel" }));
    expect(
      screen.getByRole("button", { name: "Find a way in one go" }),
    ).toBeTruthy();
  });
});
