/** The plan's next step as advice: the wave that comes, behind its gate, or nothing yet and when to look again. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import type { Advice } from "../advice.ts";
import { linked, type Sentence, told } from "../sentence.ts";
import { counted, dateWords, withDates } from "../words.ts";
import { type Condition, type JudgedGate, judgeGate } from "./gate.ts";
import type { KnownOfTank } from "./known.ts";

/** Kinds named in the one sentence; the rest are counted. */
const NAMED = 2;
/** Within so many days a wave's window is this week's matter. */
const WEEK = 7;

/** The next wave, behind its gate as the daybook judges it. */
export function waveAdvice(plan: WavesOutput, known: KnownOfTank): readonly Advice[] {
  const [next] = plan.waves;
  if (next === undefined) return [];
  const { today } = known;
  const gate = judgeGate(next, plan, known);
  const sooner = gate.soonerIf?.state === "met" && gate.state === "met";
  const open = next.from <= today || sooner;
  const days = daysBetween(today, next.from);
  const from = told(dateWords(next.from), next.figures.from);
  const which = next.number === 1 ? "the first wave" : `wave ${next.number}`;
  const add = open && gate.state === "met";
  const waitUntil = lookAgainOn(next, gate, today);
  return [
    {
      id: `wave.${next.number}`,
      urgency: days <= WEEK || open ? "this_week" : "next_visit",
      weight: add ? 45 : open ? 42 : 40,
      about: "wave",
      do: open
        ? add
          ? ["Add ", ...animalsOf(next), ": its gate is open. Or wait."]
          : gate.state === "not_met"
            ? [`Wait with ${which}: its gate is not met.`]
            : [`Look whether the gate of ${which} is met, and wait until then.`]
        : [`Wait with ${which} until `, from, "."],
      why: [
        ...gateWords(gate),
        ...(add ? [] : [["It would bring ", ...animalsOf(next), "."] as Sentence]),
        ...movedFor(known, next.from),
        ["Stop if: ", next.stop_if, "."],
      ],
      byWhen: open
        ? [
            ...(add ? ["From "] : [`Look again on ${dateWords(waitUntil)}. Its window is `]),
            from,
            ` to ${dateWords(next.to)}; nothing is lost by waiting.`,
          ]
        : ["Look again on ", from, `, sooner if ${next.sooner_if}.`],
      by: add ? next.to : waitUntil,
      wouldChange: changeOf(plan),
      restsOn: JSON.stringify([
        next.number,
        next.animals.map(({ id, count }) => [id, count]),
        open,
        gate.onlyIf.map(({ state }) => state),
        gate.stopIf.state,
      ]),
      act: { words: open ? "See the wave and its gate" : "See the waves", leads: "waves" },
      wait: { words: `Wait: look again ${dateWords(waitUntil)}`, leads: "ahead" },
    },
  ];
}

/** The day on which its gate could be met: where only time settles it that day, in its window a week on. */
function lookAgainOn(
  { from }: WavesOutput["waves"][number],
  { lookAgain }: JudgedGate,
  today: string,
): string {
  const usual = from <= today ? addDays(today, WEEK) : from;
  if (lookAgain === null) return usual;
  return from <= today || lookAgain > from ? lookAgain : from;
}

/** A window behind a time away: why it is not sooner. */
const movedFor = ({ record: { absences = [] } }: KnownOfTank, from: string): Sentence[] =>
  absences
    .filter(({ to }) => addDays(to, 1) === from)
    .map(({ from: leave, to }) => [
      `You are away from ${dateWords(leave)} to ${dateWords(to)}: no animal comes then, or in the week before.`,
    ]);

const STATE_WORDS: Readonly<Record<Condition["state"], string>> = {
  met: "Met",
  not_met: "Not met",
  cannot_tell: "Can't tell yet",
};

/** What stops it, then each condition that is not met or not known, then how many are met. */
function gateWords({ onlyIf, stopIf }: JudgedGate): Sentence[] {
  const open = onlyIf.filter(({ state }) => state !== "met");
  const met = onlyIf.length - open.length;
  return [
    ...(stopIf.state === "met" ? [[`Stop: ${stopIf.because}`] as Sentence] : []),
    ...open.map(
      ({ state, text, because, settle }): Sentence => [
        `${STATE_WORDS[state]}: ${text}. ${because}${settle === null ? "" : ` What would settle it: ${lowerFirst(settle)}`}`,
      ],
    ),
    ...(met === 0 ? [] : [[`Met: ${met} of ${onlyIf.length} conditions.`] as Sentence]),
  ];
}

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

function animalsOf({ animals }: WavesOutput["waves"][number]): Sentence {
  const named = animals.slice(0, NAMED);
  const more = animals.slice(NAMED).reduce((sum, { count }) => sum + count, 0);
  return named.flatMap(({ name, count, figures }, i) => {
    const last = i === named.length - 1;
    const joint = i === 0 ? [] : [last && more === 0 ? " and " : ", "];
    return [
      ...joint,
      told(counted(count, name), figures.count),
      ...(last && more > 0 ? [` and ${more} more`] : []),
    ];
  });
}

export function nothingAdvice(plan: WavesOutput, today: string): readonly Advice[] {
  const on = plan.look_again_on;
  return [
    {
      id: "nothing_yet",
      urgency: on !== null && daysBetween(today, on) <= WEEK ? "this_week" : "next_visit",
      weight: 30,
      about: "nothing_yet",
      do: ["Add nothing yet. Waiting costs nothing."],
      why: plan.because.map((text, i) => linked(withDates(text), plan.because_figures[i])),
      byWhen:
        on === null
          ? ["No date would change it: what stands in the way has to go first."]
          : [
              "Look again on ",
              plan.look_again_figure === null ? dateWords(on) : told(dateWords(on), plan.look_again_figure),
              ".",
            ],
      by: on,
      restsOn: `nothing yet ${on ?? ""}`,
      wouldChange: changeOf(plan),
      act: { words: "See why, animal by animal", leads: "waves" },
      wait: { words: on === null ? "Wait" : `Wait: look again ${dateWords(on)}`, leads: "ahead" },
    },
  ];
}

function changeOf({ would_change }: WavesOutput): Sentence {
  const [most] = would_change;
  if (most === undefined) return ["Nothing that could be measured would change it much."];
  const { label, ask, heads_if_low, heads_if_high, figure } = most;
  const known = `Knowing ${label} better: ${ask}`;
  if (heads_if_low === null || heads_if_high === null || heads_if_low === heads_if_high) return [`${known}.`];
  return [
    `${known}. Known to lie low, a crew of `,
    told(String(heads_if_low), figure),
    "; known to lie high, of ",
    told(String(heads_if_high), figure),
    ": what is known needs less margin.",
  ];
}
