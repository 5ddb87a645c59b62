/** Gate conditions about what can be seen of a shelf: film coming back, tufts, waste; by the scores that were kept. */
import { daysBetween } from "../../contract/quantity/calendar.ts";
import type { FilmBack, GrowthSeen } from "../../engine/types/record.ts";
import type { ShelfId } from "../../engine/types/shelf.ts";
import type { Growth } from "../../engine/types/tank.ts";
import { dateWords } from "../words.ts";
import type { Finding } from "./gate.ts";
import { FRESH_DAYS } from "./gate-animals.ts";
import type { KnownOfTank } from "./known.ts";

const WEEK = 7;

interface Shown {
  readonly growths: readonly Growth[];
  /** Score from which the sign is there. */
  readonly from: number;
  readonly words: string;
}

const SHOWN: Readonly<Partial<Record<ShelfId, Shown>>> = {
  film_rock: { growths: ["film_rock", "diatoms"], from: 2, words: "film on rock, or diatoms" },
  film_sand: { growths: ["film_sand", "diatoms"], from: 1, words: "film on sand, or diatoms" },
  hair_algae: { growths: ["hair_algae"], from: 1, words: "hair algae" },
  bubble_algae: { growths: ["bubble_algae"], from: 1, words: "bubble algae" },
  detritus_sand: { growths: ["detritus_sand"], from: 1, words: "settled waste on the sand" },
  detritus_crevice: { growths: ["detritus_crevice"], from: 1, words: "dust in the rock" },
  uneaten_feed: { growths: ["leftovers"], from: 1, words: "leftovers after two minutes" },
};

export function shelfCondition(shelf: ShelfId, known: KnownOfTank): Finding {
  if (shelf === "film_glass") return filmCondition(known);
  const shown = SHOWN[shelf];
  if (shown === undefined) return lookFor("it");
  const seen = shown.growths.flatMap((growth) => scores(known, growth).at(-1) ?? []);
  if (seen.length === 0) return lookFor(shown.words);
  const best = seen.reduce((most, one) => (one.score > most.score ? one : most));
  const there = best.score >= shown.from;
  return {
    state: there ? "met" : "not_met",
    because: `Seen on ${dateWords(best.on)}: ${best.score} of 4.`,
    entries: seen.map(({ entry }) => entry),
    settle: there ? null : `A later sighting of ${shown.words}, ${shown.from} of 4 or more.`,
    by: there ? null : "growth",
  };
}

const lookFor = (words: string): Finding => ({
  state: "cannot_tell",
  because: `No sighting of it within ${FRESH_DAYS} days.`,
  entries: [],
  settle: `A sighting of ${words}, or none of it.`,
  by: "growth",
});

/** Fresh sightings of one growth, oldest first. */
const scores = ({ record, today }: KnownOfTank, growth: Growth): readonly GrowthSeen[] =>
  record.observations.filter(
    (one): one is GrowthSeen =>
      one.kind === "growth" && one.growth === growth && daysBetween(one.on, today) <= FRESH_DAYS,
  );

/** Film is back within a week of wiping: told in days, or seen on the glass within a week after a wipe. */
function filmCondition(known: KnownOfTank): Finding {
  const { record, today } = known;
  const back = record.observations.findLast(
    (one): one is FilmBack => one.kind === "film_back" && daysBetween(one.on, today) <= FRESH_DAYS,
  );
  if (back !== undefined) {
    const there = back.days <= WEEK;
    return {
      state: there ? "met" : "not_met",
      because: `It took ${back.days} ${back.days === 1 ? "day" : "days"} to come back, told on ${dateWords(back.on)}.`,
      entries: [back.entry],
      settle: there ? null : "Film back within 7 days of a later wiping.",
      by: there ? null : "chore",
    };
  }
  const wipes = record.happenings.filter(
    (one) =>
      one.kind === "chore" && one.chore === "glass_wiped" && daysBetween(one.on, today) <= FRESH_DAYS + WEEK,
  );
  const glass = scores(known, "film_glass");
  for (const wipe of wipes.toReversed()) {
    const after = glass.filter(({ on }) => on > wipe.on && daysBetween(wipe.on, on) <= WEEK);
    const seen = after.find(({ score }) => score >= 1);
    if (seen !== undefined) {
      return {
        state: "met",
        because: `Wiped on ${dateWords(wipe.on)}, and film was seen again on ${dateWords(seen.on)}.`,
        entries: [wipe.entry, seen.entry],
        settle: null,
        by: null,
      };
    }
    const bare = after.findLast(({ on }) => daysBetween(wipe.on, on) === WEEK);
    if (bare !== undefined) {
      return {
        state: "not_met",
        because: `Wiped on ${dateWords(wipe.on)}, and still bare a week later.`,
        entries: [wipe.entry, bare.entry],
        settle: "Film seen on the glass within 7 days of a later wiping.",
        by: "growth",
      };
    }
  }
  const last = wipes.at(-1);
  return {
    state: "cannot_tell",
    because:
      last === undefined
        ? `No wiping is kept within ${FRESH_DAYS + WEEK} days.`
        : `Wiped on ${dateWords(last.on)}; nothing kept says when film came back.`,
    entries: last === undefined ? [] : [last.entry],
    settle: "The next wiping, with the days until the glass needed it; or film seen on the glass.",
    by: "chore",
  };
}

/** More grows than is eaten: the glass needs wiping twice as often, or the score rises. */
export function moreThanEaten(shelf: ShelfId, known: KnownOfTank): Finding {
  if (shelf === "film_glass") {
    const backs = known.record.observations.filter((one): one is FilmBack => one.kind === "film_back");
    const [before, last] = [backs.at(-2), backs.at(-1)];
    if (before === undefined || last === undefined) {
      return { ...lookFor("how soon the glass needs wiping, twice"), by: "chore" };
    }
    const twice = 2 * last.days <= before.days;
    return {
      state: twice ? "met" : "not_met",
      because: `It came back in ${last.days} days, and in ${before.days} the time before.`,
      entries: [before.entry, last.entry],
      settle: null,
      by: null,
    };
  }
  const shown = SHOWN[shelf];
  const seen = shown === undefined ? [] : scores(known, shown.growths[0] ?? "film_rock");
  const [first, last] = [seen[0], seen.at(-1)];
  if (first === undefined || last === undefined || first === last) {
    return lookFor(shown === undefined ? "it" : `${shown.words}, twice`);
  }
  const rising = last.score > first.score;
  return {
    state: rising ? "met" : "not_met",
    because: `From ${first.score} of 4 on ${dateWords(first.on)} to ${last.score} on ${dateWords(last.on)}.`,
    entries: [first.entry, last.entry],
    settle: null,
    by: null,
  };
}
