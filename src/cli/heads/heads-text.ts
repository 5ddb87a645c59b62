/** Heads of a tank in lines of text: the sentences of the page, indented by what they belong to. */
import { seenOfFilm, topUpWhy } from "../../answers/heads/advice.ts";
import {
  earlierCountsWords,
  lastCountSentence,
  laterSentence,
  livingSentence,
  lossSentence,
  moreSeenSentence,
  surenessWords,
} from "../../answers/heads/words.ts";
import { plain } from "../../answers/sentence.ts";
import { counted, dateWords, dryFood, withDates } from "../../answers/words.ts";
import type { HeadsOutput, KindOutput } from "../../contract/output/heads.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";

export interface Line {
  readonly text: string;
  readonly indent: number;
}
const line = (text: string, indent = 0): Line => ({ text, indent });

export function headsLines(output: HeadsOutput): Line[] {
  const { kinds, not_followed: others } = output;
  if (kinds.length === 0) return [line("Nobody is on record yet. Log an addition: grazewell log --help")];
  return [
    ...kinds.flatMap(kindLines),
    ...orderLines(output),
    ...wayDownLines(output),
    ...others.map(({ name, why }) => line(`${name}: ${why}`)),
  ];
}

function kindLines(kind: KindOutput): Line[] {
  const counts = lastCountSentence(kind);
  const earlier = earlierCountsWords(kind);
  return [
    line(`${plain(livingSentence(kind))} ${surenessWords(kind)}.`),
    ...(kind.more_seen === null ? [] : [line(moreSeenSentence(kind.more_seen), 2)]),
    line(`${plain(lossSentence(kind))}${counts === null ? "" : ` ${counts}`}`, 2),
    ...(earlier === null ? [] : [line(earlier, 2)]),
    ...(kind.cast_shell_on === null
      ? []
      : [
          line(
            `Cast shell seen on ${dateWords(kind.cast_shell_on)}: no loss. Whoever moulted hides for up to ten days.`,
            2,
          ),
        ]),
    ...questionLines(kind),
    line(`What would settle it: ${kind.settles}`, 2),
    line(plain(laterSentence(kind)), 2),
  ];
}

function questionLines({ question }: KindOutput): Line[] {
  if (question === null) return [];
  return [
    line("More are missing than usual. A question, not a finding: up to one quiet tank in ten looks so.", 2),
    ...question.causes.slice(0, 5).map(({ name, for: speaks, against, tell }, i) => {
      const pro = speaks.length === 0 ? "nothing logged" : withDates(speaks.join("; "));
      const con = against.length === 0 ? "" : ` Against: ${withDates(against.join("; "))}.`;
      return line(`${i + 1}. ${name}. For: ${pro}.${con} ${tell}`, 4);
    }),
  ];
}

function orderLines({ orders, held_back: held }: HeadsOutput): Line[] {
  return [
    ...orders.map(({ worth, latest, items }) =>
      line(
        `${worth ? "Order" : "Wait with an order"}, latest ${dateWords(latest)}: ${items
          .map(({ count, name, why, shelf }) => `${counted(count, name)} (${topUpWhy(why, shelf)})`)
          .join(", ")}.`,
      ),
    ),
    ...held.map(({ name, why }) => line(`Not ordered now, ${name}: ${why}`)),
  ];
}

function wayDownLines(output: HeadsOutput): Line[] {
  const seen = seenOfFilm(output);
  return [
    ...(seen === null ? [] : [line(seen)]),
    ...output.way_down.map(({ name, heads, fed_share, dry_feed_mg_per_day, fewer, shelf }) =>
      line(
        `The way down: ${counted(heads, name)} ${heads === 1 ? "gets" : "get"} ${Math.round(100 * fed_share)} % of ${heads === 1 ? "its" : "their"} need (${shelfName(shelf)}). By hand ${dryFood(dry_feed_mg_per_day)} of dry food a day${fewer === 0 ? "" : `, or another home for ${fewer}`}.`,
      ),
    ),
  ];
}

const shelfName = (shelf: string | null): string =>
  shelf === null ? "all its shelves" : SHELF_NAME[shelf as ShelfId];
