/** pH: no unit; its scale is a fact of its own. */
import { readMeasure } from "./measure.ts";
import type { Amount, Outcome } from "./outcome.ts";
import type { Candidate, Judgement, MeasureContext, MeasureRule } from "./rule.ts";
import { figure } from "./show.ts";

const rule: MeasureRule<MeasureContext> = {
  label: "pH",
  unit: "",
  example: "8.1",
  spellings: { ph: [""], nbs: [""], "": [""] },
  toCanonical: (value) => value,
  plain: [""],
  offered: [""],
  hard: { min: 0, max: 14 },
  rescue: ({ low }) => {
    const tenth = low / 10;
    if (tenth < 6 || tenth > 9.5) return null;
    const choices = [{ label: `pH ${figure(tenth)}`, text: figure(tenth) }];
    return { verdict: "ask", kind: "FORMAT", text: `pH is 0 to 14. Did you mean ${figure(tenth)}?`, choices };
  },
  judge: judgePh,
};

function judgePh({ middle }: Candidate): Judgement | null {
  if (middle >= 7.6 && middle <= 8.6) return null;
  return {
    verdict: "flag",
    kind: "UNUSUAL",
    text: `${figure(middle)} is kept but not counted until a second reading agrees. Check the probe`,
  };
}

export function readPh(text: string, context: MeasureContext): Outcome<Amount> {
  return readMeasure(text, rule, context);
}
