/**
 * Whether an animal may live in this tank at all, on a given day, and why not: facts and company, not food.
 * Each reason says what stands against it and, where that can change, what would have to be so.
 */
import type { Animal, AnimalRisk, KeeperLevel } from "../types/animal.ts";
import { figureId } from "../types/figure-id.ts";
import type { TankFacts } from "../types/tank.ts";

export type ReasonCode =
  | "role"
  | "excluded"
  | "stock_list"
  | "price"
  | "volume"
  | "age"
  | "experience"
  | "temperature"
  | "cool_water"
  | "salinity"
  | "sand"
  | "rock"
  | "caves"
  | "lid"
  | "pump_guard"
  | "loose_rock"
  | "eaten_by"
  | "eats"
  | "same_kind"
  | "toxin"
  | "medicine"
  | "trouble"
  | "starves"
  | "pays_not";

export interface Reason {
  readonly code: ReasonCode;
  readonly text: string;
  /** What would lift it ("once ..."), or null where nothing in this tank will. */
  readonly until: string | null;
  /** Figure of the number in the text; left out where it tells none. */
  readonly figure?: string;
}

export interface Suitability {
  readonly animal: Animal;
  readonly reasons: readonly Reason[];
  /** Worth knowing before buying, none of them against it. */
  readonly cautions: readonly string[];
}

/** Animals that share the tank, now or as planned by the keeper. */
export interface Company {
  readonly animal: Animal;
  readonly count: number;
  readonly planned: boolean;
}

const LEVELS: readonly KeeperLevel[] = ["first-tank", "experienced", "specialist"];
const LEVEL_WORDS: Readonly<Record<KeeperLevel, string>> = {
  "first-tank": "a first tank",
  experienced: "keepers with a few years behind them",
  specialist: "specialists",
};

export interface SuitabilityDay {
  readonly facts: TankFacts;
  readonly company: readonly Company[];
  /** Days from the plan's day. */
  readonly daysAhead: number;
}

export function suitabilityOf(animal: Animal, day: SuitabilityDay): Suitability {
  const reasons = [
    ...roleReasons(animal),
    ...shopReasons(animal, day.facts),
    ...roomReasons(animal, day.facts),
    ...timeReasons(animal, day),
    ...waterReasons(animal, day.facts),
    ...groundReasons(animal, day.facts),
    ...equipmentReasons(animal, day.facts),
    ...companyReasons(animal, day.company),
    ...dangerReasons(animal, day.facts),
  ];
  return { animal, reasons, cautions: cautionsFor(animal, day.facts) };
}

/** `never`, when a reason has no remedy in this tank; else `not_yet`; `fits` without reasons. */
export function statusOf(reasons: readonly Reason[]): "fits" | "not_yet" | "never" {
  if (reasons.length === 0) return "fits";
  return reasons.some(({ until }) => until === null) ? "never" : "not_yet";
}

function roleReasons({ role }: Animal): Reason[] {
  if (role === "hitchhiker") {
    return [never("role", "It comes by itself with rock or other animals; it is not bought as crew.")];
  }
  if (role === "compatibility_only") {
    return [never("role", "It does little for a tank's upkeep; it is listed for whom it gets on with.")];
  }
  return [];
}

function shopReasons({ id, priceBand }: Animal, facts: TankFacts): Reason[] {
  const reasons: Reason[] = [];
  if (facts.exclusions.includes(id)) {
    reasons.push(
      notYet("excluded", "You asked to leave it out.", "once you take it off your list of exclusions"),
    );
  }
  if (facts.stockList !== null && !facts.stockList.includes(id)) {
    reasons.push(notYet("stock_list", "It is not on your stock list.", "once a shop has it"));
  }
  if (priceBand > facts.priceBandMax) {
    reasons.push(
      notYet(
        "price",
        `Its price band is ${priceBand} of 4; you set ${facts.priceBandMax} as the most.`,
        `once you allow price band ${priceBand}`,
        figureId.animal(id, "price_band"),
      ),
    );
  }
  return reasons;
}

function roomReasons({ id, minTankLitres }: Animal, { displayL }: TankFacts): Reason[] {
  if (displayL.central >= minTankLitres) return [];
  return [
    never(
      "volume",
      `It wants at least ${minTankLitres} L; this display holds about ${Math.round(displayL.central)} L.`,
      figureId.animal(id, "min_tank"),
    ),
  ];
}

