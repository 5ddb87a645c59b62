/** What growths, signs and a rise of ammonia ask for. Ranked with all other advice elsewhere (bench/next.ts). */

import { growthFacts } from "../../catalogue/diagnosis.ts";
import type { GrowthsOutput, OutbreakOutput, SignOutput } from "../../contract/output/growths.ts";
import { addDays } from "../../engine/stocking/suitability.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { Advice } from "../advice.ts";
import { type Sentence, told } from "../sentence.ts";
import { chance, dateWords } from "../words.ts";
import { suspectedIn } from "./gates.ts";
import type { Outbreak } from "./outbreaks.ts";

export function growthAdvice(output: GrowthsOutput, outbreaks: readonly Outbreak[], today: string): Advice[] {
  const toxic = outbreaks.find(suspectedIn);
  return [
    ...outbreaks.map((outbreak) =>
      outbreak === toxic ? dinoflagellates(outbreak, today) : outbreakAdvice(outbreak.output, today),
    ),
    ...output.signs.filter(({ sign }) => sign === "waterline_snails").map((sign) => waterline(sign, today)),
    ...(output.unfound_death === null ? [] : [unfound(output.unfound_death, today)]),
  ];
}

/** Sightings age: the day is told of each, and whose word it is. */
const seenOn = ({ on, from }: OutbreakOutput): string =>
  from === "daybook" ? dateWords(on) : `as the questions were told on ${dateWords(on)}`;

function dinoflagellates({ output }: Outbreak, today: string): Advice {
  const by = addDays(today, 4);
  return {
    ...{ id: "growth.dinoflagellates", urgency: "this_week", weight: 74, about: "growth" },
    do: ["Have a drop of the brown growth looked at under a microscope; add no grazers until then."],
    why: [
      [`${output.label}: ${output.anchor}, ${seenOn(output)}.`],
      ["It may be dinoflagellates; some kinds are toxic, and snails and urchins that eat them can die."],
    ],
    byWhen: [`By ${dateWords(by)}. Today, if snails lie limp.`],
    by,
    restsOn: `${output.growth} ${output.score} ${output.on}`,
    wouldChange: ["A microscope that shows glassy boxes (diatoms) or plain threads (cyanobacteria)."],
    act: { words: "What is this?", leads: "growths" },
    wait: { words: "Wait with all new animals", leads: "waves" },
  };
}

function outbreakAdvice(output: OutbreakOutput, today: string): Advice {
  const { growth, label, score, causes, crew, crew_said, asked_first, would_tell } = output;
  const [cause] = causes;
  const [ask] = asked_first.length > 0 ? asked_first : would_tell;
  const by = addDays(today, 14);
  // A growth that a crew is part of the answer to must not hold back the wave that eats it.
  const soon = score >= 3 && crew === "no";
  const first: Sentence = asked_first.length > 0 && ask !== undefined ? [ask.test] : [firstOf(output)];
  return {
    ...{ id: `growth.${growth}`, urgency: soon ? "this_week" : "next_visit", about: "growth" },
    weight: 34 + 4 * score,
    do: first,
    why: [
      [`${label}: ${output.anchor}, ${seenOn(output)}.`],
      ...(cause === undefined
        ? []
        : [[`Likeliest cause: ${cause.name} (`, told(chance(cause.of_20), cause.figure), ")."] as Sentence]),
      [crew_said],
    ],
    byWhen: [soon ? `By ${dateWords(by)}.` : "At the next visit."],
    by: soon ? by : null,
    restsOn: `${growth} ${score} ${output.on}`,
    wouldChange: [ask === undefined ? "A look two weeks on that finds less of it." : ask.test],
    act: { words: "See causes and what to do", leads: "growths" },
    wait: {
      words: output.growth === "diatoms" ? "Wait: it usually fades" : "Wait, and score it again",
      leads: "daybook",
    },
  };
}

/** Whether a wave is due is the plan's matter, and stands in the list by itself; hands can begin at once. */
const ASKS_FOR_THE_CREW = "few-mouths";

/** Long tufts: what is there is pulled before what it comes from is looked at, as its page says. */
const PULLED_FIRST = "hair_algae";
const LONG = 3;

function firstOf({ growth, score, causes: [cause], described_as }: OutbreakOutput): string {
  const byHand = growth === PULLED_FIRST && score >= LONG;
  const ofCause = byHand || cause?.id === ASKS_FOR_THE_CREW ? undefined : cause?.do[0];
  return ofCause ?? growthFacts.get(described_as)?.doLines[0]?.text ?? "Score it again in a week.";
}

function waterline({ verdict, said, on, animal }: SignOutput, today: string): Advice {
  const now = verdict === "test_now";
  const soon = verdict === "test_soon";
  const by = now ? today : soon ? addDays(today, 2) : null;
  return {
    id: "sign.waterline_snails",
    ...{ urgency: now ? "today" : soon ? "this_week" : verdict === "habit" ? "next_visit" : "cannot_tell" },
    ...{ weight: now ? 96 : soon ? 58 : 20, about: "sign" },
    do: [
      now
        ? "Test oxygen, ammonia and salinity now, and move the surface."
        : soon
          ? "Test salinity and ammonia, and look again tonight and at noon."
          : verdict === "habit"
            ? "Wait, and look again at noon: it is a habit of the kind."
            : "Say which kind it is and how long the lamps were out.",
    ],
    why: [
      [`Snails at the waterline, ${dateWords(on)}.`],
      ...said.slice(0, 1).map((text): Sentence => [text]),
    ],
    byWhen: [now ? "Today." : by === null ? "At the next look." : `By ${dateWords(by)}.`],
    by,
    restsOn: `${on} ${verdict}`,
    wouldChange: [
      animal === null ? "The kind and the hour." : "The same by day, or a second kind: then test now.",
    ],
    act: now
      ? { words: "What to do first", leads: "wrong:gasping" }
      : { words: "What is this?", leads: "growths" },
    wait: { words: "Wait: look again tomorrow", leads: "daybook" },
  };
}

function unfound(death: NonNullable<GrowthsOutput["unfound_death"]>, today: string): Advice {
  return {
    ...{ id: "sign.unfound_death", urgency: "today", weight: death.named ? 91 : 80, about: "sign" },
    do: ["Count heads by torch tonight, lift out what is dead, and test ammonia again."],
    why: [
      [
        `${death.quantity} rose by `,
        told(`${death.rise_mg_n_per_l} mg N/L`, figureId.unfoundRise()),
        ` above what is usual here, ${dateWords(death.on)}.`,
      ],
      ...death.said.map((text): Sentence => [text]),
    ],
    byWhen: ["Today."],
    by: today,
    restsOn: `${death.quantity} ${death.on}`,
    wouldChange: ["Two tests a day apart that show none, or all heads counted."],
    act: { words: "What to do first", leads: "wrong:ammonia" },
    wait: { words: "Wait with food and new animals", leads: "daybook" },
  };
}
