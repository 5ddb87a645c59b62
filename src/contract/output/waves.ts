/** What `grazewell waves --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";

const figure = z.number();
const id = z.string().describe("key of the catalogue");
const date = z.iso.date();
export const spreadSchema = z.strictObject({ low: figure, central: figure, high: figure });
/** Key of a number's working: `grazewell working ID FILE`, or the page of that address. */
export const figureId = z.string().describe("id of the working");
const noFigure = figureId.nullable();
const perShelf = z.record(z.string(), figure).describe("shelf -> mg C a day");

export const wavesOutput = z.strictObject({
  schema: z.literal("grazewell.waves/1"),
  engine: z.string(),
  seed: z.int(),
  members: z.int(),
  tank: z.strictObject({
    name: z.string(),
    as_of: date,
    water_l: spreadSchema,
    age_days: spreadSchema,
    assumed: z.array(z.string()),
    unknown_animals: z.array(z.string()).describe("as typed; the plan does not reckon with them"),
    figures: z.strictObject({ water: figureId, age: figureId }),
  }),
  kind: z.enum(["waves", "nothing_yet"]),
  because: z.array(z.string()).describe("why nothing yet; empty where there are waves"),
  because_figures: z.array(noFigure).describe("of the number in each; null where it tells none"),
  look_again_on: date.nullable(),
  look_again_figure: noFigure,
  proven_optimal: z.boolean(),
  to_add: z
    .array(z.strictObject({ id, name: z.string(), count: z.int(), figure: figureId }))
    .describe("heads to add in all, over the waves"),
  waves: z.array(
    z.strictObject({
      number: z.int(),
      from: date,
      to: date,
      planned_share: figure,
      only_if: z.array(z.string()),
      sooner_if: z.string(),
      stop_if: z.string(),
      animals: z.array(
        z.strictObject({
          id,
          name: z.string(),
          count: z.int(),
          eats: z.array(z.string()),
          binding: z.strictObject({ kind: z.string(), text: z.string(), figure: noFigure }),
          cautions: z.array(z.string()),
          only_if: z.array(z.string()),
          spare_shells: z.int(),
          figures: z.strictObject({ count: figureId, spare_shells: noFigure }),
        }),
      ),
      supply_pessimistic_mg_c_per_day: perShelf.describe(
        "times the planned share, what grazing fish take taken off",
      ),
      supply_central_mg_c_per_day: perShelf,
      eaten_central_mg_c_per_day: perShelf,
      figures: z.strictObject({
        from: figureId,
        planned_share: figureId,
        shelves: z
          .record(z.string(), z.strictObject({ pessimistic: figureId, central: figureId, eaten: figureId }))
          .describe("shelf -> figures of the three amounts above"),
      }),
    }),
  ),
  residents: z
    .array(
      z.strictObject({
        id,
        name: z.string(),
        heads: z.int(),
        figure: figureId,
        warnings: z
          .array(
            z.strictObject({
              code: z.string(),
              text: z.string(),
              until: z.string().nullable().describe("what would lift it; null where nothing here will"),
              figure: noFigure,
            }),
          )
          .describe("what stands against keeping it here"),
      }),
    )
    .describe("kinds that live there already"),
  refused: z.array(
    z.strictObject({
      id,
      name: z.string(),
      status: z.enum(["not_yet", "never"]),
      reasons: z.array(z.string()),
      until: z.array(z.string()),
      codes: z.array(z.string()),
      figures: z.array(noFigure).describe("of the number in each reason; null where it tells none"),
    }),
  ),
  fits_but_not_needed: z.array(z.strictObject({ id, name: z.string(), why: z.string(), figure: noFigure })),
  left_to_hand: z.array(
    z.strictObject({ shelf: z.string(), mg_c_per_day: figure, text: z.string(), figure: figureId }),
  ),
  fed_by_hand: z.array(
    z.strictObject({
      id,
      name: z.string(),
      standing: z.enum(["resident", "wished", "planned"]),
      mg_c_per_day: figure,
      dry_feed_mg_per_day: figure,
      figures: z.strictObject({ food: figureId, dry_feed: figureId }),
    }),
  ),
  wishes: z.array(
    z.strictObject({
      id,
      name: z.string(),
      status: z.enum(["in_plan", "refused"]),
      costs: z.array(z.strictObject({ id, fewer: z.int() })),
      figure: noFigure.describe("of the costs; null where it is refused"),
    }),
  ),
  check: z
    .array(
      z.strictObject({
        id,
        heads: z.int(),
        resident: z.boolean(),
        day: z.int(),
        alive_of_20: z.int(),
        aged_of_20: z.int(),
        condition: figure.nullable(),
        explained: z.string().nullable(),
        figures: z.strictObject({ alive: figureId, aged: figureId, condition: noFigure }),
      }),
    )
    .describe("each kind, 90 days after its last arrival"),
  mends: z
    .array(z.strictObject({ id, from: z.int(), to: z.int(), fed_of_20: z.int(), figure: figureId }))
    .describe("numbers cut because the forecast starved them"),
  would_change: z.array(
    z.strictObject({
      fact: z.string(),
      label: z.string(),
      ask: z.string(),
      weight: figure,
      larder_if_low_mg_c_per_day: figure,
      larder_if_high_mg_c_per_day: figure,
      heads_if_low: z.int().nullable(),
      heads_if_high: z.int().nullable(),
      figure: figureId,
    }),
  ),
  limit_costs: z.array(
    z.strictObject({
      limit: z.string(),
      text: z.string(),
      heads: z.int(),
      heads_without: z.int(),
      uneaten_mg_c_per_day: figure,
      uneaten_without_mg_c_per_day: figure,
      changes: z.array(z.string()),
      figure: figureId,
    }),
  ),
  what_if: z
    .strictObject({
      changes: z.array(z.string()),
      today: z.strictObject({
        kind: z.enum(["waves", "nothing_yet"]),
        animals: z
          .array(z.strictObject({ id, count: z.int(), figure: figureId }))
          .describe("to add in all, without the changes"),
      }),
    })
    .nullable()
    .describe("what was changed, and the plan as the tank is today beside it"),
  statement: z.string(),
});

export type WavesOutput = z.infer<typeof wavesOutput>;
