/**
 * Mouths as figures: what one needs, what all of a kind need and could eat, what is wanted of a shelf, and how supply
 * and wants compare. docs/model/stocking.md, "Need"; docs/model/larder.md, "Balance".
 */
import type { Animal } from "../types/animal.ts";
import type { Figure } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, factInput, linkTo, parametersOf, round3, workedOut } from "../types/link.ts";
import { RATION_MG_C, SHELF_NAME, SHELVES, type ShelfId } from "../types/shelf.ts";
import { changing, type FigureScene, supplyFigure } from "./figures.ts";
import { type Mouth, wantedFrom } from "./mouths.ts";

const UNIT = "mg C/d";
const SIZE = "the animal's size: those of one name differ several times in weight";

type Known = Pick<FigureScene, "facts" | "table">;

/** Food that one animal needs in this tank to keep its weight. */
export function needFigure(animal: Animal, warmth: number, { facts, table }: Known): Figure {
  const need = animal.breakEvenIntakeMgCPerDay * warmth;
  const at25 = `${round3(animal.breakEvenIntakeMgCPerDay)} ${UNIT}`;
  return {
    id: figureId.need(animal.id),
    label: `${animal.commonName}: food one needs to keep its weight`,
    spread: exact(need),
    unit: UNIT,
    working: {
      formulaKey: "stocking.md#need",
      formula: "break-even intake at 25 C x 2 per 10 C warmer; a ration is 10 mg C",
      inputs: [
        {
          ...{ label: "break-even intake at 25 C", value: at25, origin: "figure" },
          figure: figureId.animal(animal.id, "break_even"),
        },
        factInput(facts, "temperatureC", "temperature", "C"),
        workedOut("in rations", `${round3(need / RATION_MG_C)} rations a day`),
      ],
      parameters: parametersOf(["q10anim"], table),
      animals: [animal.id],
      confidence: "computed",
      wouldChange: [SIZE, "the temperature"],
    },
  };
}

/** Every figure of the mouths there, and of what stands against their wants. */
export function mouthFigures(mouths: readonly Mouth[], warmth: number, scene: FigureScene): Figure[] {
  const ofMouths = mouths.flatMap((mouth) => figuresOf(mouth, warmth, scene));
  const ofShelves = SHELVES.flatMap((shelf) => {
    const wanted = wantedFigure(shelf, mouths, ofMouths);
    return [wanted, balanceFigure(shelf, wanted, scene)];
  });
  return [...ofMouths, ...ofShelves];
}

function figuresOf(
  { animal, heads, needMgC, mostMgC, byShelfMgC }: Mouth,
  warmth: number,
  scene: FigureScene,
): Figure[] {
  const { id, commonName, intakeMgCPerDay } = animal;
  const counted = {
    ...{ label: "heads", value: `${heads} heads` },
    ...{ origin: "figure" as const, figure: figureId.present(id) },
  };
  const one = needFigure(animal, warmth, scene);
  const all: Figure = {
    ...{ id: figureId.mouthNeed(id), label: `${commonName}: food all of them need`, spread: exact(needMgC) },
    unit: UNIT,
    working: {
      ...{ formulaKey: "stocking.md#need", formula: "heads x what one needs to keep its weight" },
      ...{ inputs: [counted, linkTo(one, "food one needs")], parameters: [], animals: [id] },
      ...{ confidence: "computed", wouldChange: ["a head count", SIZE] },
    },
  };
  const high = `${round3(intakeMgCPerDay.high)} ${UNIT}`;
  const most: Figure = {
    ...{
      id: figureId.mouthMost(id),
      label: `${commonName}: most that all of them eat`,
      spread: exact(mostMgC),
    },
    unit: UNIT,
    working: {
      formulaKey: "stocking.md#need",
      formula: "heads x the upper end of what one eats with plenty on offer x 2 per 10 C warmer",
      inputs: [
        counted,
        workedOut("upper end of what one eats at 25 C", high),
        {
          ...{ label: "what one eats at 25 C", value: `${round3(intakeMgCPerDay.central)} ${UNIT}` },
          ...{ origin: "figure", figure: figureId.animal(id, "intake") },
        },
        factInput(scene.facts, "temperatureC", "temperature", "C"),
      ],
      parameters: parametersOf(["q10anim"], scene.table),
      ...{ animals: [id], confidence: "computed", wouldChange: ["a head count", SIZE] },
    },
  };
  const shelves = SHELVES.filter((shelf) => animal.diet[shelf] > 0).map(
    (shelf): Figure => ({
      id: figureId.mouthShelf(id, shelf),
      label: `${commonName}: what all of them want of ${SHELF_NAME[shelf]}`,
      spread: exact(byShelfMgC[shelf]),
      unit: UNIT,
      working: {
        formulaKey: "stocking.md#need",
        formula: "food all of them need x share of their diet",
        inputs: [
          linkTo(all, "food all of them need"),
          {
            ...{ label: "share of the diet", value: `${round3(animal.diet[shelf])} of 1`, origin: "figure" },
            figure: figureId.animal(id, `eats_${shelf}`),
          },
        ],
        ...{ parameters: [], animals: [id], confidence: "computed" },
        wouldChange: ["a head count", "what they are seen to eat"],
      },
    }),
  );
  return [one, all, most, ...shelves];
}

function wantedFigure(shelf: ShelfId, mouths: readonly Mouth[], known: readonly Figure[]): Figure {
  const eaters = mouths.filter(({ animal }) => animal.diet[shelf] > 0);
  const links = eaters.flatMap(({ animal, heads }) =>
    known
      .filter(({ id }) => id === figureId.mouthShelf(animal.id, shelf))
      .map((figure) => linkTo(figure, `${heads} ${animal.commonName}`)),
  );
  const nobody = workedOut("animals that eat from it", "none live here");
  return {
    id: figureId.wanted(shelf),
    label: `${SHELF_NAME[shelf]}: what the animals there want of it`,
    spread: exact(wantedFrom(mouths, shelf)),
    unit: UNIT,
    working: {
      formulaKey: "larder.md#balance",
      formula: "what each kind needs to keep its weight x the share of its diet that this is, added up",
      inputs: links.length === 0 ? [nobody] : links,
      ...{ parameters: [], animals: [], confidence: "computed" },
      wouldChange: ["a head count", "which animals live here"],
    },
  };
}

function balanceFigure(shelf: ShelfId, wanted: Figure, scene: FigureScene): Figure {
  const supply = supplyFigure(shelf, scene);
  const less = wanted.spread.central;
  const { low, central, high } = supply.spread;
  return {
    id: figureId.balance(shelf),
    label: `${SHELF_NAME[shelf]}: over or short`,
    spread: { low: low - less, central: central - less, high: high - less },
    unit: UNIT,
    working: {
      formulaKey: "larder.md#balance",
      formula: "supply less what is wanted",
      inputs: [linkTo(supply, "supply"), linkTo(wanted, "wanted")],
      ...{ parameters: [], animals: [], confidence: "computed" },
      wouldChange: changing(shelf, scene),
    },
  };
}
