/** Clues that the animals tell: the kind that is asked about, and those that live with it. */
import type { Animal } from "../../../types/animal.ts";
import { SHELF_OF_GROWTH } from "../../../types/growth-shelf.ts";
import { type ClueState, fact, seen, UNKNOWN } from "../clue.ts";
import { type DiagnosisScene, livingIn, type Subject, within } from "../scene.ts";

/** Share of a diet from which a kind counts as one that eats there. */
const EATS_FROM = 0.15;
/** Food wanted a day by those that eat it, mg C for each square metre of surface, below which they are few: judgement. */
const FEW_BELOW_MG_C_PER_M2 = 40;
const FRESH_DAYS = 3;
const LATELY_DAYS = 14;
const OLD_DAYS = 365;
const MOULTING = new Set(["hermit", "crab", "shrimp"]);

const aboutOne = ({ animals }: DiagnosisScene, { animal }: Subject): Animal | null =>
  animal === null ? null : (animals.get(animal) ?? null);

const ofKind =
  (holds: (animal: Animal) => boolean | null) =>
  (scene: DiagnosisScene, subject: Subject): ClueState => {
    const animal = aboutOne(scene, subject);
    const known = animal === null ? null : holds(animal);
    return known === null ? UNKNOWN : fact(known);
  };

/** Arrivals of the kind, or of any kind where none is meant. */
const arrived =
  (days: number) =>
  (scene: DiagnosisScene, { on, animal }: Subject): ClueState => {
    const arrivals = scene.record.happenings.filter(
      (one) => one.kind === "added" && (animal === null || one.animal === animal),
    );
    const recent = arrivals.filter((one) => within(one.on, on, days)).at(-1);
    if (recent !== undefined) return seen(true, recent.on);
    const present = scene.facts.present.filter(({ id }) => animal === null || id === animal);
    const dated = present.some((one) => one.on !== null && within(one.on, on, days));
    if (dated) return fact(true);
    return arrivals.length > 0 || present.some((one) => one.on !== null) ? fact(false) : UNKNOWN;
  };

function oldHeads(scene: DiagnosisScene, { on, animal }: Subject): ClueState {
  const days = scene.record.happenings
    .filter((one) => one.kind === "added" && (animal === null || one.animal === animal))
    .map((one) => one.on);
  const told = scene.facts.present.flatMap((one) =>
    one.on !== null && (animal === null || one.id === animal) ? [one.on] : [],
  );
  const first = [...days, ...told].sort()[0];
  if (first !== undefined) return fact(!within(first, on, OLD_DAYS));
  return scene.facts.ageDays.central < OLD_DAYS ? fact(false) : UNKNOWN;
}

function predator(scene: DiagnosisScene, subject: Subject): ClueState {
  const animal = aboutOne(scene, subject);
  const eaters = new Set(
    (animal === null
      ? livingIn(scene).filter(({ animal: { group } }) => group === "snail" || group === "conch")
      : [{ animal }]
    ).flatMap(({ animal: { predatorsOfIt } }) => predatorsOfIt.map(({ id }) => id)),
  );
  return fact(livingIn(scene).some(({ animal: { id } }) => eaters.has(id) && id !== animal?.id));
}

/** Surface that a growth is held against, m2. */
function areaFor(scene: DiagnosisScene, shelf: string): number {
  const { glassM2, litRockM2, sandM2 } = scene.facts;
  const area = { film_glass: glassM2, film_sand: sandM2, detritus_sand: sandM2 }[shelf] ?? litRockM2;
  return area.central;
}

function fewEaters(scene: DiagnosisScene, { effect }: Subject): ClueState {
  const shelf = SHELF_OF_GROWTH[effect];
  if (shelf === undefined) return UNKNOWN;
  const wanted = livingIn(scene)
    .filter(({ animal }) => animal.diet[shelf] >= EATS_FROM)
    .reduce(
      (sum, { animal, count }) => sum + count * animal.breakEvenIntakeMgCPerDay * animal.diet[shelf],
      0,
    );
  // On a surface that the tank lacks nothing is few but nobody.
  return fact(wanted === 0 || wanted < FEW_BELOW_MG_C_PER_M2 * areaFor(scene, shelf));
}

/** Of a kind that lives on film: film was scored 1 or less wherever it was looked for within two weeks. */
function hungryShelf(scene: DiagnosisScene, subject: Subject): ClueState {
  const bare = scene.record.observations
    .filter((one) => one.kind === "growth" && one.growth.startsWith("film_"))
    .filter((one) => within(one.on, subject.on, LATELY_DAYS));
  const animal = aboutOne(scene, subject);
  if (animal === null || bare.length === 0) return UNKNOWN;
  const onFilm = animal.diet.film_glass + animal.diet.film_rock + animal.diet.film_sand;
  if (onFilm < 0.4) return UNKNOWN;
  const last = bare.at(-1);
  return seen(
    bare.every((one) => one.kind === "growth" && one.score <= 1),
    last?.on ?? subject.on,
  );
}

const habitOf = (scene: DiagnosisScene, animal: string | null) =>
  scene.diagnosis.waterline.find((row) => row.animal === animal)?.habit ?? null;

function night(_: DiagnosisScene, { hoursFromLightsOut }: Subject): ClueState {
  if (hoursFromLightsOut === null) return UNKNOWN;
  return fact(isDark(hoursFromLightsOut));
}

/** Dark from lights-out on; a lit day is taken as at least eight hours long. */
export const isDark = (hoursFromLightsOut: number): boolean =>
  hoursFromLightsOut >= 0 && hoursFromLightsOut <= 14;

export const KIND_CLUES = {
  young_tank: ({ facts }: DiagnosisScene, subject: Subject) => ageUnder(facts, subject, 120),
  very_young_tank: ({ facts }: DiagnosisScene, subject: Subject) => ageUnder(facts, subject, 42),
  few_eaters: fewEaters,
  hungry_shelf: hungryShelf,
  arrival_fresh: arrived(FRESH_DAYS),
  arrival_lately: arrived(LATELY_DAYS),
  old_heads: oldHeads,
  predator_present: predator,
  hermits_present: (scene: DiagnosisScene) =>
    fact(livingIn(scene).some(({ animal: { group } }) => group === "hermit")),
  poor_righter: ofKind(({ canRightItself }) =>
    canRightItself === "disputed" || canRightItself === "not-applicable"
      ? null
      : canRightItself === "poorly" || canRightItself === "no",
  ),
  cool_kind: ofKind(({ temperatureC }) => temperatureC.coolWaterSpecies),
  moults: ofKind(({ group }) => MOULTING.has(group)),
  night_kind: ofKind(({ active }) => active !== "day"),
  leaves_water: (scene: DiagnosisScene, { animal }: Subject) =>
    animal === null ? UNKNOWN : fact(habitOf(scene, animal) === "leaves"),
  several_kinds: (_: DiagnosisScene, { kindsSeen }: Subject) =>
    kindsSeen === null ? UNKNOWN : fact(kindsSeen >= 2),
  night_look: night,
} as const;

function ageUnder(
  { ageDays, assumed, asOf }: DiagnosisScene["facts"],
  { on }: Subject,
  days: number,
): ClueState {
  if (assumed.includes("ageDays")) return UNKNOWN;
  const then = ageDays.central - (Date.parse(asOf) - Date.parse(on)) / 86_400_000;
  return fact(then < days);
}
