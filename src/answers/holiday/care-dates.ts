/**
 * What is to be done before a time away and after it, as dated care, and the days on which a sitter comes. Of one that is
 * asked for on its page, and of those that the daybook keeps: these are known by their entry, so that a correction moves
 * them in a calendar and makes none anew.
 */
import { feedingDays } from "../../contract/daybook/read-absence.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { exact, workedOut } from "../../engine/types/link.ts";
import type { CareDate } from "../almanac/care-date.ts";
import type { RecordScene } from "../record-scene.ts";
import { type Sentence, told } from "../sentence.ts";
import { counted, dateWords } from "../words.ts";
import { absencesIn, type KeptAbsence, lastDayHome } from "./absences.ts";
import { HOLIDAY_AT, type HolidaySpan, holidayFigure, type Packing, packingOf } from "./packing.ts";

export const REHEARSE_DAYS = 7;

interface Shape extends HolidaySpan {
  /** Before each id: `holiday`, or `holiday.ENTRY`. */
  readonly name: string;
  readonly fedBy: KeptAbsence["fedBy"];
}

type Given = Pick<CareDate, "do" | "why" | "byWhen"> &
  Partial<Pick<CareDate, "figures" | "done" | "gate" | "every" | "until" | "leads">>;

const dutyOf =
  ({ name, from, to, fedBy, sitterEvery }: Shape, today: string) =>
  (id: string, on: string, rest: Given): CareDate => ({
    ...{ id: `${name}.${id}`, kind: "holiday", on: on < today ? today : on, at: null, every: null },
    ...{ until: null, gate: null, figures: [], done: null, leads: "holiday" },
    restsOn: `${from} ${to} ${fedBy} ${sitterEvery}`,
    wouldChange: ["Other dates."],
    ...rest,
  });

const WHO_COMES: Readonly<Record<KeptAbsence["fedBy"], { readonly do: Sentence; readonly why: Sentence[] }>> =
  {
    sitter: {
      do: ["Show the sitter the tank: one feeding together, the fuse box, whom to call."],
      why: [
        ["What was done once together is done right alone."],
        ["A feeder is tried for a week, over a dish, before it is trusted."],
      ],
    },
    feeder: {
      do: ["Try the feeder over a dish for a week; show somebody the fuse box and whom to call."],
      why: [["It turns a little more out than it is set to, and can't see leftovers: judgement."]],
    },
    nobody: {
      do: ["Ask somebody to look in and call you: dry floor, pumps running, thermometer."],
      why: [["Nobody need feed; a pump or heater that fails is seen by who looks in alone."]],
    },
  };

/** What is packed, as a sentence knows it. */
type Bags = Pick<Packing, "bags" | "figures">;

function datesOf(shape: Shape, { bags, figures }: Bags, today: string): CareDate[] {
  const { from, to, fedBy } = shape;
  const duty = dutyOf(shape, today);
  const left = `Leaving on ${dateWords(from)}.`;
  const before = lastDayHome(shape);
  return [
    duty("rehearse", addDays(from, -REHEARSE_DAYS), {
      ...WHO_COMES[fedBy],
      byWhen: [`A week before. ${left}`],
    }),
    ...(fedBy === "sitter"
      ? [
          duty("pack", before, {
            do: ["Pack ", bags, " and write a day on each; put the rest of the food away."],
            why: [["Too much food is the commonest harm of a sitter."]],
            byWhen: [`The day before. ${left}`],
            figures,
          }),
        ]
      : []),
    duty("ready", before, {
      do: ["Change water, wipe the glass, clean the filter, fill the top-up; nothing new goes in."],
      why: [["It is the last care for a while; an animal added now would be watched by nobody."]],
      byWhen: [`The day before. ${left}`],
      done: { kind: "chore", fields: { chore: "water_change" } },
    }),
    duty("home", to, homeAgain(to)),
  ];
}

const homeAgain = (to: string): Given => ({
  do: ["Count heads, look for the dead, test ammonia and nitrate before the first feeding."],
  why: [["What happened meanwhile shows in the water first."]],
  byWhen: [`On coming back, ${dateWords(to)}.`],
  done: { kind: "head_count", fields: {} },
});

/** Of a holiday as its page asks for it. */
export const holidayDates = (span: HolidaySpan, packing: Bags, today: string): readonly CareDate[] =>
  datesOf({ ...span, name: "holiday", fedBy: "sitter" }, packing, today);

/** Of every time away that is kept: what lies behind is left out, and a sitter's visits stand in it. */
export function absenceDates(scene: RecordScene): readonly CareDate[] {
  const { today } = scene;
  return absencesIn(scene).flatMap((absence): CareDate[] => {
    const { from, to, key } = absence;
    const shape = { ...absence, name: `holiday.${key}` };
    const all = datesOf(shape, packedFor(absence, scene), today);
    const ahead = all.filter(({ id }) => (id.endsWith(".home") ? !homeSeen(absence, scene) : today < from));
    return [...ahead, ...(today < to ? visitsOf(shape, today) : [])];
  });
}

/** Portions as the keeper packed them, else as many as there are feeding days. */
function packedFor(absence: KeptAbsence, { facts }: RecordScene): Bags {
  const { portions, key } = absence;
  const packing = packingOf(facts, absence);
  const [, bags] = packing.figures;
  const count = portions ?? packing.feedOn.length;
  const figure = holidayFigure(`bags.${key}`, {
    ...{ label: "portions to pack", spread: exact(count), unit: "portions", at: HOLIDAY_AT },
    formula: portions === null ? (bags?.working.formula ?? "") : "as the daybook has it",
    inputs: bags?.working.inputs ?? [
      workedOut("leaving and coming back", `${absence.from} and ${absence.to}`),
    ],
    ...{ confidence: "computed", wouldChange: ["the dates", "how often the sitter feeds"] },
  });
  return { bags: told(counted(count, "portion"), figure.id), figures: [figure] };
}

function visitsOf(shape: Shape, today: string): CareDate[] {
  if (shape.fedBy !== "sitter") return [];
  const { from, to, sitterEvery: every } = shape;
  const days = feedingDays(from, to, every).filter((day) => day >= today);
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return [];
  return [
    dutyOf(shape, today)("visit", first, {
      do: ["The sitter comes: one portion, a look at every animal, the top-up filled."],
      why: [
        [`You are away until ${dateWords(to)}; what else can't wait stands on the sheet for the sitter.`],
      ],
      byWhen: [`Only on these days, to ${dateWords(last)}; a day that was missed stays missed.`],
      ...(first === last ? {} : { every, until: last }),
    }),
  ];
}

/** Heads were counted, or a body found, since. */
function homeSeen({ to }: KeptAbsence, { record, today }: RecordScene): boolean {
  return today >= to && record.observations.some((one) => one.kind === "heads" && one.on >= to);
}
