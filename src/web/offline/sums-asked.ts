/**
 * Which addresses are water sums, and what the service worker asks of the script that works them out (sums-here.tsx).
 * Small: the service worker carries it always.
 */
import type { KnownForSums } from "../../answers/sums/known.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { dayIn } from "../../contract/quantity/zone.ts";
import type { TankHead } from "../page.ts";
import type { SumsAsked, SumsScene } from "../pages/sum-pages.ts";

export type Known = KnownForSums<TankHead>;

export interface SumsQuestion {
  readonly asked: SumsAsked;
  readonly scene: SumsScene;
  /** As a keeper would type it. */
  readonly address: string;
  /** ISO date. */
  readonly today: string;
  /** The body of the page alone. */
  readonly part: boolean;
  /** What the build wrote, by its names. */
  readonly built: Readonly<Record<string, string>>;
}

export type SumsHere = (
  question: SumsQuestion,
) =>
  | { readonly kind: "html"; readonly html: string; readonly status: number }
  | { readonly kind: "redirect"; readonly to: string };

const SUMS = /^(?:\/tanks\/([^/]+))?\/sums(?:\/([^/]+)(?:\/working\/([^/]+))?)?\/?$/;

export interface SumsAddress {
  readonly tank: string | null;
  readonly asked: SumsAsked;
}

/** Null for any other address. */
export function sumsAddress({ pathname, searchParams }: URL): SumsAddress | null {
  const found = SUMS.exec(pathname);
  if (found === null) return null;
  const [, tank, sum, figure] = found.map((part) => (part === undefined ? null : decoded(part)));
  return {
    tank: tank ?? null,
    asked: { sum: sum ?? null, figure: figure ?? null, query: Object.fromEntries(searchParams) },
  };
}

/** As it stands where it is no encoding: then nothing is of that name. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** @param known of the tank that is asked for; null where none is @param instant now, UTC @param day it, on this device */
export function questionOf(
  { asked }: SumsAddress,
  known: Known | null,
  { instant, day }: { readonly instant: string; readonly day: string },
): Pick<SumsQuestion, "asked" | "scene" | "today"> {
  if (known === null) {
    const context = { preferences: NO_PREFERENCES, today: day, tank: null };
    return { asked, scene: { head: null, context }, today: day };
  }
  const { head, zone, preferences, facts, record } = known;
  const there = zone === null ? day : dayIn(instant, zone);
  // Facts and tests are of the day they were fetched on: a clock behind that is not believed.
  const [today = there] = [there, known.today].toSorted().reverse();
  const tank = { facts, record, today };
  return { asked, scene: { head, context: { preferences, today, tank } }, today: day };
}

/** "2026-11-27", on this device's own clock. */
export const dayHere = (now: Date): string =>
  [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => String(part).padStart(2, "0"))
    .join("-");
