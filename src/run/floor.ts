/** The floor on the day of a run, as plain numbers. */

export interface FloorStation {
  readonly id: string;
  readonly name: string;
  /** What it works with; several stations may share one. */
  readonly machine?: { readonly id: string; readonly name: string };
  /** Minutes; undefined where the plant gives none. */
  readonly perBody: number | undefined;
  readonly changeover: number | undefined;
}

export interface RunFloor {
  /** In the order of the route. */
  readonly stations: readonly FloorStation[];
  /** Minutes; undefined where the plant gives none: then nothing is said of shifts. */
  readonly shift: number | undefined;
}
