/** The fields that a tank's what-if offers: today's values in their hints, the animals that live there one by one. */

import { told } from "../../../answers/sentence.ts";
import { animalById, animals } from "../../../catalogue/index.ts";
import { isCrew } from "../../../engine/stocking/waves.ts";
import { figureId } from "../../../engine/types/figure-id.ts";
import { round3 } from "../../../engine/types/link.ts";
import type { TankFacts } from "../../../engine/types/tank.ts";
import { capital } from "../../parts/text.ts";
import type { WhatIfBodyView } from "./body.tsx";
import { crewField, type TodayValues, type Typed } from "./typed.ts";

const two = (value: number): string => round3(Number(value.toPrecision(2)));

export function todayValues({
  lightHours,
  waterChangeFraction,
  waterChangeEveryDays,
}: TankFacts): TodayValues {
  return {
    lightHours: Number(two(lightHours.central)),
    changePercent: Number(two(100 * waterChangeFraction.central)),
    changeDays: Number(two(waterChangeEveryDays.central)),
  };
}

/** `typed` may name animals that don't live here: by an address that somebody kept. */
export function fieldGroups(facts: TankFacts, typed: Typed): WhatIfBodyView["groups"] {
  const { lightHours, changePercent, changeDays } = todayValues(facts);
  return [
    {
      legend: "Feed",
      fields: [
        {
          name: "feed",
          label: "Feed a day",
          hint: [
            "Now about ",
            told(`${two(facts.feedGPerDay.central)} g`, figureId.tank("feedGPerDay")),
            ". Write +20 %, -50 % or grams.",
          ],
          thing: "feed",
        },
      ],
    },
    {
      legend: "Light",
      fields: [
        {
          name: "light",
          label: "Light a day",
          hint: [
            "Now about ",
            told(`${lightHours} h`, figureId.tank("lightHours")),
            ". Write hours, or 80 % for the lamp dimmed.",
          ],
          thing: "light",
        },
        {
          name: "dark",
          label: "Dark days from today",
          hint: ["Days without light, all at once; then as before."],
          thing: "dark days",
        },
      ],
    },
    {
      legend: "Water change",
      fields: [
        {
          name: "share",
          label: "Share of the water",
          hint: ["Now about ", told(`${changePercent} %`, figureId.tank("waterChangeFraction")), "."],
          thing: "water changed",
        },
        {
          name: "days",
          label: "Every so many days",
          hint: ["Now about ", told(String(changeDays), figureId.tank("waterChangeEveryDays")), "."],
          thing: "days between",
        },
      ],
    },
    { legend: "Crew", fields: [...crewFields(facts, typed), ...otherFields()] },
  ];
}

function crewFields({ present }: TankFacts, typed: Typed) {
  const heads = new Map<string, number>();
  for (const { id, count } of present) heads.set(id, (heads.get(id) ?? 0) + count);
  for (const name of Object.keys(typed)) {
    if (name.startsWith(crewField(""))) heads.set(name.slice(crewField("").length), 0);
  }
  for (const { id, count } of present) heads.set(id, Math.max(heads.get(id) ?? 0, count));
  return [...heads].flatMap(([id, count]) => {
    const animal = animalById.get(id);
    if (animal === undefined || !isCrew(animal)) return [];
    const { commonName } = animal;
    return [
      {
        name: crewField(id),
        label: capital(commonName),
        hint:
          count === 0
            ? ["None here now. +2 adds two."]
            : [told(String(count), figureId.present(id)), " here now. +2 adds two, -1 gives one away."],
        thing: commonName,
      },
    ];
  });
}

const otherFields = () => [
  {
    name: "other",
    label: "Another animal",
    hint: ["By its name, as in the field guide."],
    thing: "",
    offered: animals.filter(isCrew).map(({ commonName }) => commonName),
  },
  { name: "other-count", label: "How many of it", hint: ["+2 adds two."], thing: "of that animal" },
];
