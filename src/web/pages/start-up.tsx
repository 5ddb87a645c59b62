/**
 * Start-up: where in its nitrogen cycle the tank is by its tests, when it ends of 20, the test that tells, first light
 * and first wave behind their gate, what is left alone meanwhile.
 */
import type { JudgedGate } from "../../answers/bench/gate.ts";
import { DO_NOW, endTitle, NOT_NOW, ROCK_WORDS, STAGE_TITLE } from "../../answers/start-up/words.ts";
import { chance, dateWords } from "../../answers/words.ts";
import type { StartUpOutput } from "../../contract/output/start-up.ts";
import { round3 } from "../../engine/types/link.ts";
import { TwentyRuns } from "../charts/twenty-runs.tsx";
import type { RunsFacts } from "../charts/twenty-runs-view.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Grains } from "../parts/grains.tsx";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";

export interface StartUpView {
  readonly head: TankHead;
  /** Null for a tank that is older than any start-up. */
  readonly startUp: StartUpOutput | null;
  /** Of the first wave, judged from the daybook; null where the plan has no wave. */
  readonly gate: JudgedGate | null;
  /** Earliest day of the first wave; null where the plan has none. */
  readonly waveFrom: { readonly on: string; readonly figure: string } | null;
  readonly readings: readonly {
    readonly quantity: "ammonia" | "nitrite";
    readonly date: string;
    readonly low: number;
    readonly high: number;
  }[];
}

/** Charts of this page, and their files of numbers. */
export const START_UP_CHARTS = { ammonia: "start-up-ammonia", nitrite: "start-up-nitrite" } as const;

export function startUpPage(view: StartUpView): Page {
  const { head, startUp } = view;
  const title = startUp === null ? STAGE_TITLE.past : endTitle(startUp);
  return {
    title: `Start-up: ${title}`,
    tank: head,
    here: "start-up",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">
          Start-up: bacteria that turn ammonia into nitrite, and nitrite into nitrate, have to grow first.
        </p>
        {startUp === null ? <Past tank={head.id} /> : <Running view={view} startUp={startUp} />}
      </>
    ),
  };
}

function Past({ tank }: { readonly tank: string }) {
  return (
    <p>
      Ammonia or nitrite that a test shows now is trouble, no start-up:{" "}
      <a href={to.wrong(tank)}>what to do first</a>.
    </p>
  );
}

