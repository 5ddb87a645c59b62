/**
 * What a plan says beside its waves, as figures: food by hand, work left to the keeper, wishes, cuts, what would change
 * it. docs/model/stocking.md.
 */
import type { FigureScene } from "../larder/figures.ts";
import type { Figure, Working } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, factInput, linkTo, parametersOf, round3, workedOut } from "../types/link.ts";
import { SHELF_NAME } from "../types/shelf.ts";
import { DRY_FEED_CARBON } from "./fed-by-hand.ts";
import { hungerFigures } from "./hunger-figures.ts";
import type { Plan } from "./plan-shape.ts";
import { daysBetween } from "./suitability.ts";
import { changingOf, eatersOf, todayInput } from "./wave-supply-figures.ts";

const UNIT = "mg C/d";

export function besideFigures(plan: Plan, scene: FigureScene, need: (id: string) => Figure | null): Figure[] {
  return [
    ...hungerFigures(plan, scene, need),
    ...handWorkFigures(plan, scene),
    ...fedFigures(plan, scene, need),
    ...wishFigures(plan),
    ...changeFigures(plan),
    ...limitFigures(plan),
    ...(plan.lookAgain === null ? [] : [lookAgainFigure(plan.lookAgain, scene)]),
  ];
}

const plain = (key: string, formula: string): Pick<Working, "formulaKey" | "formula" | "parameters"> => ({
  ...{ formulaKey: `stocking.md#${key}`, formula, parameters: [] },
});

function handWorkFigures(plan: Plan, scene: FigureScene): Figure[] {
  const last = plan.drafts.at(-1);
  if (last === undefined) return [];
  return plan.handWork.map(({ shelf, leftMgC }): Figure => {
    const eaters = eatersOf(last, shelf);
    return {
      id: figureId.handWork(shelf),
      label: `${SHELF_NAME[shelf]}: left over once the last wave has come, middle run`,
      ...{ spread: exact(leftMgC), unit: UNIT },
      working: {
        ...plain("left-to-the-keepers-hands", "supply left to the crew less what the crew eats of it"),
        inputs: [
          workedOut("supply left to the crew that day", `${round3(last.supply.central[shelf])} ${UNIT}`),
          workedOut("eaten by the crew", `${round3(last.answer.eatenCentral[shelf])} ${UNIT}`),
          workedOut(
            "eaters",
            eaters
              .map(({ animal }) => `${last.answer.heads.get(animal.id)} ${animal.commonName}`)
              .join(", ") || "none",
          ),
          todayInput(shelf, scene),
        ],
        animals: eaters.map(({ animal }) => animal.id),
        ...{ confidence: "computed", wouldChange: changingOf(plan) },
      },
    };
  });
}

function fedFigures(plan: Plan, { table }: FigureScene, need: (id: string) => Figure | null): Figure[] {
  return plan.fedByHand.flatMap(({ animal, heads, mgC, dryFeedMg }): Figure[] => {
    const one = need(animal.id);
    const food: Figure = {
      id: figureId.fedByHand(animal.id),
      label: `${animal.commonName}: food to give by hand`,
      ...{ spread: exact(mgC), unit: UNIT },
      working: {
        ...plain(
          "food-by-hand",
          "food that all of them need less what they find on the shelves, on the leanest of the waves' days",
        ),
        inputs: [
          workedOut("heads by the last wave", `${heads} heads`),
          ...(one === null ? [] : [linkTo(one, "food one needs")]),
        ],
        animals: [animal.id],
        ...{ confidence: "computed", wouldChange: ["a head count", ...changingOf(plan).slice(0, 1)] },
      },
    };
    const dry: Figure = {
      id: figureId.dryFeed(animal.id),
      label: `${animal.commonName}: the same in dry feed`,
      ...{ spread: exact(dryFeedMg), unit: "mg/d" },
      working: {
        ...plain(
          "food-by-hand",
          `food to give by hand / carbon in dry feed, ${DRY_FEED_CARBON} of its weight`,
        ),
        parameters: parametersOf(["feed.pellet.moisture"], table),
        inputs: [linkTo(food, "food to give by hand")],
        animals: [],
        ...{ confidence: "judgement", wouldChange: ["what the food holds", "a head count"] },
      },
    };
    return [food, dry];
  });
}

