/** The form of one reading, new or corrected: text with its unit, when, the kit's smallest step, a note. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import { Field, type FieldError } from "../parts/field.tsx";
import { errorOf, unitChoice } from "./form-fields.tsx";

interface ReadingFieldsProps {
  readonly quantity: Measured;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  /** The first thing to do on its page. */
  readonly first?: boolean;
}

/** Offered last where a quantity has several units: who does not know is asked, not guessed for. */
const NOT_SURE = { value: "", label: "not sure which" };

export function ReadingFields({ quantity, values, doubts, first = true }: ReadingFieldsProps) {
  const { label, units } = MEASURES[quantity];
  const error = (name: string): FieldError | null => errorOf(name, doubts);
  const typed = (name: string) => ({ name, value: values[name] ?? "", error: error(name) });
  return (
    <>
      <Field
        {...typed("text")}
        label={label}
        hint={HINTS[quantity] ?? "A figure; or <2, 10-20, about 5"}
        keypad="decimal"
        error={error("text") ?? error("unit") ?? error("quantity")}
        autofocus={first && doubts.length === 0}
        {...(units.length === 0
          ? {}
          : {
              unit: {
                name: "unit",
                value: values["unit"] ?? units[0] ?? "",
                choices: [...units.map(unitChoice), ...(units.length > 1 ? [NOT_SURE] : [])],
              },
            })}
      />
      <Field
        {...typed("observed")}
        label="When"
        hint="Such as today, yesterday, 14 Jun, or 2026-06-14T18:30"
        value={values["observed"] ?? "today"}
        width="middle"
      />
      <Field
        {...typed("kit_step")}
        label="Smallest step of the kit"
        hint="In the same unit; may be left empty. With it, 0 is read as less than this"
        keypad="decimal"
      />
      <Field {...typed("note")} label="Note" hint="May be left empty" lines={2} />
    </>
  );
}

const HINTS: Readonly<Partial<Record<Measured, string>>> = {
  tan_mg_n_per_l: "Total ammonia, as most kits show it; free ammonia is another figure, many times smaller",
};
