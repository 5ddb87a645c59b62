/**
 * The course of one quantity's readings as a chart: ticks as high as the test's step, arrows for bounds, rings for what
 * lies far off, squares for what was dangerous; the line whole, its band dashed. Shape tells all of it without colour.
 */
import type { ComponentChildren } from "preact";
import { dateWords } from "../../answers/words.ts";
import { unitText } from "../parts/text.ts";
import { Chart, type Drawing, type DrawingWidth, NARROW, StepMark } from "./chart.tsx";
import { Label } from "./label.tsx";
import {
  type CourseDrawn,
  type CourseFacts,
  type CoursePlace,
  courseDrawn,
  courseRows,
  courseSteps,
} from "./reading-course-view.ts";

interface ReadingCourseProps {
  readonly id: string;
  readonly title: ComponentChildren;
  readonly sentence: ComponentChildren;
  readonly facts: CourseFacts;
}

const PLACES: Readonly<Record<DrawingWidth, CoursePlace>> = {
  328: { left: 44, right: 320, top: 30, bottom: 220 },
  760: { left: 52, right: 700, top: 30, bottom: 280 },
};

export function ReadingCourse({ id, title, sentence, facts }: ReadingCourseProps) {
  return (
    <Chart
      id={id}
      title={title}
      sentence={sentence}
      draw={(width) => drawCourse(facts, width)}
      legend={<Legend facts={facts} />}
      steps={courseSteps(facts)}
      table={{
        caption: `${facts.label}, day by day${facts.drawn.thinned === null ? "" : ", days gathered"}`,
        columns: [{ name: "on" }, { name: "read" }, { name: "the test tells no finer than", numeric: true }],
        rows: courseRows(facts),
      }}
    />
  );
}

function drawCourse(facts: CourseFacts, width: DrawingWidth): Drawing {
  const place = PLACES[width];
  const drawn = courseDrawn(facts, place);
  const { bottom, top } = place;
  return {
    height: bottom + 34,
    body: (
      <>
        <Label x={0} y={14} kind="small">
          {facts.unit === "" ? facts.label : facts.unit}
        </Label>
        <Course drawn={drawn} place={place} />
        {drawn.limits.map(({ y, words }) => (
          <Label key={words} x={place.right} y={y - 6} anchor="end" kind="small">
            {words}
          </Label>
        ))}
        {drawn.xTicks.map(({ x, words }) => (
          <Label key={x} x={Math.min(x, place.right - 12)} y={bottom + 26} anchor="middle" kind="small">
            {words}
          </Label>
        ))}
        {drawn.yTicks.map(({ y, words }) => (
          <Label key={words} x={place.left - 6} y={y + 4} anchor="end" kind="small">
            {words}
          </Label>
        ))}
        {drawn.markX.map((x, step) => (
          // Two marks may share a place.
          <StepMark key={step} step={step} d={`M${x} ${top}V${bottom}`} />
        ))}
      </>
    ),
  };
}

function Course({
  drawn,
  place: { left, right, bottom },
}: {
  readonly drawn: CourseDrawn;
  readonly place: CoursePlace;
}) {
  return (
    <>
      {drawn.yTicks.map(({ y, words }) => (
        <path key={words} class="grid" d={`M${left} ${y}H${right}`} />
      ))}
      <path class="axis" d={`M${left} ${bottom}H${right}`} />
      <path class="axis" d={drawn.xTicks.map(({ x }) => `M${x} ${bottom}v4`).join("")} />
      <path class="happened-mark" d={drawn.happened} />
      <path class="course-bin" d={drawn.bins} />
      <path class="course-band" d={drawn.band} />
      <path class="course-line" d={drawn.line} />
      <path class="reading" d={drawn.readings} />
      <path class="reading-bound" d={drawn.bounds} />
      <path class="reading-ring" d={drawn.outliers} />
      <path class="reading-danger" d={drawn.dangers} />
      {drawn.limits.map(({ y, words }) => (
        <path key={words} class="limit-line" d={`M${left} ${y}H${right}`} />
      ))}
    </>
  );
}

/** A course in little, for a page of many: without words of its own, for the sentence stands above it. */
export function SmallCourse({
  facts,
  labelledBy,
}: {
  readonly facts: CourseFacts;
  readonly labelledBy: string;
}) {
  const place: CoursePlace = { left: 2, right: NARROW - 2, top: 8, bottom: 76 };
  return (
    <div class="small-course" role="img" aria-labelledby={labelledBy}>
      <svg aria-hidden="true" viewBox={`0 0 ${NARROW} 90`} width={NARROW} height={90}>
        <Course drawn={{ ...courseDrawn(facts, place), yTicks: [], xTicks: [] }} place={place} />
      </svg>
    </div>
  );
}

const NAMED_IN_MARGIN = 12;

function Legend({ facts: { drawn, line } }: { readonly facts: CourseFacts }) {
  const has = (of: (mark: CourseFacts["drawn"]["marks"][number]) => boolean) => drawn.marks.some(of);
  const named = drawn.happened.slice(-NAMED_IN_MARGIN);
  const says = [
    ...(has(({ what }) => what === "reading") ? ["a tick is a reading, as high as its test's step"] : []),
    ...(has(({ what }) => what === "bin")
      ? ["a thin stroke is some days together, lowest to highest, its bar the middle"]
      : []),
    ...(has(({ censored }) => censored !== null)
      ? ["an arrow leads away from a bound that the test could not pass"]
      : []),
    ...(has(({ what }) => what === "outlier") ? ["a ring is far from the others, and kept"] : []),
    ...(has(({ what }) => what === "danger") ? ["a square was dangerous"] : []),
    ...(line.length === 0 ? [] : ["the line is the trend, between its dashed lines in 18 of 20 versions"]),
    ...(drawn.happened.length === 0 ? [] : ["a stroke below is an entry of the daybook"]),
  ].join("; ");
  return (
    <>
      <p>{`${says.charAt(0).toUpperCase()}${says.slice(1)}.`}</p>
      {named.length === 0 ? null : (
        <ul class="happened">
          {named.map(({ on, words }, i) => (
            <li key={i}>{unitText(`${dateWords(on)}: ${words}`)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
