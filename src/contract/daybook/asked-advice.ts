/** What the reader of a declining must know of the advice that stands. */
export interface AskedAdvice {
  readonly id: string;
  /** What it asks for, one sentence. */
  readonly does: string;
  /** As it is kept with the declining; undefined where an older declining kept none. */
  readonly restsOn: string | undefined;
}
