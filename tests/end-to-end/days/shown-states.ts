/**
 * What the window shows of a learner's memory, held against the stored log
 * replayed here: the shelves, the cases' own pages, Progress and Today.
 */
import { areAlike } from "../../../core/cases/alike";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { holdFor } from "../../../core/cases/hold-in-stage";
import { FIRST_COURSE } from "../../../core/deck/starter-decks";
import { present } from "../../../core/invariant";
import { dayNumber } from "../../../core/memory/local-day";
import type { LocalDay } from "../../../core/memory/review";
import {
  chanceNow,
  memoriesOf,
  type Memory,
  memoryKey,
  memoryState,
  type ScheduleSettings,
} from "../../../core/memory/schedule";
import { secondsPractised, timeNeeded } from "../../../core/memory/time-needed";
import { confusionsOf } from "../../../core/progress/confusions";
import { CONFUSION_DAYS } from "../../../core/progress/progress-facts";
import { planToday, type TodayPlan } from "../../../core/memory/today";
import { capitalised } from "../../../core/notation/sentence";
import { dayInWords, wholeDay } from "../../../renderer/components/time-words";
import { todayTitle } from "../../../renderer/state/practise/today-words";
import { expect } from "../app";
import { practiseState } from "../practise-steps";
import type { DeskWindow } from "./desk-window";
import { readStored, type Stored } from "./stored-log";

/** A stored log, replayed as of a day. */
export interface Replayed {
  readonly stored: Stored;
  readonly today: LocalDay;
  readonly schedule: ScheduleSettings;
  readonly memories: ReadonlyMap<string, Memory>;
}

/** Reads what is stored and replays it. */
export async function replayed(
  { page }: DeskWindow,
  today: LocalDay,
): Promise<Replayed> {
  const stored = await readStored(page);
  const { level, fit } = stored.settings;
  const schedule = {
    level,
    ...(fit?.weights === undefined ? {} : { weights: fit.weights }),
  };
  const memories = memoriesOf(stored.log, schedule);
  return { stored, today, schedule, memories };
}

function memoryOf({ stored, memories }: Replayed, id: CaseId) {
  const hold = holdFor(caseEntry(id).stage, stored.settings.hold);
  return memories.get(memoryKey(stored.learner, id, hold));
}

/** What the ring of a memory is: how full, on a logarithmic scale that is full at half a year. */
function ringOf(memory: Memory | undefined): number | undefined {
  if (memory === undefined) return undefined;
  const days = memory.lastsUntil - memory.lastDay;
  return Math.min(1, Math.log(1 + days) / Math.log(181));
}

/** Every case on the shelves of what was met: its memory in a word, and its ring. */
export async function checkShelves(
  window: DeskWindow,
  replay: Replayed,
): Promise<void> {
  const { page } = window;
  const met = [...replay.memories.values()].map((memory) => memory.case);
  for (const stage of new Set(met.map((id) => caseEntry(id).stage))) {
    await window.go(`#/cases/${stage}`);
    const cases = page.locator("main [data-case]");
    await expect(cases.first()).toBeVisible();
    const more = page.locator("details:not([open]) > summary");
    if (await more.isVisible()) await more.press("Enter");
    // Families come one in a frame.
    const all = casesOfStage(stage).map(({ id }) => id);
    await window.framesUntil(async () => (await cases.count()) === all.length);
    const shown = await cases.evaluateAll((links) =>
      links.map((one) => {
        const ring = one.querySelector("circle.fill");
        const [part, whole] = (ring?.getAttribute("stroke-dasharray") ?? "")
          .split(" ")
          .map(Number);
        return {
          id: one.getAttribute("data-case") ?? "",
          word: one.querySelector(".mark")?.textContent.trim(),
          ring:
            part === undefined || whole === undefined
              ? undefined
              : Math.round((1e6 * part) / whole),
        };
      }),
    );
    const wanted = shown.map(({ id }) => {
      const memory = memoryOf(replay, id as CaseId);
      const ring = ringOf(memory);
      return {
        id,
        word: memoryState(memory, replay.today, replay.schedule),
        ring: ring === undefined ? undefined : Math.round(1e6 * ring),
      };
    });
    expect(shown, `the shelf ${stage}`).toEqual(wanted);
    expect(shown.map(({ id }) => id).toSorted()).toEqual(all.toSorted());
  }
}

/** The pages of cases: until when each should last, and the chance that it is known today. */
export async function checkCasePages(
  window: DeskWindow,
  replay: Replayed,
  wanted: (index: number) => boolean = () => true,
): Promise<void> {
  const { page } = window;
  const { today, schedule } = replay;
  const memories = [...replay.memories.values()].filter((_, i) => wanted(i));
  for (const memory of memories) {
    await window.go(`#/cases/${memory.case}`);
    const { lastsUntil } = memory;
    const day =
      lastsUntil - today < 7
        ? dayInWords(lastsUntil, today)
        : wholeDay(lastsUntil);
    const word = capitalised(memoryState(memory, today, schedule));
    const until =
      lastsUntil <= today
        ? "It is time to ask it again."
        : `Should last until ${day}.`;
    const chance = Math.round(100 * chanceNow(memory, today, schedule));
    await expect(page.locator(".memory p"), memory.case).toHaveText(
      `${word}. ${until} Chance you’d know it today: ${chance} in 100.`,
    );
  }
}

