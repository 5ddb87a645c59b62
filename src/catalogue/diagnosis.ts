/** What growths, strangers and losses are told by: facts/{growths,hitchhikers,causes}, checked and typed when built. */
import type { ClueFact, DiagnosisFacts, GrowthFact, HitchhikerFact } from "../engine/types/diagnosis.ts";
import { data } from "./generated/diagnosis.ts";

export const diagnosis: DiagnosisFacts = data;

export const growthFacts: ReadonlyMap<string, GrowthFact> = new Map(
  data.growths.things.map((growth) => [growth.id, growth]),
);
export const hitchhikerFacts: ReadonlyMap<string, HitchhikerFact> = new Map(
  data.hitchhikers.things.map((thing) => [thing.id, thing]),
);
export const clueFacts: ReadonlyMap<string, ClueFact> = new Map(data.clues.map((clue) => [clue.id, clue]));
