/** From a file of facts/medicines to the `Medicine` that answers use. */
import type { SaidFact } from "../../src/engine/types/diagnosis.ts";
import { MEDICINE_GROUPS, type Medicine, REMOVERS, type Rested } from "../../src/engine/types/medicine.ts";
import type { Provenance } from "./fact.ts";
import type { MedicineFile } from "./medicine-schema.ts";

const how = ({ evidence, note }: Provenance): string =>
  note === undefined ? evidence : `${evidence}: ${note}`;
const rested = <Value>(fact: Provenance & { readonly value: Value }): Rested<Value> => ({
  ...{ value: fact.value, evidence: how(fact), sources: fact.source },
});
const saidFact = (fact: Provenance & { readonly text: string }): SaidFact => ({
  ...{ text: fact.text, evidence: how(fact), sources: fact.source },
});
const mapped = <Key extends string, Value>(keys: readonly Key[], of: (key: Key) => Value) =>
  Object.fromEntries(keys.map((key) => [key, of(key)])) as Record<Key, Value>;

export function toMedicine(file: MedicineFile): Medicine {
  const { gone_days: gone } = file;
  return {
    id: file.id,
    name: file.names.common.value,
    also: file.names.also.value,
    use: file.use.value,
    groups: mapped(MEDICINE_GROUPS, (group) => rested(file.groups[group])),
    nitrifiers: rested(file.nitrifiers),
    oxygen: rested(file.oxygen),
    said: saidFact(file.said),
    remove: mapped(REMOVERS, (by) => ({
      works: rested(file.remove[by].works),
      said: saidFact(file.remove[by].said),
    })),
    goneDays:
      gone === null
        ? null
        : {
            ...{ low: gone.low, central: gone.central, high: gone.high },
            ...{ evidence: how(gone), sources: gone.source },
          },
    returnDays: rested(file.return.days),
    returnTest: saidFact(file.return.test),
    dont: file.dont.map(saidFact),
    people: file.people === null ? null : saidFact(file.people),
  };
}
