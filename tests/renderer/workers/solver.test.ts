import { describe, expect, it } from "vitest";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { FIRST_LAYER_EDGES } from "../../../core/cases/stage";
import type { CaseId } from "../../../core/cases/case-ids";
import { randomVariant } from "../../../core/cases/random-variant";
import { SOLVED, trustedCubies } from "../../../core/cube/cubies";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import { agreesWith, knownOnly } from "../../../core/cube/partly-known";
import { NO_ROTATION, ROTATIONS } from "../../../core/cube/symmetries";
import type { Milliseconds } from "../../../core/memory/review";
import { randomSource } from "../../../core/random-source";
import { driveSteps } from "../../../renderer/workers/drive-steps";
import {
  createSolverClient,
  type SolverClient,
} from "../../../renderer/workers/solver-client";
import {
  parseReply,
  parseRequest,
  setUpRequest,
  solveRequest,
  type SolverReply,
  type SolverRequest,
} from "../../../renderer/workers/solver-messages";
import { createSolverService } from "../../../renderer/workers/solver-service";

const CROSS: HeldCube = {
  cubies: knownOnly(SOLVED, new Set(), new Set(FIRST_LAYER_EDGES)),
  hold: NO_ROTATION,
};

function wholePosition(id: CaseId): Position {
  const random = randomSource(1);
  return randomPosition(random, id, randomVariant(random, id), "up");
}

function position(id: CaseId): Position {
  return partlyKnownPosition(wholePosition(id), "named");
}

/** A clock that goes one millisecond on each time it is read, and pauses that let messages through. */
function slicing(slice: number) {
  let time = 0;
  return {
    slice: slice as Milliseconds,
    runningTime: () => time++ as Milliseconds,
    pause: () => new Promise<void>((resolve) => setTimeout(resolve)),
  };
}

/** A client and a service that exchange messages as a window and its worker do. */
function connected(slice = 1000): {
  readonly client: SolverClient;
  readonly replies: SolverReply[];
} {
  const replies: SolverReply[] = [];
  let hear: (message: unknown) => void = () => undefined;
  const service = createSolverService((reply) => {
    replies.push(reply);
    hear(structuredClone(reply));
  }, slicing(slice));
  const client = createSolverClient({
    post: (request) => void service.receive(structuredClone(request)),
    listen: (onmessage) => (hear = onmessage),
  });
  return { client, replies };
}

/** A client whose worker says what the test wants it to. */
function scripted() {
  const asked: SolverRequest[] = [];
  const said: ((message: unknown) => void)[] = [];
  const broken: ((reason: string) => void)[] = [];
  const client = createSolverClient({
    post: (request) => asked.push(request),
    listen: (onmessage, onerror) => {
      said.push(onmessage);
      broken.push(onerror);
    },
  });
  return {
    client,
    asked,
    say: (message: unknown) => said.forEach((hear) => hear(message)),
    breakDown: (reason: string) => broken.forEach((hear) => hear(reason)),
  };
}

describe("the solver's worker", () => {
  it("finds a set-up that leads from the cube to the position", async () => {
    const to = position("E4a");
    const found = await connected().client.setUp(CROSS, to, 7);
    expect(found.ok).toBe(true);
    const after = applyTurns(CROSS, found.ok ? found.value : []);
    expect(agreesWith(after.cubies, to.cubies)).toBe(true);
    expect(after.hold).toBe(startOf(to).hold);
  });

  it("finds the same for the same seed", async () => {
    const { client } = connected();
    const to = position("E5b");
    const [first, second] = await Promise.all([
      client.setUp(CROSS, to, 3),
      client.setUp(CROSS, to, 3),
    ]);
    expect(second).toEqual(first);
  });

  it("says which pieces it would have to know", async () => {
    const found = await connected().client.setUp(CROSS, position("C1"), 1);
    expect(found).toEqual({
      ok: false,
      error: { code: "piece-not-known", corners: [0, 1, 2, 3], edges: [] },
    });
  });

  it("tells how far it has come while its tables are built", async () => {
    const { client } = connected(5);
    const told: number[] = [];
    const found = await client.setUp(
      { cubies: SOLVED, hold: NO_ROTATION },
      wholePosition("C3"),
      1,
      { onprogress: (progress) => told.push(progress) },
    );
    expect(found.ok).toBe(true);
    expect(told.length).toBeGreaterThan(5);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
  }, 60_000);

  it("solves a cube as it is held", async () => {
    const { client } = connected();
    const random = randomSource(5);
    for (const hold of ROTATIONS.slice(0, 6)) {
      const cube = { cubies: sampleState(random, ANY_STATE), hold };
      const found = await client.solve(cube);
      const turns = found.ok ? found.value : [];
      expect(turns.length).toBeLessThanOrEqual(23);
      expect(applyTurns(cube, turns)).toEqual({ cubies: SOLVED, hold });
    }
  }, 60_000);

  it("says of a cube that no turns solve that it cannot be", async () => {
    const cubies = trustedCubies({
      ...SOLVED,
      cornerOrientation: Uint8Array.from([1, 0, 0, 0, 0, 0, 0, 0]),
    });
    const found = await connected().client.solve({ cubies, hold: NO_ROTATION });
    expect(found).toEqual({
      ok: false,
      error: { code: "impossible-cube", which: "from" },
    });
  });

  it("does not take a cube of which something is not known for one to solve", () => {
    const request = solveRequest(1, { cubies: SOLVED, hold: NO_ROTATION });
    expect(parseRequest(request).ok).toBe(true);
    expect(
      parseRequest({
        kind: "solve",
        id: 1,
        cube: { cubies: CROSS.cubies, hold: NO_ROTATION },
      }).ok,
    ).toBe(false);
  });

  it("stops when it is told to, and answers the next request", async () => {
    const { client, replies } = connected(1);
    const controller = new AbortController();
    const whole = { cubies: SOLVED, hold: NO_ROTATION };
    const cancelled = client.setUp(whole, wholePosition("C3"), 1, {
      signal: controller.signal,
      onprogress: () => controller.abort(),
    });
    expect(await cancelled).toEqual({
      ok: false,
      error: { code: "cancelled" },
    });
    const next = await client.setUp(CROSS, position("E1"), 1);
    expect(next.ok).toBe(true);
    expect(replies.filter(({ kind }) => kind !== "progress")).toHaveLength(1);
  });

  it("is not asked at all once the request is cancelled", async () => {
    const { client, asked } = scripted();
    const signal = AbortSignal.abort();
    expect(await client.setUp(CROSS, position("E1"), 1, { signal })).toEqual({
      ok: false,
      error: { code: "cancelled" },
    });
    expect(asked).toEqual([]);
  });
});

