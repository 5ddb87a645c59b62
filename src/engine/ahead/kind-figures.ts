/** The life of one kind in the weeks ahead, as figures. docs/model/ahead.md, "Alive". */
import type { Animal } from "../types/animal.ts";
import type { Spread } from "../types/estimate.ts";
import type { Figure, Working } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, linkTo, parametersOf, round3, spreadText, workedOut } from "../types/link.ts";
import type { Survival } from "./chances.ts";
import { type AheadScene, type WeekBands, weekRows } from "./figures.ts";

export interface KindFigured extends Survival {
  readonly animal: Animal;
  readonly heads: number;
  readonly week: number;
  readonly days: number;
  readonly condition: Spread | null;
}

/** Heads, life and condition of one kind; bands by week of its heads and its reserve. */
export function kindFigures(
  kind: KindFigured,
  heads: WeekBands,
  reserve: WeekBands,
  scene: AheadScene,
  wouldChange: readonly string[],
): Figure[] {
  const { animal, week, days, condition } = kind;
  const on = `on ${scene.dateOf(week)}`;
  const name = animal.commonName;
  const asked = [
    workedOut("heads once all have come", `${kind.heads} heads`),
    workedOut("day asked for", `${scene.dateOf(week)}, ${days} days after the last arrival`),
    workedOut("runs", String(scene.members)),
  ];
  const figure = (
    what: Parameters<typeof figureId.kind>[1],
    label: string,
    spread: Spread,
    unit: string,
    working: Pick<Working, "formula" | "inputs"> & Partial<Working>,
  ): Figure => ({
    ...{ id: figureId.kind(animal.id, what), label: `${name}: ${label}`, spread, unit },
    working: {
      ...{ formulaKey: "ahead.md#alive", parameters: [], animals: [animal.id] },
      ...{ confidence: "computed", wouldChange, ...working },
    },
  });
  const aged = figure(
    "aged",
    `runs of 20 with half or more alive ${on} if age alone took any`,
    exact(kind.agedOf20),
    "of 20",
    {
      formula: "chance that at least half of so many heads live, each dying of age alone, in twentieths",
      inputs: [
        ...asked.slice(0, 2),
        {
          label: "share that age takes in a year",
          value: spreadText(animal.annualLossFraction, "1/a"),
          ...{ origin: "figure", figure: figureId.animal(animal.id, "yearly_loss") },
        },
      ],
      wouldChange: ["how long they live", "the number of heads: of few, age soon takes half"],
    },
  );
  const there = figure("heads", `heads alive on the last day of the runs`, heads.at(-1)!, "heads", {
    formula: "heads alive in each run, then the band over the runs",
    inputs: [...asked.slice(0, 1), ...weekRows(heads, "heads", scene)],
  });
  const alive = figure("alive", `runs of 20 with half or more alive ${on}`, exact(kind.aliveOf20), "of 20", {
    formula: "runs in which at least half of the heads live on that day, out of all, in twentieths",
    inputs: [...asked, linkTo(there, "heads alive on the last day"), linkTo(aged, "if age alone took any")],
    parameters: parametersOf(["m1", "hc", "hs", "phi0"], scene.table),
  });
  const starves = figure(
    "starves",
    `runs of 20 that hunger or poison costs it by then`,
    exact(kind.starvesOf20),
    "of 20",
    {
      formula: "20 x (1 - runs with half alive / runs that age alone would leave), never below nought",
      inputs: [
        linkTo(alive, "with half or more alive"),
        linkTo(aged, "if age alone took any"),
        ...asked.slice(0, 2),
      ],
    },
  );
  const full =
    condition === null
      ? []
      : [
          figure("condition", `how full the reserve of the living is ${on}`, condition, "of 1", {
            formula: "reserve of the living / full reserve, the band over the runs in which any live",
            inputs: [
              ...asked,
              workedOut("full", `${round3(animal.starvationToleranceDays.central)} days without food`),
              ...weekRows(reserve, "of 1", scene),
            ],
            parameters: parametersOf(["phi0", "hs"], scene.table),
          }),
        ];
  return [aged, alive, starves, there, ...full];
}
