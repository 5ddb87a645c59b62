import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../quantity/preferences.ts";
import { MEASURES, type ReadingContext, type ReadingText, readReading, withUnit } from "./read-reading.ts";
import { MEASURED, readingBody } from "./reading.ts";

const context: ReadingContext = {
  preferences: { ...NO_PREFERENCES, locale: "en-GB" },
  today: "2026-06-15",
  now: "2026-06-15T12:00:00Z",
  zone: "Europe/London",
  stocked: true,
  notBefore: "2026-01-10",
};

const kept = (typed: ReadingText) => {
  const read = readReading(typed, context);
  if (!read.ok) throw new Error(read.doubts.map(({ message }) => message.text).join("; "));
  expect(readingBody.parse(read.body)).toEqual(read.body);
  return read;
};
const doubts = (typed: ReadingText) => {
  const read = readReading(typed, context);
  if (read.ok) throw new Error("was kept");
  return read.doubts;
};

describe("a reading is kept with its text", () => {
  test("and the unit chosen beside it", () => {
    const { body, on } = kept({ quantity: "no3_mg_per_l", text: "5", unit: "mg/L as N" });
    expect(body.text).toBe("5 mg/L as N");
    expect(body.value.central).toBeCloseTo(22.13, 2);
    expect(on).toBe("2026-06-15");
  });

  test("its own unit stands, whatever was chosen", () => {
    expect(kept({ quantity: "temperature_c", text: "77 F", unit: "C" }).body).toMatchObject({
      text: "77 F",
      value: { central: 25 },
    });
  });

  test("alkalinity in dKH, as its name says", () => {
    const { body } = kept({ quantity: "alkalinity_dkh", text: "160", unit: "mg/L as CaCO3" });
    expect(body.value.central).toBeCloseTo(8.96, 2);
  });

  test("danger and the unusual are flagged, with what was said", () => {
    expect(kept({ quantity: "tan_mg_n_per_l", text: "1.2", unit: "mg/L as N" }).body).toMatchObject({
      flag: "danger",
      said: expect.stringContaining("act today"),
    });
    expect(kept({ quantity: "calcium_mg_per_l", text: "42", unit: "mg/L" }).body.flag).toBe("unusual");
  });

  test("a kit that shows nothing has shown less than its smallest step", () => {
    const { body } = kept({ quantity: "no3_mg_per_l", text: "0", unit: "mg/L as NO3", kit_step: "2" });
    expect(body).toMatchObject({ censored: "below", kit_step: "2", value: { high: 2 } });
  });

  test("a kit's step is at most what can be read at all, in words without its own check mark", () => {
    const read = readReading({ quantity: "temperature_c", text: "25", kit_step: "5000" }, context);
    expect(read.ok ? [] : read.doubts).toMatchObject([
      {
        field: "kit_step",
        typed: "5000",
        message: { kind: "RANGE", text: 'Smallest step of the kit "5000": must be 0 to 45 C' },
      },
    ]);
    expect(kept({ quantity: "temperature_c", text: "25", kit_step: "0.5" }).body.kit_step).toBe("0.5");
  });

  test("an hour is kept with its offset", () => {
    const { body } = kept({ quantity: "ph", text: "8.1", observed: "2026-06-15T23:30+14:00" });
    expect(body.observed_at).toBe("2026-06-15T23:30:00+14:00");
  });

  test("read again from the kept text it gives the same figure, for every quantity and unit", () => {
    for (const quantity of MEASURED) {
      for (const unit of MEASURES[quantity].units) {
        const first = readReading({ quantity, text: "8.2", unit }, context);
        if (!first.ok) continue;
        expect(kept({ quantity, text: first.body.text }).body.value).toEqual(first.body.value);
      }
    }
  });
});

describe("what is doubtful is not kept, and every doubt is said at once", () => {
  test("each with its field", () => {
    const found = doubts({
      quantity: "no3_mg_per_l",
      text: "trace",
      unit: "mg/L as NO3",
      kit_step: "small",
      observed: "2026-06-20",
    });
    expect(found.map(({ field, message }) => [field, message.kind])).toEqual([
      ["kit_step", "FORMAT"],
      ["text", "FORMAT"],
      ["observed", "FUTURE"],
    ]);
  });

  test("with readings to choose from, each of which is kept", () => {
    const [doubt] = doubts({ quantity: "temperature_c", text: "77", unit: "C" });
    const [choice] = doubt?.choices ?? [];
    expect(kept({ quantity: "temperature_c", text: choice?.text ?? "", unit: "C" }).body.text).toBe("77 F");
  });

  test("before the tank held water, an unknown quantity, another quantity's unit", () => {
    expect(doubts({ quantity: "ph", text: "8.1", observed: "2026-01-01" })[0]?.message.kind).toBe("CONFLICT");
    expect(doubts({ quantity: "mood", text: "8.1" })[0]?.field).toBe("quantity");
    expect(doubts({ quantity: "temperature_c", text: "25", unit: "dKH" })[0]?.field).toBe("unit");
  });
});

test("what was measured is known by its name on a page too; where it is not, all names are offered", () => {
  expect(kept({ quantity: "Nitrate", text: "5", unit: "mg/L as NO3" }).body.quantity).toBe("no3_mg_per_l");
  const [doubt] = doubts({ quantity: "nitrates", text: "5" });
  expect(doubt?.choices).toContainEqual({ label: "Nitrate", text: "no3_mg_per_l" });
});

test("withUnit() adds a unit only where the text has none, before what was checked", () => {
  const { preferences } = context;
  expect(withUnit(" about 53 (checked)", "psu", preferences)).toBe("about 53 psu (checked)");
  expect(withUnit("5 NO3-N", "mg/L as NO3", preferences)).toBe("5 NO3-N");
  expect(withUnit("trace", "mg/L as NO3", preferences)).toBe("trace");
});
