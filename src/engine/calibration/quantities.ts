/**
 * What calibration can say it has learned, in quantities that a keeper or adviser knows: each worked out of a member.
 * Several scores meet in one quantity (light, its use and the film's own speed are one growth); readings see the quantity,
 * seldom its parts.
 */

import { HAIR_AT_START, NITRIFIERS_AT_START } from "../ahead/window.ts";
import type { Member } from "../larder/members.ts";
import { valueAt } from "../numeric/draws.ts";
import { exp } from "../numeric/elementary.ts";
import type { OwnName } from "../types/learned.ts";
import { BIAS_OF } from "./observed.ts";

export interface Quantity {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  /** Compared on a logarithmic scale; false for what may be zero or negative. */
  readonly ratio: boolean;
  /** How it comes about, in one line. */
  readonly formula: string;
  /** Symbols of parameters and names of facts that enter. */
  readonly parameters: readonly string[];
  readonly facts: readonly string[];
  readonly of: (member: Member) => number;
  /** Not shown where it is no part of this tank. */
  readonly has?: (member: Member) => boolean;
}

/** Film growth is told at this crop, which grazed rock bears, mg C/m2. */
const AT_CROP = 400;

/** What film on lit rock would gain a day with nutrients to spare, mg C per m2: light, growth, respiration and sloughing. */
function filmGain({ parameters: p, inputs: i }: Member): number {
  const lit = i.parR / Math.sqrt(1 + (i.parR / p.Ik) ** 2);
  const ceiling = p.epsFilm * 12011 * lit * i.hours * 0.0036;
  const warm = p.q10alg ** ((i.T - 25) / 10);
  const light = (ceiling * (1 - exp(-p.kapFilm * AT_CROP))) / AT_CROP;
  const most = p.muFilm * warm;
  const grown = (most * light) / Math.sqrt(most * most + light * light);
  return AT_CROP * (grown - p.rFilm * warm - p.sFilm * (1 + AT_CROP / p.BsFilm));
}

const own = (member: Member, name: OwnName): number => member.learned?.own[name] ?? 0;

