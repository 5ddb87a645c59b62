/** How a number of the feeding page came about; made when asked for. */
import type { TankFacts } from "../../engine/types/tank.ts";
import { withConfidence } from "../figures/confidence.ts";
import { type WorkingFigure, workingOutputOf } from "../working.ts";
import { feedingOf } from "./feeding.ts";

/** Null where the tank has none of that id. */
export function feedingWorking({ facts }: { readonly facts: TankFacts }, id: string): WorkingFigure | null {
  if (!id.startsWith("care.feeding.")) return null;
  const figure = withConfidence(feedingOf(facts).figures).find((one) => one.id === id);
  return figure === undefined ? null : workingOutputOf(figure, []).figure;
}
