/** Days on which ordered animals should come: the gate is looked at again before they go in. */
import { animalById } from "../../catalogue/index.ts";
import type { CareDate } from "../almanac/care-date.ts";
import { absencesAhead, awayOn } from "../holiday/absences.ts";
import type { RecordScene } from "../record-scene.ts";
import { counted, dateWords } from "../words.ts";
import { onOrder } from "./on-order.ts";

export function comingDates(scene: RecordScene): readonly CareDate[] {
  const { record, today } = scene;
  return onOrder(record).flatMap(({ animal, heads, since, expectedOn, entries }): CareDate[] => {
    if (expectedOn === null) return [];
    const what = counted(heads, animalById.get(animal)?.commonName ?? animal);
    const late = expectedOn < today;
    const away = awayOn(absencesAhead(scene), expectedOn);
    const common = {
      ...{ id: `order.${animal}`, kind: "arrival" as const, at: null, every: null, until: null },
      ...{ figures: [], restsOn: entries.join(" "), leads: "errands" as const, done: null },
      wouldChange: [
        "What arrives is logged, dead ones too; what will not come is taken back in the daybook.",
      ],
    };
    if (away !== undefined && !late)
      return [
        {
          ...common,
          ...{ on: today, gate: null, restsOn: `${common.restsOn} away ${away.from} ${away.to}` },
          do: [
            `Ask the shop to send ${what} after ${dateWords(away.to)}: you are away when they should come.`,
          ],
          why: [
            [
              `Ordered on ${dateWords(since)}, to come on ${dateWords(expectedOn)}; you are away until ${dateWords(away.to)}.`,
            ],
          ],
          byWhen: ["Today, or as soon as the shop can be asked."],
          wouldChange: ["Another day told by the shop: correct the entry of the order."],
        },
      ];
    return [
      {
        ...common,
        ...{ on: late ? today : expectedOn, gate: ["The gate of their wave, looked at again that day."] },
        do: [
          late
            ? `Ask the shop for ${what}: they have not come.`
            : `Be there for ${what}; look at the gate first.`,
        ],
        why: [[`Ordered on ${dateWords(since)}, to come on ${dateWords(expectedOn)}.`]],
        byWhen: [late ? "Today." : `${dateWords(expectedOn)}.`],
      },
    ];
  });
}
