/** `--dead`: an animal that dies and is not found, so that it rots in the tank. */
import { tidy } from "../../contract/quantity/parse.ts";
import { readPlain } from "../../contract/quantity/plain.ts";
import { figure } from "../../contract/quantity/show.ts";
import { isCrew } from "../../engine/stocking/waves.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { counted } from "../words.ts";
import { headsOf, livingOf, withHeads } from "./animal.ts";
import { as, type Change, taken, times, unread } from "./read.ts";

const FLAG = "--dead";
const MASS = /(?:g|gr|grams?|mg|kg|oz|lbs?)$/i;

export function leaveDead(text: string, facts: TankFacts): Change {
  const [, what = "", when] = /^(.+?)(?: on day (.+))?$/i.exec(tidy(text)) ?? [];
  const notes: string[] = [];
  const whole = (part: string) => (when === undefined ? part : `${part} on day ${when}`);
  const t = when === undefined ? 0 : dayOf(what, when, text, notes);
  // A weight and the bare word: "1 damsel fish" is an animal.
  const grams = /^(\S*\d\S*(?: \S+)?) fish$/i.exec(what)?.[1];
  if (grams !== undefined && MASS.test(grams)) {
    const outcome = readPlain("mass_g", grams, as(FLAG, null));
    return fishLost(taken(FLAG, outcome, notes, (choice) => whole(`${choice} fish`)).central, "fish");
  }
  const { animal, count } = headsOf(FLAG, what, notes, whole);
  if (animal.group === "fish") {
    return fishLost(count * animal.liveWetMassG.central, counted(count, animal.commonName));
  }
  return crewLost(animal, count);

  function crewLost(kind: Animal, heads: number): Change {
    const had = livingOf(facts, kind.id);
    if (!isCrew(kind)) throw unread(FLAG, text, `the ${kind.commonName} is not followed by the runs`);
    if (heads > had) {
      const most = had === 0 ? "none lives here" : `${had} live here: write "${whole(`${had} ${kind.id}`)}"`;
      throw unread(FLAG, text, `no more can die than there are; ${most}`);
    }
    return {
      facts: { ...facts, present: withHeads(facts, kind.id, had - heads) },
      events: [{ t, kind: "crewDeath", species: kind.id, count: heads, found: false }],
      words: `${counted(heads, kind.commonName)} dead and not found${onDay()}`,
      notes,
    };
  }

  function fishLost(weightG: number, name: string): Change {
    const lived = facts.fishWetG.central;
    const left = lived > 0 ? Math.max(0, lived - weightG) / lived : 0;
    return {
      facts: { ...facts, fishWetG: times(facts.fishWetG, left) },
      events: [{ t, kind: "fishDeath", grams: weightG, found: false }],
      words: `${name} of ${figure(weightG)} g dead and not found${onDay()}`,
      notes,
    };
  }

  function onDay(): string {
    return t === 0 ? "" : ` on day ${t}`;
  }
}

function dayOf(what: string, when: string, text: string, notes: string[]): number {
  if (/^(?:0|today)$/.test(when)) return 0;
  const outcome = readPlain("days", when, as(FLAG, "d"));
  const { low, high } = taken(FLAG, outcome, notes, (choice) => `${what} on day ${choice}`);
  if (low === high && Number.isInteger(low)) return low;
  throw unread(FLAG, text, `a whole day is needed: write "${what} on day ${Math.round((low + high) / 2)}"`);
}
