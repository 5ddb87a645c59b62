/** Days on which ordered animals should come: the gate is looked at again before they go in. */
import { animalById } from "../../catalogue/index.ts";
import type { CareDate } from "../almanac/care-date.ts";
import type { RecordScene } from "../record-scene.ts";
import { counted, dateWords } from "../words.ts";
import { onOrder } from "./on-order.ts";

export function comingDates({ record, today }: RecordScene): readonly CareDate[] {
  return onOrder(record).flatMap(({ animal, heads, since, expectedOn, entries }): CareDate[] => {
    if (expectedOn === null) return [];
    const what = counted(heads, animalById.get(animal)?.commonName ?? animal);
    const late = expectedOn < today;
    return [
      {
        ...{ id: `order.${animal}`, kind: "arrival", on: late ? today : expectedOn, at: null },
        ...{ every: null, until: null, gate: ["The gate of their wave, looked at again that day."] },
        do: [
          late
            ? `Ask the shop for ${what}: they have not come.`
            : `Be there for ${what}; look at the gate first.`,
        ],
        why: [[`Ordered on ${dateWords(since)}, to come on ${dateWords(expectedOn)}.`]],
        byWhen: [late ? "Today." : `${dateWords(expectedOn)}.`],
        wouldChange: [
          "What arrives is logged, dead ones too; what will not come is taken back in the daybook.",
        ],
        ...{ figures: [], restsOn: entries.join(" "), leads: "errands", done: null },
      },
    ];
  });
}
