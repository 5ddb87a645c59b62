import { expect, test } from "vitest";
import { isKept } from "./outcome.ts";
import { NO_PREFERENCES } from "./preferences.ts";
import { readVolume } from "./volume.ts";

test.each(["us", "imperial", null] as const)(
  "a gallon that is spelled out is that gallon, whichever the keeper is used to: %s",
  (gallon) => {
    const litres = (text: string): number => {
      const read = readVolume(text, { preferences: { ...NO_PREFERENCES, gallon } });
      return isKept(read) ? read.value.central : Number.NaN;
    };
    expect(litres("30 US gal")).toBeCloseTo(30 * 3.785411784, 6);
    expect(litres("30 imp gal")).toBeCloseTo(30 * 4.54609, 6);
  },
);
