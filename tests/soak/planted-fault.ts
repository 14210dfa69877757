/** A change to one file, and the test files one of which must fail by it. */
export interface PlantedFault {
  readonly name: string;
  readonly file: string;
  readonly find: string;
  readonly replace: string;
  readonly tests: readonly string[];
}
