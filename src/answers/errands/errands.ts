/**
 * Errands: what to get for a tank's plan, wave by wave, what not to get yet, and what never; each with its reason.
 * Limits: a list in words and whole numbers, from the answers as data. It knows no shop and no price.
 */

import { type AnimalRow, type Grouped, groupedBy, lineWords, told } from "../animals/fit-words.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { dateWords, withDates } from "../words.ts";
import { type TestErrand, testsOf } from "./tests.ts";

export interface AnimalErrand {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  /** Why so many, without a full stop. */
  readonly why: string;
  /** Id of the figure that the count is. */
  readonly figure: string;
}

export interface WaveErrands {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  /** What must be seen first. */
  readonly onlyIf: readonly string[];
  readonly animals: readonly AnimalErrand[];
  /** Empty shells to bring, and for whom; null where none are needed. */
  readonly shells: { readonly count: number; readonly why: string } | null;
}

export interface FoodErrand {
  readonly id: string;
  readonly name: string;
  /** Dry food a day, mg. */
  readonly dryFeedMg: number;
  readonly what: string | null;
  readonly why: string;
  readonly figure: string;
}

export interface Errands {
  readonly kind: "waves" | "nothing_yet";
  readonly because: readonly string[];
  readonly lookAgainOn: string | null;
  readonly waves: readonly WaveErrands[];
  readonly food: readonly FoodErrand[];
  readonly tests: readonly TestErrand[];
  readonly notYet: readonly Grouped<AnimalRow>[];
  readonly never: readonly Grouped<AnimalRow>[];
}

type Food = (id: string) => string | null;

/** @param foodOf what an animal is fed by hand, of the catalogue */
export function errandsOf({ waves, ahead, animals }: TankAnswers, foodOf: Food): Errands {
  return {
    kind: waves.kind,
    because: waves.because.map(told),
    lookAgainOn: waves.look_again_on,
    waves: waves.waves.map(waveErrands),
    food: waves.fed_by_hand.map(({ id, name, standing, dry_feed_mg_per_day }) => ({
      id,
      name,
      dryFeedMg: Math.round(dry_feed_mg_per_day),
      what: foodOf(id),
      why: FED[standing],
      figure: `fed_by_hand.${id}`,
    })),
    tests: testsOf(waves, ahead),
    notYet: reasonsOf(animals.animals, "not_yet"),
    never: reasonsOf(animals.animals, "never"),
  };
}

const FED = {
  resident: "those that live here would go short",
  wished: "those you wish for would go short",
  planned: "they go short once all have come",
} as const;

function waveErrands(wave: TankAnswers["waves"]["waves"][number]): WaveErrands {
  const shelled = wave.animals.filter(({ spare_shells }) => spare_shells > 0);
  const shells = shelled.reduce((sum, { spare_shells }) => sum + spare_shells, 0);
  return {
    number: wave.number,
    from: wave.from,
    to: wave.to,
    onlyIf: wave.only_if,
    animals: wave.animals.map(({ id, name, count, binding }) => ({
      id,
      name,
      count,
      why: `no more because of ${withDates(binding.text)}`,
      figure: `plan.${id}.count`,
    })),
    shells:
      shells === 0
        ? null
        : {
            count: shells,
            why: `a size up, for ${shelled.map(({ name }) => name).join(" and ")} to move into`,
          },
  };
}

/** Kinds that a shop sells as crew: the others are looked up, not shopped for. */
const SOLD: ReadonlySet<AnimalRow["role"]> = new Set(["crew", "crew_with_caution"]);

const reasonsOf = (rows: readonly AnimalRow[], status: "not_yet" | "never"): Grouped<AnimalRow>[] =>
  groupedBy(
    rows.filter(({ fit, role }) => fit?.status === status && SOLD.has(role)),
    (row) => lineWords(row, row.fit!),
  );

/** "15 Jun 2026 to 29 Jun 2026". */
export const windowWords = ({ from, to }: { readonly from: string; readonly to: string }): string =>
  `${dateWords(from)} to ${dateWords(to)}`;
