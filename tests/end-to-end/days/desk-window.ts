/**
 * The window on a machine whose clock is moved by hand: it stands still unless
 * it is told to go on, so that what a learner took to think is known to the
 * frame, however busy the machine that runs the test is.
 *
 * The profile outlives the window, as it does when the app is closed over
 * night. What the page takes from chance comes from the test's seed.
 */
import { type BrowserContext, chromium, type Page } from "@playwright/test";
import { chromiumOptions } from "../../runner/chromium";
import { expect, test } from "../app";
import type { PractisedDay } from "./calendar";

const HOUR = 3_600_000;

/** What does not come on a busy machine in this time does not come. Units: milliseconds. */
const PATIENCE = 30_000;

/** The longest a case may have been on the screen before its time counts. Units: milliseconds. */
export const FRAME = 20;

/** Runs in the page before its own scripts: seeded chance in place of the machine's. */
function seedChance(seed: number): void {
  // The instant of loading makes every load its own, as real chance would.
  let state = (seed ^ Date.now()) >>> 0;
  const next = (): number => {
    // Source: mulberry32 (Tommy Ettinger), public domain.
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
  crypto.getRandomValues = (array) => {
    const { buffer, byteOffset, byteLength } = array as unknown as Uint8Array;
    const bytes = new Uint8Array(buffer, byteOffset, byteLength);
    for (let i = 0; i < bytes.length; i++) bytes[i] = next() & 255;
    return array;
  };
  crypto.randomUUID = () => {
    const hex = Array.from({ length: 32 }, () => (next() & 15).toString(16));
    hex[12] = "4";
    hex[16] = "8";
    const text = hex.join("");
    return `${text.slice(0, 8)}-${text.slice(8, 12)}-${text.slice(12, 16)}-${text.slice(16, 20)}-${text.slice(20)}`;
  };
}

/** A window at which the learner sits. */
export class DeskWindow {
  readonly page: Page;
  readonly #context: BrowserContext;
  readonly #errors: string[] = [];
  /** What its clock says, UTC. Units: milliseconds. */
  #now: number;

  private constructor(context: BrowserContext, page: Page, now: number) {
    this.#context = context;
    this.page = page;
    this.#now = now;
    context.on("console", (message) => {
      if (message.type() === "error") this.#errors.push(message.text());
    });
    context.on("weberror", (error) => this.#errors.push(error.error().message));
  }

  get now(): number {
    return this.#now;
  }

  /** Opens the app in the place and at the time of a day. */
  static async open(
    profile: string,
    address: string,
    { timezone, begins }: PractisedDay,
    seed: number,
  ): Promise<DeskWindow> {
    const context = await chromium.launchPersistentContext(profile, {
      ...chromiumOptions(),
      baseURL: address,
      timezoneId: timezone,
      viewport: { width: 1280, height: 800 },
    });
    context.setDefaultTimeout(PATIENCE);
    const page = context.pages()[0] ?? (await context.newPage());
    const window = new DeskWindow(context, page, begins);
    // A clock runs from when it is set, and can only be stopped ahead of that.
    await context.clock.install({ time: begins - HOUR });
    await context.clock.pauseAt(begins);
    await context.addInitScript(seedChance, seed);
    return window;
  }

  /** Goes to a place by its address, as a link there does. */
  async go(hash: string): Promise<void> {
    await this.page.goto(`/${hash}`);
  }

  /** Time goes by; what waited for a moment of it happens, once. Units: milliseconds. */
  async pass(duration: number): Promise<void> {
    this.#now += duration;
    await this.#context.clock.fastForward(duration);
  }

  /** A frame is drawn, or several. */
  async frame(count = 1): Promise<void> {
    this.#now += count * FRAME;
    await this.#context.clock.runFor(count * FRAME);
  }

  /** Frames are drawn until something is there: the page does long work in pieces between them. */
  async framesUntil(isThere: () => Promise<boolean>): Promise<void> {
    while (!(await isThere())) await this.frame(10);
  }

  /** Closes it after something failed, with a picture of how it stood. */
  async abandon(): Promise<void> {
    const path = test.info().outputPath("window.png");
    await this.page.screenshot({ path });
    await this.#context.close();
  }

  /** Closes it; fails where its page wrote an error or threw one. */
  async close(): Promise<void> {
    await this.#context.close();
    expect(this.#errors, "errors in the page's console").toEqual([]);
  }
}
