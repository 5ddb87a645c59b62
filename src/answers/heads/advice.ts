/** What the heads ask for: a count, a question about losses, an order, the way down. Ranked with all other advice elsewhere. */
import type { HeadsOutput, KindOutput } from "../../contract/output/heads.ts";
import { addDays, daysBetween } from "../../engine/stocking/suitability.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import type { Advice } from "../advice.ts";
import { type Sentence, told } from "../sentence.ts";
import { counted, dateWords, dryFood } from "../words.ts";
import { bandWords, lossSentence, moreSeenSentence } from "./words.ts";

export function headsAdvice(output: HeadsOutput, today: string): Advice[] {
  const { kinds } = output;
  return [
    ...kinds.flatMap((kind) => (kind.question === null ? [] : [lossesAdvice(kind, kind.question, today)])),
    ...kinds.flatMap((kind) => (kind.more_seen === null ? [] : [moreSeenAdvice(kind, kind.more_seen)])),
    ...output.way_down.map((row) => wayDownAdvice(row, output, today)),
    ...orderAdvice(output, today),
    ...countAdvice(kinds, today),
  ];
}

function lossesAdvice(
  kind: KindOutput,
  question: NonNullable<KindOutput["question"]>,
  today: string,
): Advice {
  const { id, name } = kind;
  const [first, second] = question.causes;
  const by = addDays(today, 7);
  return {
    ...{ id: `heads.${id}.losses`, urgency: "this_week", weight: 72, about: "heads" },
    do: [`Find out why ${counted(2, name).slice(2)} go missing: the likeliest first.`],
    why: [
      lossSentence(kind),
      [
        "The record fits trouble of their own ",
        told(`${times(question.ratio)} times better`, kind.figures.ratio ?? kind.figures.now),
        " than the loss that is usual; one quiet tank in ten, or fewer, looks so.",
      ],
      ...(first === undefined
        ? []
        : [
            [
              `Likeliest by what is logged: ${lower(first.name)}${second === undefined ? "" : `, then ${lower(second.name)}`}. ${first.tell}`,
            ] as Sentence,
          ]),
    ],
    byWhen: [`By ${dateWords(by)}; today if a third kind ails.`],
    by,
    wouldChange: ["A count by torch that finds them, or a cause that is found and over."],
    act: { words: "See what speaks for what", leads: "heads" },
    wait: { words: "Wait, and count again in a week", leads: "heads" },
  };
}

const lower = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);
const times = (ratio: number): string => (ratio >= 1000 ? "over 1000" : `${Number(ratio.toPrecision(2))}`);

function moreSeenAdvice(kind: KindOutput, more: NonNullable<KindOutput["more_seen"]>): Advice {
  const { id, name } = kind;
  return {
    ...{ id: `heads.${id}.more_seen`, urgency: "next_visit", weight: 30, about: "heads" },
    do: [`Say where the further ${counted(2, name).slice(2)} come from.`],
    why: [[moreSeenSentence(more)]],
    ...{ byWhen: ["When you next log something."], by: null },
    wouldChange: ["An addition logged with its day, or another count."],
    act: { words: "Log it in the daybook", leads: "daybook" },
    wait: { words: "Leave it until the next count", leads: "heads" },
  };
}

function wayDownAdvice(row: HeadsOutput["way_down"][number], output: HeadsOutput, today: string): Advice {
  const { id, name, heads, shelf, fewer, figures } = row;
  const by = addDays(today, 7);
  const food = told(`${dryFood(row.dry_feed_mg_per_day)} of dry food a day`, figures.food);
  const seen = seenOfFilm(output);
  return {
    ...{ id: `way_down.${id}`, urgency: "this_week", weight: 64, about: "way_down" },
    do:
      fewer === 0
        ? [`Feed ${counted(heads, name)} by hand: `, food, "."]
        : [
            `Feed ${counted(heads, name)} by hand, `,
            food,
            ", or rehome ",
            told(`${fewer}`, figures.fewer),
            ".",
          ],
    why: [
      [
        shelf === null
          ? "The shelves give them "
          : `${capital(SHELF_NAME[shelf as ShelfId])} falls short: they get `,
        told(`${Math.round(100 * row.fed_share)} % of their need`, figures.fed),
        ".",
      ],
      ...(seen === null ? [] : [[seen] as Sentence]),
      ["A shop, another keeper or another tank takes them; never the wild, not even the sea they came from."],
    ],
    byWhen: [`By ${dateWords(by)}: they live on reserves for some weeks.`],
    by,
    wouldChange: ["Film that comes back on its own, or fewer heads at the next count."],
    act: { words: "See the way down", leads: "heads" },
    wait: { words: "Wait, and look at the glass in three days", leads: "growths" },
  };
}

