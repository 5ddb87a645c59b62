/**
 * The wedge: an ear of grain a shelf, growing up from the line where more grows than is wanted, hanging down where
 * less does. On a narrow page the line stands upright and the ears lie.
 */
import type { ComponentChildren } from "preact";
import { plain } from "../../answers/sentence.ts";
import { capital, listed } from "../parts/text.ts";
import { Chart, type Drawing, NARROW, StepMark, WIDE } from "./chart.tsx";
import { GrainLegend } from "./grain-legend.tsx";
import { GrainMarks, type Side } from "./grain-row.tsx";
import { type GrainCounts, grainsDrawn } from "./grain-row-view.ts";
import type { GrainPlace } from "./grain-shape.ts";
import { Label } from "./label.tsx";
import type { ShelfFacts } from "./shelf.ts";
import { shelfStep, shelfTable } from "./shelf-words.tsx";
import { type TankWedgeView, tankWedgeView, type WedgeColumn, wedgeFinding } from "./tank-wedge-view.ts";

interface TankWedgeProps {
  readonly id: string;
  readonly shelves: readonly ShelfFacts[];
  /** Instead of the finding that the view draws from the shelves. */
  readonly title?: ComponentChildren;
  readonly sentence?: ComponentChildren;
  readonly csv?: boolean;
  readonly level?: 2 | 3;
}

export function TankWedge({ id, shelves, title, sentence, csv, level }: TankWedgeProps) {
  const view = tankWedgeView(shelves);
  return (
    <Chart
      id={id}
      title={title ?? capital(plain(wedgeFinding(view)))}
      sentence={
        sentence ??
        `${view.columns.length} shelves from most over to most short. At the line, what grows is what is eaten.`
      }
      draw={(width) => (width === NARROW ? drawLying(view) : drawStanding(view))}
      legend={
        <GrainLegend grain={view.grain}>
          {view.bare.length === 0 ? null : `${capital(listed(view.bare))}: nothing grown, nothing wanted.`}
        </GrainLegend>
      }
      steps={view.columns.map(({ shelf }) => shelfStep(shelf))}
      table={shelfTable(shelves)}
      {...(csv === undefined ? {} : { csv })}
      {...(level === undefined ? {} : { level })}
    />
  );
}

/** Along a stalk, one grain every so many units, by turns on its two sides. */
const APART = 9;
const ASIDE = 5;
const SPREAD = 32;
const STALK = 4;
/** Larger where there is room. */
const STANDING_SCALE = 1.35;

interface EarProps {
  readonly counts: GrainCounts;
  readonly side: Side;
  readonly x: number;
  readonly y: number;
  /** Which way it grows, degrees clockwise from up. */
  readonly way: 0 | 90 | 180 | 270;
  readonly scale?: number;
}

function Ear({ counts, side, x, y, way, scale = 1 }: EarProps) {
  const length = grainsDrawn(counts);
  if (length === 0) return null;
  const sin = Math.round(Math.sin((way * Math.PI) / 180));
  const cos = Math.round(Math.cos((way * Math.PI) / 180));
  const along = (d: number) => ({ x: x + d * scale * sin, y: y - d * scale * cos });
  const place = (grain: number): GrainPlace => {
    const turn = grain % 2 === 0 ? -1 : 1;
    const on = along(STALK + (grain + 0.9) * APART);
    return {
      x: on.x + turn * ASIDE * scale * cos,
      y: on.y + turn * ASIDE * scale * sin,
      tip: way + turn * SPREAD,
      scale,
    };
  };
  const tip = along(STALK + length * APART);
  return (
    <>
      <path class={`stalk ${side}`} d={`M${x} ${y}L${tip.x} ${tip.y}`} />
      <GrainMarks counts={counts} side={side} place={place} />
    </>
  );
}

/** How far the longest ear of one side comes, with a little for a side that has none. */
function reach(columns: readonly WedgeColumn[], of: (column: WedgeColumn) => GrainCounts, scale = 1): number {
  const longest = Math.max(2, ...columns.map((column) => grainsDrawn(of(column))));
  return (longest * APART + STALK + 12) * scale;
}

function drawStanding({ columns }: TankWedgeView): Drawing {
  const left = 62;
  const step = (WIDE - left) / Math.max(1, columns.length);
  const up = reach(columns, ({ over }) => over, STANDING_SCALE);
  const down = reach(columns, ({ short }) => short, STANDING_SCALE);
  const line = up + 6;
  const names = line + down + 22;
  return {
    height: names + 52,
    body: (
      <>
        <Label x={0} y={line - 12} kind="small">
          over
        </Label>
        <Label x={0} y={line + 22} kind="small">
          short
        </Label>
        <path class="target-line" d={`M0 ${line}H${WIDE}`} />
        {columns.map((column, i) => {
          const x = left + (i + 0.5) * step;
          return (
            <g key={column.shelf.id}>
              <Ear counts={column.over} side="kelp" x={x} y={line} way={0} scale={STANDING_SCALE} />
              <Ear counts={column.short} side="damson" x={x} y={line} way={180} scale={STANDING_SCALE} />
              {lines(column.shelf.name).map((words, row) => (
                <Label key={words} x={x} y={names + row * 20} anchor="middle">
                  {words}
                </Label>
              ))}
              <Label x={x} y={names + lines(column.shelf.name).length * 20} anchor="middle" kind="strong">
                {column.words}
              </Label>
              <StepMark step={i} d={`M${x - step / 2 + 4} ${names + 50}H${x + step / 2 - 4}`} />
            </g>
          );
        })}
      </>
    ),
  };
}

/** "film on" / "glass": at most two lines, broken where both are shortest. */
function lines(name: string): readonly string[] {
  const words = name.split(" ");
  if (words.length === 1) return words;
  const cuts = words.slice(1).map((_, i) => [words.slice(0, i + 1).join(" "), words.slice(i + 1).join(" ")]);
  const longest = (parts: readonly string[]) => Math.max(...parts.map(({ length }) => length));
  return cuts.reduce((best, cut) => (longest(cut) < longest(best) ? cut : best));
}

function drawLying({ columns }: TankWedgeView): Drawing {
  const each = 54;
  const right = reach(columns, ({ over }) => over);
  const left = reach(columns, ({ short }) => short);
  // The line stands where both sides have room in proportion.
  const line = Math.min(NARROW - right, Math.max(left, (NARROW * left) / (left + right)));
  const height = columns.length * each + 26;
  return {
    height,
    body: (
      <>
        <Label x={line - 8} y={14} anchor="end" kind="small">
          {line > 60 ? "short" : ""}
        </Label>
        <Label x={line + 8} y={14} kind="small">
          over
        </Label>
        <path class="target-line" d={`M${line} 2V${height}`} />
        {columns.map((column, i) => {
          const y = 26 + i * each;
          return (
            <g key={column.shelf.id}>
              <rect class="behind-words" x={line - 2} y={y - 1} width={4} height={20} />
              <Label x={0} y={y + 14}>
                {column.shelf.name}
              </Label>
              <Label x={NARROW} y={y + 14} anchor="end" kind="strong">
                {column.words}
              </Label>
              <Ear counts={column.over} side="kelp" x={line} y={y + 34} way={90} />
              <Ear counts={column.short} side="damson" x={line} y={y + 34} way={270} />
              <StepMark step={i} d={`M1.5 ${y + 20}V${y + 48}`} />
            </g>
          );
        })}
      </>
    ),
  };
}
