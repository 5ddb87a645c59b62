/** What a sum is asked with: its fields, what the tank knows of each said beside it, units on offer, errors in place. */

import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { knownOf } from "../../answers/sums/ask.ts";
import { type SumText, usualOf } from "../../answers/sums/given.ts";
import type { ChoiceField, Sum, SumField, SumTank } from "../../answers/sums/sum.ts";
import { type TankHead, to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { Field } from "../parts/field.tsx";
import { unitText } from "../parts/text.ts";
import { errorOf, ReturnKey, unitChoice } from "./form-fields.tsx";

interface SumFormProps {
  readonly head: TankHead | null;
  readonly tank: SumTank | null;
  readonly sum: Sum;
  readonly values: SumText;
  readonly doubts: readonly FieldDoubt[];
  readonly answered: boolean;
}

const SERIES_LINES = 6;

export function SumForm({ head, tank, sum, values, doubts, answered }: SumFormProps) {
  return (
    <>
      <AskedWith sum={sum} values={values} />
      <section class="sum-form" aria-labelledby="asked-with">
        <h2 id="asked-with">{answered ? "Asked with" : "What it needs"}</h2>
        <form method="get" action={to.sum(head?.id ?? null, sum.id)} novalidate data-sum={sum.id}>
          <ReturnKey />
          {sum.fields.map((field) => (
            <OneField key={field.name} field={field} tank={tank} values={values} doubts={doubts} />
          ))}
          <div class="actions">
            <button type="submit" class="first">
              Work it out
            </button>
          </div>
        </form>
      </section>
    </>
  );
}

/** On paper the fields are only words: what was typed, in one line. */
function AskedWith({ sum, values }: Pick<SumFormProps, "sum" | "values">) {
  const typed = sum.fields.flatMap((field) => {
    const text = (values[field.name] ?? "").trim();
    if (text === "") return [];
    const unit = /\p{L}|%/u.test(text) ? "" : ` ${values[`${field.name}.unit`] ?? ""}`;
    const shown =
      field.input === "choice" ? (field.choices.find((one) => one.text === text)?.label ?? text) : text;
    return [
      unitText(
        `${field.label}: ${shown.replaceAll("\n", "; ")}${field.input === "amount" ? unit : ""}`.trimEnd(),
      ),
    ];
  });
  return typed.length === 0 ? null : <p class="sum-asked">Asked with {typed.join("; ")}.</p>;
}

interface OneFieldProps {
  readonly field: SumField;
  readonly tank: SumTank | null;
  readonly values: SumText;
  readonly doubts: readonly FieldDoubt[];
}

function OneField({ field, tank, values, doubts }: OneFieldProps) {
  const { name, label } = field;
  const error = errorOf(name, doubts);
  const value = values[name] ?? "";
  const hint = hintOf(field, tank);
  const said = hint === "" ? {} : { hint };
  if (field.input === "choice") return <ChoiceOf field={field} value={value} error={error} hint={hint} />;
  if (field.input === "series")
    return <Field name={name} label={label} value={value} lines={SERIES_LINES} error={error} {...said} />;
  if (field.input === "date")
    return <Field name={name} label={label} value={value} width="middle" error={error} {...said} />;
  return (
    <>
      <Field
        name={name}
        label={label}
        value={value}
        width="short"
        error={error}
        {...said}
        {...unitOf(field, values)}
      />
      {/* A unit that is only named beside the field is meant all the same. */}
      {field.units.length === 1 ? <input type="hidden" name={`${name}.unit`} value={field.units[0]} /> : null}
    </>
  );
}

/** One unit is only named, and not beside a text that names its own. */
function unitOf(field: Extract<SumField, { input: "amount" }>, values: SumText) {
  const { name, units } = field;
  const [first] = units;
  const ownUnit = /\p{L}|%/u.test(values[name] ?? "");
  if (first === undefined || (units.length === 1 && ownUnit)) return {};
  const value = values[`${name}.unit`] ?? first;
  return { unit: { name: `${name}.unit`, value, choices: units.map(unitChoice) } };
}

function ChoiceOf({
  field,
  value,
  error,
  hint,
}: {
  readonly field: ChoiceField;
  readonly value: string;
  readonly error: ReturnType<typeof errorOf>;
  readonly hint: string;
}) {
  const chosen = value === "" ? field.usual : value;
  return (
    <Choices
      name={field.name}
      legend={field.label}
      error={error}
      options={field.choices.map(({ text, label }) => ({ value: text, label, checked: text === chosen }))}
      {...(hint === "" ? {} : { hint })}
    />
  );
}

/** Which instrument, which scale; then where the value in the field comes from, or what an empty field means. */
function hintOf(field: SumField, tank: SumTank | null): string {
  const known = knownOf(field, tank);
  const usual = usualOf(field);
  return [field.hint, known === null ? emptyWords(field, usual) : `This tank: ${known.text}, ${known.how}.`]
    .filter((text) => text !== "")
    .map(unitText)
    .join(" ");
}

function emptyWords(field: SumField, usual: ReturnType<typeof usualOf>): string {
  if (field.input === "choice") return "";
  if (usual !== null) return `Left empty: ${usual.text}, ${usual.how}.`;
  const example =
    field.input === "series" ? `One a line: ${field.example}.` : `For example ${field.example}.`;
  return field.empty === "optional" ? `May stay empty. ${example}` : example;
}
