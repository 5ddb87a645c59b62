/** A clue: whether it holds, on what evidence; null where nothing is known. */
export interface ClueState {
  readonly holds: boolean | null;
  /** The day of the evidence, ISO date; null where it is a fact of the tank or unknown. */
  readonly on: string | null;
  /** What was measured, in the unit of the reading's name; null where nothing was. */
  readonly value: number | null;
}

export const UNKNOWN: ClueState = { holds: null, on: null, value: null };
export const fact = (holds: boolean): ClueState => ({ holds, on: null, value: null });
export const seen = (holds: boolean, on: string, value: number | null = null): ClueState => ({
  holds,
  on,
  value,
});
