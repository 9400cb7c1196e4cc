/** Control flow of this folder only: leaves a reader whose input is missing. `Facts` catches it; nobody else sees one. */
export class Unavailable {
  /** What is missing. */
  readonly ids: readonly string[];
  /** The facts that wait for each other, where that is why. */
  readonly ring: readonly string[] | undefined;
  constructor(ids: readonly string[], ring?: readonly string[]) {
    this.ids = ids;
    this.ring = ring;
  }
}
