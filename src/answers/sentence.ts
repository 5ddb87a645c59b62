/** A sentence that knows which of its words are numbers of the engine: a page turns those into doors to their working. */

/** A number in words, and the figure that it is. */
export interface Told {
  readonly text: string;
  readonly figure: string;
}
export type Sentence = readonly (string | Told)[];

export const told = (text: string, figure: string): Told => ({ text, figure });

/** The sentence as plain text: for titles and alternatives to pictures. */
export const plain = (sentence: Sentence): string =>
  sentence.map((part) => (typeof part === "string" ? part : part.text)).join("");
