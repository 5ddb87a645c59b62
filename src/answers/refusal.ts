/** What was asked can't be read, or can't be done: told in lines that say how to mend it. */
export class Refusal extends Error {
  readonly lines: readonly string[];
  constructor(lines: readonly string[]) {
    super(lines.join("\n"));
    this.lines = lines;
  }
}
