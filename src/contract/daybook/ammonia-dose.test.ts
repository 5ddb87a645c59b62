import { describe, expect, test } from "vitest";
import { ammoniaDoseIn } from "./ammonia-dose.ts";

describe("ammonia that was dosed", () => {
  test.each([
    ["ammonia 1 mg/L", 0.8225],
    ["Ammonium chloride to 2 ppm", 1.645],
    ["ammonia: 1 mg/L as N", 1],
    ["NH4Cl", null],
    ["ammonia, a few drops", null],
  ])("%s", (text, expected) => {
    const dose = ammoniaDoseIn(text);
    if (expected === null) expect(dose).toEqual({ mgNPerL: null });
    else expect(dose?.mgNPerL).toBeCloseTo(expected, 3);
  });

  test.each(["copper", "ammonia remover", "nh3-binder 5 mL", "ammoniac resin", "formalin"])(
    "%s is none",
    (text) => expect(ammoniaDoseIn(text)).toBeNull(),
  );
});
