/**
 * What to ask of the shop for the next wave: whole packs and never more than the plan, by which day, what stands in for a
 * kind that is not to be had, and what is on order that the plan no longer wants. docs/model/orders.md.
 * Limits: the first wave alone; a later one is planned anew once this one has come. It knows no shop and no price.
 */
import { animalById } from "../../catalogue/index.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, workedOut } from "../../engine/types/link.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { ShopTerms } from "../../engine/types/tank.ts";
import type { AnimalRow } from "../animals/fit-words.ts";
import type { Told } from "../sentence.ts";
import { told } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { dateWords } from "../words.ts";
import { type OnOrder, onOrder } from "./on-order.ts";

export interface OrderLine {
  readonly animal: string;
  readonly name: string;
  readonly planned: number;
  readonly onOrder: number;
  /** Heads in a pack; null where they are sold one by one, or nobody said. */
  readonly pack: number | null;
  /** Whole packs within the plan, less what is on order. */
  readonly ask: Told;
  /** Heads of the plan that no whole pack holds. */
  readonly left: number;
  /** Kinds of its group and much the same diet that fit this tank too, the nearest first. */
  readonly standIns: readonly { readonly id: string; readonly name: string }[];
}

/** On order, and not in the wave: the plan has moved on since. */
export interface Stray extends OnOrder {
  readonly name: string;
}

export interface Ordering {
  readonly wave: number;
  readonly lines: readonly OrderLine[];
  /** Day to ask by, so that they come on the first day of the wave; null where nobody said how long it takes. */
  readonly askBy: Told | null;
  readonly least: { readonly heads: number; readonly short: number } | null;
  readonly figures: readonly Figure[];
}

/** Shares of the diet that two kinds must have in common, for one to stand in for the other. Judgement. */
const ALIKE = 0.5;
const MOST_STAND_INS = 2;

export function orderingOf(
  { waves, animals }: Pick<TankAnswers, "waves" | "animals">,
  record: TankRecord,
  shop: ShopTerms | undefined,
): Ordering | null {
  const wave = waves.waves[0];
  if (wave === undefined) return null;
  const open = new Map(onOrder(record).map((one) => [one.animal, one.heads]));
  const figures: Figure[] = [];
  const lines = wave.animals.map((animal): OrderLine => {
    const pack = shop?.packs.find((one) => one.animal === animal.id)?.heads ?? null;
    const asked = open.get(animal.id) ?? 0;
    const wanted = Math.max(0, animal.count - asked);
    const ask = pack === null ? wanted : wanted - (wanted % pack);
    const figure = askFigure(animal, { asked, pack, ask });
    figures.push(figure);
    return {
      ...{ animal: animal.id, name: animal.name, planned: animal.count, onOrder: asked, pack },
      ask: told(String(ask), figure.id),
      left: wanted - ask,
      standIns: standInsFor(animal.id, animals.animals),
    };
  });
  const heads = lines.reduce((sum, { ask }) => sum + Number(ask.text), 0);
  const least = shop?.leastHeads ?? null;
  const askBy = shop?.leadDays == null ? null : askByFigure(wave, shop.leadDays, record);
  if (askBy !== null) figures.push(askBy.figure);
  return {
    wave: wave.number,
    lines,
    askBy: askBy === null ? null : told(dateWords(askBy.day), askBy.figure.id),
    least: least === null || heads === 0 ? null : { heads: least, short: Math.max(0, least - heads) },
    figures,
  };
}

/** What is on order of kinds, or in numbers, that the next wave doesn't have. */
export function straysOf({ waves }: Pick<TankAnswers, "waves">, record: TankRecord): readonly Stray[] {
  const planned = new Map(waves.waves[0]?.animals.map(({ id, count }) => [id, count]) ?? []);
  return onOrder(record).flatMap((one) => {
    const heads = one.heads - (planned.get(one.animal) ?? 0);
    const name = animalById.get(one.animal)?.commonName ?? one.animal;
    return heads > 0 ? [{ ...one, heads, name }] : [];
  });
}

type Wave = WavesOutput["waves"][number];
type WaveAnimal = Wave["animals"][number];

interface Asked {
  readonly asked: number;
  readonly pack: number | null;
  readonly ask: number;
}

function askFigure({ id, name, count, figures }: WaveAnimal, { asked, pack, ask }: Asked): Figure {
  return {
    id: figureId.care("orders", `${id}.ask`),
    ...{ label: `${name}: heads to ask for`, spread: exact(ask), unit: "heads" },
    working: {
      formulaKey: "orders.md#whole-packs",
      formula: "whole packs of what is planned less what is on order",
      inputs: [
        { label: "planned", value: String(count), origin: "figure", figure: figures.count },
        workedOut("on order", String(asked)),
        pack === null
          ? { label: "heads in a pack", value: "1: sold one by one", origin: "assumed" }
          : { label: "heads in a pack", value: String(pack), origin: "stated" },
      ],
      ...{ parameters: [], animals: [], confidence: "computed" },
      wouldChange: ["the plan", "the size of a pack"],
    },
  };
}

function askByFigure(
  wave: Wave,
  leadDays: number,
  { absences = [] }: TankRecord,
): { readonly day: string; readonly figure: Figure } {
  const days = Math.ceil(leadDays);
  const wanted = addDays(wave.from, -days);
  // Nobody looks at the gate while away: it is asked for on coming back, and comes so much later.
  const away = absences.find(({ from, to }) => from <= wanted && wanted < to);
  const day = away?.to ?? wanted;
  return {
    day,
    figure: {
      id: figureId.care("orders", "ask_by"),
      ...{ label: "days before the wave to ask", spread: exact(days), unit: "d" },
      working: {
        formulaKey: "orders.md#the-day-to-ask",
        formula: "first day of the wave less days from asking to coming",
        inputs: [
          { label: "first day of the wave", value: wave.from, origin: "figure", figure: wave.figures.from },
          { label: "days from asking to coming", value: `${leadDays} d`, origin: "stated" },
          ...(away === undefined ? [] : [workedOut("you are away", `${away.from} to ${away.to}`)]),
          workedOut("day to ask by", day),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        wouldChange: ["the gate: it is looked at on the day of asking, and again on arrival"],
      },
    },
  };
}

function standInsFor(id: string, rows: readonly AnimalRow[]): OrderLine["standIns"] {
  const self = rows.find((row) => row.id === id);
  const own = self?.eats ?? {};
  const alike = (row: AnimalRow): number =>
    Object.entries(own).reduce((sum, [shelf, share]) => sum + Math.min(share, row.eats[shelf] ?? 0), 0);
  return rows
    .filter(
      (row) =>
        row.id !== id && row.group === self?.group && row.fit?.status === "fits" && row.role === "crew",
    )
    .map((row) => ({ id: row.id, name: row.name, alike: alike(row) }))
    .filter(({ alike: share }) => share >= ALIKE)
    .toSorted((a, b) => b.alike - a.alike)
    .slice(0, MOST_STAND_INS)
    .map(({ id: standIn, name }) => ({ id: standIn, name }));
}
