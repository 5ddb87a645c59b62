/** Head counts: whole animals, or `many` where nobody could count. */

import { asked, kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { parseAmount } from "./parse.ts";
import { decimalSign, type Preferences } from "./preferences.ts";
import { shown } from "./show.ts";

export type HeadCount =
  | { readonly kind: "counted"; readonly count: number; readonly about: boolean }
  | { readonly kind: "many" };

export interface CountContext {
  readonly preferences: Preferences;
  readonly label?: string;
  readonly waterL?: number | null;
  /** What the record holds, where a count can be compared with it. */
  readonly onRecord?: number | null;
  /** `seen`: more than the record is a riddle. `lost`: more than the record can't be. */
  readonly meaning?: "seen" | "lost";
}

const MOST = 100_000;
const MOST_PER_LITRE = 5;

export function readCount(text: string, context: CountContext): Outcome<HeadCount> {
  const label = context.label ?? "Head count";
  const original = { text, unit: null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  if (text.trim() === "") {
    return refused(original, {
      kind: "MISSING",
      text: `${label}: nothing entered. Enter whole animals, or 'many'`,
    });
  }
  if (/^\s*(?:many|lots|uncounted)\s*$/i.test(text)) {
    return kept("convert", { kind: "many" }, original, say("ECHO", "kept as 'many', without a figure"));
  }
  const parsed = parseAmount(text, decimalSign(context.preferences.locale));
  if (parsed === null || parsed.unit !== null || parsed.form === "below" || parsed.form === "above") {
    return refused(original, say("FORMAT", "enter whole animals, such as 12, or 'many'"));
  }
  const ends = parsed.candidates.map(({ low, high }) => (low + high) / 2);
  const whole = ends.filter((value) => Number.isInteger(value));
  const [count] = whole;
  if (ends.some((value) => value < 0)) return refused(original, say("RANGE", "a head count is 0 or more"));
  if (count === undefined) {
    const near = [...new Set(ends.flatMap((value) => [Math.floor(value), Math.ceil(value)]))];
    const choices = near.map((value) => ({ label: String(value), text: String(value) }));
    return refused(original, say("FORMAT", `enter whole animals: ${near.join(" or ")}?`), choices);
  }
  if (count > MOST)
    return refused(
      original,
      say("RANGE", `must be 0 to ${MOST.toLocaleString("en-GB")}; log such crowds as 'many'`),
    );
  const many = { label: "many", text: "many" };
  const asTyped = { label: `${count}, as typed`, text: `${count} (checked)` };
  if (!parsed.checked) {
    const doubt = conflict(count, context);
    if (doubt !== null) return asked(original, say("CONFLICT", doubt), [asTyped]);
    const litres = context.waterL ?? null;
    if (litres !== null && litres > 0 && count / litres > MOST_PER_LITRE) {
      const words = `${Math.round(count / litres)} per litre. Are these tiny ones (copepods, amphipods)? Log them as 'many'`;
      return asked(original, say("UNUSUAL", words), [many, asTyped]);
    }
  }
  const about = parsed.form === "about" || parsed.form === "range";
  const value: HeadCount = { kind: "counted", count, about };
  if (parsed.checked) return kept("flag", value, original, say("UNUSUAL", `${count} is kept, as typed`));
  return about || parsed.rewritten
    ? kept("convert", value, original, say("ECHO", `read as ${about ? "about " : ""}${count}`))
    : kept("accept", value, original);
}

function conflict(count: number, { onRecord, meaning }: CountContext): string | null {
  if (onRecord == null || count <= onRecord) return null;
  return meaning === "lost"
    ? `the record has ${onRecord}`
    : `more than the record knows, ${onRecord}. Born here, added and not logged, or counted twice?`;
}
