/** What `grazewell heads --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId, spreadSchema } from "./waves.ts";

const heads = z.int().min(0);
const band = z
  .strictObject({ low: heads, likely: heads, high: heads })
  .describe("likeliest number, and the numbers that hold nine tenths of the chances");

const cause = z.strictObject({
  id: z.string(),
  name: z.string(),
  for: z.array(z.string()).describe("what the record speaks for it"),
  against: z.array(z.string()),
  tell: z.string().describe("what would tell it from the others"),
});

const kind = z.strictObject({
  id: z.string(),
  name: z.string(),
  group: z.string(),
  came: heads.describe("all that ever came"),
  on_record: heads.describe("came, less those found dead or moved out"),
  lost_found: heads,
  lost_feared: heads,
  moved_out: heads,
  living: band,
  living_of_20: z.array(heads).length(20).describe("twenty equally likely numbers of heads, the least first"),
  by_age_alone: band.describe("what the catalogue's loss and age would have left, nothing seen"),
  later: z.array(band.extend({ weeks: z.int(), figure: figureId })),
  loss_per_year: spreadSchema.describe(
    "share lost in a year while no trouble is about, as the record leaves it",
  ),
  known: z
    .strictObject({
      share_at_90_days: z.number(),
      low: z.number().nullable(),
      high: z.number().nullable(),
      deaths: heads,
      head_days: z.number(),
    })
    .nullable()
    .describe("of heads whose end is known alone: at least so much was lost"),
  seen: z
    .strictObject({ chance: spreadSchema, way: z.string() })
    .describe("chance that a living head is seen, counted in the way that shows most"),
  last_count: z
    .strictObject({
      on: z.iso.date(),
      seen: heads,
      says: z.enum(["so_many", "at_least"]).describe("at_least: what was not seen says nothing"),
      why: z.string().nullable(),
    })
    .nullable(),
  counts: z
    .array(
      z.strictObject({
        on: z.iso.date(),
        seen: heads,
        of: heads.describe("on record that day"),
        says: z.enum(["so_many", "at_least"]),
      }),
    )
    .describe("the latest twelve counts, the latest first"),
  settles: z.string().describe("what would settle it"),
  more_seen: z
    .strictObject({ on: z.iso.date(), seen: heads, on_record: heads, breeds: z.boolean() })
    .nullable()
    .describe("a count that saw more than the record has"),
  cast_shell_on: z.iso.date().nullable(),
  question: z
    .strictObject({
      ratio: z.number().describe("how many times better trouble foretells the record than its absence"),
      asked_from: z.number(),
      last_spoke_on: z.iso.date(),
      causes: z.array(cause).describe("the likeliest first"),
    })
    .nullable()
    .describe("more died than usually do"),
  fed: z
    .strictObject({
      share: spreadSchema.describe("of its need that the shelves give"),
      short_of_20: z.int().min(0).max(20),
      scarcest_shelf: z.string().nullable(),
    })
    .nullable(),
  figures: z.strictObject({
    came: figureId,
    now: figureId,
    by_age: figureId,
    loss: figureId,
    seen: figureId,
    known: figureId.nullable(),
    ratio: figureId.nullable(),
    fed: figureId.nullable(),
  }),
});

export const headsOutput = z.strictObject({
  schema: z.literal("grazewell.heads/1"),
  engine: z.string(),
  tank: z.strictObject({ name: z.string(), as_of: z.iso.date() }),
  kinds: z.array(kind),
  not_followed: z.array(z.strictObject({ id: z.string(), name: z.string(), why: z.string() })),
  orders: z
    .array(
      z.strictObject({
        latest: z.iso.date(),
        worth: z.boolean().describe("worth sending now; else it waits for more, or for its day"),
        heads,
        items: z.array(
          z.strictObject({
            id: z.string(),
            name: z.string(),
            count: heads,
            why: z.enum(["group", "growth", "shelf"]),
            shelf: z.string().nullable(),
            latest: z.iso.date(),
            figure: figureId,
          }),
        ),
      }),
    )
    .describe("topping up, the first one first"),
  held_back: z.array(z.strictObject({ id: z.string(), name: z.string(), why: z.string() })),
  growths_back: z.array(z.strictObject({ growth: z.string(), score: z.int(), on: z.iso.date() })),
  bare_glass_days: z.int().nullable(),
  film_slower: z.strictObject({ days: z.number(), usual_days: z.number(), on: z.iso.date() }).nullable(),
  way_down: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      heads,
      shelf: z.string().nullable(),
      fed_share: z.number(),
      short_of_20: z.int(),
      dry_feed_mg_per_day: z.number(),
      fewer: heads.describe("or so many heads less"),
      figures: z.strictObject({ food: figureId, fewer: figureId, fed: figureId }),
    }),
  ),
  statement: z.string(),
});

export type HeadsOutput = z.infer<typeof headsOutput>;
export type KindOutput = HeadsOutput["kinds"][number];
