/**
 * The page in the desktop app, with a stand-in for the shell's bridge: what the
 * shell tells reaches the right place. The shell itself is in
 * `main-process.spec.ts`, Electron in `electron.spec.ts`.
 */
import type { Page } from "@playwright/test";
import { DESKTOP_BRIDGE_NAME } from "../../core/desktop-bridge";
import { expect, test } from "./app";

/** What the stand-in gives, and where it notes what it was asked. */
interface StandIn {
  readonly deckFiles?: readonly {
    readonly name: string;
    readonly text: string;
  }[];
  readonly lastKnown?: { readonly reviews: number; readonly at: number };
}

async function openWith(page: Page, standIn: StandIn): Promise<void> {
  await page.addInitScript(
    ({ name, standIn }) => {
      const ok = <T>(value: T) => Promise.resolve({ ok: true, value });
      const waiting = [...(standIn.deckFiles ?? [])];
      const listeners: ((news: unknown) => void)[] = [];
      const asked: string[] = [];
      const note =
        (what: string, answer: unknown) =>
        (...words: readonly unknown[]) => {
          asked.push(`${what} ${words.map(String).join(" ")}`.slice(0, 80));
          return ok(answer);
        };
      Object.assign(window, {
        asked,
        tell: (news: unknown) => {
          for (const hear of listeners) hear(news);
        },
        [name]: {
          info: () => ok({ version: "1", dataFolder: "/home/ada/Turnwise" }),
          takeDeckFile: () => ok(waiting.shift() ?? null),
          saveDeckFile: note("saveDeckFile", { name: "x" }),
          saveBackup: note("saveBackup", { name: "x" }),
          openBackup: note("openBackup", null),
          automaticBackup: note("automaticBackup", {
            written: true,
            fewerThan: null,
          }),
          lastKnown: () => ok(standIn.lastKnown ?? null),
          listBackups: () => ok([]),
          forgetLastKnown: note("forgetLastKnown", null),
          printToPdf: note("printToPdf", { name: "x" }),
          onNews: (listener: (news: unknown) => void) => {
            listeners.push(listener);
            return () => undefined;
          },
        },
      });
    },
    { name: DESKTOP_BRIDGE_NAME, standIn },
  );
  await page.goto("/");
}

const asked = (page: Page) =>
  page.evaluate(() => Reflect.get(window, "asked") as string[]);

async function choose(page: Page, command: string): Promise<void> {
  await page.evaluate((command) => {
    const tell = Reflect.get(window, "tell") as (news: unknown) => void;
    tell({ kind: "menu", command });
  }, command);
}

const DECK = `{ "turnwise": "deck", "version": 1, "name": "Monday group",
  "cases": [ { "case": "C1" }, { "case": "C2" } ] }`;

test("deck files that the system gave are looked at on the bench, one after the other", async ({
  page,
}) => {
  await openWith(page, {
    deckFiles: [
      { name: "monday.turnwise-deck", text: DECK },
      { name: "notes.json", text: "[]" },
    ],
  });
  const dialog = page.getByRole("dialog");
  await expect(dialog).toContainText("Monday group");
  await expect(page).toHaveTitle("Coach · Turnwise");
  await dialog.getByRole("button", { name: /Leave it|Close/ }).click();
  await expect(dialog).toContainText("not from Turnwise");
});

test("the menu's commands are carried out in their places", async ({
  page,
}) => {
  await openWith(page, {});
  await expect(page.locator("[data-practise-state]")).toBeVisible();
  await choose(page, "back-up");
  await expect(page.getByText("The backup is written.")).toBeVisible();
  await choose(page, "restore");
  await expect
    .poll(() => asked(page))
    .toEqual([
      expect.stringMatching(/^saveBackup Turnwise .*everything/),
      expect.stringMatching(/^openBackup/),
    ]);
  await choose(page, "save-deck");
  await expect(page).toHaveTitle("Coach · Turnwise");
  await expect
    .poll(async () => (await asked(page)).at(-1))
    .toMatch(/^saveDeckFile First-layer edges/);
  await choose(page, "print");
  await expect
    .poll(async () => (await asked(page)).at(-1))
    .toBe("printToPdf Coach · Turnwise");
});

test("a sheet is written as a PDF that is called by its deck and its number", async ({
  page,
}) => {
  await openWith(page, {});
  await page.goto("/#/coach/sheets/starter-corners");
  await page.getByRole("radio", { name: /At a glance/ }).check();
  await page.getByRole("button", { name: "Write a PDF…" }).click();
  await expect
    .poll(async () => (await asked(page)).at(-1))
    .toMatch(/^printToPdf First-layer corners, sheet \d+$/);
});

test("a store that is empty though it was not is told, until it is said to be meant so", async ({
  page,
}) => {
  await openWith(page, { lastKnown: { reviews: 240, at: 0 } });
  const told = page.getByRole("alert");
  await expect(told).toContainText("240 answers were kept here before");
  await told.getByRole("button", { name: "It is meant to be empty" }).click();
  await expect(told).toBeHidden();
  expect(await asked(page)).toContain("forgetLastKnown ");
});
