/** What the plan brings to the page of weeks: what to buy for a wave, what to leave alone before and after it. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { daysBetween } from "../../contract/quantity/calendar.ts";
import { type AnimalRow, inFull } from "../animals/fit-words.ts";
import { joined, linked, maybeTold, type Sentence, told } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { counted, dateWords } from "../words.ts";
import type { WeekItem } from "./item.ts";

type Wave = WavesOutput["waves"][number];

export function fromPlan({ waves, animals }: TankAnswers): readonly WeekItem[] {
  const today = waves.tank.as_of;
  return [
    ...waves.waves.flatMap((wave, i) => ofWave(wave, waves.waves[i + 1], today)),
    ...(waves.kind === "nothing_yet" ? untilThen(waves) : beforeFirst(waves.waves[0], today)),
    ...tooYoung(animals.animals, today),
  ];
}

function ofWave(wave: Wave, next: Wave | undefined, today: string): WeekItem[] {
  const inDays = daysBetween(today, wave.from);
  const shells = wave.animals.reduce((sum, { spare_shells }) => sum + spare_shells, 0);
  const wanted = joined([
    ...wave.animals.map(({ count, name, figures }) => told(counted(count, name), figures.count)),
    ...(shells === 0 ? [] : [counted(shells, "empty shell")]),
  ]);
  return [
    {
      ...{ inDays, list: "buy", weight: 90 },
      text: [`Wave ${wave.number}, only if its gate holds: `, ...wanted, "."],
    },
    {
      ...{ inDays: daysBetween(today, wave.to) + 1, list: "dont", weight: 60 },
      text:
        next === undefined
          ? [`No further animal for this plan: wave ${wave.number} is its last.`]
          : ["No animal before ", told(dateWords(next.from), next.figures.from), ", however well it goes."],
    },
  ];
}

const untilThen = ({
  look_again_on,
  look_again_figure,
  because,
  because_figures,
}: WavesOutput): WeekItem[] => [
  {
    ...{ inDays: 0, list: "dont", weight: 95 },
    text:
      look_again_on === null
        ? ["Add no animal of the crew."]
        : [
            "Add no animal before ",
            maybeTold(dateWords(look_again_on), look_again_figure),
            ": then look again.",
          ],
  },
  ...because.slice(0, 1).map(
    (text, i): WeekItem => ({
      ...{ inDays: 0, list: "expect", weight: 50 },
      text: ["Nothing for a crew yet: ", ...linked(inFull(text), because_figures[i])],
    }),
  ),
];

const beforeFirst = (first: Wave | undefined, today: string): WeekItem[] =>
  first === undefined || daysBetween(today, first.from) <= 0
    ? []
    : [
        {
          ...{ inDays: 0, list: "dont", weight: 95 },
          text: ["Add no animal before ", told(dateWords(first.from), first.figures.from), "."],
        },
      ];

/** Crew kinds that only the tank's age keeps out, in one line; which and until when is told of each. */
function tooYoung(rows: readonly AnimalRow[], today: string): WeekItem[] {
  const young = rows.flatMap(({ name, role, fit }) => {
    const age = fit?.status === "not_yet" ? fit.reasons.find(({ code }) => code === "age") : undefined;
    const day = /\d{4}-\d\d-\d\d/.exec(age?.until ?? "")?.[0];
    const isCrew = role === "crew" || role === "crew_with_caution";
    return day === undefined || !isCrew || fit?.reasons.length !== 1
      ? []
      : [{ name, day, figure: age?.figure ?? null }];
  });
  const days = [...new Set(young.map(({ day }) => day))].filter((day) => daysBetween(today, day) > 0).sort();
  const last = days.at(-1);
  if (last === undefined) return [];
  const few = young.filter(({ day }) => day === last).slice(0, 3);
  const text: Sentence = [
    "Too young a tank for ",
    ...joined(few.map(({ name, figure }) => maybeTold(name, figure))),
    ` until ${dateWords(last)}.`,
  ];
  return [{ inDays: 0, list: "dont", weight: 40, text }];
}
