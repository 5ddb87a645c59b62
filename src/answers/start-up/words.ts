/** Start-up in words: what each stage means, what is done and left alone meanwhile. Plain, and without a promise. */
import type { StartUpOutput } from "../../contract/output/start-up.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { chance, dateWords } from "../words.ts";
import type { Stage, StageFound } from "./stage.ts";

export const STAGE_TITLE: Readonly<Record<Stage, string>> = {
  not_filled: "Start-up has not begun: the tank holds no seawater yet",
  no_data: "Not enough data: no test of both ammonia and nitrite within ten days",
  waiting: "Not enough data: no test showed anything yet, and no ammonia was given",
  ammonia: "Ammonia is there; nitrite is still too low for the test to show",
  both: "Ammonia is being used up, and nitrite is there",
  nitrite: "Ammonia is gone; nitrite is still there",
  clear: "Both too low for the tests to show: one nought is not the end",
  proven: "A dose of ammonia was gone in a day, and nitrite with it",
  past: "This tank is past its start-up",
};

/** Tops of what was read, where readings on either side are enough. */
export interface Tops {
  readonly tan: string | null;
  readonly no2: string | null;
}

export function stageSentence(
  { stage, stocked, tan, no2, no2Before, proof }: StageFound,
  tops: Tops = { tan: null, no2: null },
): string {
  const on = [tan?.on, no2?.on]
    .filter((day) => day !== undefined)
    .sort()
    .at(-1);
  const day = on === undefined ? "" : ` on ${dateWords(on)}`;
  switch (stage) {
    case "not_filled":
      return "It begins with the first salt water and the first ammonia.";
    case "no_data":
      return "Test both, log them, and this page says where the cycle stands.";
    case "waiting":
      return `Ammonia and nitrite were too low for the tests to show${day}. Bacteria that were never given anything cannot be judged.`;
    case "ammonia":
      return `The test showed ammonia${day}: the bacteria that use it are still few, and those for nitrite have nothing yet.${topSentence("Ammonia", tops.tan)}`;
    case "both":
      return `The tests showed both${day}: ammonia is turned into nitrite; nitrite goes weeks later.${topSentence("Ammonia", tops.tan)}${topSentence("Nitrite", tops.no2)}`;
    case "nitrite": {
      const before = no2Before?.central ?? null;
      const way =
        tops.no2 !== null || no2 === null || before === null || no2.central === before
          ? ""
          : no2.central < before
            ? ", less than the test before"
            : ", more than the test before";
      return `The test showed nitrite${day}${way}. The bacteria that use it come last.${topSentence("Nitrite", tops.no2)}`;
    }
    case "clear":
      return stocked
        ? `Both were too low for the tests to show${day}. Two such tests three days apart are what the first wave asks for.`
        : `Both were too low for the tests to show${day}. Whether a new load would go as fast, only a dose can tell.`;
    case "proven":
      return `Dosed on ${dateWords(proof?.dose.on ?? "")}; a day later both were too low for the tests to show.`;
    case "past":
      return "Ammonia or nitrite that a test shows now is trouble, no start-up.";
  }
}

const topSentence = (name: string, on: string | null): string =>
  on === null ? "" : ` ${name} rose until about ${dateWords(on)} and has fallen since.`;

export const ROCK_WORDS: Readonly<Record<TankFacts["rockStart"]["value"], string>> = {
  live: "live rock, kept wet",
  mixed: "some live rock, the rest dry",
  dry: "dry rock",
  none: "no rock",
};

/** What is common practice at this stage, and what is left alone. No source. */
export const DO_NOW: Readonly<Record<Stage, readonly string[]>> = {
  not_filled: ["Fill, salt, warm and move the water first; test salinity and temperature."],
  no_data: ["Test ammonia and nitrite on the same day, and log both with the step of the kit."],
  waiting: ["Give ammonia once, then test ammonia and nitrite every third day."],
  ammonia: ["Test every third day.", "Keep pumps, heater and air on: the bacteria need oxygen and warmth."],
  both: [
    "Test every third day.",
    "Keep pumps, heater and air on.",
    "Test alkalinity once a week: the bacteria use it up.",
  ],
  nitrite: [
    "Test every third day.",
    "Feed the bacteria while you wait: a little ammonia once it is gone and nitrite is low.",
    "Test alkalinity once a week: below 6 dKH the bacteria slow down.",
  ],
  clear: ["Dose, test a day later, and log both."],
  proven: [
    "Change part of the water where nitrate stands high.",
    "Keep feeding the bacteria, a little ammonia every second or third day, until the first animals come.",
  ],
  past: ["Test ammonia and nitrite when something dies, smells or is new."],
};

export const NOT_NOW: readonly string[] = [
  "Put no animal in to feed the bacteria: ammonia and nitrite harm it.",
  "Do not add the first wave on one nought.",
  "Do not change much water before the end: it takes away what the bacteria live on. With animals in it, change it.",
  "Do not clean filter or rock, and keep medicines out.",
  "Do not count on a bottle of bacteria: test as you would without it.",
  "Never mix ammonia with bleach: the gas is poisonous. Household ammonia with scent or soap is no food.",
];

/** The end as a title says it. */
export function endTitle({ end, stage }: Pick<StartUpOutput, "end" | "stage">): string {
  if (end === null) return STAGE_TITLE[stage];
  // The share that is done by that day, as the rows below tell it: several versions may end on one day.
  const done = end.by.find(({ on }) => on === end.middle)?.of_20 ?? 10;
  return `Done by ${dateWords(end.middle)}: ${chance(done)}; between ${dateWords(end.early)} and ${dateWords(end.late)} in 18 of 20`;
}
