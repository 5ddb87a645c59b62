/** One animal as an entry of a field guide: sentences under a few headings. */
import { animalById, sources } from "../../catalogue/index.ts";
import type { Animal, EaterLink, KeeperLevel } from "../../engine/types/animal.ts";
import { counted } from "../words.ts";
import { cautionsOf } from "./cautions.ts";
import { amountSentences, dietSentence } from "./diet.ts";

export interface Section {
  readonly title: string;
  readonly sentences: readonly string[];
}

export function entryOf(animal: Animal): Section[] {
  return [
    { title: "What it eats", sentences: [dietSentence(animal), ...amountSentences(animal)] },
    { title: "What it does, and does not", sentences: workSentences(animal) },
    { title: "What it needs", sentences: [...animal.onlyIf, ...waterSentences(animal)] },
    { title: "Company", sentences: companySentences(animal) },
    { title: "Room and age", sentences: roomSentences(animal) },
    { title: "Mind", sentences: cautionsOf(animal) },
    ...(animal.lawCheck === null ? [] : [{ title: "Law", sentences: [animal.lawCheck] }]),
    ...(animal.notes === "" ? [] : [{ title: "Notes", sentences: [animal.notes] }]),
    { title: "How it is known", sentences: knowledgeOf(animal) },
  ];
}

const WORK: readonly (readonly [keyof Animal["services"], does: string, not: string])[] = [
  ["filmScraping", "scrapes film", "scrape film"],
  ["hairAlgaeRemoval", "takes short hair algae", "take hair algae"],
  ["bubbleAlgaeRemoval", "takes bubble algae", "take bubble algae"],
  ["detritusStirring", "works through detritus", "work through detritus"],
  ["sandTurning", "turns sand", "turn sand"],
  ["leftoverAndCarrionRemoval", "clears leftovers and carrion", "clear leftovers or carrion"],
];
const WELL = ["", "a little", "fairly well", "well"];

function workSentences({ services }: Animal): string[] {
  const does = WORK.filter(([key]) => services[key] > 0).sort((a, b) => services[b[0]] - services[a[0]]);
  const not = WORK.filter(([key]) => services[key] === 0).map(([, , words]) => words);
  const done = does.map(([key, words]) => `${words} ${WELL[services[key]]}`);
  return [
    done.length === 0 ? "It does no work for the tank." : `It ${list(done, "and")}.`,
    ...(not.length === 0 || done.length === 0 ? [] : [`It does not ${list(not, "or")}.`]),
  ];
}

function waterSentences({ temperatureC: t, salinityPsu: s }: Animal): string[] {
  return [
    `It lives at ${t.min} to ${t.max} °C, best at ${t.optimumLow} to ${t.optimumHigh} °C, and at a salinity of ${s.low} to ${s.high}.`,
  ];
}

function companySentences({ predatorsOfIt, preysOn, groupMin, maxPerTank }: Animal): string[] {
  const named = (links: readonly EaterLink[], likelihood: EaterLink["likelihood"]) =>
    links
      .filter((link) => link.likelihood === likelihood)
      .map(({ id }) => animalById.get(id)?.commonName ?? id);
  const eaten = [
    sentence(named(predatorsOfIt, "likely"), (names) => `It is eaten by ${names}.`),
    sentence(named(predatorsOfIt, "possible"), (names) => `It may be eaten by ${names}.`),
  ].flat();
  const eats = [
    sentence(named(preysOn, "likely"), (names) => `It eats ${names}.`),
    sentence(named(preysOn, "possible"), (names) => `It may eat ${names}.`),
  ].flat();
  return [
    ...(eaten.length === 0 ? ["Nothing of this list is known to eat it."] : eaten),
    ...(eats.length === 0 ? ["It eats no animal of this list."] : eats),
    ...(maxPerTank === 1 ? ["Keep one alone, without its like."] : []),
    ...(maxPerTank !== null && maxPerTank > 1 ? [`No more than ${maxPerTank} get on in one tank.`] : []),
    ...(groupMin > 1 ? [`Bring at least ${groupMin} together.`] : []),
  ];
}

const sentence = (names: readonly string[], make: (names: string) => string): string[] =>
  names.length === 0 ? [] : [make(list(names, "and"))];

const LEVEL: Readonly<Record<KeeperLevel, string>> = {
  "first-tank": "It suits a first tank.",
  experienced: "It is for keepers with a few years behind them.",
  specialist: "It is for specialists.",
};

function roomSentences(animal: Animal): string[] {
  const { spacingLitresPerAnimal: room, adultSizeMm: size, lifespanYears: life, minTankAgeReason } = animal;
  const old =
    animal.minTankAgeDays > 0
      ? ` that has held seawater for ${animal.minTankAgeDays} days or more (${minTankAgeReason})`
      : "";
  const shells = animal.needs.emptyShellsPerAnimal;
  return [
    LEVEL[animal.keeperLevel],
    `It wants a display of at least ${animal.minTankLitres} L${old}.`,
    `Each has room in about ${room.central} L (${room.low} to ${room.high}; habit, not measured).`,
    `It grows to about ${size.central} mm (${size.low} to ${size.high}) and lives about ${counted(life.central, "year")} (${life.low} to ${life.high}).`,
    ...(shells === null
      ? []
      : [
          `Keep about ${counted(shells.central, "empty shell")} for each, a size up${animal.needs.shellKind === null ? "" : ` (${animal.needs.shellKind})`}.`,
        ]),
  ];
}

const FACT: Readonly<Record<string, string>> = {
  diet: "the diet",
  adultSizeMm: "size",
  liveWetMassG: "weight",
  intakeMgCPerDay: "how much it eats",
  breakEvenIntakeMgCPerDay: "what it lives on",
  starvationToleranceDays: "how long it lasts without food",
  lifespanYears: "its age",
  temperatureC: "warmth",
  minTankLitres: "the least tank",
  spacingLitresPerAnimal: "room",
  predatorsOfIt: "who eats it",
  services: "its work",
};
const KNOWN_BY: readonly (readonly [start: string, words: string])[] = [
  ["read", "Read in a source"],
  ["computed", "Worked out by us"],
  ["memory", "From memory"],
  ["judgement", "Our judgement"],
];

function knowledgeOf({ basis, sources: keys }: Animal): string[] {
  const told = KNOWN_BY.flatMap(([start, words]) => {
    const facts = Object.entries(FACT).filter(([field]) => basis[field]?.startsWith(start) === true);
    return facts.length === 0 ? [] : [`${words}: ${facts.map(([, name]) => name).join(", ")}.`];
  });
  const works = keys.map((key) => {
    const source = sources.get(key);
    return `Source ${key}: ${source?.title ?? source?.about ?? ""}`.replace(/[.\s]*$/, ".");
  });
  return [...told, ...works];
}

export const list = (names: readonly string[], word: "and" | "or"): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} ${word} ${names.at(-1)}`;
