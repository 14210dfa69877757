import { describe, expect, it } from "vitest";
import { caseEntry } from "../../../core/cases/case-table";
import { answersLook } from "../../../core/cases/last-layer-goal";
import type { Turn } from "../../../core/cube/turns";
import type { Milliseconds } from "../../../core/memory/review";
import { FoundWays } from "../../../renderer/state/found-ways.svelte";
import {
  createWayFinderClient,
  type WayFinderClient,
} from "../../../renderer/workers/way-finder-client";
import type {
  WayReply,
  WayRequest,
} from "../../../renderer/workers/way-finder-messages";
import { createWayFinderService } from "../../../renderer/workers/way-finder-service";

/** All corners home, three edges go round: nine turns (last-layer.json). */
const CASE = "last-layer-whole:0000-0000-0123-0231";

function slicing(slice: number) {
  let time = 0;
  return {
    slice: slice as Milliseconds,
    runningTime: () => time++ as Milliseconds,
    pause: () => new Promise<void>((resolve) => setTimeout(resolve)),
  };
}

/** A client and a service that exchange messages as a window and its worker do. */
function connected(): {
  readonly client: WayFinderClient;
  readonly replies: WayReply[];
  readonly say: (message: unknown) => void;
  readonly breakDown: (reason: string) => void;
  /** Resolves when the worker first says something of a kind. */
  readonly once: (kind: WayReply["kind"]) => Promise<void>;
} {
  const awaited = new Map<WayReply["kind"], () => void>();
  const replies: WayReply[] = [];
  let hear: (message: unknown) => void = () => undefined;
  let fail: (reason: string) => void = () => undefined;
  const service = createWayFinderService((reply) => {
    replies.push(reply);
    hear(structuredClone(reply));
    awaited.get(reply.kind)?.();
  }, slicing(20));
  const client = createWayFinderClient({
    post: (request: WayRequest) =>
      void service.receive(structuredClone(request)),
    listen: (onmessage, onerror) => {
      hear = onmessage;
      fail = onerror;
    },
  });
  return {
    client,
    replies,
    say: (message) => void service.receive(message),
    breakDown: (reason) => fail(reason),
    once: (kind) => new Promise((resolve) => void awaited.set(kind, resolve)),
  };
}

describe("the way finder", () => {
  it("answers what it ruled out, and tells its progress on the way", async () => {
    const { client } = connected();
    const told: number[] = [];
    const found = await client.find(CASE, 6, {
      onprogress: (progress) => told.push(progress),
    });
    expect(found).toEqual({ ok: true, value: { ways: [], mostTurns: 6 } });
    expect(told.length).toBeGreaterThan(0);
  });

  it("tells a way that answers before it has ruled out anything", async () => {
    const { client, replies } = connected();
    const ways: (readonly Turn[])[] = [];
    await client.find(CASE, 4, { onatonce: (way) => ways.push(way) });
    const entry = caseEntry(CASE);
    expect(entry.group).toBe("last-layer");
    expect(ways).toHaveLength(1);
    for (const way of ways)
      expect(
        entry.group === "last-layer" && answersLook(entry.shows, way),
      ).toBe(true);
    expect(replies[0]?.kind).toBe("at-once");
    expect(replies.at(-1)?.kind).toBe("found");
  });

  it("is given up at once, and says nothing more of it", async () => {
    const { client, replies } = connected();
    const controller = new AbortController();
    const found = client.find(CASE, 9, { signal: controller.signal });
    controller.abort();
    expect(await found).toEqual({ ok: false, error: { code: "cancelled" } });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(replies.filter(({ kind }) => kind === "found")).toEqual([]);
  });

  it("is not asked where the asking was given up before", async () => {
    const { client } = connected();
    const found = await client.find(CASE, 9, { signal: AbortSignal.abort() });
    expect(found).toEqual({ ok: false, error: { code: "cancelled" } });
  });

  it("fails with a reason for a case of the first layer, for a message that is none, and where the worker breaks down", async () => {
    const { client, replies, say, breakDown } = connected();
    expect(await client.find("E1", 6)).toMatchObject({
      ok: false,
      error: { code: "way-finder-failed" },
    });
    say({ kind: "find-ways", id: 9, case: "no case", mostTurns: 6 });
    expect(replies.at(-1)).toMatchObject({ kind: "failed" });
    const waiting = client.find(CASE, 9);
    breakDown("gone");
    expect(await waiting).toEqual({
      ok: false,
      error: { code: "way-finder-failed", reason: "gone" },
    });
  });
});

describe("ways that were found", () => {
  it("are kept by case, and a failure is told until the next search", async () => {
    const { client } = connected();
    const found = new FoundWays(() => client);
    await found.look(CASE, 5);
    expect(found.of(CASE)).toEqual({ ways: [], mostTurns: 5 });
    expect(found.search).toBeUndefined();
    await found.look("E1", 5);
    expect(found.trouble?.code).toBe("way-finder-failed");
    const next = found.look(CASE, 4);
    expect(found.trouble).toBeUndefined();
    expect(found.search).toEqual({ case: CASE, mostTurns: 4 });
    await next;
  });

  it("have the one that was there at once also where no shortest was found, or the search was given up", async () => {
    const { client, once } = connected();
    const found = new FoundWays(() => client);
    expect(found.atOnce(CASE)).toBeUndefined();
    const looking = found.look(CASE, 9);
    await once("at-once");
    found.cancel();
    await looking;
    expect(found.atOnce(CASE)?.length).toBeGreaterThan(0);
    expect(found.of(CASE)).toBeUndefined();
  });

  it("say nothing of a search that was cancelled", async () => {
    const { client } = connected();
    const found = new FoundWays(() => client);
    const looking = found.look(CASE, 9);
    found.cancel();
    await looking;
    expect(found.of(CASE)).toBeUndefined();
    expect(found.trouble).toBeUndefined();
    expect(found.search).toBeUndefined();
  });
});
