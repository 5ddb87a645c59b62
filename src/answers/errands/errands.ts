/**
 * Errands: what to get for a tank's plan, wave by wave, what not to get yet, and what never; each with its reason.
 * Limits: a list in words and whole numbers, from the answers as data. It knows no shop and no price.
 */
import { type AnimalRow, byReason, type Grouped, inFull } from "../animals/fit-words.ts";
import { linked, maybeTold, type Sentence, type Told } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { counted, dryFood, withDates } from "../words.ts";
import { type TestErrand, testsOf } from "./tests.ts";

/** One thing to get: how many of what, and why, without a full stop. */
export interface Errand {
  readonly id: string;
  readonly what: string | Told;
  readonly why: Sentence;
}

export interface WaveErrands {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly fromFigure: string;
  /** What must be seen first. */
  readonly onlyIf: readonly string[];
  readonly animals: readonly Errand[];
  readonly shells: readonly Errand[];
}

export interface Errands {
  readonly kind: "waves" | "nothing_yet";
  readonly because: readonly Sentence[];
  readonly lookAgainOn: string | null;
  readonly waves: readonly WaveErrands[];
  readonly food: readonly Errand[];
  readonly tests: readonly TestErrand[];
  readonly notYet: readonly Grouped[];
  readonly never: readonly Grouped[];
}

/** @param foodOf what an animal is fed by hand, of the catalogue */
export function errandsOf(
  { waves, ahead, animals }: TankAnswers,
  foodOf: (id: string) => string | null,
): Errands {
  return {
    kind: waves.kind,
    because: waves.because.map((text, i) => linked(inFull(text), waves.because_figures[i])),
    lookAgainOn: waves.look_again_on,
    waves: waves.waves.map((wave) => waveErrands(wave, animals.animals)),
    food: waves.fed_by_hand.map(({ id, name, standing, dry_feed_mg_per_day, figures }) => ({
      id,
      what: maybeTold(`${dryFood(dry_feed_mg_per_day)} of dry food a day`, figures.dry_feed),
      why: [`for the ${name}: ${FED[standing]}${foodOf(id) === null ? "" : ` (${foodOf(id)})`}`],
    })),
    tests: testsOf(waves, ahead),
    notYet: byReason(animals.animals, "not_yet", isSold),
    never: byReason(animals.animals, "never", isSold),
  };
}

const FED = {
  resident: "those that live here would go short",
  wished: "those you wish for would go short",
  planned: "they go short once all have come",
} as const;

/** Shells of several sizes, the smallest for those that come, the largest for those that have grown. */
function shellsFor(name: string, row: AnimalRow | undefined): Sentence {
  if (row === undefined) return [`a size up, for the ${name} to change into`];
  const { low, high } = row.adult_size_mm;
  return [
    `a size up, of several sizes: the ${name} grows to `,
    maybeTold(`${low} to ${high} mm`, row.figures["size"]),
  ];
}

function waveErrands(wave: TankAnswers["waves"]["waves"][number], rows: readonly AnimalRow[]): WaveErrands {
  return {
    number: wave.number,
    from: wave.from,
    to: wave.to,
    fromFigure: wave.figures.from,
    onlyIf: wave.only_if,
    animals: wave.animals.map(({ id, name, count, binding, figures }) => ({
      id,
      what: maybeTold(counted(count, name), figures.count),
      why: ["no more because of ", ...linked(withDates(binding.text), binding.figure)],
    })),
    shells: wave.animals
      .filter(({ spare_shells }) => spare_shells > 0)
      .map(({ id, name, spare_shells, figures }) => ({
        id,
        what: maybeTold(counted(spare_shells, "empty shell"), figures.spare_shells),
        why: shellsFor(
          name,
          rows.find((row) => row.id === id),
        ),
      })),
  };
}

/** Kinds that are sold as crew: the others are looked up, not shopped for. */
const isSold = ({ role }: AnimalRow): boolean => role === "crew" || role === "crew_with_caution";
