/** The ways a typed amount can be understood: which lie within the bounds, how each is said, and what is stored. */
import type { Amount, Choice } from "./outcome.ts";
import type { Candidate, MeasureContext, MeasureRule } from "./rule.ts";
import { figure } from "./show.ts";

/** What "about" is worth, as a share. */
const ABOUT = 0.15;

type Bounds = Pick<MeasureRule<MeasureContext>, "hard" | "toCanonical" | "unit">;

export function fits(value: number, unit: string, { hard, toCanonical }: Bounds): boolean {
  const canonical = toCanonical(value, unit);
  return (
    Number.isFinite(canonical) &&
    canonical <= hard.max &&
    (hard.open ? canonical > hard.min : canonical >= hard.min)
  );
}

export function distinct(candidates: readonly Candidate[]): Candidate[] {
  const near = (a: Candidate, b: Candidate) =>
    Math.abs(a.middle - b.middle) <= 1e-9 * Math.max(1, Math.abs(a.middle));
  return candidates.filter((c, i) => candidates.findIndex((other) => near(c, other)) === i);
}

export function outside({ middle }: Candidate, { hard, unit }: Bounds): string {
  const most = `${hard.max.toLocaleString("en-GB")} ${unit}`.trim();
  const bounds = hard.open
    ? middle > hard.max
      ? `must be ${most} or less`
      : `must be more than ${hard.min} ${unit}`.trim()
    : `must be ${hard.min} to ${most}`;
  return middle < 0 && hard.min >= 0 ? `${bounds}. Did you mean ${figure(-middle)}?` : bounds;
}

export function mirrored({ low, high, form, unit, middle }: Candidate): Choice[] {
  if (middle >= 0 || form !== "exact") return [];
  const positive = phrase({ low: -high, high: -low, form, unit });
  return [{ label: positive, text: positive }];
}

/** What to type for a candidate. */
export function phrase({ low, high, form, unit }: Omit<Candidate, "middle">): string {
  const sign = { exact: "", about: "about ", range: "", below: "<", above: ">" }[form];
  const number = form === "range" ? `${low}-${high}` : String(low);
  return `${sign}${number} ${unit}`.trim();
}

export function inWords(candidate: Candidate, rule: Bounds): string {
  const typed = phrase(candidate);
  return candidate.unit === rule.unit ? typed : `${typed} (${figure(candidate.middle)} ${rule.unit})`;
}

export function amount<C extends MeasureContext>(c: Candidate, rule: MeasureRule<C>, context: C): Amount {
  const ends = [c.low, c.high].map((value) => rule.toCanonical(value, c.unit));
  const low = Math.min(...ends);
  const high = Math.max(...ends);
  const { unit } = rule;
  const step = context.kitStep ?? null;
  // A kit that shows nothing has only shown that there is less than its smallest step.
  if (step !== null && step > 0 && c.form === "exact" && c.low === 0) {
    const limit = rule.toCanonical(step, c.unit);
    return { low: 0, central: limit / 2, high: limit, unit, censored: "below" };
  }
  if (c.form === "below")
    return { low: rule.hard.min, central: (rule.hard.min + high) / 2, high, unit, censored: "below" };
  if (c.form === "above") {
    const high3 = Math.min(3 * low, rule.hard.max);
    return { low, central: Math.min(1.5 * low, (low + high3) / 2), high: high3, unit, censored: "above" };
  }
  if (c.form === "about") {
    const spread = ABOUT * Math.abs(c.middle);
    return { low: c.middle - spread, central: c.middle, high: c.middle + spread, unit, censored: null };
  }
  const open = rule.openBy?.(c.unit) ?? 0;
  return { low: low - open, central: c.middle, high: high + open, unit, censored: null };
}

export function echoed(c: Candidate, value: Amount, rule: Bounds): string {
  if (value.censored !== null) {
    const limit = value.censored === "below" ? value.high : value.low;
    return `${value.censored === "below" ? "less" : "more"} than ${figure(limit)} ${rule.unit}`.trim();
  }
  const converted =
    c.unit === rule.unit ? "" : `${phrase({ ...c, form: c.form === "about" ? "exact" : c.form })}, `;
  const central = `${converted}${figure(value.central)} ${rule.unit}`.trim();
  if (c.form === "about")
    return `${central}, give or take ${figure(value.high - value.central)} ${rule.unit}`.trim();
  return c.form === "range" ? `${central}, ${figure(value.low)} to ${figure(value.high)}` : central;
}
