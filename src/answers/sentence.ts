/** A sentence that knows which of its words are numbers of the engine: a page turns those into doors to their working. */

/** A number in words, and the figure that it is. */
export interface Told {
  readonly text: string;
  readonly figure: string;
}
export type Sentence = readonly (string | Told)[];

export const told = (text: string, figure: string): Told => ({ text, figure });

/** A number in words where it may have no working: then plain words. */
export const maybeTold = (text: string, figure: string | null | undefined): string | Told =>
  figure == null ? text : told(text, figure);

/** The sentence as plain text: for titles, groups and alternatives to pictures. */
export const plain = (sentence: Sentence): string =>
  sentence.map((part) => (typeof part === "string" ? part : part.text)).join("");

/** "a, b and c", each its own door. */
export const joined = (parts: Sentence): Sentence =>
  parts.flatMap((part, i) => (i === 0 ? [part] : [i === parts.length - 1 ? " and " : ", ", part]));

/** A number as sentences of the engine write it, with the unit or noun that follows. */
const NUMBER = /\d[\d.]*(?: to \d[\d.]*)?(?: of 20(?: runs)?| cm²| m²| mm| mg(?: C)?| L| °C| %| days?)?/;

/** What is told in rations is the figure, wherever runs or heads are counted before it. */
const RATIONS = /\d[\d.]* rations?(?: a day)?/;

/** A ready sentence with a figure: its first number becomes the door, or else what stands before its first stop. */
export function linked(text: string, figure: string | null | undefined): Sentence {
  if (figure == null) return [text];
  const found = RATIONS.exec(text) ?? NUMBER.exec(text) ?? /^[^:;,.]+/.exec(text);
  if (found === null) return [text];
  const before = text.slice(0, found.index);
  const number = found[0].replace(/\.$/, "");
  const after = text.slice(found.index + number.length);
  return [...(before === "" ? [] : [before]), told(number, figure), ...(after === "" ? [] : [after])];
}

/** A ready sentence, each captured part a door to its figure: `/at least ([\d.]+ L)/`. Parts must not overlap. */
export function opened(text: string, doors: readonly (readonly [RegExp, string])[]): Sentence {
  const spans = doors
    .flatMap(([pattern, figure]) => {
      const found = new RegExp(pattern, "d").exec(text);
      const [from, to] = found?.indices?.[1] ?? [];
      return from === undefined || to === undefined ? [] : [{ from, to, figure }];
    })
    .sort((a, b) => a.from - b.from);
  const parts: (string | Told)[] = [];
  let at = 0;
  for (const { from, to, figure } of spans) {
    if (from > at) parts.push(text.slice(at, from));
    parts.push(told(text.slice(from, to), figure));
    at = to;
  }
  if (at < text.length) parts.push(text.slice(at));
  return parts;
}
