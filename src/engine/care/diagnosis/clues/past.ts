/** Clues that the daybook tells: what was seen, done and befell in the weeks before. */
import type { Happening } from "../../../types/record.ts";
import type { Growth } from "../../../types/tank.ts";
import { type ClueState, fact, seen, UNKNOWN } from "../clue.ts";
import {
  type DiagnosisScene,
  growthsSeen,
  observed,
  SCORE_OF_COVER,
  type Subject,
  signsSeen,
  within,
} from "../scene.ts";

const DEATH_DAYS = 14;
const SIGHTING_DAYS = 28;

/** The latest happening that fits within so many days; where there is none, the daybook must be kept for its silence to count. */
function happened(
  { record }: DiagnosisScene,
  { on }: Subject,
  days: number,
  fits: (one: Happening) => boolean,
): ClueState {
  const found = record.happenings.filter((one) => within(one.on, on, days) && fits(one)).at(-1);
  if (found !== undefined) return seen(true, found.on);
  return isKept(record, on, days) ? fact(false) : UNKNOWN;
}

/** A daybook with an entry in the days looked at says something by its silence. */
const isKept = ({ observations, happenings }: DiagnosisScene["record"], on: string, days: number): boolean =>
  [...observations, ...happenings].some((one) => within(one.on, on, days));

/** Scored at `from` or more within four weeks; the latest sighting of each growth counts, else what the questions were told. */
const scored =
  (growths: readonly Growth[], from: number) =>
  ({ record, facts }: DiagnosisScene, { on }: Subject): ClueState => {
    const latest = growths.flatMap(
      (growth) =>
        growthsSeen(record, growth)
          .filter((one) => within(one.on, on, SIGHTING_DAYS))
          .at(-1) ?? [],
    );
    const high = latest.find(({ score }) => score >= from);
    const last = high ?? latest.at(-1);
    if (last !== undefined) return seen(high !== undefined, last.on, last.score);
    const told = growths.flatMap((growth) => facts.sightings[growth] ?? []);
    return told.length === 0 ? UNKNOWN : fact(told.some((cover) => SCORE_OF_COVER[cover] >= from));
  };

/** A share of the feed above which the questions were told of "some" or "a lot" after two minutes, not of "none". */
const LEFT_ABOVE = 0.05;

/** Seen in the daybook, else what the questions were told of it; what nobody said of feed says nothing. */
function leftovers(scene: DiagnosisScene, subject: Subject): ClueState {
  const found = scored(["leftovers"], 2)(scene, subject);
  const { uneatenShare, assumed } = scene.facts;
  if (found.holds !== null || assumed.includes("uneatenShare")) return found;
  return fact(uneatenShare.central > LEFT_ABOVE);
}

const treated =
  (pattern: RegExp, days: number, alsoNow: boolean) =>
  (scene: DiagnosisScene, subject: Subject): ClueState => {
    const now = scene.facts.medicines.some((medicine) => pattern.test(medicine));
    if (alsoNow && now) return fact(true);
    return happened(scene, subject, days, (one) => one.kind === "treated" && pattern.test(one.substance));
  };

function copper(scene: DiagnosisScene, subject: Subject): ClueState {
  const known = treated(/copper|cupr/i, 3650, true)(scene, subject);
  // A daybook of some weeks does not speak for the years before it.
  return known.holds === true ? known : UNKNOWN;
}

function waterChange(scene: DiagnosisScene, subject: Subject): ClueState {
  const changed = happened(scene, subject, 42, (one) => one.kind === "chore" && one.chore === "water_change");
  if (changed.holds === true) return seen(false, changed.on ?? subject.on);
  const { waterChangeFraction, waterChangeEveryDays, assumed } = scene.facts;
  const usual = !assumed.includes("waterChangeFraction") && waterChangeFraction.central > 0;
  if (usual && waterChangeEveryDays.central <= 42) return fact(false);
  // Silence counts only where chores are written down at all.
  const chores = scene.record.happenings.some(({ kind }) => kind === "chore");
  return chores || (!assumed.includes("waterChangeFraction") && waterChangeFraction.central === 0)
    ? fact(true)
    : UNKNOWN;
}

function bareGlass({ record }: DiagnosisScene, { on }: Subject): ClueState {
  const scores = growthsSeen(record, "film_glass").filter((one) => within(one.on, on, 14));
  const back = observed(record, "film_back")
    .filter((one) => within(one.on, on, SIGHTING_DAYS))
    .at(-1);
  const last = scores.at(-1);
  if (back !== undefined && (last === undefined || back.on >= last.on))
    return seen(back.days >= 14, back.on, back.days);
  return last === undefined
    ? UNKNOWN
    : seen(
        scores.every(({ score }) => score === 0),
        last.on,
        last.score,
      );
}

const signed =
  (sign: "fallen_snails" | "cast_shell", days: number) =>
  ({ record }: DiagnosisScene, { on, animal }: Subject): ClueState => {
    const found = signsSeen(record, sign)
      .filter((one) => within(one.on, on, days))
      .filter((one) => animal === null || one.animal === null || one.animal === animal)
      .at(-1);
    return found === undefined
      ? UNKNOWN
      : seen(found.count === null || found.count > 0, found.on, found.count);
  };

/** Other than the loss that is asked about: a death on that day is what is to be explained. */
function death(scene: DiagnosisScene, subject: Subject): ClueState {
  const isLoss = subject.effect === "snail_loss" || subject.effect === "crew_loss";
  return happened(scene, subject, DEATH_DAYS, (one) => {
    if (one.kind !== "lost_found" && one.kind !== "lost_feared") return false;
    if (isLoss && one.on === subject.on) return false;
    return !(one.kind === "lost_found" && one.bodyRemoved === true);
  });
}

export const PAST_CLUES = {
  leftovers_seen: leftovers,
  detritus_seen: scored(["detritus_sand", "detritus_crevice"], 3),
  dinoflagellates_seen: scored(["dinoflagellates"], 1),
  death_lately: death,
  outage_lately: (scene: DiagnosisScene, subject: Subject) =>
    happened(
      scene,
      subject,
      21,
      (one) => one.kind === "outage" && (one.of === "power" || one.of === "pumps") && one.hours >= 2,
    ),
  no_water_change: waterChange,
  treated_lately: treated(/./, 28, true),
  copper_lately: copper,
  glass_bare: bareGlass,
  fallen_seen: signed("fallen_snails", 28),
  cast_shell_lately: signed("cast_shell", 21),
  stripped_lately: (scene: DiagnosisScene, subject: Subject) =>
    happened(
      scene,
      subject,
      42,
      (one) =>
        one.kind === "chore" &&
        (one.chore === "sorbent_renewed" ||
          (one.chore === "algae_removed" && (one.share === null || one.share >= 0.5)) ||
          (one.chore === "water_change" && (one.share ?? 0) >= 0.4)),
    ),
  sand_stirred: (scene: DiagnosisScene, subject: Subject) =>
    happened(
      scene,
      subject,
      3,
      (one) => one.kind === "chore" && (one.chore === "sand_stirred" || one.chore === "sand_siphoned"),
    ),
} as const;
