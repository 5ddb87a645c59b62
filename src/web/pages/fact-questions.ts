/** Which question asks a fact, and what an assumed one is called: links from a doubt to where it can be settled. */
import { FACT_LABELS } from "../../contract/tank-file/labels.ts";
import { to } from "../page.ts";
import { lowerFirst } from "../parts/text.ts";

/** Number of the question that asks it; facts of no question stand in the single form. */
const QUESTION: Readonly<Record<string, number>> = {
  waterL: 1,
  displayL: 1,
  glassM2: 1,
  ageDays: 2,
  rockStart: 2,
  fishWetG: 4,
  sandM2: 5,
  sandDepthMm: 5,
  sandGrain: 5,
  feedGPerDay: 6,
  feedCMgPerG: 6,
  feedNMgPerG: 6,
  feedPMgPerG: 6,
  uneatenShare: 6,
  temperatureC: 7,
  salinityPsu: 7,
  ph: 7,
  no3_mg_n_per_l: 7,
  po4_mg_p_per_l: 7,
};

/** Where a keeper answers what this fact is. */
export function askedAt(tank: string, fact: string): string {
  const question = QUESTION[fact];
  return question === undefined ? to.singleForm(tank) : to.question(tank, question);
}

/** "lit rock" of `litRockM2`. */
export function factName(fact: string): string {
  const label = (FACT_LABELS as Readonly<Record<string, { readonly label: string } | undefined>>)[fact]
    ?.label;
  return label === undefined ? fact : lowerFirst(label).replace(/^pH$/i, "pH");
}
