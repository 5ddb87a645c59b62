/** Figures of start-up, each with its working. docs/model/start-up.md. */
import type { StartUpOutput } from "../../contract/output/start-up.ts";
import type { Ends } from "../../engine/care/start-up/ends.ts";
import { START_UP } from "../../engine/care/start-up/judgement.ts";
import { bandOf } from "../../engine/numeric/quantile.ts";
import type { Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, factInput, parametersOf, round3, spreadText, workedOut } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TABLE } from "../figures/table.ts";
import { CHLORIDE_PER_N } from "./dose.ts";
import { ROCK_WORDS } from "./words.ts";

/** Parameters that a start-up hangs on most; all of the balance's enter. */
const RESTS_ON = ["muA", "muN", "bA", "bN", "KT", "KI", "gamA", "gamN", "colonised"] as const;
const PUBLISHED = ["nit.startup.days_unseeded", "nit.startup.days_seeded"] as const;
const WOULD_CHANGE = ["a test of ammonia and nitrite, dated", "a dose of ammonia and a test a day later"];

export function startUpFigures(output: StartUpOutput, ends: Ends | null, facts: TankFacts): Figure[] {
  return [
    ...(ends === null || output.end === null ? [] : endFigures(output, ends, facts)),
    ...(output.runs === null ? [] : runFigures(output.runs, facts)),
    ...output.by_rock.map(
      ({ rock, days, figure }): Figure => ({
        ...{ id: figure, label: `days from filling to the end of start-up, ${ROCK_WORDS[rock]}` },
        ...{ spread: days, unit: "d" },
        working: {
          formulaKey: "start-up.md#other-rock",
          formula:
            "the same tank from its filling, empty of animals and before any test: 5, 50 and 95 % of the versions",
          inputs: [
            workedOut("rock", ROCK_WORDS[rock]),
            ...tankInputs(facts),
            workedOut("ends within", `${START_UP.endsWithinDays[rock]} days, or the version is left out`),
          ],
          ...{ parameters: parametersOf([...RESTS_ON, ...PUBLISHED], TABLE), animals: [] },
          ...{ confidence: "judgement", wouldChange: ["what the rock brings with it", "the temperature"] },
        },
      }),
    ),
    ...(output.dose === null ? [] : doseFigures(output.dose, facts)),
  ];
}

const tankInputs = (facts: TankFacts): WorkingInput[] => [
  factInput(facts, "waterL", "water", "L"),
  factInput(facts, "rockKg", "rock", "kg"),
  factInput(facts, "temperatureC", "temperature", "C"),
];

function endFigures({ end, versions }: StartUpOutput, ends: Ends, facts: TankFacts): Figure[] {
  const days = ends.ended.map(({ day }) => day);
  const common = {
    formulaKey: "start-up.md#the-end",
    animals: [],
    confidence: "judgement",
    wouldChange: WOULD_CHANGE,
    parameters: parametersOf([...RESTS_ON, ...PUBLISHED], TABLE),
  } as const;
  const inputs: WorkingInput[] = [
    factInput(facts, "ageDays", "days since it was filled", "d"),
    ...tankInputs(facts),
    workedOut("versions of the tank", `${versions?.drawn ?? 0}, ${versions?.left ?? 0} of them done in time`),
    workedOut("in time", `within ${ends.withinDays} days from today`),
    workedOut("the daybook", versions?.taught === true ? "has taught the runs" : "has not taught the runs"),
    workedOut("dose of the test", `${START_UP.testDoseMgNPerL} mg N/L`),
    workedOut(
      "gone means below",
      `${START_UP.readable.tan} mg N/L of ammonia and ${START_UP.readable.no2} mg N/L of nitrite`,
    ),
  ];
  const done: Figure = {
    ...{ id: figureId.care("start_up", "end"), label: "days until start-up is done" },
    ...{ spread: bandOf(days), unit: "d" },
    working: {
      ...common,
      formula: "in each version the first day on which a dose was gone within a day, and nitrite with it",
      inputs,
    },
  };
  return [
    done,
    ...(end?.by ?? []).map(
      ({ on, of_20, figure }): Figure => ({
        ...{ id: figure, label: `start-up done by ${on}`, spread: exact(of_20), unit: "of 20" },
        working: {
          ...common,
          formula: "share of the versions that are done by that day, in twentieths",
          inputs: [
            {
              ...workedOut("days until it is done", spreadText(done.spread, "d")),
              origin: "figure",
              figure: done.id,
            },
            ...inputs,
          ],
        },
      }),
    ),
  ];
}

