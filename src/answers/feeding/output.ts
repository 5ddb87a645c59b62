/** Feeding as `feeding --json` prints it. */
import type { FeedingOutput } from "../../contract/output/feeding.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { STATEMENT } from "../statement.ts";
import { partData, sentenceData, sentencesOf, toldWorkings, workingsById } from "../told-workings.ts";
import { ENGINE_VERSION } from "../version.ts";
import type { Feeding } from "./feeding.ts";

export const feedingOutputOf = (facts: TankFacts, { lead, parts, figures }: Feeding): FeedingOutput => ({
  ...{ schema: "grazewell.feeding/1", engine: ENGINE_VERSION },
  tank: { name: facts.name, as_of: facts.asOf },
  lead: sentenceData(lead),
  parts: parts.map(partData),
  figures: toldWorkings([lead, ...sentencesOf(parts)], workingsById(figures)),
  statement: STATEMENT,
});
