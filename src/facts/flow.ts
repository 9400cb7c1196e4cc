/** A station as the checks of the route see it. */
export interface FlowStation {
  readonly id: string;
  /** Stations whose work it takes up. */
  readonly after: readonly string[];
  /** Kinds of machine it can work with; any where none is named. */
  readonly machines: readonly string[];
  /** Whether this model passes it. */
  readonly passes: boolean;
}
