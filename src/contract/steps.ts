/** Work that may be long, in steps: whoever drives it can do other things between two of them. */
export type Steps<T> = Generator<void, T>;

export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const { value, done } = steps.next();
    if (done === true) return value;
  }
}
