/**
 * Twenty thin lines, none of them the likely one; readings as ticks as high as their test's own step; on the date
 * asked about, twenty grains with the count on each side of the line that matters. No hull around the lines: a hull is
 * read as a border.
 */
import type { ComponentChildren } from "preact";
import { dateWords } from "../../answers/words.ts";
import { capital } from "../parts/text.ts";
import { Chart, type Drawing, type DrawingWidth, NARROW, StepMark } from "./chart.tsx";
import { shortDate } from "./days.ts";
import { outlines } from "./grain-shape.ts";
import { Label } from "./label.tsx";
import {
  amount,
  type RunsFacts,
  type RunsPlace,
  runsCount,
  runsDrawn,
  runsFinding,
  runsRows,
  runsSteps,
} from "./twenty-runs-view.ts";

interface TwentyRunsProps {
  readonly id: string;
  readonly facts: RunsFacts;
  readonly title?: ComponentChildren;
  readonly sentence?: ComponentChildren;
  readonly csv?: boolean;
  readonly level?: 2 | 3;
}

export function TwentyRuns({ id, facts, title, sentence, csv, level }: TwentyRunsProps) {
  const { limit, unit, weeks } = facts;
  return (
    <Chart
      id={id}
      title={title ?? capital(runsFinding(facts))}
      sentence={
        sentence ?? (
          <>
            Twenty ways it could go from {dateWords(weeks[0]!)} to {dateWords(weeks.at(-1)!)}, each as likely
            as the next{limit === null ? "" : `; the line is ${amount(limit.value)} ${unit}, ${limit.words}`}.
          </>
        )
      }
      draw={(width) => drawRuns(facts, width)}
      steps={runsSteps(facts).map(({ label, text }) => ({ label, text }))}
      table={{
        caption: `${capital(facts.name)} in ${unit}, twenty runs`,
        columns: [
          { name: "on" },
          { name: "lowest", numeric: true },
          { name: "10 of 20 between", numeric: true },
          { name: "highest", numeric: true },
          ...(limit === null ? [] : [{ name: `above ${amount(limit.value)}`, numeric: true }]),
        ],
        rows: runsRows(facts).map(({ date, lowest, half, highest, above }) => [
          date,
          lowest,
          half,
          highest,
          ...(above === null ? [] : [above]),
        ]),
      }}
      {...(csv === undefined ? {} : { csv })}
      {...(level === undefined ? {} : { level })}
    />
  );
}

const PLACES: Readonly<Record<DrawingWidth, RunsPlace & { readonly months: number }>> = {
  328: { left: 34, right: 206, top: 34, bottom: 224, stack: 100, grain: 11, months: 3 },
  760: { left: 44, right: 560, top: 34, bottom: 300, stack: 176, grain: 13, months: 1 },
};

function drawRuns(facts: RunsFacts, width: DrawingWidth): Drawing {
  const place = PLACES[width];
  const { left, right, top, bottom, grain, months } = place;
  const drawn = runsDrawn(facts, place, months);
  const { above, below } = runsCount(facts);
  const narrow = width === NARROW;
  // A day soon after today has its date to the right of its line: to the left stands the unit.
  const early = drawn.askedX < left + 100;
  const size = grain / 15;
  const grains = (side: boolean) =>
    outlines(
      drawn.grains.filter((one) => one.above === side).map(({ x, y }) => ({ x, y, tip: 62, scale: size })),
    );
  const middleOf = (side: boolean) => {
    const ys = drawn.grains.filter((one) => one.above === side).map(({ y }) => y);
    return side ? Math.min(...ys) - grain / 2 - 6 : Math.max(...ys) + grain / 2 + 18;
  };
  return {
    height: bottom + 44,
    body: (
      <>
        <Label x={0} y={14} kind="small">
          {facts.unit}
        </Label>
        {drawn.yTicks.map(({ y, words }) => (
          <path key={words} class="grid" d={`M${left} ${y}H${right}`} />
        ))}
        {drawn.months.map(({ x, date }) => (
          <g key={date}>
            <path class="axis" d={`M${x} ${bottom}v5`} />
            {x > right - 30 ? null : (
              <Label x={x} y={bottom + 20} anchor="middle" kind="small">
                {shortDate(date).replace(/^1 /, "")}
              </Label>
            )}
          </g>
        ))}
        <path class="axis" d={`M${left} ${bottom}H${right}`} />
        {drawn.paths.map((d, run) => (
          <path key={`run ${run + 1}`} class="run" d={d} />
        ))}
        {drawn.readings.map(({ x, top: high, bottom: low }) => (
          <path
            key={`${x} ${high}`}
            class="reading"
            d={`M${x} ${high}V${Math.max(low, high + 1)}M${x - 4} ${high}h8M${x - 4} ${Math.max(low, high + 1)}h8`}
          />
        ))}
        {drawn.readings.length === 0 ? null : (
          <>
            <path class="today-line" d={`M${drawn.todayX} ${top}V${bottom}`} />
            <Label x={drawn.todayX} y={bottom + 38} anchor="middle" kind="small">
              today
            </Label>
          </>
        )}
        <path class="asked-line" d={`M${drawn.askedX} ${top - 4}V${bottom}`} />
        <Label
          x={early ? drawn.askedX - 4 : Math.min(drawn.askedX + 4, right)}
          y={top - 12}
          anchor={early ? "start" : "end"}
          kind="small"
        >
          {shortDate(facts.weeks[facts.asked]!)}
        </Label>
        <Label x={right + 16} y={top - 12} kind="small">
          {narrow ? "20 runs then" : "the 20 runs on that day"}
        </Label>
        {drawn.limitY === null ? null : <path class="limit-line" d={`M${left} ${drawn.limitY}H${width}`} />}
        <path class="grain above" data-grains={above} d={grains(true)} />
        <path class="grain below" data-grains={below} d={grains(false)} />
        {/* Words last, so that no mark's box lies over them. */}
        {drawn.yTicks.map(({ y, words }) => (
          <Label key={words} x={left - 6} y={y + 4} anchor="end" kind="small">
            {words}
          </Label>
        ))}
        {facts.limit === null || above === 0 ? null : (
          <Label x={right + 16} y={middleOf(true)} kind="strong">
            {`${above} above`}
          </Label>
        )}
        {facts.limit === null || below === 0 ? null : (
          <Label x={right + 16} y={middleOf(false)} kind="strong">
            {`${below} ${narrow ? "under" : "at or under"}`}
          </Label>
        )}
        {drawn.weekX.map((x, week) => (
          <StepMark key={x} step={week} d={`M${x} ${top}V${bottom}`} />
        ))}
      </>
    ),
  };
}
