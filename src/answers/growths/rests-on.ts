/** Which facts of diagnosis rest on a work: growths, strangers, causes, faults of tests, habits; names, in order of kind. */
import { diagnosis } from "../../catalogue/diagnosis.ts";
import type { GrowthFact, HitchhikerFact, SaidFact } from "../../engine/types/diagnosis.ts";
import { nameOfAnimal } from "./scene.ts";

const described = ({ looks, read, doLines, dont, stop }: GrowthFact | HitchhikerFact): string[] => [
  ...Object.values(read).flat(),
  ...said(looks, ...doLines, ...dont, stop),
];
const said = (...facts: readonly (SaidFact | null)[]): string[] =>
  facts.flatMap((fact) => fact?.sources ?? []);

const RESTING: readonly (readonly [name: string, keys: readonly string[]])[] = [
  ...diagnosis.growths.things.map(
    (one) => [`growth: ${one.name}`, [...described(one), ...said(one.crewSaid, one.toxin)]] as const,
  ),
  ...diagnosis.hitchhikers.things.map(
    (one) => [`hitchhiker: ${one.name}`, [...described(one), ...said(one.because)]] as const,
  ),
  ...diagnosis.causes.map(
    ({ name, sources, doLines, dont, stop }) =>
      [`cause: ${name}`, [...sources, ...said(...doLines, ...dont, stop)]] as const,
  ),
  ...diagnosis.artefacts.map(
    ({ says, check, id }) => [`fault of a test: ${id.replaceAll("-", " ")}`, said(says, check)] as const,
  ),
  ...diagnosis.waterline.map(
    ({ animal, sources }) => [`habit at the waterline: ${nameOfAnimal(animal)}`, sources] as const,
  ),
];

export const restsOn = (key: string): string[] =>
  RESTING.filter(([, keys]) => keys.includes(key)).map(([name]) => name);
