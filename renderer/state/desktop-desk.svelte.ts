/**
 * What the desktop app's shell wants of the page, and what the page gives it:
 * menu commands, deck files that the system opened, automatic backups, and
 * what is known of a store that is suddenly empty. In a browser there is no
 * shell, and nothing here happens.
 */
import {
  type DesktopBridge,
  type DesktopError,
  type KeptBackup,
  type LastKnown,
  type MenuCommand,
} from "../../core/desktop-bridge";
import { now } from "../platform/clock";
import { desktopBridge } from "../platform/desktop";
import { fromDesktop, type ReadTextFile } from "../platform/files";
import type { StorageError } from "../storage/storage-error";
import type { BackupDesk } from "./backup-desk.svelte";

/** A store that is empty though it is known to have held something. */
export interface LostStore {
  readonly known: LastKnown;
  /** The newest first. */
  readonly backups: readonly KeptBackup[];
}

/** Why no automatic backup was made: the store was not read, or the shell did not keep it. */
export type AutomaticBackupTrouble =
  | { readonly of: "store"; readonly error: StorageError }
  | { readonly of: "shell"; readonly error: DesktopError };

const DAY = 86_400_000;

/** How much an automatic backup held. */
interface Held {
  /** Answers and showings. */
  readonly reviews: number;
  readonly runs: number;
}

/**
 * How much the last automatic backup held, where it is not a day old:
 * a start soon after the last one has nothing to write again. Older ones are
 * made anew, for the decks that may have changed since.
 */
async function keptToday(bridge: DesktopBridge): Promise<Held | undefined> {
  const known = await bridge.lastKnown();
  if (!known.ok || known.value === null) return undefined;
  const { reviews, runs = 0, at } = known.value;
  const age = now() - at;
  return age >= 0 && age < DAY ? { reviews, runs } : undefined;
}

/** The page's side of the desktop app. */
export class DesktopDesk {
  readonly #bridge: DesktopBridge | undefined;
  readonly #backups: BackupDesk;
  #command: MenuCommand | undefined = $state.raw();
  #given: readonly ReadTextFile[] = $state.raw([]);
  #lost: LostStore | undefined = $state.raw();
  #fewerThan: KeptBackup | undefined = $state.raw();
  #trouble: AutomaticBackupTrouble | undefined = $state.raw();
  #takenOut: Blob | undefined = $state.raw();
  #kept: Held | undefined;

  constructor(backups: BackupDesk, bridge = desktopBridge()) {
    this.#backups = backups;
    this.#bridge = bridge;
  }

  /** Whether this window is the desktop app's. */
  get isThere(): boolean {
    return this.#bridge !== undefined;
  }

  /** What a menu asks for, until a place takes it. */
  get command(): MenuCommand | undefined {
    return this.#command;
  }

  /** Deck files that the system gave, or that were dropped in another place, until they are looked at. */
  get given(): readonly ReadTextFile[] {
    return this.#given;
  }

  /** Undefined while all is well. */
  get lost(): LostStore | undefined {
    return this.#lost;
  }

  /** An earlier automatic backup that holds more answers or runs than the last one made. */
  get fewerThan(): KeptBackup | undefined {
    return this.#fewerThan;
  }

  /** Why the last automatic backup was not made. */
  get trouble(): AutomaticBackupTrouble | undefined {
    return this.#trouble;
  }

  /** Follows the shell. Returns how to stop. */
  follow(): () => void {
    const bridge = this.#bridge;
    if (bridge === undefined) return () => undefined;
    void this.#takeGiven();
    return bridge.onNews((news) => {
      if (news.kind === "menu") this.#command = news.command;
      else if (news.kind === "deck-file-waiting") void this.#takeGiven();
    });
  }

  /** Takes a command up: whoever carries it out calls this first. Answers whether it was that one. */
  takeCommand(command: MenuCommand): boolean {
    if (this.#command !== command) return false;
    this.#command = undefined;
    return true;
  }

  /** A deck file was dropped somewhere else than on the bench: it is looked at there. */
  giveFile(read: ReadTextFile): void {
    this.#given = [...this.#given, read];
  }

  /** The next deck file that the system gave. */
  takeGiven(): ReadTextFile | undefined {
    const [next, ...rest] = this.#given;
    this.#given = rest;
    return next;
  }

  async #takeGiven(): Promise<void> {
    const bridge = this.#bridge;
    if (bridge === undefined) return;
    for (;;) {
      const read = fromDesktop(await bridge.takeDeckFile());
      if (read === undefined) return;
      this.#given = [...this.#given, read];
      if (!read.ok) return;
    }
  }

  /**
   * Has a backup of everything kept in the data folder, where answers were
   * given or runs made since the last one; for an empty store, finds out
   * whether it was.
   */
  async keepBackup(): Promise<void> {
    const bridge = this.#bridge;
    if (bridge === undefined) return;
    const looked = await this.#backups.look();
    if (!looked.ok) {
      this.#trouble = { of: "store", error: looked.error };
      return;
    }
    const { reviews, runs, isEmpty } = this.#backups;
    if (isEmpty) {
      await this.#lookForLost(bridge);
      return;
    }
    this.#lost = undefined;
    this.#kept ??= await keptToday(bridge);
    if (reviews !== this.#kept?.reviews || runs !== this.#kept.runs) {
      this.#trouble = await this.#keep(bridge, { reviews, runs });
      if (this.#trouble === undefined) this.#kept = { reviews, runs };
    }
  }

  async #keep(
    bridge: DesktopBridge,
    { reviews, runs }: Held,
  ): Promise<AutomaticBackupTrouble | undefined> {
    const made = await this.#backups.make();
    if (!made.ok) return { of: "store", error: made.error };
    const bytes = new Uint8Array(await made.value.file.arrayBuffer());
    const kept = await bridge.automaticBackup({
      reviews,
      ...(runs === 0 ? {} : { runs }),
      bytes,
    });
    if (!kept.ok) return { of: "shell", error: kept.error };
    this.#fewerThan = kept.value.fewerThan ?? undefined;
    return undefined;
  }

  async #lookForLost(bridge: DesktopBridge): Promise<void> {
    const known = await bridge.lastKnown();
    if (!known.ok || known.value === null) return;
    const listed = await bridge.listBackups();
    this.#lost = {
      known: known.value,
      backups: listed.ok ? listed.value : [],
    };
  }

  /** Takes an automatic backup out, for the place where backups are restored. */
  async takeOut(name: string): Promise<DesktopError | undefined> {
    const read = await this.#bridge?.readBackup(name);
    if (read?.ok === true) this.#takenOut = new Blob([read.value.bytes]);
    return read?.ok === false ? read.error : undefined;
  }

  /** Whether a backup waits to be looked at. */
  get hasTakenOut(): boolean {
    return this.#takenOut !== undefined;
  }

  /** The backup that was taken out. */
  lookAtTakenOut(): Blob | undefined {
    const file = this.#takenOut;
    this.#takenOut = undefined;
    return file;
  }

  /** The store is rightly empty, or was restored. */
  async settleLost(): Promise<void> {
    this.#lost = undefined;
    await this.#bridge?.forgetLastKnown();
  }

  /** Writes the page as it stands, for paper. */
  async print(title: string): Promise<DesktopError | undefined> {
    const printed = await this.#bridge?.printToPdf(title);
    return printed?.ok === false ? printed.error : undefined;
  }
}