function timeReasons(
  { id, minTankAgeDays, minTankAgeReason, keeperLevel }: Animal,
  day: SuitabilityDay,
): Reason[] {
  const { facts, daysAhead } = day;
  const reasons: Reason[] = [];
  const age = Math.floor(facts.ageDays.central) + daysAhead;
  if (age < minTankAgeDays) {
    const date = addDays(facts.asOf, minTankAgeDays - Math.floor(facts.ageDays.central));
    reasons.push(
      notYet(
        "age",
        `It wants a tank at least ${minTankAgeDays} days old (${minTankAgeReason}); this one is about ${Math.max(0, age)}.`,
        `from ${date}, when the tank is ${minTankAgeDays} days old`,
        figureId.animal(id, "min_tank_age"),
      ),
    );
  }
  if (LEVELS.indexOf(keeperLevel) > LEVELS.indexOf(facts.keeperLevel.value)) {
    reasons.push(
      notYet(
        "experience",
        `It is for ${LEVEL_WORDS[keeperLevel]}, not for ${LEVEL_WORDS[facts.keeperLevel.value]}.`,
        "once you have more experience with hardier kinds",
      ),
    );
  }
  return reasons;
}

function waterReasons({ id, temperatureC, salinityPsu }: Animal, facts: TankFacts): Reason[] {
  const reasons: Reason[] = [];
  const t = facts.temperatureC.central;
  if (temperatureC.coolWaterSpecies && t > temperatureC.max) {
    reasons.push(
      never(
        "cool_water",
        `It is a cool-water kind (up to ${temperatureC.max} °C); this tank is kept at ${one(t)} °C, where it dies early.`,
        figureId.animal(id, "temperature"),
      ),
    );
  } else if (t < temperatureC.min || t > temperatureC.max) {
    reasons.push(
      notYet(
        "temperature",
        `It lives at ${temperatureC.min} to ${temperatureC.max} °C; this tank is at ${one(t)} °C.`,
        `once the water stays between ${temperatureC.optimumLow} and ${temperatureC.optimumHigh} °C`,
        figureId.animal(id, "temperature"),
      ),
    );
  }
  const s = facts.salinityPsu.central;
  if (s < salinityPsu.low - SALINITY_LEEWAY || s > salinityPsu.high + SALINITY_LEEWAY) {
    reasons.push(
      notYet(
        "salinity",
        `It wants a salinity of ${salinityPsu.low} to ${salinityPsu.high}; this tank is at ${one(s)}.`,
        `once salinity has been brought, slowly, to ${salinityPsu.low} to ${salinityPsu.high}`,
        figureId.animal(id, "salinity"),
      ),
    );
  }
  return reasons;
}
/** What a hobby instrument may be off by, PSU; a reading this near the range is not held against an animal. */
const SALINITY_LEEWAY = 1;

function groundReasons({ id, needs, reach }: Animal, facts: TankFacts): Reason[] {
  const reasons: Reason[] = [];
  const { sandDepthMmMin, sandAreaCm2Min, sandGrain } = needs;
  const areaCm2 = facts.sandM2.central * 1e4;
  if (sandDepthMmMin > 0 || sandAreaCm2Min > 0) {
    if (facts.sandGrain.value === "none" || areaCm2 < 1) {
      reasons.push(never("sand", "It lives in or on sand; this tank's floor has none."));
    } else {
      if (facts.sandDepthMm.central < sandDepthMmMin) {
        reasons.push(
          notYet(
            "sand",
            `It wants sand at least ${sandDepthMmMin} mm deep; here it is about ${Math.round(facts.sandDepthMm.central)} mm.`,
            `once the sand is ${sandDepthMmMin} mm deep`,
            figureId.animal(id, "sand_depth"),
          ),
        );
      }
      if (areaCm2 < sandAreaCm2Min) {
        reasons.push(
          never(
            "sand",
            `It wants ${sandAreaCm2Min} cm² of open sand; here there are about ${Math.round(areaCm2)} cm².`,
            figureId.animal(id, "sand_area"),
          ),
        );
      }
      const fineWanted = sandGrain?.startsWith("fine") === true;
      if (fineWanted && (facts.sandGrain.value === "coarse" || facts.sandGrain.value === "rubble")) {
        reasons.push(never("sand", `It needs ${sandGrain} sand; this floor is ${facts.sandGrain.value}.`));
      }
    }
  }
  const livesOnRock = reach.rock === 2 && reach.sandSurface === 0 && reach.glass === 0;
  if ((needs.rockCaves || livesOnRock) && facts.rockKg.high <= 0) {
    reasons.push(never("rock", "It lives on and among rock; this tank has none."));
  } else if (needs.rockCaves && facts.rockCaves.origin === "stated" && !facts.rockCaves.value) {
    reasons.push(
      notYet("caves", "It needs holes in the rock to hide and moult in.", "once the rock offers caves"),
    );
  }
  return reasons;
}

