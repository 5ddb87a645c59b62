/** Who goes hungry in a fallow time: from the answers of a tank with a fallow what-if. */
import type { TankFacts } from "../../engine/types/tank.ts";
import type { TankAnswers } from "../tank-answers.ts";
import type { WhatIfFlags } from "../what-if.ts";
import { FALLOW_DAYS } from "./quarantine.ts";

/** Both engine courses of it: no fish and no feed, beside the tank as it is, no wave in either. */
export const FALLOW: WhatIfFlags = { fallow: `${FALLOW_DAYS} d` };

export interface Fallow {
  /** Present kinds of the crew, the hungriest first. */
  readonly kinds: readonly {
    readonly id: string;
    readonly name: string;
    readonly heads: number;
    readonly starvesOf20: number;
    readonly figure: string;
  }[];
  readonly fed: readonly {
    readonly name: string;
    readonly dryFeedMg: number;
    readonly figure: string;
  }[];
}

export function fallowOf(
  { ahead, waves }: Pick<TankAnswers, "ahead" | "waves">,
  { present }: Pick<TankFacts, "present">,
): Fallow {
  const here = new Set(present.map(({ id }) => id));
  const kinds = (ahead.what_if?.outlook.kinds ?? [])
    .filter(({ id }) => here.has(id))
    .map(({ id, name, heads, starves_of_20, figures }) => ({
      ...{ id, name, heads, starvesOf20: starves_of_20 },
      figure: `what_if.${figures.starves.replace(/^what_if\./, "")}`,
    }))
    .sort((a, b) => b.starvesOf20 - a.starvesOf20 || a.name.localeCompare(b.name));
  return {
    kinds,
    fed: waves.fed_by_hand
      .filter(({ standing }) => standing === "resident")
      .map(({ name, dry_feed_mg_per_day, figures }) => ({
        ...{ name, dryFeedMg: dry_feed_mg_per_day, figure: figures.dry_feed },
      })),
  };
}
