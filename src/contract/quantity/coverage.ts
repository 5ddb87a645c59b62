/** How much of a surface is covered: a share, or one of the words that sightings use. */
import type { Spread } from "../../engine/types/estimate.ts";
import type { Cover } from "../../engine/types/tank.ts";
import { asked, kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { parseAmount, tidy } from "./parse.ts";
import { decimalSign, type Preferences } from "./preferences.ts";
import { figure, shown } from "./show.ts";

export interface Coverage {
  readonly cover: Cover;
  /** Share of the surface, 0 to 1. */
  readonly share: Spread;
}

export interface CoverageContext {
  readonly preferences: Preferences;
  readonly label?: string;
  /** Unit chosen beside the field. */
  readonly unit?: "%" | null;
}

/** Share that each word stands for; judgement. */
const COVERS: Readonly<Record<Cover, Spread>> = {
  none: { low: 0, central: 0, high: 0.01 },
  trace: { low: 0.01, central: 0.05, high: 0.1 },
  patches: { low: 0.1, central: 0.35, high: 0.8 },
  covered: { low: 0.8, central: 0.9, high: 1 },
};
const WORDS: Readonly<Record<Cover, readonly string[]>> = {
  none: ["none", "nothing", "clean", "no"],
  trace: ["trace", "a trace", "traces", "a little", "little", "dusting"],
  patches: ["patches", "patchy", "some", "here and there", "in patches"],
  covered: ["covered", "all over", "everywhere", "full", "all"],
};

export function readCoverage(text: string, context: CoverageContext): Outcome<Coverage> {
  const label = context.label ?? "Coverage";
  const original = { text, unit: context.unit ?? null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  const known = "Enter none, trace, patches or covered, or a share such as 30 %";
  if (text.trim() === "")
    return refused(original, { kind: "MISSING", text: `${label}: nothing entered. ${known}` });
  const word = text.length > 100 ? "" : tidy(text).toLowerCase();
  const cover = (Object.keys(WORDS) as Cover[]).find((name) => WORDS[name].includes(word));
  if (cover !== undefined) {
    const value = { cover, share: COVERS[cover] };
    if (word === cover) return kept("accept", value, original);
    const { low, high } = value.share;
    return kept(
      "convert",
      value,
      original,
      say("ECHO", `read as '${cover}', ${percent(low)} to ${percent(high)} %`),
    );
  }
  const parsed = parseAmount(text, decimalSign(context.preferences.locale));
  const typedUnit = parsed?.unit?.replace(/\s/g, "").toLowerCase() ?? null;
  if (parsed === null || (typedUnit !== null && !/^(?:%|percent|pct)$/.test(typedUnit))) {
    return refused(original, say("FORMAT", `not a share we can read. ${known}`));
  }
  const [first, second] = parsed.candidates;
  if (first === undefined) return refused(original, say("FORMAT", known));
  // A decimal comma that could part thousands: no share is above 100 %.
  const { low, high } = second !== undefined && first.high > 100 ? second : first;
  if (low < 0 || high > 100) return refused(original, say("RANGE", "must be 0 to 100 %"));
  if (typedUnit === null && !parsed.checked && high > 0 && high <= 1) {
    const [asPercent, asShare] = [`${figure(high)} %`, `${figure(100 * high)} %`];
    const choices = [asPercent, asShare].map((way) => ({ label: way, text: way }));
    return asked(original, say("AMBIG", `${asPercent} or ${asShare}?`), choices);
  }
  const share = { low: low / 100, central: (low + high) / 200, high: high / 100 };
  const value: Coverage = { cover: coverOf(share.central), share };
  const plain = parsed.form === "exact" && !parsed.rewritten && (typedUnit !== null || context.unit === "%");
  return plain
    ? kept("accept", value, { text, unit: "%" })
    : kept(
        "convert",
        value,
        { text, unit: "%" },
        say("ECHO", `read as ${percent(share.central)} %, '${value.cover}'`),
      );
}

const percent = (share: number): string => figure(100 * share);

function coverOf(share: number): Cover {
  if (share < COVERS.trace.low) return "none";
  if (share < COVERS.patches.low) return "trace";
  return share < COVERS.covered.low ? "patches" : "covered";
}
