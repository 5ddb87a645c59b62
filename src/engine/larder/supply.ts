/**
 * What one member of the ensemble grows and drops as food, shelf by shelf, mg C a day.
 * Film is worked out at a grazed crop, the residue that keeps it growing: a well-grazed pane makes little. Growth
 * comes from the balance's own kernel, so that larder and forecast cannot disagree about a leaf.
 * Equations: docs/model/larder.md.
 */

import { derivatives, RATE, rateCount, Scratch } from "../balance/kernel.ts";
import { FF, FG, FR, FS, NO2, NO3, PO4, TAN } from "../balance/pools.ts";
import { bodyCarbonMg, speciesFrom } from "../balance/species.ts";
import { ALGA, ELEMENT, World } from "../balance/world.ts";
import { exp } from "../numeric/elementary.ts";
import type { Animal } from "../types/animal.ts";
import type { ShelfId } from "../types/shelf.ts";
import type { Cover, Growth } from "../types/tank.ts";
import type { Member } from "./members.ts";
import { usableGrowth } from "./stocking-rate.ts";

export type ShelfAmounts = Readonly<Record<ShelfId, number>>;

/** What is seen and who lives there: facts that the supply depends on beyond the member's numbers. */
export interface SupplyScene {
  /** Days from the plan's day to the day the supply is wanted for. */
  readonly daysAhead: number;
  readonly sightings: Readonly<Partial<Record<Growth, Cover>>>;
  /** Animals in the tank now, with their heads: their deaths are carrion. */
  readonly residents: readonly { readonly animal: Animal; readonly heads: number }[];
  /** Whether something grazes already, so that bare glass is no sign of a tank not grown in. */
  readonly grazed: boolean;
}

/** How the supply of one member came about: the parts that a working shows. */
export interface SupplyParts {
  readonly supply: ShelfAmounts;
  /** Growth and loss of film and filaments at the grazed crop, mg C/d. */
  readonly growth: Readonly<Record<"film_glass" | "film_rock" | "film_sand", number>>;
  readonly loss: Readonly<Record<"film_glass" | "film_rock" | "film_sand", number>>;
  /** Crop left standing, mg C. */
  readonly residue: Readonly<Record<"film_glass" | "film_rock" | "film_sand", number>>;
  /** Share of the surface that has grown in, 0 to 1. */
  readonly grownIn: number;
  /** Share of the algae's potential that nitrogen allows, 0 to 1. */
  readonly nutrientCap: number;
  /** All new detritus, mg C/d. */
  readonly detritus: number;
}

/** Share of what grazers eat that leaves them as faeces: absorption 0.8 of the catalogue's grazing snails. */
const GRAZER_FAECES = 0.2;
/** Days over which nitrogen that is already in the water counts as income. */
const STOCK_DAYS = 60;
/** Sand or rock below this is none at all, m2. */
const NO_SURFACE_M2 = 1e-3;
/** Days for which what is seen now says more than the tank's age. */
const SIGHT_HOLDS_DAYS = 21;

const AMOUNT_BY_COVER: Readonly<Record<Cover, number>> = { none: 0, trace: 0.1, patches: 1, covered: 5 };
/** How much more, or less, young hair algae there is than in a usual grazed tank. Judgement. */
const HAIR_BY_COVER: Readonly<Record<Cover, number>> = { none: 0.5, trace: 1, patches: 2, covered: 3 };

