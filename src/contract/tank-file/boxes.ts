/** The water and the glass around it: display, sump, rear chamber, each by its volume or its sides. */
import { asked, type Outcome, refused } from "../quantity/outcome.ts";
import type { Preferences } from "../quantity/preferences.ts";
import { figure, shown } from "../quantity/show.ts";
import { readSides, type Sides } from "../quantity/sides.ts";
import { readVolume } from "../quantity/volume.ts";
import { checkVolumeAgainstSides } from "../quantity/volume-and-sides.ts";
import type { Entries } from "./entries.ts";
import type { Path } from "./finding.ts";
import type { TankFile } from "./schema.ts";
import type { Box, Stated, Told } from "./stated.ts";

type Boxes = Pick<Stated, "waterL" | "display" | "otherChambers">;
type Amountish = string | number | undefined;

export function readBoxes(file: TankFile, entries: Entries): Boxes {
  const volume = (path: Path, value: Amountish): Told | undefined =>
    entries.told(path, value, (text, c) => readVolume(text, { ...c, unit: "L" }));
  const sidesOf = (path: Path, value: TankFile["display_sides_cm"]): Box["sides"] => {
    const text = Array.isArray(value) ? value.join("x") : value;
    const read = (typed: string, c: { preferences: Preferences; label: string }): Outcome<Sides> =>
      readSides(typed, { ...c, unit: "cm" });
    const sides = entries.read(path, text, read);
    return sides === undefined
      ? undefined
      : { ...sides, how: `sides typed as ${text}${/[a-z"]\s*$/i.test(text ?? "") ? "" : " cm"}` };
  };
  const chamber = (key: "display" | "sump" | "rear_chamber"): Box | undefined => {
    const box = file.compartments?.[key];
    if (box === undefined) return undefined;
    const path = ["compartments", key];
    return {
      waterL: volume([...path, "water_l"], box.water_l),
      sides: sidesOf([...path, "sides_cm"], box.sides_cm),
    };
  };
  const inner = chamber("display");
  const display: Box = {
    waterL: inner?.waterL,
    sides: inner?.sides ?? sidesOf(["display_sides_cm"], file.display_sides_cm),
  };
  const otherChambers = [chamber("sump"), chamber("rear_chamber")].filter((box) => box !== undefined);
  const waterL = volume(["water_l"], file.water_l);
  const nothing =
    file.water_l === undefined &&
    file.display_sides_cm === undefined &&
    file.compartments?.display === undefined;
  if (nothing) {
    const text =
      "Water volume: nothing entered. Give water_l, or display_sides_cm, or the display under compartments";
    entries.take(["water_l"], refused({ text: "", unit: null }, { kind: "MISSING", text }));
  }
  checkTogether(file, { waterL, display, otherChambers }, entries);
  return { waterL, display, otherChambers };
}

/** The parts against the whole: more in one place than there is room for is asked about. */
function checkTogether(file: TankFile, { waterL, display, otherChambers }: Boxes, entries: Entries): void {
  if (waterL === undefined) return;
  const typed = String(file.water_l);
  if (display.waterL !== undefined && display.waterL.central > waterL.high) {
    const text = `Water volume "${shown(typed)}": the display alone holds ${figure(display.waterL.central)} L. Is this the sump's water, or is one a slip?`;
    entries.take(["water_l"], asked({ text: typed, unit: "L" }, { kind: "CONFLICT", text }, []));
  } else if (display.sides !== undefined && otherChambers.length === 0) {
    const clash = checkVolumeAgainstSides(typed, waterL.central, display.sides.grossL);
    if (clash !== null) entries.take(["water_l"], clash);
  }
}
