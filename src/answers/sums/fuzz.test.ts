/** Whatever is typed into a sum of chemistry or dosing is answered, refused or asked about: nothing is thrown. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { askSum } from "./ask.ts";
import type { Sum, SumField } from "./sum.ts";
import { SUMS } from "./table.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };
const amounts = fc.oneof(
  fc.constantFrom("0", "1e-6", "-1", "0.5", "99999", "5-6", "<2", ">3", "about 8", "8?", "", "x"),
  fc.double({ min: 0, max: 50, noNaN: true }).map(String),
  fc.double({ min: 0, max: 2000, noNaN: true }).map(String),
);

const textOf = (field: SumField): fc.Arbitrary<string> => {
  if (field.input === "choice") return fc.constantFrom(...field.choices.map(({ text }) => text));
  if (field.input === "date") return fc.constantFrom("2026-11-20", "");
  const units = field.input === "amount" ? field.units : [];
  const unit = fc.constantFrom("", ...units, "psu", "mg/L", "dKH", "sg 20/20");
  const one = fc.tuple(amounts, unit).map(([amount, name]) => `${amount} ${name} (checked)`.trim());
  if (field.input === "amount") return one;
  const day = fc.integer({ min: 1, max: 27 }).map((d) => `2026-11-${String(d).padStart(2, "0")}`);
  return fc
    .array(fc.tuple(day, amounts, unit))
    .map((lines) => lines.map((line) => line.join(" ")).join("\n"));
};

/** An example with a field or two made strange. */
const asked = (sum: Sum) =>
  fc.constantFrom(...sum.examples).chain((example) =>
    fc
      .subarray([...sum.fields], { minLength: 1, maxLength: 2 })
      .chain((fields) => fc.record(Object.fromEntries(fields.map((field) => [field.name, textOf(field)]))))
      .map((strange) => ({ ...example, ...strange })),
  );

const OURS = SUMS.filter(({ group }) => group === "chemistry" || group === "dosing");

test.each(OURS.map((sum) => [sum.id, sum] as const))("%s", (_, sum) => {
  let answers = 0;
  fc.assert(
    fc.property(asked(sum), (typed) => {
      const outcome = askSum(sum, typed, CONTEXT);
      if (!outcome.ok || outcome.answer.kind === "none") return;
      answers += 1;
      for (const { id, spread } of outcome.answer.figures) {
        expect(Number.isFinite(spread.central), `${id} of ${JSON.stringify(typed)}`).toBe(true);
        expect(spread.low, `${id} of ${JSON.stringify(typed)}`).toBeLessThanOrEqual(spread.central + 1e-9);
        expect(spread.high, `${id} of ${JSON.stringify(typed)}`).toBeGreaterThanOrEqual(
          spread.central - 1e-9,
        );
      }
    }),
    { numRuns: 150 },
  );
  expect(answers).toBeGreaterThan(0);
});
