import { turnsForPosition } from "../../../core/cases/way-for-position";
import { describe, expect, it, vi } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import {
  isFullyKnown,
  isSameState,
  type PartlyKnownCubies,
  SOLVED,
} from "../../../core/cube/cubies";
import { agreesWith } from "../../../core/cube/partly-known";
import { corner, edge } from "../../../core/cube/pieces";
import type { RoundItem } from "../../../core/memory/round";
import { err, ok } from "../../../core/result";
import { randomSource } from "../../../core/random-source";
import { createSetUpFinder } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/steps";
import {
  formatDesk,
  parseDesk,
} from "../../../renderer/state/practise/desk-schema";
import type { GivenAnswer } from "../../../renderer/state/practise/given-answer";
import { MyCubeAttempt } from "../../../renderer/state/practise/my-cube-attempt.svelte";
import type { SetUpFinder } from "../../../renderer/state/practise/my-cube-stage";
import { cubeThatHas } from "../../../renderer/state/practise/own-cube";
import { positionOfItem } from "../../../renderer/state/practise/position-of-item";

const finder = createSetUpFinder();
const findSetUp: SetUpFinder = (from, to, seed) => {
  const found = runToEnd(finder.find(from, to, randomSource(seed)));
  return Promise.resolve(found.ok ? ok(found.value.turns) : found);
};

function itemOf(id: CaseId, about: Partial<RoundItem> = {}): RoundItem {
  return {
    case: id,
    hold: "up",
    deck: "corners",
    target: 5,
    asking: "alone",
    variant: { home: 1, placed: [], turnedAway: 0, seenFrom: 0 },
    opening: "front",
    bare: true,
    seed: 7,
    interrupted: false,
    track: 0,
    ...about,
  };
}

interface Begun {
  readonly attempt: MyCubeAttempt;
  readonly answers: GivenAnswer[];
  /** What was known of the cube when each answer was told. */
  readonly cubes: (PartlyKnownCubies | undefined)[];
}

interface Beginning {
  readonly ownCube?: PartlyKnownCubies | undefined;
  readonly walk?: MyCubeAttempt["storedWalk"];
  readonly findSetUp?: SetUpFinder;
}

function begin(item: RoundItem, from: Beginning = {}): Begun {
  const answers: GivenAnswer[] = [];
  const cubes: (PartlyKnownCubies | undefined)[] = [];
  const attempt: MyCubeAttempt = new MyCubeAttempt({
    item,
    position: positionOfItem(item),
    way: turnsForPosition(positionOfItem(item)),
    wayChoice: { school: "first", hand: "right" },
    isMarked: true,
    isRetry: false,
    ownCube: undefined,
    findSetUp,
    onset: () => undefined,
    onmoved: () => undefined,
    onhinted: () => undefined,
    onended: (given) => {
      answers.push(given);
      cubes.push(attempt.cubeNow);
    },
    ...from,
  });
  return { attempt, answers, cubes };
}

/** Makes every turn of the walk that is asked for. */
function walk(attempt: MyCubeAttempt, at = 0): void {
  const { stage } = attempt;
  if (!("walk" in stage)) throw new Error(stage.kind);
  for (let n = stage.walk.done; n < stage.walk.turns.length; n++)
    attempt.turnMade(at + n);
}

async function setUp(
  item: RoundItem,
  ownCube: PartlyKnownCubies = SOLVED,
): Promise<Begun> {
  const begun = begin(item, { ownCube });
  await vi.waitFor(() => expect(begun.attempt.stage.kind).toBe("set-up"));
  walk(begun.attempt);
  return begun;
}

/** The attempt after the window was closed and opened again. */
function reloaded({ attempt }: Begun): Begun {
  const { ownCube, storedWalk } = attempt;
  const desk = parseDesk(
    structuredClone(formatDesk({ ownCube, walk: storedWalk })),
  );
  return begin(attempt.item, desk);
}

it("looks for no set-up any more once the attempt is left", () => {
  let signal: AbortSignal | undefined;
  const { attempt } = begin(itemOf("C1"), {
    ownCube: SOLVED,
    findSetUp: (_from, _to, _seed, options) => {
      signal = options?.signal;
      return new Promise(() => undefined);
    },
  });
  expect(signal?.aborted).toBe(false);
  attempt.stop();
  expect(signal?.aborted).toBe(true);
});

describe("an attempt on the learner's own cube, taken up again", () => {
  it("waits to be seen as before, and shows no way home", async () => {
    const begun = await setUp(itemOf("C1"));
    expect(begun.attempt.stage.kind).toBe("see");
    const { attempt } = reloaded(begun);
    expect(attempt.stage.kind).toBe("see");
    expect(attempt.position).toEqual(begun.attempt.position);
  });

  it("waits to be seen after another way of answering was looked at", async () => {
    const { attempt } = await setUp(itemOf("C1"));
    const again = begin(attempt.item, { ownCube: attempt.cubeNow });
    expect(again.attempt.stage.kind).toBe("see");
  });

  it("never brings the piece home that is asked for when a set-up was left half made", async () => {
    const { attempt } = begin(itemOf("C1"), { ownCube: SOLVED });
    await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
    attempt.turnMade(0);
    attempt.turnMade(1);
    const again = begin(attempt.item, { ownCube: attempt.cubeNow }).attempt;
    await vi.waitFor(() => expect(again.stage.kind).toBe("set-up"));
    walk(again);
    expect(again.stage.kind).toBe("see");
  });

  it("goes on with the turn of a new case's way", async () => {
    const begun = await setUp(itemOf("C1", { asking: "shown" }));
    begun.attempt.turnMade(100);
    const { attempt, answers, cubes } = reloaded(begun);
    expect(attempt.stage).toEqual(begun.attempt.stage);
    walk(attempt, 5000);
    expect(answers).toHaveLength(1);
    // Its turns were seen, so the whole cube is still known.
    expect(cubes[0] !== undefined && isFullyKnown(cubes[0])).toBe(true);
  });

  it("asks what the cube has when it was left while it was being turned", async () => {
    const begun = await setUp(itemOf("C1"));
    begun.attempt.seen(0);
    expect(reloaded(begun).attempt.stage.kind).toBe("has");
    begun.attempt.done(2000);
    expect(reloaded(begun).attempt.stage.kind).toBe("has");
  });
});

