/** What a day's portion of a food brings in nitrogen and phosphorus, and what it comes to in this water. */

import { readFeedAmount } from "../../contract/quantity/feeding.ts";
import { FOODS, type FoodKind } from "../../contract/tank-file/assumptions.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { linkTo, parametersOf, spreadText, workedOut } from "../../engine/types/link.ts";
import { nToNitrate, pToPhosphate } from "../../engine/units/nutrients.ts";
import { FOOD_CHOICES, FOOD_PARAMETERS } from "../feeding/foods.ts";
import { TABLE } from "../figures/table.ts";
import { product, quotient, roughly, scaled } from "../numbers-part.ts";
import { inputOf } from "./spread.ts";
import type { AmountField, ChoiceField, Sum } from "./sum.ts";
import { WATER } from "./tank-fields.ts";

const ID = "portion";

export const FOOD: ChoiceField = {
  ...{ name: "food", label: "Food", hint: "As it goes in.", input: "choice", usual: "dry_pellet" },
  choices: FOOD_CHOICES,
};

const AMOUNT: AmountField = {
  ...{
    name: "amount",
    label: "Given a day",
    hint: "Grams as fed, or a pinch; frozen food thawed and drained.",
  },
  ...{ input: "amount", empty: "needed", read: readFeedAmount, example: "0.2 g", units: ["g/day"] },
  fromTank: ({ facts: { feedGPerDay } }) =>
    feedGPerDay.origin === "assumed"
      ? null
      : { text: `${Number(feedGPerDay.central.toPrecision(3))} g/day`, how: feedGPerDay.how },
};

export const PORTION: Sum = {
  ...{ id: ID, group: "feeding", name: "A portion of food" },
  question: "How much nitrogen and phosphorus does this portion bring?",
  fields: [FOOD, AMOUNT, WATER],
  examples: [
    { food: "frozen_mysis", amount: "3 g", water: "180 L" },
    { food: "dry_pellet", amount: "0.2 g", water: "30 US gal" },
  ],
  work: (given) => {
    const food = given.choice("food") as FoodKind;
    const { label, n, p } = FOODS[food];
    const [amount, water] = [given.amount("amount"), given.amount("water")];
    const made = (name: string, words: string, spread: Spread, unit: string, rest: Rest): Figure => ({
      ...{ id: figureId.sum(ID, name), label: words, spread, unit },
      working: {
        ...{ formulaKey: "feeding.md#foods", animals: [], confidence: "judgement" },
        parameters: parametersOf(FOOD_PARAMETERS[food], TABLE),
        wouldChange: ["its weight: weigh ten portions at once", "the label's protein"],
        ...rest,
      },
    });
    const held = (element: string, per: Spread) => ({
      formula: `weight a day x ${element} in a gram`,
      inputs: [
        inputOf("given a day", amount),
        workedOut(`${element} in a gram of ${label}`, spreadText(per, "mg")),
      ],
    });
    const nitrogen = made("nitrogen", "nitrogen a day", product(amount, n), "mg N/d", held("nitrogen", n));
    const phosphorus = made(
      ...(["phosphorus", "phosphorus a day", product(amount, p), "mg P/d", held("phosphorus", p)] as const),
    );
    const rise = (name: string, ion: string, from: Figure, factor: number) =>
      made(name, `${ion} a day at most`, quotient(scaled(from.spread, factor), water), "mg/L", {
        formula: `${from.label.split(" ")[0]}, all as ${ion} / water`,
        inputs: [linkTo(from), inputOf("water", water)],
      });
    const nitrate = rise("nitrate", "nitrate", nitrogen, nToNitrate(1));
    const phosphate = rise("phosphate", "phosphate", phosphorus, pToPhosphate(1));
    return {
      kind: "answer",
      lead: ["It brings ", roughly(nitrogen), " and ", roughly(phosphorus), "."],
      rows: [
        { label: "Nitrogen", value: [roughly(nitrogen)] },
        { label: "Phosphorus", value: [roughly(phosphorus)] },
        { label: "Nitrate a day, if nothing took any out", value: [roughly(nitrate)] },
        { label: "Phosphate a day, if nothing took any out", value: [roughly(phosphate)] },
      ],
      ...{ tables: [], cautions: [] },
      notes: [
        "Fish keep a tenth or less of it; algae, crew, skimmer and water changes take the rest out, or it stays.",
      ],
      wouldChange: ["Its weight first: a pinch is 0.05 to 0.3 g."],
      figures: [nitrogen, phosphorus, nitrate, phosphate],
    };
  },
};

type Rest = Pick<Figure["working"], "formula" | "inputs">;
