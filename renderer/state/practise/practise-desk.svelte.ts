/**
 * The desk: the round that lies on it, what it was asked for, and the cube in
 * the learner's hands. This is what is stored, so that a reload, a crash and a
 * closed window come back to the same position.
 */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import {
  canResume,
  isRoundOver,
  resumeRound,
  type Round,
  type RoundItem,
  withPosition,
} from "../../../core/memory/round";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { Result } from "../../../core/result";
import { now } from "../../platform/clock";
import { removeRound, type RoundRow } from "../../storage/rounds";
import type { StorageError } from "../../storage/storage-error";
import type { LearnerState } from "../learner.svelte";
import type { AnsweredCase, Attempt } from "./answered-case.svelte";
import type { AnsweredChoice } from "./answered-choice.svelte";
import {
  coloursOf,
  type Desk,
  formatDesk,
  type StoredWalk,
} from "./desk-schema";
import { MyCubeAttempt } from "./my-cube-attempt.svelte";
import { type OpenRound, roundsThatGoOn } from "./open-rounds";
import { formatPosition, positionOfItem } from "./position-of-item";
import type { Practised } from "./practised";
import { RoundKeeper } from "./round-keeper";

/** A learner's desk in this window. */
export class PractiseDesk {
  readonly #learner: LearnerState;
  readonly #asked: () => Attempt | undefined;
  readonly #keeper = new RoundKeeper();
  #ownCube: PartlyKnownCubies | undefined;
  /** The colours under which that cube is followed. */
  #colours: string;
  round: Round | undefined = $state.raw();
  /** What the round was asked for; undefined: whatever is due and new. */
  of: Practised | undefined;

  /** Shape: `asked` is the attempt under way whenever the desk is stored. */
  constructor(learner: LearnerState, asked: () => Attempt | undefined) {
    this.#learner = learner;
    this.#asked = asked;
    this.#colours = coloursOf(learner.scheme);
  }

  /** What is known of the learner's cube between attempts: it stays in their hands from case to case. */
  get ownCube(): PartlyKnownCubies | undefined {
    return this.#ownCube;
  }

  /**
   * The learner's cube got other colours: what was known of its pieces was
   * said of others. Returns whether they are others at all.
   */
  followColours(scheme: ColourScheme): boolean {
    const colours = coloursOf(scheme);
    if (colours === this.#colours) return false;
    this.#colours = colours;
    this.#ownCube = undefined;
    return true;
  }

  /** Keeps what is known of the learner's cube when an attempt is left. */
  leave(attempt: Attempt): void {
    if (attempt instanceof MyCubeAttempt) this.#ownCube = attempt.cubeNow;
    attempt.stop();
  }

  /**
   * Takes up a round that waited, with the learner's cube as it was then if
   * `isLast`: no other round was practised since. Returns the walk that was
   * under way on it.
   */
  takeUp({ round, desk }: OpenRound, isLast: boolean): StoredWalk | undefined {
    this.round = resumeRound(round);
    this.of = desk.of;
    const isSameCube =
      isLast && this.#ownCube === undefined && desk.colours === this.#colours;
    if (!isSameCube) return undefined;
    this.#ownCube = desk.ownCube;
    return desk.walk;
  }

  /** From here the item counts as shown: coming back to it is an interruption. */
  markShown(item: RoundItem): void {
    if (this.round === undefined) return;
    const position = formatPosition(positionOfItem(item));
    this.round = withPosition(this.round, position);
  }

  /** Whether a round was left open for so long that its answers would count for a day long past. */
  isPast(round: Round): boolean {
    this.#learner.refreshToday();
    return !isRoundOver(round) && !canResume(round, this.#learner.today, now());
  }

  /** The learner's stored rounds that can go on, the last saved first. */
  openRounds(): Promise<Result<readonly OpenRound[], StorageError>> {
    const { database, learner } = this.#learner;
    this.#learner.refreshToday();
    return roundsThatGoOn(database, learner.id, this.#learner.today, now());
  }

  /** Forgets a round that is done. */
  remove(round: Round): Promise<Result<unknown, StorageError>> {
    return removeRound(this.#learner.database, round.id);
  }

  /** Resolves when everything so far is stored. */
  settled(): Promise<void> {
    return this.#keeper.settled();
  }

  /** Stores the desk as it is when its turn comes; `walk` is where the cube in the hands stands before it is asked for. */
  save(walk?: StoredWalk): Promise<Result<unknown, StorageError>> {
    return this.#keeper.save(this.#learner.database, () => this.#row(walk));
  }

  /** Stores an answer with the round's advance; what was stored before comes first. */
  store(answered: AnsweredCase | AnsweredChoice): Promise<void> {
    return this.#keeper.inTurn(async () => {
      const row = this.#row();
      if (row === undefined) return;
      const stored = await this.#learner.acknowledge({
        review: answered.review,
        round: row,
      });
      answered.trouble = stored.ok ? undefined : stored.error;
      if (stored.ok) answered.acknowledged = stored.value;
    });
  }

  #row(walk?: StoredWalk): RoundRow | undefined {
    const { round } = this;
    if (round === undefined) return undefined;
    return {
      id: round.id,
      learner: round.learner,
      savedAt: now(),
      round,
      desk: formatDesk(this.#desk(walk)),
    };
  }

  #desk(walk?: StoredWalk): Desk {
    const attempt = this.#asked();
    const about = { of: this.of, colours: this.#colours };
    return attempt instanceof MyCubeAttempt
      ? { ...about, ownCube: attempt.ownCube, walk: attempt.storedWalk }
      : { ...about, ownCube: this.#ownCube, walk };
  }
}
