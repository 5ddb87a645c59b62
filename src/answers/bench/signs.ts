/**
 * Signs of the record that no good news has settled, in short: how soon, and what first. What each may mean, with the
 * evidence for and against, is the growths page's matter; here it only has to be in its place among the rest.
 */
import type { SignKind, SignSeen } from "../../engine/types/record.ts";
import type { Advice, AdviceUrgency } from "../advice.ts";
import { dateWords } from "../words.ts";
import type { Unsettled } from "./events.ts";
import type { KnownOfTank } from "./known.ts";

interface SignRule {
  readonly how: (sign: SignSeen) => readonly [AdviceUrgency, number];
  readonly words: string;
  readonly do: (today: boolean) => string;
  readonly why: string;
}

const several = ({ kindsSeen }: SignSeen): boolean => (kindsSeen ?? 1) >= 2;
const many = ({ count }: SignSeen, from: number): boolean => (count ?? 1) >= from;

const RULES: Readonly<Partial<Record<SignKind, SignRule>>> = {
  waterline_snails: {
    how: (sign) => (several(sign) ? ["today", 95] : many(sign, 4) ? ["this_week", 56] : ["next_visit", 24]),
    words: "Snails at the waterline",
    do: (today) =>
      today
        ? "Move the surface more, then test ammonia, salinity and temperature now."
        : "Look again an hour after the lamps go on, and test salinity.",
    why: "Several kinds at once climb when the water is bad: too little oxygen, ammonia, or a change of salinity. One kind may only be resting there.",
  },
  ill_animals: {
    how: (sign) => (many(sign, 2) ? ["today", 92] : ["this_week", 70]),
    words: "Animals that look ill",
    do: (today) =>
      today
        ? "Move the surface more, then test ammonia and temperature now."
        : "Test ammonia and temperature, and look again tonight.",
    why: "Gasping, lying or pale animals are the last to tell, and the quickest to lose.",
  },
  fallen_snails: {
    how: (sign) => (many(sign, 3) ? ["this_week", 66] : ["this_week", 62]),
    words: "Snails on their backs",
    do: () => "Put fallen snails back on their foot; unplug first what your hands come near.",
    why: "Several kinds can't right themselves on sand, and starve or are eaten there.",
  },
  empty_shells: {
    how: (sign) => (many(sign, 3) ? ["this_week", 61] : ["next_visit", 26]),
    words: "Empty shells",
    do: () => "Count those that live, by torch, before you add any.",
    why: "An empty shell is a loss, or a hermit's old house. Only a count tells.",
  },
  cloudy_water: {
    how: () => ["this_week", 57],
    words: "Cloudy water",
    do: () => "Feed nothing for a day, move the surface more, and test ammonia.",
    why: "Bacteria that bloom use up oxygen, by night most.",
  },
  hiding: {
    how: () => ["next_visit", 23],
    words: "An animal that hides",
    do: () => "Wait, and look by torch: hiding after a moult is expected.",
    why: "Shrimps and crabs hide for days until the new shell is hard.",
  },
  white_dots: {
    how: () => ["next_visit", 21],
    words: "White dots",
    do: () => "Look at the white dots through a lens before you do anything.",
    why: "Most are harmless worms or young snails, and some are mouths.",
  },
  hitchhiker: {
    how: () => ["next_visit", 27],
    words: "A hitchhiker",
    do: () => "Find out what came along before you take it out; wear gloves.",
    why: "Some eat the crew, some sting, most only eat leftovers.",
  },
};

export function signAdvice(known: KnownOfTank, { signs }: Unsettled): Advice[] {
  return Object.entries(RULES).flatMap(([kind, rule]): Advice[] => {
    const seen = signs.filter(({ sign }) => sign === kind);
    if (seen.length === 0) return [];
    const weights = seen.map(rule.how);
    const [urgency, weight] = weights.reduce((most, one) => (one[1] > most[1] ? one : most));
    const today = urgency === "today";
    const last = seen
      .map(({ on }) => on)
      .sort()
      .at(-1);
    return [
      {
        id: `sign.${kind}`,
        urgency,
        weight,
        about: "sign",
        do: [rule.do(today)],
        why: [[`${rule.words}${kindsWords(seen)}, seen on ${dateWords(last ?? known.today)}.`], [rule.why]],
        byWhen: [today ? "Today." : urgency === "this_week" ? "This week." : "At the next look."],
        by: today ? known.today : null,
        wouldChange: ["A look or a test on a later day that finds all well: log it."],
        restsOn: seen.map(({ entry }) => entry).join(" "),
        act: today
          ? {
              words: "What to do first",
              leads: kind === "waterline_snails" || kind === "ill_animals" ? "wrong:gasping" : "wrong",
            }
          : { words: "What is this?", leads: "growths" },
        wait: { words: "Wait: look again tomorrow", leads: "daybook" },
      },
    ];
  });
}

const kindsWords = (seen: readonly SignSeen[]): string => {
  const kinds = Math.max(...seen.map(({ kindsSeen }) => kindsSeen ?? 1));
  return kinds >= 2 ? `, ${kinds} kinds at once` : "";
};
