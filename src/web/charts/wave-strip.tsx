/**
 * Waves and gates: above, when the crew grows by how many; below, each wave with its whole animals in words and the
 * gate that must hold before it.
 */
import { type ComponentChildren, Fragment } from "preact";
import { counted, dateWords } from "../../answers/words.ts";
import { Quantity } from "../parts/quantity.tsx";
import { Chart, type Drawing, type DrawingWidth, NARROW, StepMark } from "./chart.tsx";
import { shortDate } from "./days.ts";
import { Label } from "./label.tsx";
import {
  animalWords,
  type WaveFacts,
  type WaveStripView,
  waveFinding,
  waveSteps,
  waveStripView,
  windowWords,
} from "./wave-strip-view.ts";

interface WaveStripProps {
  readonly id: string;
  /** At least one. */
  readonly waves: readonly WaveFacts[];
  readonly title?: ComponentChildren;
  readonly sentence?: ComponentChildren;
  readonly csv?: boolean;
  readonly level?: 2 | 3;
  /** Beneath a wave's animals and gate: what a page has to say of it. */
  readonly more?: (wave: WaveFacts) => ComponentChildren;
}

export function WaveStrip({ id, waves, title, sentence, csv, level, more }: WaveStripProps) {
  const view = waveStripView(waves);
  return (
    <>
      <Chart
        id={id}
        title={title ?? waveFinding(view)}
        sentence={
          sentence ??
          "Each step is a wave; it leans across the days on which it may come. Before it stands its gate. Waiting costs nothing."
        }
        draw={(width) => drawStrip(view, width)}
        steps={waveSteps(waves)}
        table={{
          caption: "Who comes when, on what condition",
          columns: [{ name: "wave" }, { name: "between" }, { name: "animals" }, { name: "only if" }],
          rows: waves.map((wave) => [
            `Wave ${wave.number}`,
            windowWords(wave),
            animalWords(wave),
            wave.gate.length === 0 ? "no condition" : wave.gate.join("; "),
          ]),
        }}
        {...(csv === undefined ? {} : { csv })}
        {...(level === undefined ? {} : { level })}
      />
      <ol class="waves">
        {waves.map((wave) => (
          <Wave key={wave.number} wave={wave} level={level === 3 ? 4 : 3}>
            {more?.(wave)}
          </Wave>
        ))}
      </ol>
    </>
  );
}

interface WaveProps {
  readonly wave: WaveFacts;
  readonly level: 3 | 4;
  readonly children?: ComponentChildren;
}

function Wave({ wave, level, children }: WaveProps) {
  const Heading = level === 3 ? "h3" : "h4";
  return (
    <li class="wave">
      <p class="when">
        {wave.from === wave.to ? dateWords(wave.from) : `${dateWords(wave.from)} to ${dateWords(wave.to)}`}
      </p>
      {wave.gate.length === 0 ? null : (
        <div class="gate">
          <GateSign />
          <div>
            <p class="gate-word">Only if</p>
            <ul>
              {wave.gate.map((condition) => (
                <li key={condition}>{condition}</li>
              ))}
            </ul>
          </div>
        </div>
      )}
      <div class="wave-animals">
        <Heading>Wave {wave.number}</Heading>
        <ul class="animals-added">
          {wave.animals.map(({ id, name, count }) => (
            <li key={id}>
              <Quantity figure={`plan.${id}.count`}>{counted(count, name)}</Quantity>
            </li>
          ))}
        </ul>
        {children}
      </div>
    </li>
  );
}

/** A field gate of five bars, in a square of 24. */
const GATE = "M2 5V21M22 5V21M2 8H22M2 13H22M2 18H22M2 18 22 8";

function GateSign() {
  return (
    <svg class="gate-sign" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      <path d={GATE} />
    </svg>
  );
}

/** Width of a character in a label, about. */
const CHARACTER = 9;

function drawStrip({ steps, heads }: WaveStripView, width: DrawingWidth): Drawing {
  const narrow = width === NARROW;
  const [left, right] = [30, narrow ? 8 : 12];
  const [top, ground] = [34, 150];
  const x = (share: number) => left + share * (width - left - right);
  const y = (count: number) => ground - (count / heads) * (ground - top);
  return {
    height: ground + 30,
    body: (
      <>
        <path class="axis" d={`M0 ${ground}H${width}`} />
        {steps.map(({ wave, fromShare, toShare, before, after }, i) => (
          // Rise and level apart: a box about the whole line would lie over every label.
          <Fragment key={wave.number}>
            <path
              class="wave-line"
              d={`M${i === 0 ? 0 : x(steps[i - 1]!.toShare)} ${y(before)}H${x(fromShare)}`}
            />
            <path class="wave-line" d={`M${x(fromShare)} ${y(before)}L${x(toShare)} ${y(after)}`} />
          </Fragment>
        ))}
        <path class="wave-line" d={`M${x(steps.at(-1)!.toShare)} ${y(heads)}H${width}`} />
        {steps.map(({ wave, fromShare, toShare }, i) => (
          <g key={wave.number}>
            <path class="window" d={`M${x(fromShare)} ${ground}H${Math.max(x(toShare), x(fromShare) + 3)}`} />
            {wave.gate.length === 0 ? null : (
              <path
                class="gate-drawn"
                d={GATE}
                transform={`translate(${x(fromShare) - 27} ${ground - 24})`}
              />
            )}
            <StepMark
              step={i}
              d={`M${x(fromShare) - 2} ${ground + 4}H${Math.max(x(toShare), x(fromShare) + 12)}`}
            />
          </g>
        ))}
        {steps.map(({ wave, toShare, before, after }, i) => {
          const words = narrow ? `+${after - before}` : `wave ${wave.number}: ${after} in all`;
          const next = steps[i + 1];
          const room = (next === undefined ? width : x(next.fromShare)) - x(toShare);
          // Over its level where that is long enough, else over its rise.
          const fits = room > words.length * CHARACTER;
          return (
            <Label
              key={wave.number}
              x={fits ? x(toShare) + 2 : Math.max(x(toShare), words.length * CHARACTER)}
              y={y(after) - 8}
              anchor={fits ? "start" : "end"}
              kind="strong"
            >
              {words}
            </Label>
          );
        })}
        {steps.map(({ wave, fromShare }, i) =>
          // Dates that would run into each other stand in the table.
          i > 0 && x(fromShare) - x(steps[i - 1]!.fromShare) < 60 ? null : (
            <Label key={wave.number} x={x(fromShare)} y={ground + 20} kind="small">
              {shortDate(wave.from)}
            </Label>
          ),
        )}
      </>
    ),
  };
}
