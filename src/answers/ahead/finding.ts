/** The one or two things that a keeper should know first of the weeks ahead. */
import { chance, counted } from "../words.ts";
import type { KindLife, LimitChance, Outlook } from "./outlook.ts";

/** From this many of 20 on a thing is worth the first sentence: about even and above. */
const WORTH_SAYING = 8;
const LIMITS_NAMED = 2;
const KINDS_NAMED = 3;

export function findingOf({ chances, kinds }: Outlook): string {
  const known = chances.filter(({ missing }) => missing === null);
  const worth = known.filter(({ of20 }) => of20 >= WORTH_SAYING).sort(poisonFirst);
  const hungry = kinds
    .filter(({ starvesOf20 }) => starvesOf20 >= WORTH_SAYING)
    .sort((a, b) => b.starvesOf20 - a.starvesOf20);
  const sentences = [
    ...(hungry.length > 0 ? [hungrySentence(hungry)] : []),
    ...worth.slice(0, LIMITS_NAMED).map(limitSentence),
    ...(worth.length > LIMITS_NAMED ? [`${worth.length - LIMITS_NAMED} more below.`] : []),
    ...(known.length === 0
      ? ["Not enough data to say how this tank will go: what follows is a typical tank of its size."]
      : []),
  ];
  if (sentences.length > 0) return sentences.join(" ");
  const most = Math.max(0, ...known.map(({ of20 }) => of20), ...kinds.map((kind) => kind.starvesOf20));
  const unsaid = chances.length - known.length;
  const rest =
    unsaid === 0
      ? ""
      : ` For ${unsaid} of the limits there is not enough data: a typical tank's chance stands below.`;
  const nobody = kinds.length === 0 ? "" : ", and no kind starves,";
  const limit = unsaid === 0 ? "No limit" : "Of what you have told or tested, no limit";
  return `${limit} is crossed${nobody} in more than ${most} of 20 runs.${rest}`;
}

function hungrySentence(hungry: readonly KindLife[]): string {
  const names = hungry.slice(0, KINDS_NAMED).map(({ heads, animal }) => counted(heads, animal.commonName));
  const more = hungry.length - names.length;
  const least = hungry.at(-1)!.starvesOf20;
  const all = more === 0 ? list(names) : `${names.join(", ")} and ${more} more kinds`;
  const each = hungry.length === 1 ? "" : " or more";
  return `Half or more of ${all} starve within 90 days: ${chance(least)}${each}.`;
}

const limitSentence = ({ limit: { words }, of20, alreadyOf20 }: LimitChance): string =>
  `${words[0]!.toUpperCase()}${words.slice(1)}: ${chance(of20)}${alreadyOf20 >= of20 && of20 >= WORTH_SAYING ? ", as it does today" : ""}.`;

const POISON: ReadonlySet<string> = new Set(["tan", "nh3", "no2"]);
const poisonFirst = (a: LimitChance, b: LimitChance): number =>
  Number(POISON.has(b.limit.quantity)) - Number(POISON.has(a.limit.quantity)) || b.of20 - a.of20;

const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
