/**
 * What the scores 0 to 4 mean for each growth, in words a keeper can hold against the glass, and how much growth each
 * stands for. Words and the shares of a surface are ours: judgement. The crop follows the model's reading of a score,
 * score = 4 B^0.8 / (B^0.8 + 300^0.8) with B in mg C/m2 (threads: B/3), turned round; a score is good to half a step.
 * Limits: growths that the model has no crop of carry none.
 */
import type { Spread } from "../../engine/types/estimate.ts";
import type { Cover, Growth } from "../../engine/types/tank.ts";

export const SCORES = [0, 1, 2, 3, 4] as const;
export type Score = (typeof SCORES)[number];

/** One word a score, the same for every growth. */
export const SCORE_WORDS = ["none", "trace", "thin", "thick", "covered"] as const;

interface GrowthAnchors {
  readonly label: string;
  /** Of the scores 0 to 4. */
  readonly anchors: readonly [string, string, string, string, string];
  /** Crop of one score is that of film times this; null where the model has none. */
  readonly cropFactor: number | null;
}

export const GROWTH_ANCHORS: Readonly<Record<Growth, GrowthAnchors>> = {
  film_glass: {
    label: "Film on glass",
    anchors: [
      "Clean: a finger leaves no mark",
      "A haze you see only from the side",
      "A thin veil; a finger draws a clear line in it",
      "A coat with colour; animals behind it are blurred",
      "Covered: the back glass can't be seen",
    ],
    cropFactor: 1,
  },
  film_rock: {
    label: "Film on rock",
    anchors: [
      "Bare: rock or crust shows its own colour",
      "A tint in a few lit places",
      "A thin tint over much of the lit side; rock shows through",
      "A coat on most of the lit side; rock shows only where animals grazed",
      "Covered: no bare rock where light falls",
    ],
    cropFactor: 1,
  },
  film_sand: {
    label: "Film on sand",
    anchors: [
      "Clean: every grain in its own colour",
      "A tint in a few lit spots",
      "A thin tint over much of the lit sand; stirred grains are clean",
      "A coat; grains stick together when touched",
      "Covered: a closed skin over the lit sand",
    ],
    cropFactor: 1,
  },
  diatoms: {
    label: "Diatoms",
    anchors: [
      "None: no brown dust anywhere",
      "A breath of brown dust in one or two places",
      "Thin brown dust on sand or glass; a wave of the hand lifts it",
      "A brown coat over much of sand, rock or glass",
      "Brown everywhere, back by the evening after cleaning",
    ],
    cropFactor: 1,
  },
  hair_algae: {
    label: "Hair algae",
    anchors: [
      "None: no threads",
      "A few threads, shorter than a grain of rice",
      "Tufts here and there, up to a finger's width long",
      "Tufts on most rocks, longer than a finger's width",
      "A mat: rock and corals disappear in it",
    ],
    cropFactor: 3,
  },
  bubble_algae: {
    label: "Bubble algae",
    anchors: [
      "None: no bubbles",
      "One to five bubbles",
      "A cluster, or single bubbles on several rocks",
      "Clusters on most rocks",
      "Rock and corals are pushed aside by bubbles",
    ],
    cropFactor: null,
  },
  cyanobacteria: {
    label: "Cyanobacteria",
    anchors: [
      "None: no skins, no slime",
      "A stain, smaller than a palm",
      "Thin skins in slow corners; they peel off in sheets",
      "Skins over much of the sand or rock, with gas bubbles in them",
      "A closed carpet that grows over corals",
    ],
    cropFactor: null,
  },
  dinoflagellates: {
    label: "Dinoflagellates",
    anchors: [
      "None: no strings, no snot",
      "A few brown strings by the end of the day, gone in the morning",
      "Strings and slime with bubbles in several places by evening",
      "Slime on most surfaces by evening; some is left in the morning",
      "Slime on everything, day and night",
    ],
    cropFactor: null,
  },
  detritus_sand: {
    label: "Detritus on sand",
    anchors: [
      "None: a puff of water lifts nothing",
      "A little dust lifts in one corner",
      "Dust lifts in most places",
      "Heaps in slow corners, seen without stirring",
      "A layer over the sand",
    ],
    cropFactor: null,
  },
  detritus_crevice: {
    label: "Detritus in crevices",
    anchors: [
      "None: a puff of water between rocks stays clear",
      "A little cloud from one or two holes",
      "A cloud from most holes; it settles in minutes",
      "Holes are filled; the cloud dims the tank",
      "Filled to the brim, it spills out on its own",
    ],
    cropFactor: null,
  },
  leftovers: {
    label: "Leftovers",
    anchors: [
      "Nothing lies about two minutes after feeding",
      "A few crumbs after two minutes, gone within the hour",
      "Crumbs in several places after two minutes; some stay",
      "Much lies about after two minutes; some is there the next day",
      "Old food lies about and grows a fur",
    ],
    cropFactor: null,
  },
};

/** Half-way crop of the model's score, mg C/m2. */
const HALF_MG_C_PER_M2 = 300;
const BEND = 0.8;

const filmOf = (score: number): number => Math.round(HALF_MG_C_PER_M2 * (score / (4 - score)) ** (1 / BEND));

/**
 * Crop that a score stands for, mg C/m2: half a step to either side. Of "covered" the formula knows no upper end:
 * the middle is that of 3.75, and the high end twice it.
 */
export function cropOfScore(growth: Growth, score: Score): Spread | null {
  const factor = GROWTH_ANCHORS[growth].cropFactor;
  if (factor === null) return null;
  if (score === 4) {
    const central = factor * filmOf(3.75);
    return { low: factor * filmOf(3.5), central, high: 2 * central };
  }
  return {
    low: score === 0 ? 0 : factor * filmOf(score - 0.5),
    central: factor * filmOf(score),
    high: factor * filmOf(score + 0.5),
  };
}

/** A share of the surface as a score; judgement. */
export function scoreOfShare(share: number): Score {
  if (share < 0.01) return 0;
  if (share < 0.1) return 1;
  if (share < 0.4) return 2;
  return share < 0.8 ? 3 : 4;
}

/** The word a tank file has for a score. */
export const coverOfScore = (score: number): Cover =>
  score <= 0 ? "none" : score === 1 ? "trace" : score < 4 ? "patches" : "covered";
