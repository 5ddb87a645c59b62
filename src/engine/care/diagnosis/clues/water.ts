/** Clues that the water tells: readings within the weeks before, and facts of what goes in. Limits are judgement. */
import type { Reading } from "../../../types/tank.ts";
import { type ClueState, fact, seen, UNKNOWN } from "../clue.ts";
import { type DiagnosisScene, feedChanges, readingsOf, type Subject, within } from "../scene.ts";

/** A reading older than this says little of today, days. */
const FRESH_DAYS = 28;
/** 20 mg/L nitrate as ion, and 0.1 mg/L phosphate as ion, in the record's units. */
const NITRATE_HIGH_MG_N = 20 / 4.4268;
const NITRATE_LOW_MG_N = 1 / 4.4268;
const PHOSPHATE_HIGH_MG_P = 0.1 / 3.0661;
const PHOSPHATE_LOW_MG_P = 0.02 / 3.0661;
/** Total ammonia and nitrite that a kit tells from none, mg N/L. */
const AMMONIA_SHOWS = 0.2;
const NITRITE_SHOWS = 0.1;
const SALINITY = { low: 33, high: 36, jump: 1.5, jumpDays: 21 } as const;
const TEMPERATURE = { low: 22, high: 28.5 } as const;
/** Feed that is much for its water, mg N a litre and day. */
const HEAVY_FEED_MG_N_PER_L = 0.35;
const FEED_RAISED_BY = 1.15;
const LONG_LIGHT_HOURS = 10;

function latest(scene: DiagnosisScene, { on }: Subject, quantity: Reading["quantity"], days: number) {
  return readingsOf(scene, quantity)
    .filter((reading) => within(reading.on, on, days))
    .at(-1);
}

/** Above: even the low end counts only where the reading is not "below what the kit can tell". */
const above =
  (quantity: Reading["quantity"], limit: number) =>
  (scene: DiagnosisScene, subject: Subject): ClueState => {
    const reading = latest(scene, subject, quantity, FRESH_DAYS);
    if (reading === undefined) return UNKNOWN;
    const { value, censored, on } = reading;
    if (censored === "below") return seen(false, on, value.high);
    return seen(value.central > limit, on, value.central);
  };

/** Shows next to nothing: below what the kit can tell, or read under the limit. */
const bottom =
  (quantity: Reading["quantity"], limit: number) =>
  (scene: DiagnosisScene, subject: Subject): ClueState => {
    const reading = latest(scene, subject, quantity, FRESH_DAYS);
    if (reading === undefined) return UNKNOWN;
    const { value, censored, on } = reading;
    return seen(censored === "below" || value.central <= limit, on, value.central);
  };

const outside =
  (quantity: Reading["quantity"], low: number, high: number) =>
  (scene: DiagnosisScene, { on }: Subject): ClueState => {
    const readings = readingsOf(scene, quantity).filter((reading) => within(reading.on, on, 21));
    const off = readings.filter(({ value }) => value.central < low || value.central > high).at(-1);
    const last = off ?? readings.at(-1);
    return last === undefined ? UNKNOWN : seen(off !== undefined, last.on, last.value.central);
  };

function salinityJump(scene: DiagnosisScene, { on }: Subject): ClueState {
  const readings = readingsOf(scene, "salinity_psu").filter((one) => within(one.on, on, SALINITY.jumpDays));
  const values = readings.map(({ value }) => value.central);
  const last = readings.at(-1);
  if (last === undefined || readings.length < 2) return UNKNOWN;
  return seen(Math.max(...values) - Math.min(...values) > SALINITY.jump, last.on, last.value.central);
}

function unpurified({ facts: { sourceWater } }: DiagnosisScene): ClueState {
  return sourceWater.origin === "assumed" ? UNKNOWN : fact(sourceWater.value !== "purified");
}

function heavyFeeding({ facts: { feedGPerDay, feedNMgPerG, waterL, assumed } }: DiagnosisScene): ClueState {
  if (assumed.includes("feedGPerDay")) return UNKNOWN;
  return fact((feedGPerDay.central * feedNMgPerG.central) / waterL.central > HEAVY_FEED_MG_N_PER_L);
}

/** A change of feed is a raise where what was given before it was less; of a change before which nobody knows it, unknown. */
function feedRaised({ record }: DiagnosisScene, { on }: Subject): ClueState {
  const changes = feedChanges(record);
  const recent = changes.filter((change) => within(change.on, on, FRESH_DAYS));
  if (recent.length === 0) return changes.length > 0 ? fact(false) : UNKNOWN;
  const raised = recent.find(({ to, before }) => before !== null && to > before * FEED_RAISED_BY);
  if (raised !== undefined) return seen(true, raised.on);
  return recent.some(({ before }) => before !== null) ? fact(false) : UNKNOWN;
}

/** Strength is told as a share of before: above 1 is more. Hours are held against those before. */
function lightRaised({ record, facts }: DiagnosisScene, { on }: Subject): ClueState {
  const hours: { on: string; to: number }[] = [];
  let raised: string | null = null;
  let told = false;
  for (const one of record.happenings) {
    if (one.kind !== "changed" || one.to === null) continue;
    if (one.what !== "light_strength" && one.what !== "light_hours") continue;
    told = true;
    const before = hours.at(-1)?.to;
    const up = one.what === "light_strength" ? one.to > 1.05 : before !== undefined && one.to > before + 0.4;
    if (one.what === "light_hours") hours.push({ on: one.on, to: one.to });
    if (up && within(one.on, on, 42)) raised = one.on;
  }
  if (raised !== null) return seen(true, raised);
  return told || !facts.assumed.includes("lightHours") ? fact(false) : UNKNOWN;
}

function longLight({ facts: { lightHours, assumed } }: DiagnosisScene): ClueState {
  return assumed.includes("lightHours") ? UNKNOWN : fact(lightHours.central > LONG_LIGHT_HOURS);
}

function skimmerOff({ facts: { skimmer } }: DiagnosisScene): ClueState {
  return skimmer.origin === "assumed" ? UNKNOWN : fact(!skimmer.value);
}

export const WATER_CLUES = {
  source_unpurified: unpurified,
  heavy_feeding: heavyFeeding,
  feed_raised: feedRaised,
  nitrate_high: above("no3_mg_n_per_l", NITRATE_HIGH_MG_N),
  nitrate_unreadable: bottom("no3_mg_n_per_l", NITRATE_LOW_MG_N),
  phosphate_high: above("po4_mg_p_per_l", PHOSPHATE_HIGH_MG_P),
  phosphate_unreadable: bottom("po4_mg_p_per_l", PHOSPHATE_LOW_MG_P),
  ammonia_up: above("tan_mg_n_per_l", AMMONIA_SHOWS),
  nitrite_up: above("no2_mg_n_per_l", NITRITE_SHOWS),
  salinity_off: outside("salinity_psu", SALINITY.low, SALINITY.high),
  salinity_jump: salinityJump,
  temperature_off: outside("temperature_c", TEMPERATURE.low, TEMPERATURE.high),
  light_raised: lightRaised,
  long_light: longLight,
  skimmer_off: skimmerOff,
} as const;
