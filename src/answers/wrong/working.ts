/** How a number behind a crisis list came about; made when asked for, so that no other page carries them. */
import { withConfidence } from "../figures/confidence.ts";
import { type WorkingFigure, workingOutputOf } from "../working.ts";
import { type TroubleScene, troubleFigures } from "./numbers.ts";

const OURS = /^care\.wrong\./;

/** Null where the tank has none of that id: hours of oxygen are among the engine's own answers. */
export function troubleWorking(scene: TroubleScene, id: string): WorkingFigure | null {
  if (!OURS.test(id)) return null;
  const figure = withConfidence(troubleFigures(scene)).find((one) => one.id === id);
  return figure === undefined ? null : workingOutputOf(figure, []).figure;
}
