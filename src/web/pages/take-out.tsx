/** Take entries out: the daybook as a file of the keeper's own, whole or as a sheet, of all days or some. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { many } from "./bring-in-words.ts";
import { errorOf, summaryOf } from "./form-fields.tsx";

export interface TakeOutView {
  readonly head: TankHead;
  readonly entries: number;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
}

const takeOutFile = (tankId: string): string => `${to.takeOut(tankId)}/file`;

const FORMATS = [
  {
    value: "csv",
    label: "CSV, a row an entry",
    hint: "Every kind of entry with all its fields; for spreadsheets, and to bring in again",
  },
  { value: "json", label: "JSON", hint: "Every kind of entry, whole; for programs, and to bring in again" },
  {
    value: "readings",
    label: "CSV, a sheet of readings",
    hint: "A row a day, a column a quantity with its unit in the header; without notes and other entries",
  },
] as const;

export function takeOutPage({ head, entries, values, doubts }: TakeOutView): Page {
  const format = values["format"] ?? "csv";
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}Take entries out, ${head.name}`,
    tank: head,
    here: null,
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        <h1>Take entries out</h1>
        <p class="lead">
          {entries === 0
            ? "The daybook of this tank is empty: a file of it would hold its header alone."
            : `The daybook holds ${many(entries, "entry", "entries")}. They stay here; you get a copy.`}
        </p>
        <form method="get" action={takeOutFile(head.id)}>
          <Choices
            name="format"
            legend="As"
            options={FORMATS.map((one) => ({ ...one, checked: one.value === format }))}
          />
          <Field
            name="from"
            label="From"
            hint="The first day; left empty: from the beginning"
            value={values["from"] ?? ""}
            width="middle"
            error={errorOf("from", doubts)}
          />
          <Field
            name="to"
            label="To"
            hint="The last day; left empty: up to today"
            value={values["to"] ?? ""}
            width="middle"
            error={errorOf("to", doubts)}
          />
          <div class="actions">
            <button type="submit" class="first">
              Take them out
            </button>
          </div>
        </form>
        <p>
          A file can be <a href={to.bringIn(head.id)}>brought in</a> again, here or for another tank: entries
          that are here already are not added twice. What was taken away is not in it. Pictures are not in it
          either: JSON names them, and a backup of the store holds them.
        </p>
      </>
    ),
  };
}
