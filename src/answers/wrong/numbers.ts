/** Which numbers of a tank stand behind which list. Those of the daybook's answers are quick; oxygen waits for the engine. */
import type { Figure } from "../../engine/types/figure.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { TankAnswers } from "../tank-answers.ts";
import type { CrisisId } from "./list-ids.ts";
import { alkalinityPart, changesPart, chlorinePart, sumpPart } from "./numbers/added.ts";
import { ammoniaPart } from "./numbers/ammonia.ts";
import { bodiesPart, cucumberPart } from "./numbers/bodies.ts";
import { oxygenPart } from "./numbers/oxygen.ts";
import { salinityPart, topOffPart } from "./numbers/salt.ts";
import type { NumbersPart } from "./numbers/shape.ts";
import { coolingPart, heaterPart } from "./numbers/warmth.ts";

export interface TroubleScene {
  readonly facts: TankFacts;
}

type Part = (scene: TroubleScene) => NumbersPart | null;

const PARTS: Readonly<Partial<Record<CrisisId, readonly Part[]>>> = {
  "power-cut": [coolingPart],
  pumps: [],
  gasping: [ammoniaPart],
  dead: [ammoniaPart, bodiesPart],
  missing: [bodiesPart, ammoniaPart],
  cucumber: [cucumberPart, changesPart],
  ammonia: [ammoniaPart, bodiesPart],
  warm: [heaterPart],
  cold: [coolingPart],
  salinity: [salinityPart],
  "top-off": [topOffPart, salinityPart],
  overflow: [sumpPart],
  chlorine: [chlorinePart, ammoniaPart],
  alkalinity: [alkalinityPart],
  poison: [changesPart],
  medicine: [changesPart],
};

/** Lists whose first number is how long the oxygen lasts. */
const WITH_OXYGEN: ReadonlySet<CrisisId> = new Set(["power-cut", "pumps", "gasping"]);

export const hasNumbers = (list: CrisisId): boolean => PARTS[list] !== undefined;
export const needsEngine = (list: CrisisId): boolean => WITH_OXYGEN.has(list);

/** @param answers of the engine; null where they are not there, or the list has no need of them */
export function numbersBehind(
  list: CrisisId,
  scene: TroubleScene,
  answers: Pick<TankAnswers, "workings"> | null,
): readonly NumbersPart[] {
  const oxygen = answers !== null && needsEngine(list) ? oxygenPart(answers) : null;
  const quick = (PARTS[list] ?? []).flatMap((part) => part(scene) ?? []);
  return oxygen === null ? quick : [oxygen, ...quick];
}

/** Every quick figure behind any list, each once: their workings. */
export function troubleFigures(scene: TroubleScene): readonly Figure[] {
  const parts = new Set(Object.values(PARTS).flat());
  const figures = [...parts].flatMap((part) => part(scene)?.figures ?? []);
  return [...new Map(figures.map((figure) => [figure.id, figure])).values()];
}
