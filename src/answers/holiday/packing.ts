/** What is known of a holiday without a run: how many portions to pack, of what weight, for which days, and who bears less. */
import { animalById } from "../../catalogue/index.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { fedOn } from "../../engine/ahead/away.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, factInput, spreadText, workedOut } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { careFigures, roughly } from "../numbers-part.ts";
import { type Told, told } from "../sentence.ts";

/** As the form has it, read. */
export interface HolidaySpan {
  /** ISO dates: the day of leaving, and the day of coming back. */
  readonly from: string;
  readonly to: string;
  /** The sitter feeds on every so many days. */
  readonly sitterEvery: number;
}

export interface Packing {
  /** False where nobody said how much goes in: then a bag is a usual day's food, and no weight is told to a sitter. */
  readonly weighed: boolean;
  /** A bag's weight. */
  readonly portion: Told;
  /** What the portion is of: "dry pellet and frozen mysis". */
  readonly food: string;
  readonly bags: Told;
  /** ISO dates on which the sitter feeds. */
  readonly feedOn: readonly string[];
  /** Of those that live here, whose full reserve at its worst lasts no longer: name and days. */
  readonly short: readonly { readonly name: string; readonly lasts: Told }[];
  readonly figures: readonly Figure[];
}

export const HOLIDAY_AT = "leaving-home";
export const holidayFigure = careFigures("holiday", "feeding.md");

const DAY_MS = 86_400_000;
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

export function packingOf(facts: TankFacts, { from, to, sitterEvery }: HolidaySpan): Packing {
  const days = daysBetween(from, to);
  const feedOn = Array.from({ length: days }, (_, d) => d)
    .filter((d) => fedOn("sitter", d, sitterEvery) > 0)
    .map((d) => addDays(from, d));
  const portion = holidayFigure("portion", {
    ...{ label: "food of one packed portion, as fed", spread: facts.feedGPerDay, unit: "g", at: HOLIDAY_AT },
    formula: "a usual day's feed",
    inputs: [factInput(facts, "feedGPerDay", "feed a day, as fed", "g/d")],
    ...{ confidence: "computed", wouldChange: ["what you said of feeding"] },
  });
  const bags = holidayFigure("bags", {
    ...{ label: "portions to pack", spread: exact(feedOn.length), unit: "portions", at: HOLIDAY_AT },
    formula: "days away on which the sitter feeds, not the day of leaving",
    inputs: [
      workedOut("leaving and coming back", `${from} and ${to}`),
      workedOut("the sitter feeds", sitterEvery === 1 ? "daily" : `every ${sitterEvery} days`),
    ],
    ...{ confidence: "computed", wouldChange: ["the dates", "how often the sitter feeds"] },
  });
  return {
    ...{
      weighed: facts.feedGPerDay.origin !== "assumed",
      portion: roughly(portion),
      food: facts.feedNMgPerG.how,
      feedOn,
    },
    bags: told(`${feedOn.length} ${feedOn.length === 1 ? "portion" : "portions"}`, bags.id),
    ...{ short: shortOf(facts, days), figures: [portion, bags] },
  };
}

function shortOf({ present }: TankFacts, days: number): Packing["short"] {
  return present
    .flatMap(({ id, count }) => {
      const animal = count > 0 ? animalById.get(id) : undefined;
      return animal === undefined || animal.starvationToleranceDays.low > days ? [] : [animal];
    })
    .toSorted((a, b) => a.starvationToleranceDays.low - b.starvationToleranceDays.low)
    .map(({ id, commonName, starvationToleranceDays: { low, central, high } }) => {
      const whole = { low: Math.round(low), central: Math.round(central), high: Math.round(high) };
      return {
        name: commonName,
        lasts: told(spreadText(whole, "days"), figureId.animal(id, "without_food")),
      };
    });
}
