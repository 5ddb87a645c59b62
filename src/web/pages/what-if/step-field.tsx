/**
 * A field of the what-if: text, with a button for one step less and one for one step more beside it. The buttons work
 * where script runs and are not shown elsewhere; the text alone says everything.
 */
import type { ComponentChildren } from "preact";
import type { Sentence as SentenceParts } from "../../../answers/sentence.ts";
import { FieldErrorText } from "../../parts/field.tsx";
import { Sentence } from "../sentence.tsx";
import type { FieldFault } from "./typed.ts";

export interface FieldView {
  readonly name: string;
  readonly label: string;
  /** Today's value in it is a door to its working. */
  readonly hint: SentenceParts;
  /** For the names of the buttons: "Less feed", "More feed". */
  readonly thing: string;
  /** Names that are offered while typing; such a field has no steps. */
  readonly offered?: readonly string[];
}

/** What the browser does; the server draws the fields without. */
export interface FieldActions {
  readonly typed: (name: string, text: string) => void;
  readonly step: (name: string, by: 1 | -1) => void;
  /** The field was left: time to work it out. */
  readonly left: () => void;
  /** The form was sent, by its own button or by that of a likely fix. */
  readonly sent: (fix: { readonly name: string; readonly text: string } | null) => void;
}

interface StepFieldProps {
  readonly field: FieldView;
  readonly value: string;
  readonly fault: FieldFault | undefined;
  readonly actions: FieldActions | null;
}

export function StepField({ field, value, fault, actions }: StepFieldProps) {
  const { name, label, hint, thing, offered } = field;
  const described = `${name}-hint${fault === undefined ? "" : ` ${name}-error`}`;
  const error =
    fault === undefined
      ? null
      : {
          text: fault.text,
          fixes: fault.fixes.map((fix) => ({ label: fix.label, name: `fix-${name}`, value: fix.text })),
        };
  return (
    <div class={fault === undefined ? "field" : "field wrong"}>
      <label for={name} class="label">
        {label}
      </label>
      <div class="hint" id={`${name}-hint`}>
        <Sentence of={hint} />
      </div>
      <FieldErrorText name={name} error={error} />
      <div class="input-row">
        {offered === undefined ? <Step name={name} thing={thing} by={-1} actions={actions} /> : null}
        <input
          type="text"
          id={name}
          name={name}
          class={`input ${offered === undefined ? "short" : "middle"}`}
          value={value}
          autocomplete="off"
          spellcheck={false}
          list={offered === undefined ? undefined : `${name}-offered`}
          aria-describedby={described}
          aria-invalid={fault === undefined ? undefined : "true"}
          onInput={({ currentTarget }) => actions?.typed(name, currentTarget.value)}
          onChange={() => actions?.left()}
        />
        {offered === undefined ? <Step name={name} thing={thing} by={1} actions={actions} /> : null}
      </div>
      {offered === undefined ? null : (
        <datalist id={`${name}-offered`}>
          {offered.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      )}
    </div>
  );
}

function Step({
  name,
  thing,
  by,
  actions,
}: {
  readonly name: string;
  readonly thing: string;
  readonly by: 1 | -1;
  readonly actions: FieldActions | null;
}): ComponentChildren {
  return (
    <button
      type="button"
      class="step"
      aria-label={`${by < 0 ? "Less" : "More"} ${thing}`}
      aria-controls={name}
      onClick={() => actions?.step(name, by)}
    >
      {by < 0 ? "Less" : "More"}
    </button>
  );
}
