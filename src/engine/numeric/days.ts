/** Whole days between ISO dates. */
const DAY_MS = 86_400_000;

export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);
