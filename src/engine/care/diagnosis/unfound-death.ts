/**
 * A death that nobody found: ammonia (or nitrite) rises above this tank's usual, and nothing else that is known explains
 * it. Named on the day of the reading and for two days after it; where something else is known, that comes first and is
 * said. Limits: a body in a large, settled tank moves ammonia less than a kit can tell (docs/model: 5 g in 200 L).
 * Margins are judgement. docs/model/diagnosis.md#unfound
 */
import { byDay, median, seriesOf } from "../../trends/series.ts";
import type { Happening, ReadingSeen } from "../../types/record.ts";
import { type DiagnosisScene, feedChanges, growthsSeen, readingsOf, signsSeen, within } from "./scene.ts";

type Watched = "tan_mg_n_per_l" | "no2_mg_n_per_l";

export type OtherCause =
  | "young_tank"
  | "fed_more"
  | "many_added"
  | "outage"
  | "treatment"
  | "filter_changed"
  | "sand_stirred"
  | "known_death"
  | "leftovers";

export interface UnfoundDeath {
  readonly quantity: Watched;
  /** Entry and day of the reading. */
  readonly entry: string;
  readonly on: string;
  readonly value: number;
  /** What is usual here; null where it rests on a settled tank's next to none. */
  readonly usual: number | null;
  /** Days of readings that the usual rests on. */
  readonly days: number;
  readonly rise: number;
  readonly margin: number;
  /** Other tests and sights that go with it. */
  readonly nitriteToo: boolean;
  readonly cloudyToo: boolean;
  readonly others: readonly OtherCause[];
  /** True where no other cause is known. */
  readonly named: boolean;
}

/** A reading is news for so many days after its own. */
const NAMED_WITHIN_DAYS = 2;
const USUAL_WITHIN_DAYS = 90;
const USUAL_FROM_DAYS = 3;
/** Least rise that counts, mg N/L: a colour card's quarter, or a finer test's tenth. */
const LEAST_RISE: Readonly<Record<Watched, { readonly coarse: number; readonly fine: number }>> = {
  tan_mg_n_per_l: { coarse: 0.25, fine: 0.1 },
  no2_mg_n_per_l: { coarse: 0.12, fine: 0.05 },
};
const FINE_STEP = 0.05;
const CARD_STEP = 0.25;
const MAD_TO_SD = 1.4826;
const DEVIATIONS = 3;
/** A settled tank shows next to none: so much is a rise without a usual. */
const SETTLED_DAYS = 90;
const SETTLED_MG_N = 0.4;
/** How long a known cause goes on explaining, days. */
const EXPLAINS_DAYS = 10;
const YOUNG_DAYS = 45;
const MANY_HEADS = 5;

export function unfoundDeath(scene: DiagnosisScene): UnfoundDeath | null {
  for (const quantity of ["tan_mg_n_per_l", "no2_mg_n_per_l"] as const) {
    const found = riseOf(quantity, scene);
    if (found !== null) return found;
  }
  return null;
}

function riseOf(quantity: Watched, scene: DiagnosisScene): UnfoundDeath | null {
  const { record, facts } = scene;
  const readings = readingsOf(scene, quantity);
  const latest = readings.at(-1);
  if (latest === undefined || latest.censored === "below") return null;
  if (!within(latest.on, record.asOf, NAMED_WITHIN_DAYS)) return null;
  const usual = usualBefore(latest, readings);
  const settled = facts.ageDays.central >= SETTLED_DAYS && !facts.assumed.includes("ageDays");
  if (usual === null && !settled) return null;
  // A kit whose step was not told is taken as a colour card at the coarsest, whatever its round numbers say.
  const step = latest.step ?? Math.min(usual?.step ?? CARD_STEP, CARD_STEP);
  const least = LEAST_RISE[quantity];
  const floor = Math.max(step <= FINE_STEP ? least.fine : least.coarse, 1.5 * step);
  const margin = usual === null ? SETTLED_MG_N : Math.max(floor, DEVIATIONS * usual.scatter);
  const rise = latest.value.central - (usual?.central ?? 0);
  if (rise < margin) return null;
  const others = othersOf(scene, latest);
  return {
    ...{ quantity, entry: latest.entry, on: latest.on, value: latest.value.central },
    ...{ usual: usual?.central ?? null, days: usual?.days ?? 0, rise, margin, others },
    nitriteToo: quantity === "tan_mg_n_per_l" && riseOf("no2_mg_n_per_l", scene) !== null,
    cloudyToo: signsSeen(record, "cloudy_water").some((one) => within(one.on, record.asOf, 5)),
    named: others.length === 0,
  };
}