function runFigures(runs: NonNullable<StartUpOutput["runs"]>, facts: TankFacts): Figure[] {
  return (["ammonia", "nitrite"] as const).map((what): Figure => {
    const rows = runs[what];
    const on = (day: number) => bandOf(rows.map((row) => row[day] ?? 0));
    const last = runs.days.length - 1;
    return {
      ...{ id: runs.figures[what], label: `${what} over twenty runs, on ${runs.days[last]}` },
      ...{ spread: on(last), unit: "mg N/L" },
      working: {
        formulaKey: "start-up.md#the-runs",
        formula:
          "the balance of the tank run day by day; twenty versions that stand for all that are done in time",
        inputs: [
          ...tankInputs(facts),
          workedOut(
            "a usual kit shows it from",
            `${round3(what === "ammonia" ? runs.readable_ammonia : runs.readable_nitrite)} mg N/L on`,
          ),
          ...runs.days.flatMap((date, day) =>
            day % 7 === 0 ? [workedOut(date, spreadText(on(day), "mg N/L"))] : [],
          ),
        ],
        parameters: parametersOf(RESTS_ON, TABLE),
        ...{ animals: [], confidence: "judgement", wouldChange: WOULD_CHANGE },
      },
    };
  });
}

function doseFigures(dose: NonNullable<StartUpOutput["dose"]>, facts: TankFacts): Figure[] {
  const size: Figure = {
    ...{ id: dose.figures.dose, label: "dose of the test", spread: exact(dose.mg_n_per_l), unit: "mg N/L" },
    working: {
      formulaKey: "start-up.md#the-test",
      formula: "set by this program, as much as bacteria that have grown take up within a day",
      inputs: [workedOut("usual dose", "1 to 2 mg N/L: common practice, no source")],
      // What those bacteria take up goes by these.
      ...{ parameters: parametersOf(RESTS_ON, TABLE), animals: [], confidence: "judgement" },
      wouldChange: ["what the tank will be given a day once animals live there"],
    },
  };
  const link: WorkingInput = {
    ...{ label: size.label, value: `${dose.mg_n_per_l} mg N/L`, origin: "figure", figure: size.id },
  };
  return [
    size,
    {
      ...{ id: dose.figures.salt, label: "pure ammonium chloride for one dose" },
      ...{ spread: dose.ammonium_chloride_g, unit: "g" },
      working: {
        formulaKey: "start-up.md#the-test",
        formula: "water x dose x mass of ammonium chloride that holds a gram of nitrogen",
        inputs: [
          link,
          factInput(facts, "waterL", "water", "L"),
          workedOut(
            "ammonium chloride for a g of nitrogen",
            `${round3(CHLORIDE_PER_N)} g (molar masses 53.49 and 14.01)`,
          ),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        wouldChange: ["the volume of water", "how pure the salt is"],
      },
    },
    {
      ...{ id: dose.figures.food, label: "dry food that holds as much nitrogen" },
      ...{ spread: dose.dry_food_g, unit: "g" },
      working: {
        formulaKey: "start-up.md#the-test",
        formula: "water x dose / nitrogen in a gram of food",
        inputs: [
          link,
          factInput(facts, "waterL", "water", "L"),
          factInput(facts, "feedNMgPerG", "nitrogen in the feed", "mg/g"),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        wouldChange: ["the volume of water", "the protein of the food"],
      },
    },
  ];
}
