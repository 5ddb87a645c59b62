/**
 * Dead, resting or moulted: how each group of animals looks when it only rests, and what tells that it died. General
 * biology in our words, judgement; where it leaves a doubt, waiting is the answer.
 */
import type { AnimalGroup } from "../../engine/types/animal.ts";

export interface RestingWords {
  /** What is no loss. */
  readonly resting: string;
  /** What tells that it died. */
  readonly dead: string;
  /** What to look at again, and when. */
  readonly wait: string;
  /** Days until the next look. */
  readonly days: number;
  /** The sign that is logged while waiting. */
  readonly sign: "cast_shell" | "hiding";
}

const SNAIL: RestingWords = {
  resting: "A snail may shut its door, or sit still, for days. Lying on its back it may only have fallen.",
  dead: "Its foot hangs out limp and does not draw back when touched, its door is gone, or it smells.",
  wait: "Set it upright on the sand or rock and look again tomorrow.",
  days: 1,
  sign: "hiding",
};
const BURIED: RestingWords = {
  resting: "It lies buried most of the day and comes up for food. Not seen for a week says little.",
  dead: "An empty shell on the sand, or a limp body that smells.",
  wait: "Offer a little food at dusk and watch the sand for ten minutes. Look again in a week.",
  days: 7,
  sign: "hiding",
};
const MOULT: RestingWords = {
  resting:
    "It casts its whole skin and hides for days while the new one hardens. The cast skin is empty, light and complete, eyes and feelers included.",
  dead: "A body with flesh in it, that smells or turns pink or milky.",
  wait: "Leave the cast skin or move it aside. Look again in a week, by torch after the lamps went out.",
  days: 7,
  sign: "cast_shell",
};

const BY_GROUP: Readonly<Record<AnimalGroup, RestingWords>> = {
  snail: SNAIL,
  conch: BURIED,
  hermit: {
    ...MOULT,
    resting:
      "It casts its skin and hides for days, and it changes shells: a cast skin beside a shell, or an empty shell, is no body.",
  },
  crab: MOULT,
  shrimp: MOULT,
  star: {
    resting: "It may keep still under a stone for days, and sand stars lie buried.",
    dead: "Arms that soften and fall apart, white spots that grow, or a smell.",
    wait: "Look again tomorrow, by torch. Test salinity: stars bear no jumps.",
    days: 1,
    sign: "hiding",
  },
  urchin: {
    resting: "It may sit still in a hole by day. A few shed spines are no death.",
    dead: "Spines fall out all over and it no longer holds on.",
    wait: "Look again tomorrow, by torch. Test salinity and alkalinity.",
    days: 1,
    sign: "hiding",
  },
  cucumber: {
    resting: "It may lie buried or contracted for days.",
    dead: "It falls apart, or has thrown out its insides and does not draw together when touched.",
    wait: "Look again tomorrow. A dying one can poison the water: see what to do first.",
    days: 1,
    sign: "hiding",
  },
  slug: {
    resting: "It may sit still in the light, or hide, for a day.",
    dead: "It is limp, falls apart, or drifts with the current.",
    wait: "Look in the overflow and at the pumps, and again tomorrow.",
    days: 1,
    sign: "hiding",
  },
  pod: {
    resting: "Pods hide by day. Few seen says little.",
    dead: "Bodies on the sand or in the filter, many at once.",
    wait: "Look by torch, an hour after the lamps went out, in a week.",
    days: 7,
    sign: "hiding",
  },
  worm: {
    resting: "Worms hide by day and come for food by night.",
    dead: "A limp body that falls apart.",
    wait: "Look by torch, with a little food, in a week.",
    days: 7,
    sign: "hiding",
  },
  fish: {
    resting: "Some fish sleep buried or wedged in the rock.",
    dead: "A body, or none at feeding for several days.",
    wait: "Offer food and watch. Look on the floor round the tank and in the overflow.",
    days: 1,
    sign: "hiding",
  },
};

/** Those that live inside the sand are judged as such, snails too. */
export function restingWords(animal: {
  readonly group: AnimalGroup;
  readonly reach: { readonly insideSand: number };
}): RestingWords {
  const buries = animal.reach.insideSand === 2 && animal.group === "snail";
  return buries ? BURIED : BY_GROUP[animal.group];
}
