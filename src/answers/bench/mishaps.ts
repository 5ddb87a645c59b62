/** Outages, medicine beside animals that it kills, growths that close a tank to newcomers, trouble and then silence. */
import { animalById } from "../../catalogue/index.ts";
import { findMedicine } from "../../catalogue/medicines.ts";
import type { GrowthSeen } from "../../engine/types/record.ts";
import type { Growth } from "../../engine/types/tank.ts";
import type { Advice } from "../advice.ts";
import { capital } from "../animals/fit-words.ts";
import { MEDICINE_GROUP_OF } from "../medicines/words.ts";
import { dateWords } from "../words.ts";
import type { Unsettled } from "./events.ts";
import { invertebratesOf, type KnownOfTank } from "./known.ts";

/** Hours without each from which it can't wait, and from which it is this week's matter. */
const LONG_HOURS = { power: [6, 2], pumps: [6, 2], heater: [12, 4] } as const;
const LIST_OF = { power: "wrong:power-cut", pumps: "wrong:pumps", heater: "wrong:cold" } as const;

export function outageAdvice(known: KnownOfTank, { outages }: Unsettled): Advice[] {
  return (["power", "pumps", "heater"] as const).flatMap((of): Advice[] => {
    const some = outages.filter((one) => one.of === of);
    const hours = Math.max(0, ...some.map((one) => one.hours));
    const [today, week] = LONG_HOURS[of];
    if (hours < week) return [];
    const last = some
      .map(({ on }) => on)
      .sort()
      .at(-1);
    const long = hours >= today;
    const cold = of === "heater";
    return [
      {
        id: `outage.${of}`,
        urgency: long ? "today" : "this_week",
        weight: long ? 92 + Math.min(2, hours / 48) : 55,
        about: "danger",
        do: [
          cold
            ? "Measure the temperature, and warm the water by 1 °C an hour at most."
            : "Move the water by hand or battery pump, then test ammonia and temperature.",
        ],
        why: [
          [
            `Without ${of} for ${hours} ${hours === 1 ? "hour" : "hours"} on ${dateWords(last ?? known.today)}; no test or look since.`,
          ],
          [
            cold
              ? "Cold animals stop eating, and a quick return to warmth harms them more."
              : "Oxygen goes first, then filter bacteria die and ammonia rises a day or two later. Mains work is for a licensed electrician.",
          ],
        ],
        byWhen: [long ? "Today." : "This week."],
        by: long ? known.today : null,
        wouldChange: ["Tests on a later day that find all well: log them."],
        restsOn: some.map(({ entry }) => entry).join(" "),
        act: long
          ? { words: "What to do first", leads: LIST_OF[of] }
          : { words: "Log what you measure", leads: "readings" },
        wait: { words: "Wait: look again tomorrow", leads: "daybook" },
      },
    ];
  });
}

/** Two active ingredients in one text, or a brand: copper in it is still copper. */
const COPPER = /copper|\bcu\b|chelat/i;

/** Kinds that live there and that it kills; a text that nobody can resolve kills all that copper kills, if it is copper. */
function killedBy(name: string, { facts }: KnownOfTank): readonly string[] {
  const medicine = findMedicine(name) ?? (COPPER.test(name) ? findMedicine("copper") : null);
  if (medicine === null) return [];
  return facts.present.flatMap(({ id, count }) => {
    const animal = animalById.get(id);
    if (animal === undefined || count <= 0 || animal.group === "fish") return [];
    return medicine.groups[MEDICINE_GROUP_OF[animal.group]].value === "kills" ? [animal.commonName] : [];
  });
}

/** Medicines told in the questions and put in by the daybook, and not known to be gone. */
export function medicineAdvice(known: KnownOfTank, { medicines }: Unsettled): Advice[] {
  const names = [...new Set([...known.facts.medicines, ...medicines.map(({ substance }) => substance)])];
  if (names.length === 0) return [];
  const killing = names.map((name) => ({ name, killed: killedBy(name, known) }));
  const [worst] = killing.filter(({ killed }) => killed.length > 0);
  const unknown = names.filter((name) => findMedicine(name) === null && !COPPER.test(name));
  const there = invertebratesOf(known);
  return [
    {
      id: "medicine",
      urgency: worst === undefined ? "this_week" : "today",
      // Where something is wrong besides, that is looked for first: all but copper are over sooner.
      weight: worst === undefined ? 75 : COPPER.test(worst.name) ? 95 : 93,
      about: "medicine",
      do: [
        worst === undefined
          ? "Add no animal while there is medicine in the water."
          : `Take the snails, crabs and shrimps out of the water with ${worst.name} now.`,
      ],
      why: [
        [
          worst === undefined
            ? `In the water: ${names.join(", ")}. Snails, crabs and shrimps die of copper and of many medicines.`
            : `${capital(worst.name)} is in the water with ${[...new Set(worst.killed)].slice(0, 3).join(", ")}. It kills them.`,
        ],
        ...(unknown.length > 0 && there.length > 0
          ? [
              [
                `Not known here by active ingredient: ${unknown.join(", ")}. Read the label; it counts as the worst.`,
              ],
            ]
          : []),
        ["Ask an aquatic vet before you treat, and before you stop."],
      ],
      byWhen: [worst === undefined ? "Until a test shows that it is gone." : "Today."],
      by: worst === undefined ? null : known.today,
      wouldChange: ["A test that shows none is left, logged as ended, and an answer of no to question 8."],
      restsOn: [...names, ...medicines.map(({ entry }) => entry)].join(" "),
      act: { words: "What to do first", leads: "wrong:medicine" },
      wait: { words: "Wait until it is gone", leads: "ahead" },
    },
  ];
}

/** Growths that mean trouble, from which score on, and how heavy a covered tank weighs. */
const NUISANCES: readonly (readonly [Growth, string, least: number])[] = [
  ["dinoflagellates", "dinoflagellates", 1],
  ["cyanobacteria", "cyanobacteria", 3],
  ["hair_algae", "hair algae", 4],
  ["bubble_algae", "bubble algae", 4],
];

/** The latest sighting of each counts. */
const latestGrowth = ({ record }: KnownOfTank, growth: Growth): GrowthSeen | undefined =>
  record.observations
    .filter((one): one is GrowthSeen => one.kind === "growth" && one.growth === growth)
    .at(-1);

export function nuisanceAdvice(known: KnownOfTank): Advice[] {
  return NUISANCES.flatMap(([growth, words, least]): Advice[] => {
    const seen = latestGrowth(known, growth);
    if (seen === undefined || seen.score < least) return [];
    const dino = growth === "dinoflagellates";
    return [
      {
        id: `growth.${growth}`,
        urgency: dino ? "this_week" : "next_visit",
        weight: (dino ? 63 : 28) + seen.score,
        about: "growth",
        do: [
          dino
            ? "Look at the slime under a microscope, and add no grazer meanwhile."
            : `Take out what you can of the ${words} by hand, then find its cause.`,
        ],
        why: [
          [`Seen on ${dateWords(seen.on)}: ${words}, ${seen.score} of 4.`],
          [
            dino
              ? "Snails that graze on dinoflagellates can die of them, so no wave opens while they are suspected."
              : "A crew seldom eats down what has covered a tank already.",
          ],
        ],
        byWhen: [dino ? "This week." : "With the next water change."],
        by: null,
        wouldChange: ["A later sighting that scores it lower, or names it otherwise."],
        restsOn: seen.entry,
        act: { words: "What is this?", leads: "growths" },
        wait: { words: "Wait: look again in a week", leads: "daybook" },
      },
    ];
  });
}
