/**
 * Ranked causes of what was seen. Several may be at work at once, so each is weighed for itself: how often it is at work
 * where such a thing is seen, moved by each clue that is known (naive Bayes of two: at work or not). What is not known
 * moves nothing, and is listed with how far it could move it. docs/model/diagnosis.md#causes
 */
import type { CauseFact } from "../../types/diagnosis.ts";
import type { ClueState } from "./clue.ts";
import { type ClueAnswers, clueOf } from "./clues.ts";
import type { DiagnosisScene, Subject } from "./scene.ts";

export interface WeighedClue extends ClueState {
  readonly id: string;
  /** Times the odds are moved; 1 where it is not known. */
  readonly factor: number;
}

export interface RankedCause {
  readonly cause: CauseFact;
  readonly prior: number;
  /** 0 to 1; causes don't exclude each other. */
  readonly chance: number;
  readonly clues: readonly WeighedClue[];
  /** Clues not known, the one that could move it most first. */
  readonly open: readonly string[];
}

function weighed(
  cause: CauseFact,
  prior: number,
  states: readonly (ClueState & { id: string })[],
): RankedCause {
  const clues = states.map((state): WeighedClue => {
    const row = cause.clues[state.id];
    if (row === undefined || state.holds === null) return { ...state, factor: 1 };
    return { ...state, factor: state.holds ? row.if / row.otherwise : (1 - row.if) / (1 - row.otherwise) };
  });
  const odds = clues.reduce((product, { factor }) => product * factor, prior / (1 - prior));
  const reach = (id: string): number => {
    const row = cause.clues[id];
    return row === undefined ? 1 : Math.max(row.if / row.otherwise, (1 - row.otherwise) / (1 - row.if));
  };
  return {
    cause,
    prior,
    chance: odds / (1 + odds),
    clues,
    open: clues
      .filter(({ holds }) => holds === null)
      .map(({ id }) => id)
      .sort((a, b) => reach(b) - reach(a)),
  };
}

/** Likeliest first; of those alike the one that more speaks for. */
export function rankCauses(
  scene: DiagnosisScene,
  subject: Subject,
  answers: ClueAnswers = {},
): RankedCause[] {
  return scene.diagnosis.causes
    .flatMap((cause) => {
      const prior = cause.explains[subject.effect];
      if (prior === undefined) return [];
      const states = Object.keys(cause.clues).map((id) => ({
        id,
        ...clueOf(id, scene, subject, answers),
      }));
      return [weighed(cause, prior, states)];
    })
    .sort((a, b) => b.chance - a.chance || b.prior - a.prior);
}

/**
 * Clues that would tell the causes apart, the one that could move the leading ones most first: expected change of their
 * chances, summed.
 */
export function tellingClues(ranked: readonly RankedCause[], count = 3): string[] {
  const gain = new Map<string, number>();
  for (const { cause, chance, open } of ranked) {
    for (const id of open) {
      const row = cause.clues[id];
      if (row === undefined) continue;
      const yes = chance * row.if + (1 - chance) * row.otherwise;
      const ifYes = (chance * row.if) / yes;
      const ifNo = (chance * (1 - row.if)) / (1 - yes);
      const change = yes * Math.abs(ifYes - chance) + (1 - yes) * Math.abs(ifNo - chance);
      gain.set(id, (gain.get(id) ?? 0) + change);
    }
  }
  return [...gain]
    .sort((a, b) => b[1] - a[1])
    .slice(0, count)
    .map(([id]) => id);
}

/** Clues asked before all else for this effect, where they are not known. */
export function askedFirst(ranked: readonly RankedCause[], effect: Subject["effect"]): string[] {
  return ranked
    .filter(({ cause }) => cause.askFirst.includes(effect))
    .flatMap(({ cause, clues }) =>
      Object.keys(cause.clues).filter((id) => clues.find((clue) => clue.id === id)?.holds === null),
    );
}
