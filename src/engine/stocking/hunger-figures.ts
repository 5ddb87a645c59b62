/** Why an animal is left out or cut for want of food, as figures. docs/model/stocking.md, "Programme". */
import type { FigureScene } from "../larder/figures.ts";
import type { Figure, WorkingInput } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, linkTo, round3, spreadText, workedOut } from "../types/link.ts";
import { SHELF_NAME, SHELVES } from "../types/shelf.ts";
import { CHECK_DAYS } from "./check.ts";
import { aloneOf } from "./limits.ts";
import type { Plan } from "./plan-shape.ts";
import { changingOf } from "./wave-supply-figures.ts";
import { leastGroup, type WaveDraft, warmthOf } from "./waves.ts";

const UNIT = "mg C/d";

export function hungerFigures(plan: Plan, scene: FigureScene, need: (id: string) => Figure | null): Figure[] {
  const last = plan.drafts.at(-1);
  return [
    ...(last === undefined
      ? []
      : [offeredFigure(plan, last, scene), ...aloneFigures(plan, last, scene, need)]),
    ...cutFigures(plan),
  ];
}

/** What every shelf offers in 15 of 20 runs by the last wave's day. */
function offeredFigure(plan: Plan, last: WaveDraft, { larder }: FigureScene): Figure {
  return {
    id: figureId.offered(),
    label: "all shelves by the day of the last wave, in 15 of 20 runs",
    spread: exact(SHELVES.reduce((all, shelf) => all + last.supply.pessimistic[shelf], 0)),
    unit: UNIT,
    working: {
      formulaKey: "stocking.md#waves",
      formula: "what 15 of 20 runs reach on each shelf x planned share - what grazing fish take, added up",
      inputs: [
        ...SHELVES.map((shelf) =>
          workedOut(SHELF_NAME[shelf], `${round3(last.supply.pessimistic[shelf])} ${UNIT}`),
        ),
        workedOut("planned share", `${last.date.plannedShare} of 1`),
        {
          ...{ label: "the whole larder today", value: spreadText(larder.total, UNIT) },
          ...{ origin: "figure", figure: figureId.total() },
        },
      ],
      ...{ parameters: [], animals: [], confidence: "computed", wouldChange: changingOf(plan) },
    },
  };
}

/** Kinds that could not live here even alone: the food of their least group against what they could take. */
function aloneFigures(
  plan: Plan,
  last: WaveDraft,
  { facts }: FigureScene,
  need: (id: string) => Figure | null,
): Figure[] {
  const starving = plan.refused.filter(({ animal, reasons }) =>
    reasons.some(({ figure }) => figure === figureId.alone(animal.id)),
  );
  return starving.map(({ animal }): Figure => {
    const group = leastGroup(animal);
    const { needMgC, takesMgC } = aloneOf(animal, group, last, warmthOf(facts));
    const one = need(animal.id);
    return {
      id: figureId.alone(animal.id),
      label: `${animal.commonName}: food that the least group needs`,
      ...{ spread: exact(needMgC), unit: UNIT },
      working: {
        formulaKey: "stocking.md#programme",
        formula:
          "least group x food one needs, against what it could take of its shelves if nothing else ate there",
        inputs: [
          workedOut("least group", `${group} heads`),
          ...(one === null ? [] : [linkTo(one, "food one needs")]),
          workedOut("what its shelves would give it in 15 of 20 runs", `${round3(takesMgC)} ${UNIT}`),
          ...SHELVES.filter((shelf) => animal.diet[shelf] > 0).map(
            (shelf): WorkingInput =>
              workedOut(
                `${SHELF_NAME[shelf]} by the last wave's day`,
                `${round3(last.supply.pessimistic[shelf])} ${UNIT}`,
              ),
          ),
        ],
        parameters: [],
        ...{ animals: [animal.id], confidence: "computed", wouldChange: changingOf(plan) },
      },
    };
  });
}

/** Numbers that the forecast cut: in how many runs the first number was fed. */
function cutFigures(plan: Plan): Figure[] {
  const lastCut = new Map(plan.mends.map((mend) => [mend.id, mend]));
  return [...lastCut.values()].map(({ id, name, from, to, fedOf20 }) => ({
    id: figureId.mend(id),
    label: `${name}: runs of 20 that fed ${from} through ${CHECK_DAYS} days`,
    spread: exact(fedOf20),
    unit: "of 20",
    working: {
      formulaKey: "stocking.md#the-plan-meets-the-forecast",
      formula:
        "runs with at least half alive / what age alone would leave, in twentieths; below 15 the number is cut",
      inputs: [
        workedOut("first number", `${from} heads`),
        workedOut("cut to", `${to} heads`),
        ...plan.mends
          .filter((mend) => mend.id === id)
          .map((mend) => workedOut(`fed of 20 with ${mend.from}`, `${mend.fedOf20} of 20`)),
      ],
      parameters: [],
      ...{ animals: [id], confidence: "computed" as const, wouldChange: changingOf(plan) },
    },
  }));
}
