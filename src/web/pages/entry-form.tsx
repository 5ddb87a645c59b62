/**
 * The fields of one entry, new or corrected, drawn from the one table of what each kind asks for: words as answers in
 * rows, names of animals suggested, a growth's score drawn. What was typed, what is doubtful and the likely readings
 * stand at their field.
 */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { animals } from "../../catalogue/index.ts";
import { ENTRY_FIELDS, type EntryField } from "../../contract/daybook/fields.ts";
import { GROWTH_ANCHORS, SCORES } from "../../contract/daybook/growth-anchors.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import { MEASURED } from "../../contract/daybook/reading.ts";
import { GROWTHS, type Growth } from "../../engine/types/tank.ts";
import { Choices } from "../parts/choices.tsx";
import { Disclosure } from "../parts/disclosure.tsx";
import { Field } from "../parts/field.tsx";
import { CoverDrawing } from "./entry-form-cover.tsx";
import { type TankChoice, TankField } from "./entry-form-tank.tsx";
import { errorOf } from "./form-fields.tsx";
import { ReadingFields } from "./reading-form.tsx";

export interface OnRecord {
  readonly id: string;
  readonly name: string;
  readonly count: number;
}

/** What a form knows of its tank. */
export interface FormScene {
  /** Heads that the record holds today. */
  readonly onRecord: readonly OnRecord[];
  /** Other tanks of the store, where the entry can name one. */
  readonly tanks: readonly TankChoice[];
}

interface EntryFieldsProps {
  readonly kind: EntryKind;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly scene: FormScene;
  /** The first thing to do on its page: takes the focus there. */
  readonly first?: boolean;
}

export function EntryFields({ kind, values, doubts, scene, first = true }: EntryFieldsProps) {
  if (kind === "reading") {
    const quantity = MEASURED.find((one) => one === values["quantity"]) ?? "temperature_c";
    return (
      <>
        <input type="hidden" name="quantity" value={quantity} />
        <ReadingFields quantity={quantity} values={values} doubts={doubts} first={first} />
      </>
    );
  }
  const growth = kind === "growth" ? GROWTHS.find((one) => one === values["growth"]) : undefined;
  // What the page was opened for is no question any more.
  const given = kind === "decline" ? "advice" : growth === undefined ? "" : "growth";
  // Animals move to a tank or come from one: the form asks for one of the two.
  const unasked = kind !== "move" ? "" : "from" in values ? "to" : "from";
  const fields = ENTRY_FIELDS[kind].filter(
    ({ name }) => name !== unasked && (name !== given || !values[name]),
  );
  const focused = first && doubts.length === 0 ? (fields.find(({ name }) => !values[name])?.name ?? "") : "";
  return (
    <div class="entry-fields">
      {values[given] ? <input type="hidden" name={given} value={values[given]} /> : null}
      {fields.some(({ input }) => input === "animal") ? <AnimalNames scene={scene} /> : null}
      {fields.map((field) =>
        growth !== undefined && field.name === "score" ? (
          <ScoreField key="score" growth={growth} values={values} doubts={doubts} />
        ) : field.input === "traits" ? (
          <Traits key="traits" values={values} />
        ) : field.input === "tank" ? (
          <TankField
            key={field.name}
            field={field}
            value={values[field.name] ?? ""}
            error={errorOf(field.name, doubts)}
            tanks={scene.tanks}
          />
        ) : (
          <OneField
            key={field.name}
            field={field}
            values={values}
            doubts={doubts}
            autofocus={field.name === focused}
          />
        ),
      )}
    </div>
  );
}

/** Those on record come first. */
function AnimalNames({ scene }: { readonly scene: FormScene }) {
  const here = new Set(scene.onRecord.map(({ id }) => id));
  return (
    <datalist id="animal-names">
      {scene.onRecord.map(({ id, name }) => (
        <option key={id} value={name} />
      ))}
      {animals
        .filter(({ id }) => !here.has(id))
        .map(({ id, commonName }) => (
          <option key={id} value={commonName} />
        ))}
    </datalist>
  );
}

interface OneFieldProps {
  readonly field: EntryField;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly autofocus: boolean;
}

function OneField({ field, values, doubts, autofocus }: OneFieldProps) {
  const { name, label, input, needed, choices, example } = field;
  const error = errorOf(name, doubts);
  const value = values[name] ?? "";
  if (input === "choice" || input === "yes_no") {
    const known = value === "" || choices.some(({ text }) => text === value);
    return (
      <Choices
        name={name}
        legend={known ? label : `${label} (now: ${value})`}
        row
        autofocus={autofocus}
        error={error}
        options={[
          ...choices.map(({ label: words, text }) => ({
            value: text,
            label: words,
            checked: text === value,
          })),
          ...(needed ? [] : [{ value: "", label: "not said", checked: value === "" }]),
        ]}
      />
    );
  }
  const hint = hintOf(field);
  return (
    <Field
      name={name}
      label={label}
      value={input === "when" && value === "" && !doubts.length ? "today" : value}
      error={error}
      autofocus={autofocus}
      {...(hint === "" ? {} : { hint })}
      {...(input === "note" ? { lines: 2 } : { width: WIDTHS[input] ?? "middle" })}
      {...(input === "animal" ? { suggestions: "animal-names" } : {})}
      {...(input === "count" && example !== "" && /^\d+$/.test(example)
        ? { keypad: "numeric" as const }
        : {})}
    />
  );
}

const WIDTHS: Readonly<Partial<Record<EntryField["input"], "short" | "middle" | "full">>> = {
  count: "short",
  amount: "middle",
};

function hintOf({ input, needed, example }: EntryField): string {
  if (input === "when") return "Such as today, yesterday, 14 Jun, or 2026-06-14T18:30";
  const empty = needed ? "" : "May be left empty";
  if (example === "") return empty;
  return empty === "" ? `Such as ${example}` : `${empty}. Such as ${example}`;
}

interface ScoreFieldProps {
  readonly growth: Growth;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
}

/** Five drawings with their words: what is seen is held against them. */
function ScoreField({ growth, values, doubts }: ScoreFieldProps) {
  const { label, anchors } = GROWTH_ANCHORS[growth];
  return (
    <div class="scores">
      <Choices
        name="score"
        legend={`${label}: which is nearest?`}
        error={errorOf("score", doubts)}
        options={SCORES.map((score) => ({
          value: String(score),
          checked: values["score"] === String(score),
          label: (
            <span class="score-label">
              <CoverDrawing growth={growth} score={score} />
              <span>
                <strong>{score}</strong> {anchors[score]}
              </span>
            </span>
          ),
        }))}
      />
    </div>
  );
}

/** Traits that another page asked about: carried along, and seen. */
function Traits({ values }: { readonly values: Values }) {
  const asked = Object.entries(values).filter(([name, value]) => name.startsWith("trait.") && value !== "");
  if (asked.length === 0) return null;
  return (
    <Disclosure summary={asked.length === 1 ? "1 trait with it" : `${asked.length} traits with it`} open>
      {asked.map(([name, value]) => (
        <Choices
          key={name}
          name={name}
          legend={name.slice("trait.".length).replaceAll(/[._-]/g, " ")}
          row
          options={[
            { value: "yes", label: "seen", checked: value === "yes" },
            { value: "no", label: "not there", checked: value === "no" },
            { value: "", label: "can't tell", checked: false },
          ]}
        />
      ))}
    </Disclosure>
  );
}
