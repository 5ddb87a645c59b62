/**
 * One entry of a form: label, hint, the typed text as it was typed, unit beside it, what is wrong bound to the input.
 * Native elements only; a figure is text with a numeric keypad (wheels and arrows change a number field unseen).
 */
import type { ComponentChildren } from "preact";

export interface UnitChoice {
  readonly value: string;
  readonly label: string;
}

/** A likely fix, sent by a button of the form. */
export interface FixChoice {
  /** "Read as 1.025 specific gravity" */
  readonly label: string;
  /** Sent under `name`; the server puts it in place of the typed text. */
  readonly name: string;
  readonly value: string;
}

export interface FieldError {
  readonly text: string;
  readonly fixes?: readonly FixChoice[];
}

interface FieldProps {
  /** Also the id of the input. */
  readonly name: string;
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
  /** As typed before, right or wrong. */
  readonly value?: string;
  /** Keypad of a phone; plain text where left out. */
  readonly keypad?: "decimal" | "numeric";
  readonly unit?: { readonly name: string; readonly value: string; readonly choices: readonly UnitChoice[] };
  readonly error?: FieldError | null;
  /** Radio or box sent as `name`=`value` instead of a figure. */
  readonly notSure?: { readonly name: string; readonly checked: boolean; readonly means: ComponentChildren };
  /** In characters, about: the field is as wide as what belongs in it. */
  readonly width?: "short" | "middle" | "full";
  /** Several lines. */
  readonly lines?: number;
  readonly autocomplete?: string;
  /** The first thing to do on its page: takes the focus there. */
  readonly autofocus?: boolean;
  /** Id of a datalist on the same page. */
  readonly suggestions?: string;
}

export function Field(props: FieldProps) {
  const { name, label, hint, value, keypad, unit, error, notSure, lines } = props;
  const errorText = error ?? null;
  const described =
    [hint === undefined ? null : `${name}-hint`, errorText === null ? null : `${name}-error`]
      .filter((id) => id !== null)
      .join(" ") || undefined;
  const shared = {
    id: name,
    name,
    class: `input ${props.width ?? (keypad === undefined ? "full" : "short")}`,
    "aria-describedby": described,
    "aria-invalid": errorText === null ? undefined : ("true" as const),
    autocomplete: props.autocomplete ?? "off",
    autofocus: props.autofocus === true ? true : undefined,
  };
  return (
    <div class={errorText === null ? "field" : "field wrong"}>
      <label for={name} class="label">
        {label}
      </label>
      {hint === undefined ? null : (
        <div class="hint" id={`${name}-hint`}>
          {hint}
        </div>
      )}
      <FieldErrorText name={name} error={errorText} />
      <div class="input-row">
        {lines === undefined ? (
          <input
            type="text"
            {...shared}
            inputmode={keypad}
            value={value}
            spellcheck={false}
            list={props.suggestions}
          />
        ) : (
          <textarea {...shared} rows={lines}>
            {value}
          </textarea>
        )}
        {unit === undefined ? null : <UnitSelect {...unit} />}
      </div>
      {notSure === undefined ? null : (
        <div class="choice">
          <input
            type="checkbox"
            id={notSure.name}
            name={notSure.name}
            value="yes"
            checked={notSure.checked}
          />
          <label for={notSure.name}>
            I'm not sure <span class="choice-means">{notSure.means}</span>
          </label>
        </div>
      )}
    </div>
  );
}

function UnitSelect({ name, value, choices }: NonNullable<FieldProps["unit"]>) {
  const [only] = choices;
  if (choices.length === 1 && only !== undefined) return <span class="unit-word">{only.label}</span>;
  return (
    <select class="input unit" name={name} id={name} aria-label="Unit">
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value} selected={choice.value === value}>
          {choice.label}
        </option>
      ))}
    </select>
  );
}

/** What is wrong, and the likely fixes as buttons that send the form. */
export function FieldErrorText({
  name,
  error,
}: {
  readonly name: string;
  readonly error: FieldError | null;
}) {
  if (error === null) return null;
  return (
    <div class="field-error" id={`${name}-error`}>
      <p>
        <span class="error-word">Can't be read yet: </span>
        {error.text}
      </p>
      {error.fixes === undefined || error.fixes.length === 0 ? null : (
        <div class="fixes">
          {error.fixes.map((fix) => (
            <button key={fix.label} type="submit" class="fix" name={fix.name} value={fix.value}>
              {fix.label}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
