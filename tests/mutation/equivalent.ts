/** Comparisons of which the opposite makes no difference that anybody could see, each with why. Kept exact by the test. */
export const equivalent: Readonly<Record<string, string>> = {};
