/**
 * A question with its answers in words: radio buttons, or boxes where several may hold. "I'm not sure" is one of them,
 * set a little apart, with what is taken instead.
 */
import type { ComponentChildren } from "preact";
import { type FieldError, FieldErrorText } from "./field.tsx";

export interface ChoiceOption {
  readonly value: string;
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
  readonly checked: boolean;
}

interface ChoicesProps {
  /** Sent with each; the first option's input has it as id, so that an error summary can lead there. */
  readonly name: string;
  readonly legend: ComponentChildren;
  readonly hint?: ComponentChildren;
  /** Several may hold. */
  readonly several?: boolean;
  readonly options: readonly ChoiceOption[];
  /** Value of the option that says so, and what is taken then. */
  readonly notSure?: { readonly value: string; readonly checked: boolean; readonly means: ComponentChildren };
  readonly error?: FieldError | null;
  /** Side by side where there is room: one of many such rows. */
  readonly row?: boolean;
  /** The first thing to do on its page: the first answer takes the focus there. */
  readonly autofocus?: boolean;
}

export function Choices(props: ChoicesProps) {
  const { name, legend, hint, options, notSure } = props;
  const error = props.error ?? null;
  const described =
    [hint === undefined ? null : `${name}-hint`, error === null ? null : `${name}-error`]
      .filter((id) => id !== null)
      .join(" ") || undefined;
  const all: readonly (ChoiceOption & { apart?: boolean })[] =
    notSure === undefined
      ? options
      : [
          ...options,
          {
            value: notSure.value,
            checked: notSure.checked,
            label: "I'm not sure",
            hint: notSure.means,
            apart: true,
          },
        ];
  // Of radio buttons the pressed one is what the tab key reaches.
  const focused = Math.max(
    0,
    all.findIndex(({ checked }) => checked),
  );
  return (
    <fieldset
      class={`field choices${props.row === true ? " row" : ""}${error === null ? "" : " wrong"}`}
      aria-describedby={described}
    >
      <legend class="label">{legend}</legend>
      {hint === undefined ? null : (
        <div class="hint" id={`${name}-hint`}>
          {hint}
        </div>
      )}
      <FieldErrorText name={name} error={error} />
      {all.map((option, i) => {
        const id = i === 0 ? name : `${name}-${option.value}`;
        const meansId = option.hint === undefined ? undefined : `${id}-means`;
        return (
          <div key={option.value} class={option.apart === true ? "choice apart" : "choice"}>
            <input
              type={props.several === true ? "checkbox" : "radio"}
              id={id}
              name={name}
              value={option.value}
              checked={option.checked}
              aria-describedby={meansId}
              autofocus={props.autofocus === true && i === focused ? true : undefined}
            />
            <label for={id}>{option.label}</label>
            {option.hint === undefined ? null : (
              <div class="choice-means" id={meansId}>
                {option.hint}
              </div>
            )}
          </div>
        );
      })}
    </fieldset>
  );
}