function wishFigures({ wishes }: Plan): Figure[] {
  return wishes
    .filter(({ status }) => status === "in_plan")
    .map(
      ({ animal, costs }): Figure => ({
        id: figureId.wishCost(animal.id),
        label: `${animal.commonName}: heads of others that the wish costs`,
        spread: exact(costs.reduce((all, { fewer }) => all + fewer, 0)),
        unit: "heads",
        working: {
          ...plain(
            "what-binds-what-a-limit-costs-what-would-change-it",
            "heads of the plan without the wish less heads with it, kinds that come in fewer heads added up",
          ),
          inputs:
            costs.length === 0
              ? [workedOut("kinds that come in fewer heads", "none")]
              : costs.map((cost) => workedOut(cost.animal.commonName, `${cost.fewer} fewer`)),
          animals: [animal.id, ...costs.map((cost) => cost.animal.id)],
          ...{ confidence: "judgement", wouldChange: ["your other wishes", "the larder"] },
        },
      }),
    );
}

const WEIGHING =
  "squared rank correlation, over the runs, of the fact with the whole larder on the last wave's day";

function changeFigures({ wouldChange }: Plan): Figure[] {
  return wouldChange.map(({ unknown, headsIfLow, headsIfHigh }): Figure => {
    const { fact, label, ask, weight, larderIfLow, larderIfHigh } = unknown;
    const isReading = fact.startsWith("no3") || fact.startsWith("po4");
    const heads = (value: number | null) => (value === null ? "not worked out" : `${value} heads`);
    return {
      id: figureId.wouldChange(fact),
      label: `${label}: share of the larder's spread that goes with it`,
      ...{ spread: exact(weight), unit: "of 1" },
      working: {
        ...plain("what-binds-what-a-limit-costs-what-would-change-it", WEIGHING),
        inputs: [
          workedOut("larder in the lowest third of its values", `${round3(larderIfLow)} ${UNIT}`),
          workedOut("larder in the highest third", `${round3(larderIfHigh)} ${UNIT}`),
          workedOut("crew in all in the lowest third", heads(headsIfLow)),
          workedOut("crew in all in the highest third", heads(headsIfHigh)),
          { label: isReading ? "a reading" : "the fact", value: `to settle it: ${ask}`, origin: "assumed" },
        ],
        animals: [],
        ...{ confidence: "computed", wouldChange: [ask] },
      },
    };
  });
}

function limitFigures({ limitCosts }: Plan): Figure[] {
  return limitCosts.map(
    ({ limit, text, heads, headsWithout, uneaten, uneatenWithout, changes }): Figure => ({
      id: figureId.limitCost(limit),
      label: `heads in all ${text}`,
      ...{ spread: exact(headsWithout), unit: "heads" },
      working: {
        ...plain(
          "what-binds-what-a-limit-costs-what-would-change-it",
          "all waves again with this one limit set aside, compared after the last",
        ),
        inputs: [
          workedOut("heads with the limit", `${heads} heads`),
          workedOut("left uneaten with it", `${round3(uneaten)} ${UNIT}`),
          workedOut("left uneaten without it", `${round3(uneatenWithout)} ${UNIT}`),
          workedOut("kinds that differ", changes.join(", ") || "none"),
        ],
        animals: [],
        ...{ confidence: "judgement", wouldChange: ["prices of heads and kinds", "the larder"] },
      },
    }),
  );
}

function lookAgainFigure(date: string, { facts }: FigureScene): Figure {
  return {
    id: figureId.lookAgain(),
    label: "days until it is worth looking again",
    ...{ spread: exact(daysBetween(facts.asOf, date)), unit: "d" },
    working: {
      ...plain("waves", "the first wave's day, two weeks at least: sooner nothing would have changed"),
      inputs: [
        { label: "plan's day", value: facts.asOf, origin: "stated" },
        workedOut("day to look again", date),
        factInput(facts, "ageDays", "age of the tank", "d"),
      ],
      animals: [],
      ...{ confidence: "judgement", wouldChange: ["film seen early", "the tank's age"] },
    },
  };
}
