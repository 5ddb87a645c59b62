/** Gate conditions about tests, losses and heads: what the daybook says since the last animals came. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { counted, dateWords } from "../words.ts";
import type { Finding } from "./gate.ts";
import { headsOf, type KnownOfTank, type Valued, valuesOf } from "./known.ts";
import { isUnreadable } from "./water.ts";

/** A test older than this says little of the water now. */
export const FRESH_DAYS = 21;

/** Day of the last addition; null where none is known. */
const lastArrival = ({ record }: KnownOfTank): string | null =>
  record.happenings
    .filter(({ kind }) => kind === "added")
    .map(({ on }) => on)
    .sort()
    .at(-1) ?? null;

const BOTH = [
  ["tan_mg_n_per_l", "ammonia"],
  ["no2_mg_n_per_l", "nitrite"],
] as const;

/**
 * Ammonia and nitrite too low for a test to show: with `apart`, on the last two tests so many days apart; without, on the last
 * test since the last animals came.
 */
export function testsCondition(known: KnownOfTank, apart: { readonly days: number } | null): Finding {
  const since = apart === null ? lastArrival(known) : null;
  const found = BOTH.map(([quantity, word]) => ({
    quantity,
    word,
    values: valuesOf(known, quantity).filter(
      ({ on }) => daysBetween(on, known.today) <= FRESH_DAYS && (since === null || on > since),
    ),
  }));
  const entries = found.flatMap(({ values }) => values.flatMap(({ entry }) => entry ?? []));
  const readable = found.filter(({ quantity, values }) => {
    const latest = values.at(-1);
    return latest !== undefined && !isUnreadable(latest, quantity);
  });
  if (readable.length > 0) {
    const words = readable.map(({ word, values }) => `${word} on ${dateWords(values.at(-1)?.on ?? "")}`);
    return {
      state: "not_met",
      because: `A test showed ${words.join(", ")}.`,
      entries,
      settle: `Tests of ${readable.map(({ word }) => word).join(" and ")} that show none${apart === null ? "" : `, twice, ${apart.days} days apart`}.`,
      by: "reading",
    };
  }
  const days = apart?.days ?? 0;
  const wanting = found.filter(({ quantity, values }) => !spansDays(values, quantity, days));
  if (wanting.length === 0) {
    return {
      state: "met",
      because:
        apart === null
          ? "Both were too low for the last tests to show."
          : "Both were too low for the tests to show, twice.",
      entries,
      settle: null,
      by: null,
    };
  }
  const words = wanting.map(({ word }) => word).join(" and ");
  const firsts = wanting.flatMap(({ values }) => values.at(-1)?.on ?? []).sort();
  const again = firsts[0] === undefined ? null : addDays(firsts[0], days);
  return {
    state: "cannot_tell",
    because: `${wanting.some(({ values }) => values.length > 0) ? "Only one test" : "No test"} of ${words} ${since === null ? `within ${FRESH_DAYS} days` : `since ${dateWords(since)}`}.`,
    entries,
    settle: `A test of ${words}${again === null || again <= known.today ? "" : `, on ${dateWords(again)} or later`}${apart !== null && again === null ? `, and another ${days} days later` : ""}.`,
    by: "reading",
  };
}

/** The unreadable tests at the end of the list lie so many days apart. */
function spansDays(values: readonly Valued[], quantity: (typeof BOTH)[number][0], days: number): boolean {
  const lastReadable = values.findLastIndex((value) => !isUnreadable(value, quantity));
  const clear = values.slice(lastReadable + 1);
  const [first, last] = [clear[0], clear.at(-1)];
  return first !== undefined && last !== undefined && daysBetween(first.on, last.on) >= days;
}

/** A loss since which so many days have passed without another stops no wave. */
const LOSS_DAYS = 14;

/** Nothing died that nobody can explain. The record knows no cause: any loss of the last two weeks is asked about. */
export function unexplainedLosses(known: KnownOfTank): Finding {
  const after = known.record.happenings.filter(
    ({ kind, on }) =>
      (kind === "lost_found" || kind === "lost_feared") && daysBetween(on, known.today) <= LOSS_DAYS,
  );
  const found = after.filter(({ kind }) => kind === "lost_found");
  const entries = after.map(({ entry }) => entry);
  const last = found.at(-1);
  if (last !== undefined) {
    const settledOn = addDays(last.on, LOSS_DAYS + 1);
    return {
      state: "not_met",
      because: `Found dead, the last on ${dateWords(last.on)}.`,
      entries,
      settle: `No other loss until ${dateWords(settledOn)}; find out why meanwhile.`,
      ...{ by: "head_count", settledOn },
    };
  }
  if (after.length > 0) {
    return {
      state: "cannot_tell",
      because: "Some are missing, and nothing was found.",
      entries,
      settle: "A head count by torch.",
      by: "head_count",
    };
  }
  return {
    state: "met",
    because: `No loss is kept within ${LOSS_DAYS} days.`,
    entries,
    settle: null,
    by: null,
  };
}

/** The kinds that the gate names, counted since the last animals came: half of them or more were seen. */
export function headsCondition(text: string, plan: WavesOutput, known: KnownOfTank): Finding {
  const since = lastArrival(known);
  const named = [...plan.residents, ...plan.waves.flatMap(({ animals }) => animals)].filter(({ name }) =>
    text.includes(name),
  );
  const ids = [...new Map(named.map(({ id, name }) => [id, name]))];
  const seen = ids.map(([id, name]) => ({
    name,
    expected: headsOf(known, id),
    count: known.record.observations.findLast(
      (one) => one.kind === "heads" && one.animal === id && (since === null || one.on >= since),
    ),
  }));
  const entries = seen.flatMap(({ count }) => count?.entry ?? []);
  const few = seen.filter(
    ({ expected, count }) =>
      count?.kind === "heads" && (expected === null ? count.seen === 0 : 2 * count.seen < expected),
  );
  if (few.length > 0) {
    return {
      state: "not_met",
      because: `Fewer than half were seen: ${few.map(({ name, count }) => counted(count?.kind === "heads" ? count.seen : 0, name)).join(", ")}.`,
      entries,
      settle: "A count by torch an hour after dark that sees half or more.",
      by: "head_count",
    };
  }
  const uncounted = seen.filter(({ count }) => count === undefined).map(({ name }) => name);
  if (uncounted.length > 0 || seen.length === 0) {
    return {
      state: "cannot_tell",
      because: `Not counted${since === null ? "" : ` since ${dateWords(since)}`}: ${uncounted.length === 0 ? "any of them" : uncounted.join(", ")}.`,
      entries,
      settle: "A count of each by torch an hour after dark.",
      by: "head_count",
    };
  }
  return { state: "met", because: "Half or more of each were seen.", entries, settle: null, by: null };
}
