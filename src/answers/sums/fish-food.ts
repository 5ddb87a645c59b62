/** Food for fish of a weight: what keeps them, what is usual, the most; in the food that is given. */
import { readPlain } from "../../contract/quantity/plain.ts";
import { FEED_PER_FISH, FOODS, type FoodKind } from "../../contract/tank-file/assumptions.ts";
import { warmer } from "../../engine/care/feeding/feed.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { parametersOf, spreadText, workedOut } from "../../engine/types/link.ts";
import { FOOD_PARAMETERS } from "../feeding/foods.ts";
import { TABLE } from "../figures/table.ts";
import { parameter, product, roughly, scaled } from "../numbers-part.ts";
import { FOOD } from "./portion.ts";
import { inputOf } from "./spread.ts";
import type { AmountField, Sum } from "./sum.ts";
import { factOf, TEMPERATURE } from "./tank-fields.ts";

const ID = "fish-food";

const FISH: AmountField = {
  ...{ name: "fish", label: "Weight of all fish", input: "amount", empty: "needed" },
  hint: "A fish of 5 cm weighs about 2 g, of 10 cm about 16 g.",
  read: (text, context) => readPlain("mass_g", text, context),
  ...{ example: "30 g", units: ["g", "oz"] },
  fromTank: factOf(({ facts }) => facts.fishWetG, "g"),
};

export const FISH_FOOD: Sum = {
  ...{ id: ID, group: "feeding", name: "Food for fish" },
  question: "How much food do fish of this weight need a day?",
  fields: [FISH, FOOD, TEMPERATURE],
  examples: [
    { fish: "30 g", food: "frozen_mysis", temperature: "25 C" },
    { fish: "4 oz", temperature: "79 F" },
  ],
  work: (given) => {
    const [fish, temperature] = [given.amount("fish"), given.amount("temperature")];
    const food = given.choice("food") as FoodKind;
    const heat = warmer(parameter("gas.fish_Q10").central, temperature.central);
    const dry = FOODS.dry_pellet.c.central;
    const { c, label } = FOODS[food];
    // As much carbon as the dry food would bring.
    const inFood = (grams: Spread): Spread => scaled(grams, dry / c.central);
    const made = (
      name: string,
      words: string,
      grams: Spread,
      per: string,
      ids: readonly string[],
    ): Figure => ({
      ...{ id: figureId.sum(ID, name), label: words, spread: inFood(grams), unit: "g/d" },
      working: {
        ...{ formulaKey: "feeding.md#what-fish-need", animals: [], confidence: "judgement" },
        formula: `weight of the fish x ${per}, as ${label} of the same carbon`,
        inputs: [
          inputOf("weight of all fish", fish),
          inputOf("temperature", temperature),
          workedOut(
            "warmth, against 25 C",
            `x ${heat.toFixed(2)}${name === "upkeep" ? "" : ": for upkeep alone"}`,
          ),
          workedOut(`carbon in a gram of ${label}`, spreadText(c, "mg")),
        ],
        parameters: parametersOf([...ids, ...FOOD_PARAMETERS[food]], TABLE),
        wouldChange: ["the weight of the fish", "the kind of food"],
      },
    });
    const upkeep = made(
      ...(["upkeep", "food that keeps them their weight"] as const),
      scaled(product(fish, parameter("maintFeed")), heat),
      ...(["food for upkeep of a gram x warmth", ["maintFeed", "gas.fish_Q10"]] as const),
    );
    const usual = made(
      ...(["usual", "food that is commonly given"] as const),
      product(fish, FEED_PER_FISH),
      ...(["0.025 g (0.01 to 0.06) of dry food a gram: common practice, no source", []] as const),
    );
    const most = made(
      ...(["most", "the most that they can take"] as const),
      product(fish, parameter("rationMax")),
      ...(["largest ration of a gram", ["rationMax"]] as const),
    );
    return {
      kind: "answer",
      lead: [roughly(upkeep), ` of ${label} a day keeps these fish their weight.`],
      rows: [
        { label: "Keeps them their weight", value: [roughly(upkeep)] },
        { label: "Commonly given", value: [roughly(usual)] },
        { label: "The most that they can take", value: [roughly(most)] },
      ],
      ...{ tables: [], cautions: [] },
      notes: [
        "Young fish and those that peck all day need more, in more meals. What is left after two minutes was too much.",
      ],
      wouldChange: ["The weight of the fish: length says more than a guess."],
      figures: [upkeep, usual, most],
    };
  },
};
