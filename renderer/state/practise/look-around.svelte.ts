/** Where somebody looks at a cube from, while they look around. */
import type { LookDrag } from "../../cube-view/gestures";
import {
  draggedLook,
  type Look,
  type LookFrom,
  type NamedLook,
  namedLook,
  USUAL_LOOK,
} from "./looks";

/** A camera that keys, taps and drags move. */
export class LookAround {
  #look: Look;
  #name: NamedLook | undefined = $state("front");
  #dragFrom: Look | undefined;
  readonly #from: LookFrom;
  readonly #onlook: (at: number) => void;

  /** Shape: `from` is where the front look is from; `onlook` hears of every look, with its instant. */
  constructor(
    from: LookFrom = USUAL_LOOK,
    onlook: (at: number) => void = () => undefined,
  ) {
    this.#from = from;
    this.#onlook = onlook;
    this.#look = $state.raw(namedLook("front", from));
  }

  get look(): Look {
    return this.#look;
  }

  /** The look's name; undefined after dragging. */
  get name(): NamedLook | undefined {
    return this.#name;
  }

  /** Looks from elsewhere; a second time the same way looks from the front again. */
  from(name: NamedLook, at: number): void {
    const to = this.#name === name ? "front" : name;
    this.#look = namedLook(to, this.#from);
    this.#name = to;
    this.#onlook(at);
  }

  /** Looks on while the pointer is dragged beside the cube. */
  along(drag: LookDrag, at: number): void {
    if (drag.phase === "start" || this.#dragFrom === undefined)
      this.#dragFrom = this.#look;
    this.#look = draggedLook(this.#dragFrom, drag.dx, drag.dy);
    this.#name = undefined;
    if (drag.phase !== "end") return;
    this.#dragFrom = undefined;
    this.#onlook(at);
  }
}
