/** Heads to add and shells to bring, wave by wave and in all, as figures. docs/model/stocking.md, "Programme". */
import type { FigureScene } from "../larder/figures.ts";
import type { Animal } from "../types/animal.ts";
import type { Figure, WorkingInput } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, factInput, linkTo, round3, spreadText, workedOut } from "../types/link.ts";
import { SHELF_NAME, SHELVES } from "../types/shelf.ts";
import type { Plan, PlannedAnimal, Wave } from "./plan-shape.ts";
import { PRICES } from "./prices.ts";
import { changingOf } from "./wave-supply-figures.ts";

type Need = (id: string) => Figure | null;

export function countFigures(
  plan: Plan,
  scene: FigureScene,
  supplies: readonly Figure[],
  need: Need,
): Figure[] {
  const changing = changingOf(plan);
  const rows = plan.waves.flatMap((wave) =>
    wave.animals.map((row) => {
      const count = waveCount(wave, row, { scene, supplies, need, changing });
      const shells = row.spareShells > 0 ? waveShells(wave, row, count) : null;
      return { row, count, shells };
    }),
  );
  const kinds = [...new Map(rows.map(({ row }) => [row.animal.id, row.animal])).values()];
  const totals = kinds.flatMap((animal) => {
    const mine = rows.filter(({ row }) => row.animal.id === animal.id);
    const shells = mine.flatMap(({ shells: one }) => (one === null ? [] : [one]));
    return [
      sum(figureId.count(animal.id), `${animal.commonName}: heads to add in all`, animal, {
        parts: mine.map(({ count }) => count),
        changing,
      }),
      ...(shells.length === 0
        ? []
        : [
            sum(
              figureId.spareShells(animal.id),
              `${animal.commonName}: empty shells to bring in all`,
              animal,
              {
                parts: shells,
                changing: SHELLS_CHANGE,
              },
            ),
          ]),
    ];
  });
  return [...totals, ...rows.flatMap(({ count, shells }) => (shells === null ? [count] : [count, shells]))];
}

const SHELLS_CHANGE = ["empty shells that lie in the tank already", "the heads to add"];

function sum(
  id: string,
  label: string,
  animal: Animal,
  { parts, changing }: { readonly parts: readonly Figure[]; readonly changing: readonly string[] },
): Figure {
  return {
    ...{ id, label, unit: parts[0]!.unit },
    spread: exact(parts.reduce((all, { spread }) => all + spread.central, 0)),
    working: {
      formulaKey: "stocking.md#waves",
      formula: "added up over the waves that bring it",
      inputs: parts.map((part) => linkTo(part)),
      parameters: [],
      ...{ animals: [animal.id], confidence: "computed", wouldChange: changing },
    },
  };
}

interface CountScene {
  readonly scene: FigureScene;
  readonly supplies: readonly Figure[];
  readonly need: Need;
  readonly changing: readonly string[];
}

function waveCount(wave: Wave, { animal, count, binding }: PlannedAnimal, given: CountScene): Figure {
  const { id, commonName, diet, spacingLitresPerAnimal, priceBand } = animal;
  const { scene, supplies, need, changing } = given;
  const link = (figure: string, label: string): WorkingInput[] =>
    supplies.filter((one) => one.id === figure).map((one) => linkTo(one, label));
  const one = need(id);
  const candidate = wave.draft.programme.input.candidates.find((row) => row.animal.id === id);
  return {
    id: figureId.waveCount(wave.number, id),
    label: `${commonName}: heads to add in wave ${wave.number}`,
    spread: exact(count),
    unit: "heads",
    working: {
      formulaKey: "stocking.md#programme",
      formula:
        "the whole numbers that cost least in purchases, food left uneaten and services missing, such that every animal gets its break-even food at the pessimistic supply times the planned share",
      inputs: [
        workedOut("what keeps it from one more", binding.text),
        workedOut("there already", `${candidate?.already ?? 0} heads`),
        ...(one === null ? [] : [linkTo(one, "food one needs")]),
        ...SHELVES.filter((shelf) => diet[shelf] > 0).flatMap((shelf) =>
          link(
            figureId.waveShelf(wave.number, shelf, "pessimistic"),
            `${SHELF_NAME[shelf]}, what the wave may plan on`,
          ),
        ),
        ...link(figureId.plannedShare(wave.number), "planned share"),
        factInput(scene.facts, "displayL", "water of the display", "L"),
        {
          ...{ label: "water for each (habit)", value: spreadText(spacingLitresPerAnimal, "L") },
          ...{ origin: "figure" as const, figure: figureId.animal(id, "spacing") },
        },
        workedOut(
          "price of one (judgement)",
          `${round3(PRICES.perHead + PRICES.perPriceBand * priceBand)}, and ${PRICES.perKind} for the kind`,
        ),
      ],
      parameters: [],
      ...{ animals: [id], confidence: "judgement", wouldChange: changing },
    },
  };
}

function waveShells(wave: Wave, { animal, spareShells }: PlannedAnimal, count: Figure): Figure {
  const each = animal.needs.emptyShellsPerAnimal!;
  return {
    id: figureId.waveShells(wave.number, animal.id),
    label: `${animal.commonName}: empty shells to bring with wave ${wave.number}`,
    spread: exact(spareShells),
    unit: "shells",
    working: {
      formulaKey: "stocking.md#spare-shells",
      formula: "heads x empty shells for each, the middle figure, made whole",
      inputs: [
        linkTo(count, "heads to add"),
        {
          ...{ label: "empty shells for each", value: spreadText(each, "shells"), origin: "figure" },
          figure: figureId.animal(animal.id, "empty_shells"),
        },
      ],
      parameters: [],
      ...{ animals: [animal.id], confidence: "judgement", wouldChange: SHELLS_CHANGE },
    },
  };
}