export function seenOfFilm({ bare_glass_days: bare, film_slower: slower }: HeadsOutput): string | null {
  if (bare !== null) return `The glass has been seen bare for ${counted(bare, "day")}.`;
  if (slower === null) return null;
  return `Film took ${counted(slower.days, "day")} to come back on ${dateWords(slower.on)}; usual here are ${slower.usual_days}.`;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Kinds that fit into one sentence. */
const MOST_NAMED = 2;

type Item = HeadsOutput["orders"][number]["items"][number];

/** Why an order asks for them: "film on glass is running short of mouths". */
export function topUpWhy(why: Item["why"], shelf: string | null): string {
  if (why === "group") return "fewer are left than their kind wants for company";
  const name = shelf === null ? "a shelf" : SHELF_NAME[shelf as ShelfId];
  return why === "growth"
    ? `${name} is thick again since they became fewer`
    : `${name} is running short of mouths`;
}

function orderAdvice({ orders }: HeadsOutput, today: string): Advice[] {
  const order = orders[0];
  if (order === undefined || !order.worth) return [];
  const near = daysBetween(today, order.latest) <= 7;
  const list = order.items.flatMap(
    ({ name, count, figure }, i): Sentence => [
      i === 0 ? "" : i === order.items.length - 1 ? " and " : ", ",
      told(counted(count, name), figure),
    ],
  );
  return [
    {
      id: `top_up.${order.items
        .map(({ id }) => id)
        .toSorted()
        .join("+")}`,
      ...{ urgency: near ? "this_week" : "next_visit", weight: near ? 50 : 35, about: "top_up" },
      do:
        order.items.length <= MOST_NAMED
          ? ["Order ", ...list, " together."]
          : [`Order heads of ${order.items.length} kinds together, as listed.`],
      why: [
        ...order.items.map(
          ({ name, count, why, shelf, figure }): Sentence => [
            told(counted(count, name), figure),
            `: ${topUpWhy(why, shelf)}.`,
          ],
        ),
        ["The larder feeds that many more in 15 of 20 runs."],
      ],
      byWhen: [`By ${dateWords(order.latest)}.`],
      by: order.latest,
      wouldChange: ["A count by torch that finds more of them alive, or shelves that grow less."],
      act: { words: "See the orders", leads: "heads" },
      wait: { words: "Wait for a larger order", leads: "heads" },
    },
  ];
}

/** Asked at once: more would be a chore, not a question. */
const MOST_COUNTS = 3;
const COUNTED_LATELY = 21;
/** Heads that a band may be wide before a count is worth its evening. */
const WIDE = 2;

function countAdvice(kinds: readonly KindOutput[], today: string): Advice[] {
  const width = ({ living }: KindOutput): number => living.high - living.low;
  const lately = ({ last_count: last }: KindOutput): boolean =>
    last !== null && last.says === "so_many" && daysBetween(last.on, today) < COUNTED_LATELY;
  return kinds
    .filter((kind) => width(kind) >= WIDE && !lately(kind))
    .toSorted((a, b) => width(b) - width(a))
    .slice(0, MOST_COUNTS)
    .map(
      (kind): Advice => ({
        ...{ id: `heads.${kind.id}.count`, urgency: "next_visit", weight: 20 + Math.min(10, width(kind)) },
        about: "heads",
        do: [`Count the ${counted(2, kind.name).slice(2)} ${kind.seen.way}.`],
        why: [
          [
            "By what is logged ",
            told(bandWords(kind.living), kind.figures.now),
            " of them may live. In such a count each is seen with a chance of ",
            told(`${Math.round(100 * kind.seen.chance.central)} %`, kind.figures.seen),
            ".",
          ],
        ],
        ...{ byWhen: ["When you next have a quiet evening."], by: null },
        wouldChange: ["A count: two nights tell more than one."],
        act: { words: "Log a head count", leads: "daybook" },
        wait: { words: "Leave it: nothing hangs on it today", leads: "heads" },
      }),
    );
}
