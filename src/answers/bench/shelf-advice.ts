/** Shelves that are short feed somebody too little; shelves that are over are somebody's hand work. */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import type { Advice } from "../advice.ts";
import { inFull } from "../animals/fit-words.ts";
import { type Sentence, told } from "../sentence.ts";
import { dateWords, dryFood, rationsADay } from "../words.ts";

const NAMED = 2;

/** Those that live there and find too little. */
export function hungryAdvice({ fed_by_hand }: WavesOutput): readonly Advice[] {
  const hungry = fed_by_hand.filter(({ standing }) => standing === "resident");
  if (hungry.length === 0) return [];
  const more = hungry.length - NAMED;
  const named = hungry.slice(0, NAMED).map(({ name }) => name);
  const names =
    more > 0
      ? `${named.join(", ")} and ${more === 1 ? "1 more kind" : `${more} more kinds`}`
      : named.join(" and ");
  return [
    {
      id: "hungry",
      urgency: "this_week",
      weight: 50,
      about: "hungry",
      do: [`Feed the ${names} by hand, or give some away.`],
      why: hungry
        .slice(0, 3)
        .map(
          ({ name, dry_feed_mg_per_day, figures }): Sentence => [
            `For the ${name} this tank grows too little. Missing for all of them together: about `,
            told(dryFood(dry_feed_mg_per_day), figures.dry_feed),
            " of dry food a day.",
          ],
        ),
      byWhen: ["This week, and until fewer live there or more grows."],
      by: null,
      wouldChange: ["A head count: fewer than told, and there may be enough."],
      restsOn: hungry
        .map(({ id }) => id)
        .sort()
        .join(" "),
      act: { words: "See the larder", leads: "larder" },
      wait: { words: "Wait: count them first", leads: "questions" },
    },
  ];
}

/** The shelf with most left over once the plan has all come: today, with fewer mouths, it is more. */
export function handWorkAdvice({ kind, left_to_hand }: WavesOutput, today: string): readonly Advice[] {
  const [most] = left_to_hand.toSorted((a, b) => b.mg_c_per_day - a.mg_c_per_day);
  if (most === undefined) return [];
  const { shelf, mg_c_per_day, text, figure } = most;
  return [
    {
      id: `hand_work.${shelf}`,
      urgency: "next_visit",
      weight: 20,
      about: "hand_work",
      do: [`Do by hand what no crew eats down: ${SHELF_NAME[shelf as ShelfId] ?? shelf}.`],
      why: [
        [
          kind === "nothing_yet" ? "About " : "Even when the whole planned crew is there, about ",
          told(rationsADay(mg_c_per_day), figure),
          " of it are left.",
        ],
        [inFull(text)],
      ],
      byWhen: [`With the next water change, by ${dateWords(addDays(today, 7))} or so.`],
      by: null,
      restsOn: shelf,
      wouldChange: ["More mouths for it, once the plan brings them, or less food going in."],
      act: { words: "See the larder", leads: "larder" },
      wait: { words: "Wait: let it be for a week", leads: "ahead" },
    },
  ];
}