function usualBefore(latest: ReadingSeen, readings: readonly ReadingSeen[]) {
  const before = readings.filter(
    (one) => one.on !== latest.on && within(one.on, latest.on, USUAL_WITHIN_DAYS),
  );
  const { points, step } = seriesOf(before, latest.on);
  const days = byDay(points);
  if (days.length < USUAL_FROM_DAYS) return null;
  // What a kit shows as less than its step is taken as half of it.
  const values = days.map(({ value, censored }) => (censored === "below" ? value / 2 : value));
  const central = median(values);
  const scatter = Math.max(
    MAD_TO_SD * median(values.map((value) => Math.abs(value - central))),
    Math.min(step, CARD_STEP) / 4,
  );
  return { central, scatter, days: days.length, step };
}

function othersOf(scene: DiagnosisScene, { on }: ReadingSeen): OtherCause[] {
  const { record, facts } = scene;
  const happened = (fits: (one: Happening) => boolean, days = EXPLAINS_DAYS): boolean =>
    record.happenings.some((one) => within(one.on, on, days) && fits(one));
  const added = record.happenings
    .filter((one) => one.kind === "added" && within(one.on, on, EXPLAINS_DAYS))
    .reduce((sum, one) => sum + (one.kind === "added" ? one.count : 0), 0);
  const leftovers = growthsSeen(record, "leftovers")
    .filter((one) => within(one.on, on, EXPLAINS_DAYS))
    .at(-1);
  const rules: readonly (readonly [OtherCause, boolean])[] = [
    ["young_tank", !facts.assumed.includes("ageDays") && ageOn(facts, on) < YOUNG_DAYS],
    ["fed_more", fedMore(scene, on)],
    ["many_added", added >= MANY_HEADS],
    ["outage", happened((one) => one.kind === "outage" && one.of !== "lamp" && one.hours >= 4)],
    ["treatment", facts.medicines.length > 0 || happened((one) => one.kind === "treated")],
    ["filter_changed", happened((one) => one.kind === "chore" && one.chore === "filter_changed", 4)],
    ["sand_stirred", happened((one) => one.kind === "chore" && one.chore === "sand_stirred", 4)],
    [
      "known_death",
      happened(
        (one) => one.kind === "lost_feared" || (one.kind === "lost_found" && one.bodyRemoved !== true),
      ),
    ],
    ["leftovers", leftovers !== undefined && leftovers.score >= 3],
  ];
  return rules.flatMap(([cause, holds]) => (holds ? [cause] : []));
}

const ageOn = (facts: DiagnosisScene["facts"], on: string): number =>
  facts.ageDays.central - (Date.parse(facts.asOf) - Date.parse(on)) / 86_400_000;

/** Feed was changed, and nobody knows that it was no raise. */
const fedMore = ({ record }: DiagnosisScene, on: string): boolean =>
  record.happenings.some(
    (one) =>
      one.kind === "changed" && one.what === "feed" && one.to === null && within(one.on, on, EXPLAINS_DAYS),
  ) ||
  feedChanges(record).some(
    (change) => within(change.on, on, EXPLAINS_DAYS) && (change.before === null || change.to > change.before),
  );
