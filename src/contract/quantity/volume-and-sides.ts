/** A volume held against the sides it was given with. */
import { asked, type Outcome } from "./outcome.ts";
import { figure, shown } from "./show.ts";

/** Null where the sides hold that much; otherwise a question, for a sump would explain it. */
export function checkVolumeAgainstSides(
  typed: string,
  waterL: number,
  grossL: number,
): Outcome<number> | null {
  if (waterL <= grossL) return null;
  const text = `Water volume "${shown(typed)}": those sides hold at most ${figure(grossL)} L. Does ${figure(waterL)} L include a sump? Then name it under compartments`;
  const choices = [
    { label: `${figure(waterL)} L includes a sump`, text: null },
    {
      label: `${figure(0.85 * grossL)} L, as the sides give with rock and sand`,
      text: `about ${figure(0.85 * grossL)} L`,
    },
  ];
  return asked({ text: typed, unit: "L" }, { kind: "CONFLICT", text }, choices);
}
