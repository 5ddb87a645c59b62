/** Fields of the questions, drawn with what was typed, what is wrong beside each, and the likely fixes as buttons. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { type FormField, type TextField, UNIT_WORDS } from "../../answers/questions/fields.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { animals } from "../../catalogue/index.ts";
import { Choices } from "../parts/choices.tsx";
import { Field, type FieldError, type UnitChoice } from "../parts/field.tsx";

export interface Filled {
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
}

interface FormFieldsProps extends Filled {
  readonly fields: readonly FormField[];
  /** Name of the field that takes the focus; null where an error summary does. */
  readonly focus: string | null;
  /** Empty lines for animals, beyond those that are filled. */
  readonly spareLines?: number;
  /** Answers in words side by side, where many fields share a page. */
  readonly compact?: boolean;
}

/** Prefix of a fix's button: `fix.water` with the text to put into the field. */
export const FIX = "fix.";

export function FormFields({
  fields,
  values,
  doubts,
  focus,
  spareLines = 3,
  compact = false,
}: FormFieldsProps) {
  return (
    <>
      {fields.map((field) => (
        <OneField
          key={field.name}
          field={field}
          values={values}
          doubts={doubts}
          autofocus={focus === field.name}
          spareLines={spareLines}
          compact={compact}
        />
      ))}
    </>
  );
}

interface OneFieldProps extends Filled {
  readonly field: FormField;
  readonly autofocus: boolean;
  readonly spareLines: number;
  readonly compact: boolean;
}

function OneField(props: OneFieldProps) {
  const { field, values, doubts, autofocus } = props;
  const error = errorOf(field.name, doubts);
  switch (field.kind) {
    case "words": {
      const chosen = values[field.name] ?? "";
      const known = field.options.some(({ value }) => value === chosen);
      return (
        <Choices
          name={field.name}
          legend={known || chosen === "" ? field.label : `${field.label} (now: ${chosen})`}
          row={field.row === true || props.compact}
          autofocus={autofocus}
          error={error}
          options={field.options.map(({ value, label }) => ({
            value,
            label,
            checked: known && value === chosen,
          }))}
          {...(field.hint === undefined ? {} : { hint: field.hint })}
        />
      );
    }
    case "box":
      return (
        <div class="field">
          <div class="choice">
            <input
              type="checkbox"
              id={field.name}
              name={field.name}
              value="yes"
              checked={(values[field.name] ?? "") !== ""}
            />
            <label for={field.name}>{field.label}</label>
          </div>
        </div>
      );
    case "lines":
      return <Lines {...props} />;
    case "text":
      return <Text field={field} values={values} error={error} autofocus={autofocus} />;
  }
}

interface TextProps {
  readonly field: TextField;
  readonly values: Values;
  readonly error: FieldError | null;
  readonly autofocus: boolean;
}

function Text({ field, values, error, autofocus }: TextProps) {
  const { name, label, hint, units, keypad, width } = field;
  return (
    <Field
      name={name}
      label={label}
      value={values[name] ?? ""}
      width={width}
      error={error}
      autofocus={autofocus}
      {...(hint === undefined ? {} : { hint })}
      {...(keypad === undefined ? {} : { keypad })}
      {...(units === undefined
        ? {}
        : {
            unit: {
              name: `${name}_unit`,
              value: values[`${name}_unit`] ?? units[0] ?? "",
              choices: units.map(unitChoice),
            },
          })}
    />
  );
}

export const unitChoice = (unit: string): UnitChoice => ({ value: unit, label: UNIT_WORDS[unit] ?? unit });

/** Lines that are filled, and some empty ones; names of animals are suggested as they are typed. */
function Lines({ field, values, doubts, autofocus, spareLines }: OneFieldProps) {
  const filled = Object.keys(values)
    .filter((name) => name.startsWith(`${field.name}_`) && /_\d+$/.test(name) && values[name] !== "")
    .map((name) => Number(name.slice(field.name.length + 1)));
  const count = Math.max(0, ...filled) + spareLines;
  return (
    <>
      <datalist id="animal-names">
        {animals.map(({ id, commonName }) => (
          <option key={id} value={commonName} />
        ))}
      </datalist>
      {Array.from({ length: count }, (_, i) => {
        const name = `${field.name}_${i + 1}`;
        return (
          <Field
            key={name}
            name={name}
            label={i === 0 ? field.label : `Animal ${i + 1}`}
            value={values[name] ?? ""}
            width="middle"
            error={errorOf(name, doubts)}
            autofocus={autofocus && i === 0}
            suggestions="animal-names"
            {...(i === 0 && field.hint !== undefined ? { hint: field.hint } : {})}
          />
        );
      })}
    </>
  );
}

export function errorOf(name: string, doubts: readonly FieldDoubt[]): FieldError | null {
  const own = doubts.filter(({ field }) => field === name);
  const [first, ...more] = own;
  if (first === undefined) return null;
  return {
    text: [first.text, ...more.map(({ text }) => text)].join(" "),
    fixes: first.choices.map(({ label, text }) => ({
      label: `Read as ${label}`,
      name: `${FIX}${name}`,
      value: text,
    })),
  };
}

/** One line a field in the summary: the same words as beside it. */
export const summaryOf = (doubts: readonly FieldDoubt[]): readonly { field: string; text: string }[] =>
  [...new Set(doubts.map(({ field }) => field))].map((field) => ({
    field,
    text: errorOf(field, doubts)?.text ?? "",
  }));

/**
 * The return key presses the first button of a form: this one, and not a fix that stands further up than the answer.
 * Seen and reached by nobody.
 */
export function ReturnKey({ name, value }: { readonly name?: string; readonly value?: string }) {
  return (
    <button type="submit" class="unseen" tabIndex={-1} aria-hidden="true" name={name} value={value}>
      Keep
    </button>
  );
}