describe("when the worker breaks down", () => {
  const to = position("E1");

  it("every request under way is told so, once", async () => {
    const desk = scripted();
    const waiting = [1, 2].map((seed) => desk.client.setUp(CROSS, to, seed));
    desk.breakDown("gone");
    const error = { code: "solver-failed", reason: "gone" };
    expect(await Promise.all(waiting)).toEqual([
      { ok: false, error },
      { ok: false, error },
    ]);
    desk.say({ kind: "found", id: 1, turns: [] });
  });

  it.each([
    ["says something else", "hello", 'not understood: wrong-type at ""'],
    [
      "says a turn that is none",
      { kind: "found", id: 1, turns: [{ layer: "Q", quarters: 1 }] },
      'not understood: unknown-value at "turns.0.layer"',
    ],
    ["fails", { kind: "failed", id: 1, reason: "a bug" }, "a bug"],
    ["fails at all", { kind: "failed", reason: "a bug" }, "a bug"],
  ])("and %s, the request fails with the reason", async (_, said, reason) => {
    const desk = scripted();
    const found = desk.client.setUp(CROSS, to, 1);
    desk.say(said);
    expect(await found).toEqual({
      ok: false,
      error: { code: "solver-failed", reason },
    });
  });

  it.each([
    [
      "a message that it does not understand",
      { ...setUpRequest(1, CROSS, to, 1), seed: 0.5 },
      { kind: "failed", reason: 'not understood: out-of-range at "seed"' },
    ],
    [
      "a bug in the search",
      setUpRequest(1, CROSS, to, 1),
      { kind: "failed", id: 1, reason: "Error: broken invariant: none" },
    ],
  ])("%s is told to the window", async (_, message, reply) => {
    const replies: SolverReply[] = [];
    const service = createSolverService(
      (said) => replies.push(said),
      slicing(1000),
      {
        *find() {
          yield 0;
          throw new Error("broken invariant: none");
        },
      },
    );
    await service.receive(message);
    expect(replies).toEqual([reply]);
  });
});

describe("messages", () => {
  const request = setUpRequest(4, CROSS, position("E2a"), 5);

  it("are read back as they were written", () => {
    expect(parseRequest(structuredClone(request))).toEqual({
      ok: true,
      value: request,
    });
    const reply = { kind: "progress", id: 1, progress: 0.5 };
    expect(parseReply(reply)).toEqual({ ok: true, value: reply });
  });

  const cubies = CROSS.cubies;
  it.each([
    ["kind", { kind: "ponder" }, "wrong-type"],
    ["id", { id: "4" }, "wrong-type"],
    ["seed", { seed: undefined }, "missing-field"],
    ["from.hold", { from: { cubies, hold: 24 } }, "contradiction"],
    [
      "from.cubies.edgePermutation",
      {
        from: {
          cubies: { ...cubies, edgePermutation: Uint8Array.of(1) },
          hold: 0,
        },
      },
      "contradiction",
    ],
    [
      "from.cubies",
      {
        from: {
          cubies: { ...cubies, edgeOrientation: new Uint8Array(12) },
          hold: 0,
        },
      },
      "contradiction",
    ],
    [
      "to",
      {
        to: {
          ...position("E2a"),
          variant: { home: 0, placed: [0], turnedAway: 0, seenFrom: 0 },
        },
      },
      "contradiction",
    ],
  ])("with a wrong %s are refused there", (field, change, code) => {
    expect(parseRequest({ ...request, ...change })).toEqual({
      ok: false,
      error: { code, field },
    });
  });
});

describe("driving steps", () => {
  function* work(
    n: number,
  ): Generator<number, { readonly done: number }, void> {
    for (let i = 0; i < n; i++) yield i / n;
    return { done: n };
  }

  it("pauses after each slice and returns the value", async () => {
    const told: number[] = [];
    const value = await driveSteps(
      work(10),
      slicing(3),
      new AbortController().signal,
      (progress) => told.push(progress),
    );
    expect(value).toEqual({ done: 10 });
    expect(told.length).toBeGreaterThan(1);
    expect(told.length).toBeLessThan(10);
  });

  it("does not go on after it was cancelled", async () => {
    const controller = new AbortController();
    let steps = 0;
    function* counted(): Generator<number, object, void> {
      for (;;) yield ++steps;
    }
    const value = await driveSteps(
      counted(),
      slicing(1),
      controller.signal,
      () => controller.abort(),
    );
    expect(value).toBeUndefined();
    expect(steps).toBeLessThan(5);
  });
});
