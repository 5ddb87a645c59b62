/** How typed text and figures are shown in messages. */

const LONGEST_SHOWN = 60;
const segmenter = new Intl.Segmenter("en", { granularity: "grapheme" });

/** Characters that show nothing, or turn the text around them. */
const UNSEEN = /[\p{Cc}\p{Cs}\u061c\u200b\u200e\u200f\u2028\u2029\u202a-\u202e\u2060-\u2069\ufeff]/gu;

function visible(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return String.fromCodePoint(0x2400 + code);
  return `⟨U+${code.toString(16).toUpperCase().padStart(4, "0")}⟩`;
}

/** Typed text as it may be repeated: controls as symbols, shortened after 60 characters. */
export function shown(text: string): string {
  if (text.length <= LONGEST_SHOWN) return text.replace(UNSEEN, visible);
  // Cut before segmenting: a note of a million characters must not cost a million steps.
  const start = [...segmenter.segment(text.slice(0, 40 * LONGEST_SHOWN))].map(({ segment }) => segment);
  const short = start.length > LONGEST_SHOWN;
  const body = short ? start.slice(0, LONGEST_SHOWN).join("") : start.join("");
  return `${body.replace(UNSEEN, visible)}${short ? "…" : ""}`;
}

/** A figure to four digits, without trailing noughts. */
export function figure(value: number): string {
  const digits = Math.abs(value) >= 1000 ? Number(value.toFixed(1)) : Number(value.toPrecision(4));
  return String(digits);
}
