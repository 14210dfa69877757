import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { formatTurns } from "../../../core/notation/format";
import type { Deck, DeckCase } from "../../../core/deck/deck";
import { ok } from "../../../core/result";
import type { AppState } from "../../../renderer/state/app-state.svelte";
import type { PractiseState } from "../../../renderer/state/practise.svelte";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, myCubeOf, practising, stored } from "./practising";

beginEmpty();

describe("practising", () => {
  describe("with a deck of the coach's own", () => {
    const ID = "0b9f6e0e-5f0a-4c1e-9d57-3f1f6f3c2a11";

    async function withDeck(
      asked: Partial<DeckCase>,
    ): Promise<readonly [AppState, PractiseState]> {
      const app = await openWindow();
      const deck: Deck = {
        id: ID,
        name: "Monday",
        description: "",
        newPerRound: 1,
        cases: [{ case: "C1", target: 20, ...asked }],
      };
      expect(await app.decks.save(deck)).toEqual(ok(undefined));
      await app.current.changeSettings({ decks: [ID] });
      return [app, await practising(app)];
    }

    it("asks its cases, says so in the log, and goes on with them after a reload", async () => {
      const [app, practise] = await withDeck({ target: 33 });
      await answer(practise);
      expect((await stored(app))[0]).toMatchObject({
        case: "C1",
        deck: ID,
        target: 33,
      });
      practise.close();
      const again = await practising(await openWindow());
      expect(attemptOf(again).item.deck).toBe(ID);
    });

    it("teaches the way that the coach typed, in the learner's hold", async () => {
      const way = { kind: "turns", turns: "F D F'" } as const;
      const [, practise] = await withDeck({ way });
      expect(formatTurns(attemptOf(practise).way)).toBe("F D F'");
      practise.close();
      const app = await openWindow();
      await app.current.changeSettings({ hold: "down" });
      const down = await practising(app);
      await down.start(undefined);
      // Source: the design's architecture, "the ways turned over, not retyped":
      // half a turn about the front-back axis takes the bottom to the top.
      expect(formatTurns(attemptOf(down).way)).toBe("F U F'");
    });

    it("does not teach a way that does not answer the case, wherever it came from", async () => {
      const way = { kind: "turns", turns: "R L U D B" } as const;
      const [, practise] = await withDeck({ way });
      expect(attemptOf(practise).way).toEqual(
        turnsForPosition(attemptOf(practise).position),
      );
    });

    it("lets a case be answered only as it allows, and goes back to the learner's choice after it", async () => {
      const [app, practise] = await withDeck({ answerWays: ["my-cube"] });
      expect(myCubeOf(practise).stage.kind).toBe("has");
      expect(practise.answerWay).toBe("my-cube");
      await practise.chooseWay("write-it");
      expect(practise.answerWay).toBe("my-cube");
      expect(app.current.settings.answerWay).toBe("on-screen");
      await practise.open("E1");
      expect(attemptOf(practise).answerWay).toBe("on-screen");
    });

    it("marks no piece where it wants none marked, but for what is shown", async () => {
      const [, practise] = await withDeck({ pieces: "unmarked" });
      expect(attemptOf(practise).isMarked).toBe(true);
      await answer(practise);
      await practise.next();
      expect(attemptOf(practise).isMarked).toBe(false);
    });
  });
});
