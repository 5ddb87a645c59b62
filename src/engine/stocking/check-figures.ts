/** What the forecast says of each kind of the plan, as figures. docs/model/ahead.md, "Alive". */
import type { Figure, Working } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, workedOut } from "../types/link.ts";
import { CHECK_DAYS, type KindCheck } from "./check.ts";
import type { Plan } from "./plan-shape.ts";
import { changingOf } from "./wave-supply-figures.ts";

export function checkFigures(plan: Plan): Figure[] {
  const { check } = plan;
  if (check === null) return [];
  const changing = changingOf(plan);
  return check.kinds.flatMap((kind) => {
    const animal = plan.kinds.find((one) => one.animal.id === kind.id)?.animal;
    const name = animal?.commonName ?? kind.id;
    return figuresOf(kind, name, check.forecast.members, animal?.annualLossFraction.central ?? 0, changing);
  });
}

function figuresOf(
  kind: KindCheck,
  name: string,
  members: number,
  lossAYear: number,
  changing: readonly string[],
): Figure[] {
  const { id, heads, day, aliveOf20, agedOf20, condition } = kind;
  const asked = [
    workedOut("heads", String(heads)),
    workedOut("day asked for", `day ${day} from the plan's day`),
    workedOut("runs", String(members)),
  ];
  const working = (formula: string, inputs: Working["inputs"], wouldChange: readonly string[]): Working => ({
    ...{ formulaKey: "ahead.md#alive", formula, inputs, parameters: [], animals: [id] },
    ...{ confidence: "computed", wouldChange },
  });
  const by = `${CHECK_DAYS} days after the last arrival`;
  const aged: Figure = {
    id: figureId.checkAged(id),
    label: `${name}: runs of 20 with at least half alive ${by}, if age alone took any`,
    ...{ spread: exact(agedOf20), unit: "of 20" },
    working: working(
      "chance that at least half of so many heads live, each dying of age alone, in twentieths",
      [
        ...asked.slice(0, 2),
        {
          ...{ label: "share that age takes in a year", value: `${lossAYear} 1/a`, origin: "figure" },
          figure: figureId.animal(id, "yearly_loss"),
        },
      ],
      ["how long they live", "the number of heads: of few, age soon takes half"],
    ),
  };
  const alive: Figure = {
    id: figureId.checkAlive(id),
    label: `${name}: runs of 20 with at least half alive ${by}`,
    ...{ spread: exact(aliveOf20), unit: "of 20" },
    working: working(
      "runs of the ensemble in which half of the heads live on that day, out of all, in twentieths",
      [
        ...asked,
        {
          ...{ label: "if age alone took any", value: `${agedOf20} of 20`, origin: "figure" },
          figure: aged.id,
        },
      ],
      changing,
    ),
  };
  if (condition === null) return [aged, alive];
  const reserve: Figure = {
    id: figureId.checkCondition(id),
    label: `${name}: how full the reserve of the living is ${by}, middle run`,
    ...{ spread: exact(condition), unit: "of 1" },
    working: working("reserve of the living / full reserve, the middle of the runs", asked, changing),
  };
  return [aged, alive, reserve];
}
