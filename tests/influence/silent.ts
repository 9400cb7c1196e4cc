/** Numbers of a model that nothing derived and printed hangs on, by kind, each with why that is as it should be. */
export const silent: readonly { readonly reason: string; readonly numbers: readonly string[] }[] = [];
