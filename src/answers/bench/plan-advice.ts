/** The plan's next step as advice: the wave that comes, behind its gate, or nothing yet and when to look again. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { linked, type Sentence, told } from "../sentence.ts";
import { counted, dateWords, withDates } from "../words.ts";
import type { BenchAdvice } from "./next.ts";

/** Kinds named in the one sentence; the rest are counted. */
const NAMED = 2;
/** Within so many days a wave's window is this week's matter. */
const WEEK = 7;

export function waveAdvice(plan: WavesOutput, today: string): readonly BenchAdvice[] {
  const [next] = plan.waves;
  if (next === undefined) return [];
  const open = next.from <= today;
  const days = daysBetween(today, next.from);
  const from = told(dateWords(next.from), next.figures.from);
  const which = next.number === 1 ? "the first wave" : `wave ${next.number}`;
  return [
    {
      urgency: days <= WEEK ? "this_week" : "next_visit",
      about: "wave",
      do: open
        ? ["Add ", ...animalsOf(next), ", but only if the gate below is open."]
        : [`Wait with ${which} until `, from, "."],
      why: [
        ...(open ? [] : [["It would bring ", ...animalsOf(next), "."] as Sentence]),
        ["Only if: ", next.only_if.join("; "), "."],
        ["Stop if: ", next.stop_if, "."],
      ],
      byWhen: open
        ? ["From ", from, ` to ${dateWords(next.to)}; nothing is lost by waiting.`]
        : ["Look again on ", from, `, sooner if ${next.sooner_if}.`],
      wouldChange: changeOf(plan),
      act: { words: open ? "See the wave and its gate" : "See the waves", leads: "waves" },
      wait: {
        words: `Wait: look again ${dateWords(open ? addDays(today, WEEK) : next.from)}`,
        leads: "ahead",
      },
    },
  ];
}

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

export function nothingAdvice(plan: WavesOutput, today: string): readonly BenchAdvice[] {
  const on = plan.look_again_on;
  return [
    {
      urgency: on !== null && daysBetween(today, on) <= WEEK ? "this_week" : "next_visit",
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
    `${known}. If it lies low, a crew of `,
    told(String(heads_if_low), figure),
    "; if high, of ",
    told(String(heads_if_high), figure),
    ".",
  ];
}
