/** Whether enough is known of a tank to say how a quantity will go in it, or only in a typical tank. */
import type { QuantityId } from "../../engine/ahead/forecast.ts";
import { latestReading } from "../../engine/larder/members.ts";
import type { Growth, Reading, TankFacts } from "../../engine/types/tank.ts";

/** From this age on a run starts from readings and sightings, not from the first filling. docs/model/ahead.md */
const RUN_UP_DAYS = 60;

/** What it would take to tell this tank's own course; null where enough is known. */
export function missingFor(quantity: QuantityId, facts: TankFacts): string | null {
  const unread = (reading: Reading["quantity"]) => latestReading(facts.readings, reading) === null;
  const unseen = (...growths: Growth[]) => growths.every((growth) => facts.sightings[growth] === undefined);
  const ageUnsaid = facts.assumed.includes("ageDays");
  const settled = facts.ageDays.central > RUN_UP_DAYS || ageUnsaid;
  switch (quantity) {
    case "tan":
    case "nh3":
      return ageUnsaid && unread("tan_mg_n_per_l") ? "the tank's age or an ammonia test" : null;
    case "no2":
      return ageUnsaid && unread("no2_mg_n_per_l") ? "the tank's age or a nitrite test" : null;
    case "no3":
      return settled && unread("no3_mg_n_per_l") ? "a nitrate test" : null;
    case "po4":
      return settled && unread("po4_mg_p_per_l") ? "a phosphate test" : null;
    case "film_glass":
    case "film_rock":
    case "film_sand":
      return settled && unseen(quantity, "diatoms") ? "how much film is seen" : null;
    case "hair_algae":
      return settled && unseen("hair_algae") ? "how much hair algae is seen" : null;
    case "detritus_sand":
      return facts.assumed.includes("feedGPerDay") ? "how much is fed" : null;
  }
}