function equipmentReasons(animal: Animal, facts: TankFacts): Reason[] {
  const reasons: Reason[] = [];
  if (animal.needs.lid && !facts.lid.value) {
    reasons.push(notYet("lid", "It climbs or jumps out of an open tank.", "once the tank has a lid or net"));
  }
  if (animal.needs.pumpGuard && !facts.pumpGuards.value) {
    reasons.push(
      notYet(
        "pump_guard",
        "A pump inlet would tear it, and its juices can poison the tank.",
        "once every inlet has a guard",
      ),
    );
  }
  const shoves = animal.sideEffects.bulldozing >= 2 || animal.risks.includes("undermines_rock");
  if (shoves && facts.rockKg.central > 0 && !facts.rockSecured.value) {
    reasons.push(
      notYet(
        "loose_rock",
        "It pushes over or undermines rock that is not fixed.",
        "once the rock stands on the glass and is fixed",
      ),
    );
  }
  return reasons;
}

function companyReasons(animal: Animal, company: readonly Company[]): Reason[] {
  const reasons: Reason[] = [];
  for (const mate of company) {
    const when = mate.planned ? "is planned for this tank" : "lives here";
    const eaten = animal.predatorsOfIt.find(({ id }) => id === mate.animal.id);
    if (eaten?.likelihood === "likely") {
      reasons.push(never("eaten_by", `The ${mate.animal.commonName} that ${when} would eat it.`));
    }
    const prey = animal.preysOn.find(({ id }) => id === mate.animal.id);
    if (prey?.likelihood === "likely" && mate.animal.id !== animal.id) {
      reasons.push(never("eats", `It would eat the ${mate.animal.commonName} that ${when}.`));
    }
    if (mate.animal.id === animal.id && animal.maxPerTank !== null && mate.count >= animal.maxPerTank) {
      reasons.push(
        never(
          "same_kind",
          `The tank holds ${mate.count} already; more than ${animal.maxPerTank} do not get on.`,
          figureId.animal(animal.id, "max_per_tank"),
        ),
      );
    }
  }
  return reasons;
}

function dangerReasons({ id, risks }: Animal, { medicines, trouble, wishes }: TankFacts): Reason[] {
  const reasons: Reason[] = [];
  if (risks.includes("releases_toxin_on_death") && !wishes.includes(id)) {
    reasons.push(
      notYet(
        "toxin",
        "It can poison the whole tank as it dies: never proposed, only planned at your own wish.",
        "if you wish for it, knowing that",
      ),
    );
  }
  if (medicines.length > 0) {
    reasons.push(
      notYet(
        "medicine",
        `The water holds ${medicines.join(", ")}.`,
        "once a test shows that it is gone; ask an aquatic vet",
      ),
    );
  }
  if (trouble !== null) {
    reasons.push(
      notYet(
        "trouble",
        "Something in the tank is dead, gasping or wrong now.",
        "once that is found and over",
      ),
    );
  }
  return reasons;
}

const RISK_SENTENCES: Readonly<Partial<Record<AnimalRisk, string>>> = {
  mis_sold: "Several kinds are sold under this name: look before you buy.",
  falls_and_dies: "It cannot turn itself over: set fallen ones upright.",
  venomous_or_spiny: "Its spines or sting hurt people: gloves; a doctor if stung.",
  spine_hazard: "Its spines can wound: gloves; a doctor for a deep wound.",
  toxic_if_eaten: "It is poisonous to what eats it.",
  releases_toxin_on_death: "It can poison a tank as it dies: take a failing one out at once.",
  eats_coralline: "It also eats the pink crust algae.",
  eats_coral_polyps: "It may nip corals.",
  needs_target_feeding: "It needs food brought to it.",
  eats_snails: "It may kill a snail for its shell or flesh when hungry or short of shells.",
  grows_too_large: "It may outgrow this tank.",
};

function cautionsFor(animal: Animal, facts: TankFacts): string[] {
  const cautions = animal.risks.flatMap((risk) => {
    if (risk === "eats_coral_polyps" && !facts.corals.value) return [];
    const sentence = RISK_SENTENCES[risk];
    return sentence === undefined ? [] : [sentence];
  });
  if (animal.lawCheck !== null) cautions.push(animal.lawCheck);
  return cautions;
}

const never = (code: ReasonCode, text: string, figure?: string): Reason => ({
  ...{ code, text, until: null },
  ...(figure === undefined ? {} : { figure }),
});
const notYet = (code: ReasonCode, text: string, until: string, figure?: string): Reason => ({
  ...never(code, text, figure),
  until,
});
const one = (value: number): string => value.toFixed(1);

/** ISO date `days` after another. */
export function addDays(iso: string, days: number): string {
  const date = new Date(`${iso}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + Math.round(days));
  return date.toISOString().slice(0, 10);
}

/** Whole days from one ISO date to another. */
export const daysBetween = (from: string, to: string): number =>
  Math.round(
    (Date.parse(`${to.slice(0, 10)}T00:00:00Z`) - Date.parse(`${from.slice(0, 10)}T00:00:00Z`)) / 86_400_000,
  );
