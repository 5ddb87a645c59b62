/** A tank and its record by hand, for tests of what is advised: nothing is in it but what a test puts there. */
import { MEASURES } from "../../../contract/daybook/read-reading.ts";
import { MEASURED } from "../../../contract/daybook/reading.ts";
import { addDays } from "../../../contract/quantity/calendar.ts";
import type {
  Happening,
  HeadsChanged,
  Observation,
  ReadingSeen,
  TankRecord,
} from "../../../engine/types/record.ts";
import type { LatestReading } from "../latest.ts";
import type { BenchScene } from "../next.ts";

export const TODAY = "2026-06-15";
export const ago = (days: number): string => addDays(TODAY, -days);

export const reading = (change: Partial<LatestReading>): LatestReading => ({
  ...{ quantity: "no3_mg_per_l", label: "Nitrate", text: "10", on: TODAY, ageDays: 0 },
  ...{ flag: null, said: null, entry: null, count: 1 },
  ...change,
});
/** Every quantity measured today, and nothing odd about any. */
export const fine: readonly LatestReading[] = MEASURED.map((quantity) =>
  reading({ quantity, label: MEASURES[quantity].label }),
);

type Facts = BenchScene["facts"];
export const facts = (change: Partial<Facts> = {}): Facts => ({
  ...{ trouble: null, medicines: [], asOf: TODAY, readings: [] },
  present: [{ id: "trochus-snail", count: 6, on: null }],
  fishWetG: { low: 5, central: 5, high: 5, origin: "stated", how: "typed" },
  ...change,
});

export const record = (
  observations: readonly Observation[] = [],
  happenings: readonly Happening[] = [],
  declined: TankRecord["declined"] = [],
): TankRecord => ({ observations, happenings, declined, asOf: TODAY });

export const scene = (change: Partial<BenchScene> = {}): BenchScene => ({
  ...{ facts: facts(), record: record(), latest: fine, waves: null, lists: [], today: TODAY },
  answeredOn: TODAY,
  ...change,
});

let entries = 0;
const entry = () => {
  entries += 1;
  return `entry-${entries}`;
};
type Of<Kind extends string> = Extract<Observation | Happening, { readonly kind: Kind }>;

export const seen = (
  quantity: ReadingSeen["quantity"],
  central: number,
  days: number,
  change: Partial<ReadingSeen> = {},
): ReadingSeen => ({
  ...{ kind: "reading", entry: entry(), on: ago(days), quantity, censored: null, step: null, flag: null },
  value: { low: central, central, high: central },
  ...change,
});
export const growth = (which: Of<"growth">["growth"], score: number, days: number): Of<"growth"> => ({
  ...{ kind: "growth", entry: entry(), on: ago(days), growth: which, score, traits: {} },
});
export const sign = (
  which: Of<"sign">["sign"],
  days: number,
  change: Partial<Of<"sign">> = {},
): Of<"sign"> => ({
  ...{ kind: "sign", entry: entry(), on: ago(days), sign: which, animal: null, count: null, kindsSeen: null },
  ...{ hoursFromLightsOut: null, traits: {} },
  ...change,
});
export const heads = (animal: string, count: number, days: number): Of<"heads"> => ({
  ...{ kind: "heads", entry: entry(), on: ago(days), animal, seen: count, about: false },
  ...{ hoursFromLightsOut: 1, torch: true, foodOffered: null },
});
export const filmBack = (days: number, agoDays: number): Of<"film_back"> => ({
  ...{ kind: "film_back", entry: entry(), on: ago(agoDays), days },
});
export const moved = (
  kind: HeadsChanged["kind"],
  count: number,
  days: number,
  animal = "trochus-snail",
): HeadsChanged => ({
  ...{ kind, entry: entry(), on: ago(days), animal, count, condition: null, bodyRemoved: null, wave: null },
});
export const chore = (which: Of<"chore">["chore"], days: number): Of<"chore"> => ({
  ...{ kind: "chore", entry: entry(), on: ago(days), chore: which, share: null },
});
export const outage = (of: Of<"outage">["of"], hours: number, days: number): Of<"outage"> => ({
  ...{ kind: "outage", entry: entry(), on: ago(days), of, hours },
});
export const treated = (substance: string, step: "started" | "ended", days: number): Of<"treated"> => ({
  ...{ kind: "treated", entry: entry(), on: ago(days), substance, step },
});
