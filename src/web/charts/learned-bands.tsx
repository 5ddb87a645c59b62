/**
 * What was known of each quantity before the daybook (a thin line) and after it (a thick one), each in its own measure:
 * the band of before fills the middle. A wide row that stayed wide was hardly seen.
 */
import type { LearnedQuantity } from "../../answers/learned/output.ts";
import { capital } from "../parts/text.ts";
import { Chart, type Drawing, type DrawingWidth, StepMark } from "./chart.tsx";
import { Label } from "./label.tsx";
import { bandWords, SEEN_WORDS } from "./learned-words.ts";

const ROW = 46;
/** Room beside the band of before, as a share of it: what moved beyond it is drawn up to there. */
const BEYOND = 0.25;
const EDGE = 12;

interface LearnedBandsProps {
  readonly id: string;
  readonly quantities: readonly LearnedQuantity[];
  readonly title: string;
}

export function LearnedBands({ id, quantities, title }: LearnedBandsProps) {
  return (
    <Chart
      id={id}
      title={title}
      sentence="Thin line: where 9 of 10 versions of the tank lay before the daybook. Thick line: where they lie now, with the middle marked. Each row has its own measure."
      draw={(width) => drawn(quantities, width)}
      steps={quantities.map(({ label, unit, before, after, seen }) => ({
        label: capital(label),
        text: `${SEEN_WORDS[seen]}; before ${bandWords(before, unit)}, now ${bandWords(after, unit)}`,
      }))}
      table={{
        caption: "Before and after",
        columns: [{ name: "quantity" }, { name: "seen" }, { name: "before" }, { name: "now" }],
        rows: quantities.map(({ label, unit, before, after, seen }) => [
          capital(label),
          SEEN_WORDS[seen],
          bandWords(before, unit),
          bandWords(after, unit),
        ]),
      }}
      csv={false}
    />
  );
}

function drawn(quantities: readonly LearnedQuantity[], width: DrawingWidth): Drawing {
  const inner = width - 2 * EDGE;
  return {
    height: quantities.length * ROW + 8,
    body: quantities.map(({ id, label, before, after }, row) => {
      const span = before.high - before.low || Math.abs(before.central) || 1;
      const at = (value: number): number => {
        const share = (value - before.low) / span;
        return EDGE + (inner * (Math.min(1 + BEYOND, Math.max(-BEYOND, share)) + BEYOND)) / (1 + 2 * BEYOND);
      };
      const y = row * ROW + 34;
      return (
        <g key={id}>
          <Label x={EDGE} y={row * ROW + 20} kind="small">
            {capital(label)}
          </Label>
          <path class="learned-before" d={`M${at(before.low)} ${y}H${at(before.high)}`} />
          <path class="learned-after" d={`M${at(after.low)} ${y}H${at(after.high)}`} />
          <path class="learned-middle" d={`M${at(after.central)} ${y - 6}V${y + 6}`} />
          <StepMark step={row} d={`M${EDGE - 8} ${y - 8}V${y + 8}`} />
        </g>
      );
    }),
  };
}