export function supplyOf(member: Member, scene: SupplyScene): SupplyParts {
  const { inputs, parameters, sizing, nutrients } = member;
  const world = new World({ inputs, parameters, species: [], unionisedShare: () => 0 });
  const grown = grownIn(member, scene);
  const film = filmAtResidue(world, member);

  const usable = (surface: keyof typeof film.growth, share: number): number =>
    usableGrowth({
      grown: film.growth[surface],
      residue: film.loss[surface],
      usableShare: (grown * share) / (1 + parameters.disl),
    });
  const potential = {
    film_glass: usable("film_glass", sizing.unwiped),
    film_rock: inputs.Ar > NO_SURFACE_M2 ? usable("film_rock", 1) : 0,
    film_sand: inputs.As > NO_SURFACE_M2 ? usable("film_sand", 1) : 0,
  };
  const hair = potential.film_rock * sizing.filShare * HAIR_BY_COVER[scene.sightings.hair_algae ?? "trace"];
  const wanted = potential.film_glass + potential.film_rock + potential.film_sand + hair;
  const income =
    inputs.feed * inputs.feedN * (1 - parameters.gN) +
    parameters.nfix * (inputs.Ar + inputs.As) +
    ((nutrients.no3MgNPerL + nutrients.tanMgNPerL) * inputs.V) / STOCK_DAYS;
  const allowed = income / ((1 - sizing.recycled) * parameters.qNfilm);
  const nutrientCap = wanted > allowed ? allowed / wanted : 1;

  const fishFaeces = world.element[ELEMENT.feedS]!;
  const sloughed = film.slough * grown;
  const detritus = fishFaeces + GRAZER_FAECES * wanted * nutrientCap + sloughed;
  const leftovers = world.element[ELEMENT.feedW]!;
  const crewBodies = scene.residents.reduce(
    (sum, { animal, heads }) => sum + heads * speciesFrom(animal).m0 * bodyCarbonMg(animal),
    0,
  );
  const bubble = AMOUNT_BY_COVER[scene.sightings.bubble_algae ?? "none"] * sizing.bubbleCrop * inputs.Ar;
  return {
    supply: {
      film_glass: potential.film_glass * nutrientCap,
      film_rock: potential.film_rock * nutrientCap,
      film_sand: potential.film_sand * nutrientCap,
      hair_algae: hair * nutrientCap,
      bubble_algae: bubble * sizing.bubbleGrowth,
      detritus_sand: inputs.As > NO_SURFACE_M2 ? detritus * sizing.detSand * sizing.detFood : 0,
      detritus_crevice: inputs.Ar > NO_SURFACE_M2 ? detritus * sizing.detCrevice * sizing.detFood : 0,
      uneaten_feed: leftovers * sizing.leftReach + member.handFedMgC,
      carrion: sizing.fishLost * inputs.fish * parameters.fishCperG + crewBodies,
    },
    growth: film.growth,
    loss: film.loss,
    residue: film.residue,
    grownIn: grown,
    nutrientCap,
    detritus,
  };
}

interface FilmAtResidue extends Pick<SupplyParts, "growth" | "loss" | "residue"> {
  /** Sloughed from all three, mg C/d. */
  readonly slough: number;
}

/** Growth and losses of film with the residue standing on every surface, at the tank's own nutrients. */
function filmAtResidue(world: World, { inputs, sizing, nutrients }: Member): FilmAtResidue {
  const y = new Float64Array(world.size);
  y[TAN] = nutrients.tanMgNPerL * inputs.V;
  y[NO2] = nutrients.no2MgNPerL * inputs.V;
  y[NO3] = nutrients.no3MgNPerL * inputs.V;
  y[PO4] = nutrients.po4MgPPerL * inputs.V;
  y[FG] = sizing.cropGlass * inputs.Ag;
  y[FR] = sizing.cropRock * inputs.Ar;
  y[FS] = sizing.cropRock * inputs.As;
  y[FF] = 0;
  const rates = new Float64Array(rateCount(0));
  derivatives(world, y, new Float64Array(world.size), new Scratch(0), false, rates);
  const growthOf = (i: number) =>
    rates[RATE.alga + i * RATE.algaStride]! + rates[RATE.alga + i * RATE.algaStride + 1]!;
  const respOf = (i: number) => rates[RATE.alga + i * RATE.algaStride + 2]!;
  const sloughOf = (i: number) => rates[RATE.alga + i * RATE.algaStride + 3]!;
  const settling = (i: number) => world.alga[i * ALGA.stride + ALGA.settling]!;
  const each = (of: (i: number) => number) => ({ film_glass: of(0), film_rock: of(1), film_sand: of(2) });
  return {
    growth: each((i) => growthOf(i) + settling(i)),
    loss: each((i) => respOf(i) + sloughOf(i)),
    residue: { film_glass: y[FG]!, film_rock: y[FR]!, film_sand: y[FS]! },
    slough: sloughOf(0) + sloughOf(1) + sloughOf(2),
  };
}

/** Share of the lit surface that has grown in: by age, and by what is seen while that still tells more. */
function grownIn({ sizing, ageDays }: Member, { daysAhead, sightings, grazed }: SupplyScene): number {
  const byAge = (age: number) => 1 / (1 + exp(-(age - sizing.grownInDay) / sizing.grownInWidth));
  const later = byAge(ageDays + daysAhead);
  const seen = [sightings.film_glass, sightings.film_rock, sightings.diatoms, sightings.film_sand].filter(
    (cover) => cover !== undefined,
  );
  if (seen.length === 0) return later;
  if (seen.some((cover) => cover === "patches" || cover === "covered")) return Math.max(later, 0.7);
  if (seen.includes("trace")) return Math.max(later, 0.3);
  const bareAndUngrazed = !grazed && daysAhead < SIGHT_HOLDS_DAYS;
  return bareAndUngrazed ? Math.min(later, 0.1) : later;
}
