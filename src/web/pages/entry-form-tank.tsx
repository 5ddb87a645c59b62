/** Which tank of the store, chosen from all there are beside this one. A name that several have stands with its keeper. */
import type { EntryField } from "../../contract/daybook/fields.ts";
import { type FieldError, FieldErrorText } from "../parts/field.tsx";

export interface TankChoice {
  readonly id: string;
  readonly name: string;
  readonly keeper: string;
}

interface TankFieldProps {
  readonly field: EntryField;
  /** Id of the tank, or what was typed for one. */
  readonly value: string;
  readonly error: FieldError | null;
  readonly tanks: readonly TankChoice[];
}

export function TankField({ field: { name, label }, value, error, tanks }: TankFieldProps) {
  const unknown = value !== "" && tanks.every(({ id }) => id !== value);
  return (
    <div class={error === null ? "field" : "field wrong"}>
      <label for={name} class="label">
        {label}
      </label>
      <FieldErrorText name={name} error={error} />
      <select
        id={name}
        name={name}
        class="input full"
        aria-describedby={error === null ? undefined : `${name}-error`}
        aria-invalid={error === null ? undefined : ("true" as const)}
      >
        <option value="">choose a tank</option>
        {unknown ? (
          <option value={value} selected>
            {value}
          </option>
        ) : null}
        {tanks.map((tank) => (
          <option key={tank.id} value={tank.id} selected={tank.id === value}>
            {tank.name}, kept by {tank.keeper}
          </option>
        ))}
      </select>
    </div>
  );
}
