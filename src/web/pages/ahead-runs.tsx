/** Twenty runs of the weeks ahead: every quantity in a sentence, the one asked for drawn, without script. */

import type { TankAnswers } from "../../answers/tank-answers.ts";
import { dateWords } from "../../answers/words.ts";
import type { Reading } from "../../engine/types/tank.ts";
import { TwentyRuns } from "../charts/twenty-runs.tsx";
import { runsFinding } from "../charts/twenty-runs-view.ts";
import { type TankHead, to } from "../page.ts";
import { Quantity } from "../parts/quantity.tsx";
import { capital } from "../parts/text.ts";
import { aheadChart, openest, type RunsShown, runsShown } from "./ahead-view.ts";

export interface TwentyWaysView {
  readonly head: TankHead;
  readonly answers: TankAnswers;
  readonly readings: readonly Reading[];
  /** Place in the weeks of the day on which the runs are counted. */
  readonly asked: number;
  /** Quantity that is drawn, "all", or null for the one that is most in doubt. */
  readonly of: string | null;
}

/** Every quantity in a sentence, the one asked for as a drawing: six drawings at once are slow on a phone. */
export function TwentyWays({ head, answers: { ahead }, readings, asked, of }: TwentyWaysView) {
  const all = runsShown(ahead, readings, asked);
  const drawn =
    of === "all" ? all : [all.find(({ id }) => id === of) ?? openest(all)].filter((one) => one !== undefined);
  const chosen = of === "all" ? "all" : (drawn[0]?.id ?? "all");
  return (
    <section id="runs">
      <h2>Twenty runs, counted on {dateWords(ahead.weeks[asked]!)}</h2>
      <ul class="findings">
        {all.map(({ id, facts, figure, missing }) => (
          <li key={id}>
            <Quantity figure={figure}>{capital(runsFinding(facts))}</Quantity>
            {missing === null ? "." : `. A typical tank's course, as it takes ${missing} to tell yours.`}
          </li>
        ))}
      </ul>
      <form method="get" action={`${to.tank(head.id, "ahead")}#runs`} class="choose-day">
        <Pick
          name="of"
          label="Draw"
          value={chosen}
          options={[
            ...all.map(({ id, facts }) => [id, facts.name] as const),
            ["all", "all of them"] as const,
          ]}
        />
        <Pick
          name="week"
          label="and count the runs on"
          value={String(asked)}
          options={ahead.weeks.map((date, week) => [String(week), dateWords(date)] as const)}
        />
        <button type="submit">Draw it</button>
      </form>
      {drawn.map((shown) => (
        <Runs key={shown.id} shown={shown} />
      ))}
    </section>
  );
}

interface PickProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
}

function Pick({ name, label, value, options }: PickProps) {
  return (
    <div class="pick">
      <label for={name} class="label">
        {label}
      </label>
      <select id={name} name={name} class="input">
        {options.map(([one, words]) => (
          <option key={one} value={one} selected={one === value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

function Runs({ shown: { id, facts, figure, limitFigure, missing } }: { readonly shown: RunsShown }) {
  const { limit, unit } = facts;
  return (
    <TwentyRuns
      id={aheadChart(id)}
      level={3}
      facts={facts}
      sentence={
        <>
          {missing === null
            ? ""
            : `Not enough data for this tank yet (it takes ${missing}): a typical tank. `}
          <Quantity figure={figure}>Twenty ways {facts.name} could go</Quantity>
          {limit === null || limitFigure === null ? (
            "."
          ) : (
            <>
              ; the line is{" "}
              <Quantity figure={limitFigure}>
                {limit.value} {unit}
              </Quantity>
              , {limit.words}.
            </>
          )}
          {facts.readings.length === 0
            ? ""
            : " Your readings stand as ticks, as high as the test's own step."}
        </>
      }
    />
  );
}