export const QUANTITIES_LEARNED: readonly Quantity[] = [
  {
    ...{
      id: "film_gain",
      label: "what film on lit rock gains, nutrients to spare",
      unit: "mg C/m2/d",
      ratio: false,
    },
    formula: "growth at a crop of 400 mg C/m2 less respiration and sloughing",
    parameters: ["epsFilm", "Ik", "kapFilm", "muFilm", "rFilm", "sFilm", "BsFilm", "q10alg"],
    facts: ["parRock", "lightHours", "temperatureC"],
    of: filmGain,
  },
  {
    ...{
      id: "denitrification",
      label: "most nitrate that rock and sand turn to gas",
      unit: "mg N/d",
      ratio: true,
    },
    formula: "of rock x its mass + of sand x its area",
    parameters: ["dRock", "dSand"],
    facts: ["rockKg", "sandM2"],
    of: ({ parameters: p, inputs: i }) => p.dRock * i.rockKg + p.dSand * i.As,
    has: ({ inputs: i }) => i.rockKg > 0 || i.As > 1e-3,
  },
  {
    ...{
      id: "nitrification",
      label: "most ammonia that the filters could come to take",
      unit: "mg N/d",
      ratio: true,
    },
    formula: "most of a square metre x surface that nitrifiers have colonised",
    parameters: ["gamA", "colonised"],
    facts: ["rockKg", "glassM2", "sandM2"],
    of: ({ parameters: p, inputs: i }) => p.gamA * i.Ac,
  },
  {
    ...{ id: "nitrogen_in", label: "nitrogen that feed brings", unit: "mg N/d", ratio: true },
    formula: "feed a day x nitrogen in it",
    parameters: [],
    facts: ["feedGPerDay", "feedNMgPerG"],
    of: ({ inputs: i }) => i.feed * i.feedN,
    has: ({ inputs: i }) => i.feed > 0,
  },
  {
    ...{ id: "phosphorus_in", label: "phosphorus that feed brings", unit: "mg P/d", ratio: true },
    formula: "feed a day x phosphorus in it",
    parameters: [],
    facts: ["feedGPerDay", "feedPMgPerG"],
    of: ({ inputs: i }) => i.feed * i.feedP,
    has: ({ inputs: i }) => i.feed > 0,
  },
  {
    ...{ id: "uneaten", label: "share of the feed that fish leave", unit: "%", ratio: true },
    formula: "as drawn",
    parameters: [],
    facts: ["uneatenShare"],
    of: ({ parameters: p }) => 100 * p.u0,
    has: ({ inputs: i }) => i.feed > 0 && i.fish > 0,
  },
  {
    ...{ id: "rock_phosphate", label: "phosphate that rock and sand can hold", unit: "mg P", ratio: true },
    formula: "of a kg x mass of rock",
    parameters: ["capRock"],
    facts: ["rockKg"],
    of: ({ parameters: p, inputs: i }) => p.capRock * i.rockKg,
    has: ({ inputs: i }) => i.rockKg > 0,
  },
  {
    ...{ id: "filter_export", label: "what floats, caught by the filter", unit: "1/d", ratio: true },
    formula: "as drawn",
    ...{ parameters: ["kFil"], facts: [] },
    of: ({ parameters: p }) => p.kFil,
    has: ({ inputs: i }) => i.filterOn > 0,
  },
  {
    ...{ id: "skimmer_export", label: "dissolved matter, taken by the skimmer", unit: "1/d", ratio: true },
    formula: "as drawn",
    ...{ parameters: ["kSkO"], facts: [] },
    of: ({ parameters: p }) => p.kSkO,
    has: ({ inputs: i }) => i.skimOn > 0,
  },
  {
    ...{ id: "film_loss", label: "film that lets go by itself", unit: "1/d", ratio: true },
    formula: "as drawn",
    ...{ parameters: ["sFilm"], facts: [] },
    of: ({ parameters: p }) => p.sFilm,
  },
  {
    ...{ id: "grazing", label: "crop at which grazers eat half of their most", unit: "mg C/m2", ratio: true },
    formula: "as drawn",
    ...{ parameters: ["KgFilm"], facts: [] },
    of: ({ parameters: p }) => p.KgFilm,
  },
  {
    ...{ id: "starving", label: "how fast the starved die", unit: "1/d", ratio: true },
    formula: "as drawn",
    ...{ parameters: ["m1"], facts: [] },
    of: ({ parameters: p }) => p.m1,
  },
  {
    ...{ id: "hair_growth", label: "growth of hair algae at its best", unit: "1/d", ratio: true },
    formula: "as drawn",
    ...{ parameters: ["muFil"], facts: [] },
    of: ({ parameters: p }) => p.muFil,
  },
  {
    ...{
      id: "hair_start",
      label: "hair algae on the first day, against the usual",
      unit: "times",
      ratio: true,
    },
    formula: "as drawn: a third to three times, the same either way",
    ...{ parameters: [], facts: [] },
    of: (member) => valueAt(HAIR_AT_START, own(member, "hairAtStart")),
  },
  {
    ...{
      id: "nitrifiers_start",
      label: "nitrifiers on the first day, against the usual",
      unit: "times",
      ratio: true,
    },
    formula: "as drawn: a third to three times, the same either way",
    ...{ parameters: [], facts: [] },
    of: (member) => valueAt(NITRIFIERS_AT_START, own(member, "nitrifiersAtStart")),
  },
  {
    ...{ id: "kit_no3", label: "what the nitrate kit shows, against the truth", unit: "times", ratio: true },
    formula: "as drawn: about a tenth either way",
    ...{ parameters: [], facts: [] },
    of: (member) => exp(BIAS_OF.kit * own(member, "kitNo3")),
  },
  {
    ...{
      id: "kit_po4",
      label: "what the phosphate kit shows, against the truth",
      unit: "times",
      ratio: true,
    },
    formula: "as drawn: about a tenth either way",
    ...{ parameters: [], facts: [] },
    of: (member) => exp(BIAS_OF.kit * own(member, "kitPo4")),
  },
  {
    ...{
      id: "eye_film",
      label: "what this eye adds to a score of film on glass and rock",
      unit: "steps of 4",
      ratio: false,
    },
    formula: "as drawn: a fraction of a step either way",
    ...{ parameters: [], facts: [] },
    of: (member) => BIAS_OF.eye * own(member, "eyeFilm"),
  },
];
