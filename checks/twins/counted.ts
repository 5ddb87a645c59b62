/**
 * Heads in four weeks as the heads page tells them: counts by torch followed with their chance of being seen
 * (docs/model/heads.md). The weeks ahead begin with the heads that the keeper has on record; this does not.
 */
import { TABLE } from "../../src/answers/figures/table.ts";
import { animalById } from "../../src/catalogue/index.ts";
import { headsOfKind } from "../../src/engine/heads/kind.ts";
import { lifeOf } from "../../src/engine/heads/life.ts";
import { headRates } from "../../src/engine/heads/rates.ts";
import type { TankRecord } from "../../src/engine/types/record.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { type Held, heldOfHeads } from "./measures.ts";
import { crewOf, DAYBOOK_DAYS } from "./tank.ts";
import { FUTURE_DAYS, type Truth } from "./truth.ts";

export function headsCounted(facts: TankFacts, record: TankRecord, { days }: Truth): Held {
  const rates = headRates(TABLE);
  const last = days[DAYBOOK_DAYS + FUTURE_DAYS]!;
  return heldOfHeads(
    crewOf(facts).map(({ animal }, s) => {
      const { ahead } = headsOfKind(lifeOf(animalById.get(animal.id)!, facts, record, rates), rates);
      const { living } = ahead.find(({ weeks }) => 7 * weeks === FUTURE_DAYS)!;
      return { chances: living, truth: Math.round(last.heads[s]!) };
    }),
  );
}
