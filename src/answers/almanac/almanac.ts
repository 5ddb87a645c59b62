/**
 * All dated care of one tank, joined: the almanac's own parts, then those of other parts; no duty twice, the earliest
 * first. Pure: today is handed in. docs/almanac.md
 */
import type { Figure } from "../../engine/types/figure.ts";
import { arrivalDates } from "../arrivals/apart-dates.ts";
import { comingDates } from "../errands/coming-dates.ts";
import { withConfidence } from "../figures/confidence.ts";
import { absencesAhead } from "../holiday/absences.ts";
import { absenceDates } from "../holiday/care-dates.ts";
import type { RecordScene } from "../record-scene.ts";
import { startUpDates } from "../start-up/next-test.ts";
import { advisedDates } from "./advised.ts";
import { countDates, orderDates, rightingDates, waveDates } from "./animals.ts";
import { aroundAbsences } from "./around.ts";
import { CARE_KINDS, type CareDate } from "./care-date.ts";
import { filterDates } from "./filter.ts";
import { glassDates } from "./glass.ts";
import type { AlmanacScene, Dated, Undated } from "./scene.ts";
import { supplyDates } from "./supplies.ts";
import { testDates } from "./tests.ts";
import { waterDates } from "./water.ts";

const OWN: readonly ((scene: AlmanacScene) => Dated)[] = [
  ...[glassDates, filterDates, testDates, waterDates, countDates, rightingDates, orderDates, waveDates],
  ...[advisedDates, supplyDates],
];

/** Dated care that other parts know of: one line each. */
const OTHERS: readonly ((scene: RecordScene) => readonly CareDate[])[] = [
  startUpDates,
  arrivalDates,
  comingDates,
  absenceDates,
];
/** Duties that another one takes in: the start-up's test is of both. */
const TAKEN_IN: Readonly<Record<string, readonly string[]>> = {
  "start_up.test": ["test.tan_mg_n_per_l", "test.no2_mg_per_l"],
};

export interface Almanac {
  readonly today: string;
  /** By day; of one day in the order of kinds. */
  readonly dates: readonly CareDate[];
  readonly undated: readonly Undated[];
  readonly figures: readonly Figure[];
  /** Something is dangerous or wrong now: the bench goes before all of this. */
  readonly benchFirst: boolean;
}

export function almanacOf(scene: AlmanacScene): Almanac {
  const own = OWN.map((part) => part(scene));
  const all = [...own.flatMap(({ dates }) => dates), ...OTHERS.flatMap((part) => part(scene))];
  const dates = aroundAbsences(once(all), absencesAhead(scene), scene.today).toSorted(
    (a, b) => a.on.localeCompare(b.on) || order(a) - order(b) || a.id.localeCompare(b.id),
  );
  const undated = own.flatMap((part) => part.undated);
  const figures = [...dates, ...undated].flatMap((one) => one.figures);
  return {
    ...{ today: scene.today, dates, undated, figures: withConfidence(figures) },
    benchFirst: scene.advice.some(({ about }) => about === "danger" || about === "trouble"),
  };
}

const order = ({ kind }: CareDate): number => CARE_KINDS.indexOf(kind);

/** Of two with one id the earlier; what another takes in goes. */
function once(all: readonly CareDate[]): CareDate[] {
  const byId = new Map<string, CareDate>();
  for (const one of all) {
    const had = byId.get(one.id);
    if (had === undefined || one.on < had.on) byId.set(one.id, one);
  }
  for (const [whole, parts] of Object.entries(TAKEN_IN))
    if (byId.has(whole)) for (const part of parts) byId.delete(part);
  return [...byId.values()];
}
