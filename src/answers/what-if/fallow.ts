/** A fallow tank: no fish in it and nothing fed, for so many days. The crew stays, and leftovers stop. */
import { readPlain } from "../../contract/quantity/plain.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { as, type Change, changed, setTo, taken } from "./read.ts";

const FLAG = "--fallow";
const NONE = { low: 0, central: 0, high: 0 };

/** The runs go on without fish to their end: who starves is told at a quarter of a year, near the end of a fallow time. */
export function keepFallow(text: string, facts: TankFacts): Change {
  const notes: string[] = [];
  const days = Math.round(taken(FLAG, readPlain("days", text, as(FLAG, "d")), notes).central);
  return {
    facts: changed(facts, { feedGPerDay: setTo(NONE), fishWetG: setTo(NONE) }, ["feedGPerDay", "fishWetG"]),
    events: [{ t: 0, kind: "set", fish: 0, feed: 0 }],
    words: `${days} days without fish and without feed`,
    notes,
  };
}
