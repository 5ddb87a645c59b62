/** When a wave comes and what each shelf gives on its day, as figures. docs/model/stocking.md, "Waves". */
import type { FigureScene } from "../larder/figures.ts";
import type { Figure } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, factInput, linkTo, parametersOf, round3, spreadText, workedOut } from "../types/link.ts";
import { SHELF_NAME, SHELVES, type ShelfId } from "../types/shelf.ts";
import type { Plan, Wave } from "./plan-shape.ts";
import type { WaveDraft } from "./waves.ts";

const UNIT = "mg C/d";

export function supplyFigures(plan: Plan, scene: FigureScene): Figure[] {
  return plan.waves.flatMap((wave) => {
    const from = fromFigure(wave, scene);
    const start = plannedShareFigure(wave, from, scene);
    const changing = changingOf(plan);
    return [
      from,
      start,
      ...SHELVES.flatMap((shelf) => {
        const middle = middleFigure(wave, shelf, scene, changing);
        const least = leastFigure(wave, shelf, start, scene, changing);
        return [least, middle, eatenFigure(wave, shelf, scene, middle, changing)];
      }),
    ];
  });
}

/** The two facts that go with most of the larder's spread on the last wave's day. */
export const changingOf = ({ wouldChange }: Plan): string[] =>
  wouldChange.slice(0, 2).map(({ unknown }) => unknown.label);

function fromFigure({ number, day, from, to }: Wave, { facts }: FigureScene): Figure {
  return {
    id: figureId.waveFrom(number),
    label: `wave ${number}: days from the plan's day to the first day of its window`,
    spread: exact(day),
    unit: "d",
    working: {
      formulaKey: "stocking.md#waves",
      formula:
        "the first window opens when the tank is six weeks old, five with film seen, or today; later ones 3, 7 and 20 weeks after it; a wave that brings nobody is left out",
      inputs: [
        factInput(facts, "ageDays", "age of the tank", "d"),
        { label: "plan's day", value: facts.asOf, origin: "stated" },
        workedOut("first and last day of the window", `${from} to ${to}`),
      ],
      parameters: [],
      ...{ animals: [], confidence: "judgement" },
      wouldChange: ["the tank's age", "film seen early"],
    },
  };
}

function plannedShareFigure(wave: Wave, from: Figure, { facts, table }: FigureScene): Figure {
  return {
    id: figureId.plannedShare(wave.number),
    label: `wave ${wave.number}: share of the pessimistic supply that it may plan on`,
    spread: exact(wave.plannedShare),
    unit: "of 1",
    working: {
      formulaKey: "stocking.md#waves",
      formula: "0.6, 0.75, 0.85, 1 by age and by how many waves have been watched, whichever is less",
      inputs: [linkTo(from, "days to its window"), factInput(facts, "ageDays", "age of the tank today", "d")],
      parameters: parametersOf(["rng.planned_share"], table),
      ...{ animals: [], confidence: "judgement", wouldChange: ["the tank's age", "a crew already there"] },
    },
  };
}

function leastFigure(
  { number, plannedShare, larder, draft }: Wave,
  shelf: ShelfId,
  start: Figure,
  scene: FigureScene,
  wouldChange: readonly string[],
): Figure {
  const { pessimistic } = larder.shelves[shelf];
  const left = draft.supply.pessimistic[shelf];
  return {
    id: figureId.waveShelf(number, shelf, "pessimistic"),
    label: `${SHELF_NAME[shelf]}: what wave ${number} may plan on`,
    spread: exact(left),
    unit: UNIT,
    working: {
      formulaKey: "stocking.md#waves",
      formula: "what 15 of 20 runs reach on that day x planned share - what grazing fish take",
      inputs: [
        workedOut("what 15 of 20 runs reach on that day", `${round3(pessimistic)} ${UNIT}`),
        linkTo(start, "planned share"),
        workedOut("taken by grazing fish", `${round3(plannedShare * pessimistic - left)} ${UNIT}`),
        todayInput(shelf, scene),
      ],
      ...{ parameters: [], animals: [], confidence: "computed", wouldChange },
    },
  };
}

function middleFigure(
  { number, larder, draft }: Wave,
  shelf: ShelfId,
  scene: FigureScene,
  wouldChange: readonly string[],
): Figure {
  const { supply } = larder.shelves[shelf];
  const left = draft.supply.central[shelf];
  return {
    id: figureId.waveShelf(number, shelf, "central"),
    label: `${SHELF_NAME[shelf]}: left to the crew on the day of wave ${number}, middle run`,
    spread: exact(left),
    unit: UNIT,
    working: {
      formulaKey: "stocking.md#waves",
      formula: "supply of the middle run on that day - what grazing fish take",
      inputs: [
        workedOut("supply on that day", spreadText(supply, UNIT)),
        workedOut("taken by grazing fish", `${round3(supply.central - left)} ${UNIT}`),
        todayInput(shelf, scene),
      ],
      ...{ parameters: [], animals: [], confidence: "computed", wouldChange },
    },
  };
}

export const todayInput = (shelf: ShelfId, { larder }: FigureScene) => ({
  ...{ label: "supply today", value: spreadText(larder.shelves[shelf].supply, UNIT) },
  ...{ origin: "figure" as const, figure: figureId.supply(shelf) },
});

/** Kinds that live there once a wave has come, and eat from a shelf. */
export const eatersOf = ({ programme, answer }: WaveDraft, shelf: ShelfId) =>
  programme.input.candidates.filter(
    ({ animal }) => animal.diet[shelf] > 0 && (answer.heads.get(animal.id) ?? 0) > 0,
  );

function eatenFigure(
  { number, draft }: Wave,
  shelf: ShelfId,
  scene: FigureScene,
  middle: Figure,
  wouldChange: readonly string[],
): Figure {
  const { answer } = draft;
  const eaters = eatersOf(draft, shelf);
  return {
    id: figureId.waveShelf(number, shelf, "eaten"),
    label: `${SHELF_NAME[shelf]}: eaten by all that live there once wave ${number} has come, middle run`,
    spread: exact(answer.eatenCentral[shelf]),
    unit: UNIT,
    working: {
      formulaKey: "stocking.md#programme",
      formula: "what the heads there take of the supply, within their appetite and the lean of their diets",
      inputs: [
        linkTo(middle, "left to the crew"),
        // Where nobody eats, no animal's facts lead further down.
        ...(eaters.length === 0 ? [todayInput(shelf, scene)] : []),
        ...eaters.map(({ animal: { id, commonName, diet } }) => ({
          ...{
            label: `${answer.heads.get(id)} ${commonName}: share of the diet`,
            value: `${round3(diet[shelf])} of 1`,
          },
          ...{ origin: "figure" as const, figure: figureId.animal(id, `eats_${shelf}`) },
        })),
      ],
      parameters: [],
      ...{ animals: [], confidence: "computed", wouldChange },
    },
  };
}