/** What is said of a case after its answer: until when it should last; undefined where something else is said. */
export function untilAfter(
  { stored, today, schedule }: Replayed,
  review: string,
): string | undefined {
  const at = stored.log.findIndex(({ id }) => id === review);
  const answer = present(stored.log[at], "it is stored");
  if (answer.verdict === "missed") return undefined;
  const memories = memoriesOf(stored.log.slice(0, at + 1), schedule);
  const memory = memories.get(
    memoryKey(stored.learner, answer.case, answer.hold),
  );
  return memory === undefined || memory.lastsUntil <= today
    ? undefined
    : `Should last until ${dayInWords(memory.lastsUntil, today)}.`;
}

interface Kept {
  readonly kept: number;
  readonly settling: number;
  readonly fading: number;
}

/** How many cases were how well known on a day, by the log up to it. */
function keptOn({ stored, schedule }: Replayed, day: LocalDay): Kept {
  const log = stored.log.filter(({ localDay }) => localDay <= day);
  const count = { new: 0, kept: 0, settling: 0, fading: 0 };
  for (const memory of memoriesOf(log, schedule).values())
    count[memoryState(memory, day, schedule)] += 1;
  const { kept, settling, fading } = count;
  return { kept, settling, fading };
}

/** "What have I kept?": the sentence for today, and the table for every day so far. */
export async function checkKept(
  window: DeskWindow,
  replay: Replayed,
): Promise<void> {
  const { page } = window;
  const { stored, today } = replay;
  await window.go("#/progress");
  const region = page.getByRole("region", { name: "What have I kept?" });
  await window.framesUntil(() => region.isVisible());
  const now = keptOn(replay, today);
  const met = now.kept + now.settling + now.fading;
  await expect(region.locator("p").first()).toContainText(
    `${now.kept} of ${met} ${met === 1 ? "case" : "cases"} kept, ${now.settling} settling, ${now.fading} fading.`,
  );
  await region.getByRole("button", { name: "as a table" }).press("Enter");
  const rows = await region.locator("tbody tr").allInnerTexts();
  const first = present(stored.log[0], "something was answered").localDay;
  const days = Array.from({ length: today - first + 1 }, (_, i) =>
    dayNumber(today - i),
  );
  expect(rows.map((row) => row.split("\t"))).toEqual(
    days.map((day) => {
      const { kept, settling, fading } = keptOn(replay, day);
      const name = day === today ? "today" : wholeDay(day);
      return [name, ...[kept, settling, fading].map(String)];
    }),
  );
}

function planOf({ stored, today, schedule, memories }: Replayed): TodayPlan {
  const { learner, log, settings } = stored;
  const since = dayNumber(today - CONFUSION_DAYS);
  const { pairs } = confusionsOf(log, since);
  return planToday({
    learner,
    decks: FIRST_COURSE,
    hold: settings.hold,
    memories,
    today,
    settings: schedule,
    minutes: settings.minutes,
    practised: secondsPractised(log, today),
    secondsFor: timeNeeded(log, settings.answerWay).toAsk,
    areAlike: (a, b) =>
      areAlike(a, b) ||
      pairs.some((pair) => {
        const both = [pair.case, pair.answeredAs];
        return both.includes(a) && both.includes(b);
      }),
  });
}

/** The page that says what today brings: what comes back, how much of it is fading, what is new, what waits. */
export async function checkToday(
  { page }: DeskWindow,
  replay: Replayed,
): Promise<void> {
  await expect(practiseState(page, "today")).toBeVisible();
  const { due, fresh, waiting, ...rest } = planOf(replay);
  const { minutes } = replay.stored.settings;
  const title = page.getByRole("heading", { level: 1 });
  await expect(title).toHaveText(
    todayTitle({ due, fresh, waiting, ...rest }, minutes),
  );
  const section = page.getByRole("region", { name: "Today" });
  const parts = await section.locator("li").allInnerTexts();
  const counted = (pattern: RegExp): number =>
    Number(parts.flatMap((part) => pattern.exec(part)?.[1] ?? [])[0] ?? 0);
  expect({
    due: counted(/^(\d+) comes? back/),
    fresh: counted(/^(\d+) (?:is|are) new/),
    waiting: Number(
      /(\d+) more (?:is|are) due/.exec(await section.innerText())?.[1] ?? 0,
    ),
  }).toEqual({
    due: due.length,
    fresh: fresh.length,
    waiting: waiting.length,
  });
}