function Running({ view, startUp }: { readonly view: StartUpView; readonly startUp: StartUpOutput }) {
  const { head } = view;
  const { stage, stocked, says } = startUp;
  if (stage === "past") return <Past tank={head.id} />;
  return (
    <>
      {stocked && (stage === "ammonia" || stage === "both" || stage === "nitrite") ? (
        <Notice kind="danger">
          <p>
            Something lives in this tank, and a test shows ammonia or nitrite.{" "}
            <a href={to.wrongList("ammonia", head.id)}>What to do first</a>
          </p>
        </Notice>
      ) : null}
      <section>
        <h2>{STAGE_TITLE[stage]}</h2>
        <p>{says}</p>
        <ul>
          {DO_NOW[stage].map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <NextTest tank={head.id} startUp={startUp} />
      </section>
      <End startUp={startUp} />
      <Runs view={view} startUp={startUp} />
      <TheTest startUp={startUp} tank={head.id} />
      <FirstLightAndWave view={view} startUp={startUp} />
      <OtherRock startUp={startUp} />
      <section>
        <h2>Not now</h2>
        <ul>
          {NOT_NOW.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p class="hint">What is done and left alone here is common practice, no source.</p>
      </section>
    </>
  );
}

const NEXT = {
  test: "Test ammonia and nitrite",
  dose: "Dose ammonia, and test a day later",
  look: "Test ammonia and nitrite: a day after the dose",
} as const;

function NextTest({
  tank,
  startUp: { next_test },
}: {
  readonly tank: string;
  readonly startUp: StartUpOutput;
}) {
  if (next_test === null) return null;
  return (
    <p>
      Next: {NEXT[next_test.what]}, on {dateWords(next_test.on)}.{" "}
      <a class="action" href={to.readingsOf(tank, "tan_mg_n_per_l")}>
        Log the tests
      </a>
    </p>
  );
}

function End({ startUp: { end, versions, stage } }: { readonly startUp: StartUpOutput }) {
  if (versions === null || stage === "proven") return null;
  if (end === null) {
    return (
      <Notice kind="look" title="Not enough data">
        <p>
          Only {versions.left} of {versions.drawn} versions of this tank come to an end within{" "}
          {versions.within_days} days, too few to tell a date. If ammonia or nitrite will not go: test
          temperature, pH and alkalinity, and ask whether a medicine or tap water went in.
        </p>
      </Notice>
    );
  }
  return (
    <section>
      <h2>When it is done, of 20</h2>
      <ul class="chances">
        {end.by.map(({ on, of_20, figure }) => (
          <li key={on}>
            <Grains of20={of_20} yes="are done by then" no="are not">
              By {dateWords(on)}: <Quantity figure={figure}>{chance(of_20)}</Quantity>
            </Grains>
          </li>
        ))}
      </ul>
      <p>
        <Quantity figure={end.figure}>
          Between {dateWords(end.early)} and {dateWords(end.late)}
        </Quantity>{" "}
        in 18 of 20.{" "}
        {versions.taught
          ? "The runs have learned from this tank's own tests."
          : "The runs know no tests of this tank yet: this is a usual tank with its rock."}{" "}
        {versions.left} of {versions.drawn} versions were kept: the others would not end within{" "}
        {versions.within_days} days, longer than start-ups are known to take.
      </p>
    </section>
  );
}

/** Place in the days of the middle end, where the runs are counted. */
const askedOf = ({ runs, end }: StartUpOutput): number =>
  Math.max(0, runs === null || end === null ? 0 : runs.days.indexOf(end.middle));

export function startUpRunsFacts(
  startUp: StartUpOutput,
  what: "ammonia" | "nitrite",
  readings: StartUpView["readings"],
): RunsFacts | null {
  const { runs } = startUp;
  if (runs === null) return null;
  return {
    ...{ name: what, unit: "mg N/L", weeks: runs.days, runs: runs[what] },
    readings: readings.flatMap(({ quantity, ...reading }) => (quantity === what ? [reading] : [])),
    limit: {
      value: what === "ammonia" ? runs.readable_ammonia : runs.readable_nitrite,
      words: "what a usual kit can show",
    },
    asked: askedOf(startUp),
  };
}

function Runs({ view, startUp }: { readonly view: StartUpView; readonly startUp: StartUpOutput }) {
  const { runs, stocked } = startUp;
  if (runs === null) return null;
  return (
    <section id="runs">
      <h2>Twenty runs</h2>
      <p>
        {stocked
          ? "With what the animals give."
          : "In these runs ammonia is dosed whenever it is gone and nitrite is low; each little peak is such a dose."}
      </p>
      {(["nitrite", "ammonia"] as const).map((what) => {
        const facts = startUpRunsFacts(startUp, what, view.readings);
        return facts === null || facts.runs.length !== 20 ? null : (
          <TwentyRuns
            key={what}
            id={START_UP_CHARTS[what]}
            level={3}
            facts={facts}
            sentence={
              <>
                <Quantity figure={runs.figures[what]}>Twenty ways {what} could go</Quantity>; the line is what
                a usual kit can show. Your tests stand as ticks.
              </>
            }
          />
        );
      })}
    </section>
  );
}

function TheTest({
  startUp: { dose, stocked },
  tank,
}: {
  readonly startUp: StartUpOutput;
  readonly tank: string;
}) {
  return (
    <section>
      <h2>The test that declares it done</h2>
      {dose === null || stocked ? (
        <p>
          Something lives here, so no ammonia is dosed. It is done when ammonia and nitrite are too low for
          the test to show on two tests three days apart.
        </p>
      ) : (
        <>
          <p>
            Dose ammonia to <Quantity figure={dose.figures.dose}>{round3(dose.mg_n_per_l)} mg N/L</Quantity>.
            A day later test both: done when both are too low for the tests to show. Nought on one day without
            a dose is not enough. Common practice, no source.
          </p>
          <p>
            For this water that is{" "}
            <Quantity figure={dose.figures.salt}>{round3(dose.ammonium_chloride_g.central)} g</Quantity> of
            pure ammonium chloride, as much nitrogen as{" "}
            <Quantity figure={dose.figures.food}>{round3(dose.dry_food_g.central)} g</Quantity> of dry food.
            With a bottle of ammonia go by its label. Gloves and goggles; never near bleach; never with an
            animal in the water.
          </p>
          <p>
            <a class="action" href={to.newEntry(tank, "treatment")}>
              Log the dose
            </a>{" "}
            as a treatment, "ammonia 1 mg/L": it closes no gate, and this page knows it.
          </p>
        </>
      )}
    </section>
  );
}

const STATE = { met: "Met", not_met: "Not met", cannot_tell: "Can't tell yet" } as const;

function FirstLightAndWave({
  view,
  startUp,
}: {
  readonly view: StartUpView;
  readonly startUp: StartUpOutput;
}) {
  const { gate, head, waveFrom } = view;
  return (
    <section>
      <h2>First light and first wave</h2>
      <p>
        First light: short days once ammonia is gone
        {startUp.stage === "ammonia" || startUp.stage === "no_data" || startUp.stage === "waiting"
          ? "; not yet"
          : "; that is so now"}
        . The first grazers need film on the rock, and film needs about three weeks of light; light without
        grazers grows what nobody eats.
      </p>
      {gate === null ? (
        <p>
          The plan has no wave yet. <a href={to.tank(head.id, "waves")}>See why</a>
        </p>
      ) : (
        <>
          <p>
            First wave
            {waveFrom === null ? "" : ", from "}
            {waveFrom === null ? null : (
              <Quantity figure={waveFrom.figure}>{dateWords(waveFrom.on)}</Quantity>
            )}
            , only if:
          </p>
          <ul>
            {gate.onlyIf.map(({ text, state, because, settle }) => (
              <li key={text}>
                {STATE[state]}: {text}. {because} {settle ?? ""}
              </li>
            ))}
          </ul>
          <p>
            <a href={to.tank(head.id, "waves")}>The waves and their gates</a>
          </p>
        </>
      )}
    </section>
  );
}

function OtherRock({ startUp: { by_rock } }: { readonly startUp: StartUpOutput }) {
  if (by_rock.length === 0) return null;
  return (
    <section>
      <h2>What the rock changes</h2>
      <Table
        caption="Days from filling to the end, this tank with other rock, before any test"
        columns={[
          { name: "rock" },
          { name: "middle", numeric: true },
          { name: "18 of 20 between", numeric: true },
        ]}
        rows={by_rock.map(({ rock, days, this_tank, figure }) => [
          `${ROCK_WORDS[rock]}${this_tank ? " (this tank)" : ""}`,
          <Quantity key={rock} figure={figure}>
            {days.central} days
          </Quantity>,
          `${days.low} to ${days.high} days`,
        ])}
      />
      <p>
        Rock that was kept wet brings bacteria, and what died on it brings ammonia. Dry rock brings neither:
        its bacteria come by chance, from sand, animals or a bottle.
      </p>
    </section>
  );
}
