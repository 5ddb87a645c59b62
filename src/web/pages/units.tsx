/** Units and ways of writing: which unit each quantity is shown and offered in, decimal sign, order of dates. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { UNIT_WORDS } from "../../answers/questions/fields.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { SHOWN_IN, SHOWN_QUANTITIES, type ShownQuantity } from "../../contract/tank-file/shown-in.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";
import { errorOf, summaryOf } from "./form-fields.tsx";

export interface UnitsView {
  readonly head: TankHead;
  readonly version: number;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  /** Zone that a move in the daybook says, where that is another than the one kept here. */
  readonly movedTo: string | null;
  readonly saved: boolean;
  /** Somebody changed them since the form was made; what is kept now is shown. */
  readonly clash: boolean;
}

const NAMES: Readonly<Record<ShownQuantity, string>> = {
  volume: "Volume of water",
  length: "Lengths",
  temperature: "Temperature",
  salinity: "Salinity",
  alkalinity: "Alkalinity",
  nitrate: "Nitrate",
  phosphate: "Phosphate",
};
const WORDS: Readonly<Record<string, string>> = {
  ...UNIT_WORDS,
  sg: "specific gravity at 25/25 °C",
  NO3: "as nitrate (NO3)",
  "NO3-N": "as nitrogen (NO3-N)",
  PO4: "as phosphate (PO4)",
  "PO4-P": "as phosphorus (PO4-P)",
};

export function unitsPage({ head, version, values, doubts, movedTo, saved, clash }: UnitsView): Page {
  const choices = (
    name: string,
    legend: string,
    options: readonly (readonly [string, string])[],
    hint?: string,
  ) => (
    <Choices
      name={name}
      legend={legend}
      row
      error={errorOf(name, doubts)}
      options={options.map(([value, label]) => ({ value, label, checked: values[name] === value }))}
      {...(hint === undefined ? {} : { hint })}
    />
  );
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}Units, ${head.name}`,
    tank: head,
    here: null,
    scripts: ["zone-suggestion"],
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        {saved ? (
          <Notice kind="done" title="Kept">
            <p>What you typed stays as you typed it; only what is shown and offered first has changed.</p>
          </Notice>
        ) : null}
        {clash ? (
          <Notice kind="look" title="These were changed since you opened them">
            <p>What is kept now stands below. Choose again where you want it otherwise.</p>
          </Notice>
        ) : null}
        <h1>Units and ways of writing</h1>
        <p class="lead">
          Each on its own. A unit typed with a figure always counts, whatever is chosen here.
        </p>
        <form method="post" action={to.units(head.id)} novalidate>
          <input type="hidden" name="version" value={version} />
          {SHOWN_QUANTITIES.map((quantity) => (
            <div key={quantity}>
              {choices(
                quantity,
                NAMES[quantity],
                SHOWN_IN[quantity].map((unit) => [unit, WORDS[unit] ?? unit] as const),
              )}
            </div>
          ))}
          {choices("decimal", "Decimal sign", [
            ["point", "point: 1.5"],
            ["comma", "comma: 1,5"],
          ])}
          {choices(
            "dates",
            "Dates in figures",
            [
              ["dmy", "day first: 03/04 is 3 April"],
              ["mdy", "month first: 03/04 is 4 March"],
              ["ask", "ask me each time"],
            ],
            "2026-04-03 and 3 Apr are always understood",
          )}
          <Field
            name="zone"
            label="Time zone of the tank"
            hint={
              movedTo === null
                ? "Where it stands: Europe/London, America/Denver. It sets which day is today, and times in calendars. Empty: this machine's day, and no times."
                : `A move in the daybook says ${movedTo}, which goes before what stands here.`
            }
            value={values["zone"] ?? ""}
            width="middle"
            error={errorOf("zone", doubts)}
          />
          <p class="hint" data-zone-for="zone" />
          <div class="actions">
            <button type="submit" class="first">
              Keep
            </button>
            <a class="action" href={to.tank(head.id)}>
              Leave it as it was
            </a>
          </div>
        </form>
      </>
    ),
  };
}
