/**
 * Ranges, and the error that refuses a value outside one: it names the task, the rule, the value and the way
 * out, and carries them as fields for callers that word their own message.
 */

/** What a value must lie within for a task, and on whose authority. */
export interface Range {
  /** The quantity in plain words, e.g. "salinity". */
  readonly name: string;
  /** Unit as printed; empty for pH and ratios. */
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  /** Key of the source that sets the range. */
  readonly source: string;
  /** The likely mistake behind a value outside, as something to do; null when none suggests itself. */
  readonly wayOut?: (value: number) => string | null;
}

/** A caller's mistake: a value outside the range a task is meant for. */
export class OutOfRange extends RangeError {
  override readonly name = "OutOfRange";
  readonly task: string;
  readonly range: Range;
  readonly value: number;
  readonly wayOut: string | null;

  constructor(task: string, range: Range, value: number) {
    const wayOut = Number.isNaN(value) ? "give a number" : (range.wayOut?.(value) ?? null);
    const unit = range.unit === "" ? "" : ` ${range.unit}`;
    super(
      `Cannot ${task} as ${range.name} must be ${range.min} to ${range.max}${unit} (${range.source}): ` +
        `received ${value}${wayOut === null ? "" : `; ${wayOut}`}`,
    );
    this.task = task;
    this.range = range;
    this.value = value;
    this.wayOut = wayOut;
  }
}

export const isWithin = (range: Range, value: number): boolean => value >= range.min && value <= range.max;

/**
 * Lets a task go on only if every value lies within its range.
 * @throws OutOfRange for the first that does not, and for what is not a number
 */
export function requireRange(task: string, ...checks: readonly (readonly [Range, number])[]): void {
  for (const [range, value] of checks) {
    if (!isWithin(range, value)) throw new OutOfRange(task, range, value);
  }
}