describe("what is set up", () => {
  it("is the whole random position once the case is kept and all of the cube is known", async () => {
    const item = itemOf("C1", { bare: false });
    const { attempt } = await setUp(item);
    const whole = positionOfItem(item).cubies;
    expect(isSameState(attempt.cube.cubies, whole)).toBe(true);
    expect(isSameState(attempt.ownCube ?? SOLVED, whole)).toBe(true);
  });

  it("is what the case names, in a few turns, while the case is new", async () => {
    const { attempt } = await setUp(itemOf("C1"));
    expect(isFullyKnown(attempt.position.cubies)).toBe(false);
    expect(agreesWith(attempt.ownCube ?? SOLVED, attempt.position.cubies)).toBe(
      true,
    );
  });

  it("is what the case names where only a first layer is known", async () => {
    const item = itemOf("E1", { bare: false });
    const { attempt } = await setUp(item, cubeThatHas("first-layer"));
    expect(isFullyKnown(attempt.position.cubies)).toBe(false);
  });
});

describe("the end of an attempt", () => {
  it("keeps the cube as it was set up where the way is asked for before the clock", async () => {
    const begun = await setUp(itemOf("C1"));
    const standing = begun.attempt.ownCube;
    begun.attempt.showMe(0);
    expect(begun.answers[0]).toMatchObject({
      shownTheWay: true,
      reported: false,
    });
    expect(begun.cubes).toEqual([standing]);
  });

  it("is 'not done' for a cross lost while answering, and nothing is known then", async () => {
    const begun = await setUp(itemOf("C1"));
    begun.attempt.seen(1000);
    begun.attempt.astray("base-lost", 4000);
    expect(begun.answers).toHaveLength(1);
    expect(begun.answers[0]).toMatchObject({
      verdict: { right: false },
      measured: { total: 3000 },
      reported: true,
    });
    expect(begun.cubes[0]?.edgePermutation).not.toContain(edge("UF"));
  });

  it("records nothing where the cube looks different or is solved, and the answer then counts as interrupted", async () => {
    for (const isReport of [false, true]) {
      const { attempt, answers } = await setUp(itemOf("C1"));
      attempt.seen(0);
      if (isReport) attempt.done(3000);
      attempt.astray("solved", 4000);
      expect(attempt.item.interrupted).toBe(true);
      await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
      walk(attempt);
      attempt.seen(10_000);
      attempt.astray("looks-different", 12_000);
      expect(attempt.stage.kind).toBe("has");
      attempt.say(SOLVED);
      await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
      walk(attempt);
      attempt.seen(20_000);
      expect(answers).toEqual([]);
      attempt.done(22_000);
      attempt.report("done");
      expect(answers[0]?.measured.total).toBe(2000);
    }
  });
});

it("counts as interrupted once it was seen and did not look like its picture", async () => {
  const { attempt } = await setUp(itemOf("C1"));
  attempt.astray("looks-different", 0);
  expect(attempt.item.interrupted).toBe(true);
});

describe("finding a piece", () => {
  it("can be told anew after a wrong tap, until the cube is turned", () => {
    const { attempt } = begin(itemOf("C1"), {});
    attempt.astray("base-lost", 0);
    const first = attempt.stage;
    expect(first.kind).toBe("find");
    expect(attempt.canTellAnew).toBe(false);
    attempt.found(edge("DF"), 0);
    expect(attempt.stage).not.toEqual(first);
    attempt.tellAnew();
    expect(attempt.stage).toEqual(first);
    attempt.found(edge("DF"), 0);
    expect(attempt.stage.kind).toBe("bring");
    attempt.turnMade(0);
    expect(attempt.canTellAnew).toBe(false);
  });

  it("leads to a set-up from wherever the asked piece lies, without bringing it home", async () => {
    const { attempt } = begin(itemOf("C1"), { ownCube: cubeThatHas("cross") });
    const { stage } = attempt;
    if (stage.kind !== "find") throw new Error(stage.kind);
    attempt.found(corner("DBL"), 1);
    await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
  });
});

describe("a search that fails", () => {
  it("says why, and can be tried again", async () => {
    const failed = { code: "solver-failed", reason: "it broke" } as const;
    let asked = 0;
    const { attempt } = begin(itemOf("C1"), {
      ownCube: SOLVED,
      findSetUp: (...request) =>
        asked++ === 0 ? Promise.resolve(err(failed)) : findSetUp(...request),
    });
    await vi.waitFor(() =>
      expect(attempt.stage).toEqual({ kind: "no-set-up", error: failed }),
    );
    attempt.searchAgain();
    await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
  });
});
