/** What the tests use of `cubejs`, which brings no types of its own. */
declare module "cubejs" {
  export default class Cube {
    constructor(other?: Cube);
    static fromString(facelets: string): Cube;
    static random(): Cube;
    /** Builds the solver's tables; takes seconds. */
    static initSolver(): void;
    static inverse(turns: string): string;
    /** Plays turns; wide turns are written `r`, slices and rotations as usual. */
    move(turns: string): this;
    asString(): string;
    isSolved(): boolean;
    solve(maxDepth?: number): string;
    clone(): Cube;
    toJSON(): {
      readonly center: readonly number[];
      readonly cp: readonly number[];
      readonly co: readonly number[];
      readonly ep: readonly number[];
      readonly eo: readonly number[];
    };
  }
}
