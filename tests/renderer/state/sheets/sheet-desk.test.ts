import "fake-indexeddb/auto";
import { flushSync } from "svelte";
import { SvelteMap } from "svelte/reactivity";
import { beforeEach, describe, expect, it } from "vitest";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import { localDay } from "../../../../core/memory/local-day";
import type { Milliseconds } from "../../../../core/memory/review";
import { LARGEST_NUMBER } from "../../../../core/paper/sheet";
import { formatSheetCode } from "../../../../core/paper/sheet-code";
import { usualPaper } from "../../../../renderer/platform/paper";
import { openApp } from "../../../../renderer/state/app-state.svelte";
import type { LearnerState } from "../../../../renderer/state/learner.svelte";
import { certificateNumbers } from "../../../../renderer/state/sheets/certificate-numbers";
import { SheetDesk } from "../../../../renderer/state/sheets/sheet-desk.svelte";
import { textOf } from "../../../core/paper/blocks-for-tests";
import { forgetDatabases } from "../../storage/fresh-database";
import { sampleReview } from "../../storage/sample-review";
import { windowLocks } from "../../storage/window-locks";
import { foundAtOnce } from "./found-at-once";

const DECK = present(STARTER_DECKS[0], "there are starter decks");

async function learner(): Promise<LearnerState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value.current;
}

async function answerOnce(
  who: LearnerState,
  told: Parameters<typeof sampleReview>[0] = {},
): Promise<void> {
  const review = sampleReview({
    learner: who.learner.id,
    at: Date.now() as Milliseconds,
    ...told,
  });
  expect((await who.acknowledge({ review })).ok).toBe(true);
}

/** Draws what is chosen, to its end. */
async function drawn(desk: SheetDesk): Promise<void> {
  desk.follow();
  await expect.poll(() => desk.progress).toBeUndefined();
  await expect.poll(() => desk.sheet).toBeDefined();
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("the sheet on the desk", () => {
  it("has a number that can be typed in, and draws another when asked", async () => {
    const desk = new SheetDesk(() => DECK, await learner(), foundAtOnce);
    const numbers = Array.from({ length: 20 }, () => {
      desk.drawAnother();
      return desk.number;
    });
    for (const number of numbers) {
      expect(number).toBeGreaterThanOrEqual(1);
      expect(number).toBeLessThanOrEqual(LARGEST_NUMBER);
    }
    expect(new Set(numbers).size).toBeGreaterThan(15);
  });

  it("that children write on has its code on every page, the same for the same sheet, and others have none", async () => {
    const who = await learner();
    const desk = new SheetDesk(() => DECK, who, foundAtOnce);
    const other = new SheetDesk(() => DECK, who, foundAtOnce);
    other.number = desk.number;
    for (const kind of ["cases", "practice", "overview"] as const) {
      desk.kind = other.kind = kind;
      await drawn(desk);
      const pages = textOf(present(desk.sheet, "it was drawn"));
      const codes = pages.map(
        (page) => /\bCode (\S+)/.exec(page.join(" "))?.[1],
      );
      const code = desk.coded && formatSheetCode(desk.coded.code);
      expect(code === undefined).toBe(kind === "overview");
      expect(codes).toEqual(pages.map(() => code));
      other.paper = "letter";
      expect(other.coded?.code).toBe(desk.coded?.code);
      other.want(present(DECK.cases[0], "it has cases").case, false);
      if (code !== undefined)
        expect(other.coded?.code).not.toBe(desk.coded?.code);
      other.wantAll(true);
    }
  });

  it("holds the cases that are wanted", async () => {
    const desk = new SheetDesk(() => DECK, await learner(), foundAtOnce);
    desk.kind = "overview";
    const [first, ...others] = DECK.cases.map((one) => one.case);
    desk.want(present(first, "it has cases"), false);
    await drawn(desk);
    expect(desk.wanted).toBe(others.length);
    const sheet = present(desk.sheet, "it was drawn");
    const titles = textOf(sheet)
      .flat()
      .filter((text) => /^\d+ /.test(text));
    expect(titles).toHaveLength(others.length);
    desk.wantAll(false);
    expect(desk.sheet).toBeUndefined();
  });

  it("certifies the whole deck, whatever is left out of other sheets", async () => {
    const who = await learner();
    const [first, ...others] = DECK.cases.map((one) => one.case);
    await answerOnce(who, { case: present(first, "it has cases") });
    const desk = new SheetDesk(() => DECK, who, foundAtOnce);
    for (const id of others) desk.want(id, false);
    expect(desk.wanted).toBe(1);
    desk.kind = "certificate";
    await drawn(desk);
    const words = textOf(present(desk.sheet, "it was drawn")).flat().join(" ");
    expect(words).toContain(`of ${DECK.cases.length} cases kept`);
  });

  it("opens positions up as the learner remembers the deck at hand, until that is chosen", async () => {
    const who = await learner();
    const known = present(DECK.cases[0], "it has cases").case;
    for (const days of [60, 50, 30, 1]) {
      const at = (Date.now() - days * 86_400_000) as Milliseconds;
      await answerOnce(who, { case: known, at, localDay: localDay(at, 0) });
    }
    const decks = new SvelteMap([["at hand", DECK]]);
    const desk = new SheetDesk(
      () => present(decks.get("at hand"), "there is always one"),
      who,
      foundAtOnce,
    );
    expect(desk.opening).toBe("front");
    decks.set("at hand", { ...DECK, cases: DECK.cases.slice(0, 1) });
    expect(desk.opening).toBe("anywhere");
    desk.opening = "turned";
    decks.set("at hand", DECK);
    expect(desk.opening).toBe("turned");
  });

  it("is no sheet while the choice is not drawn yet", async () => {
    const desk = new SheetDesk(() => DECK, await learner(), foundAtOnce);
    desk.kind = "overview";
    await drawn(desk);
    desk.kind = "practice";
    flushSync();
    expect(desk.sheet).toBeUndefined();
    await drawn(desk);
    expect(desk.sheet).toBeDefined();
  });

  it("certifies nobody who has not answered", async () => {
    const who = await learner();
    const desk = new SheetDesk(() => DECK, who, foundAtOnce);
    desk.kind = "certificate";
    expect(desk.isCertifiable).toBe(false);
    await answerOnce(who);
    expect(desk.isCertifiable).toBe(true);
    await drawn(desk);
    expect(textOf(present(desk.sheet, "it was drawn")).flat()).toContain(
      "answer given",
    );
  });
});

describe("a certificate's numbers", () => {
  it("count answers and days, leave out what was only shown, and take the usual thinking", async () => {
    const who = await learner();
    const at = Date.now();
    const day = 86_400_000;
    await answerOnce(who, { at: (at - 2 * day) as Milliseconds });
    await answerOnce(who, { at: (at - day) as Milliseconds });
    await answerOnce(who, { at: (at - day + 1) as Milliseconds });
    await answerOnce(who, { asking: "shown" });
    expect(certificateNumbers(who, DECK.cases, "up")).toEqual({
      cases: DECK.cases.length,
      kept: 0,
      answers: 3,
      days: 2,
      thinking: 2000,
    });
  });
});

describe("the paper that is proposed", () => {
  it("is Letter where that is the usual one, and A4 anywhere else", () => {
    expect(usualPaper(["en-US", "de"])).toBe("letter");
    expect(usualPaper(["es-MX"])).toBe("letter");
    expect(usualPaper(["en-GB"])).toBe("a4");
    expect(usualPaper(["de"])).toBe("a4");
    expect(usualPaper([])).toBe("a4");
  });
});
