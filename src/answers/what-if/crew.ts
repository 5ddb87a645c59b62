/** `--crew`: animals added, given away, or so many in all, on the day of the plan. */
import { tidy } from "../../contract/quantity/parse.ts";
import type { TankEvent } from "../../engine/balance/events.ts";
import { arrivalCondition } from "../../engine/stocking/check.ts";
import { isCrew } from "../../engine/stocking/waves.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { counted } from "../words.ts";
import { headsOf, livingOf, withHeads } from "./animal.ts";
import { type Change, unread } from "./read.ts";

const FLAG = "--crew";

export function changeCrew(text: string, facts: TankFacts): Change {
  const [, sign = "", rest = ""] = /^([+-]?) ?(.*)$/.exec(tidy(text)) ?? [];
  const notes: string[] = [];
  const { animal, count } = headsOf(FLAG, rest, notes, (heads) => `${sign}${heads}`);
  const { id, commonName } = animal;
  if (!isCrew(animal)) {
    throw unread(FLAG, text, `the ${commonName} does not live off the shelves: change --feed instead`);
  }
  const had = livingOf(facts, id);
  const more = sign === "" ? count - had : sign === "-" ? -count : count;
  if (had + more < 0) {
    const most = had === 0 ? "none lives here" : `${had} live here: write "-${had} ${id}" or fewer`;
    throw unread(FLAG, text, `more can't be taken out than there are; ${most}`);
  }
  const present = withHeads(facts, id, had + more);
  return {
    facts: { ...facts, present },
    events: more === 0 ? [] : [more > 0 ? arrive(more) : leave(-more)],
    words: wordsFor(more),
    notes,
  };

  function arrive(heads: number): TankEvent {
    return { t: 0, kind: "addAnimals", species: id, count: heads, condition: arrivalCondition(animal) };
  }
  function leave(heads: number): TankEvent {
    return { t: 0, kind: "removeAnimals", species: id, count: heads };
  }
  function wordsFor(change: number): string {
    if (change === 0) return `${counted(had, commonName)} as today`;
    const verb = change > 0 ? "added" : "given away";
    return `${counted(Math.abs(change), commonName)} ${verb}`;
  }
}
