/**
 * Nitrogen and phosphorus in milligrams a day, so that "tests read nought while algae grow" is explained: what comes in,
 * what is freed into the water, what algae take, what leaves, and how little of it a test can show. Twenty members run
 * for four weeks: slow work, for the engine's thread. docs/model/trends.md#flows
 */
import { animals } from "../../catalogue/index.ts";
import type { ElementFlows, FlowsOutput } from "../../contract/output/trends.ts";
import { latestReading } from "../../engine/larder/members.ts";
import { bandOf } from "../../engine/numeric/quantile.ts";
import { kindsOf } from "../../engine/stocking/check.ts";
import { companyOf } from "../../engine/stocking/waves.ts";
import {
  FLOW_DAYS,
  type FlowElement,
  flowsOf,
  type MemberFlows,
  STAYS,
  WAYS_IN,
  WAYS_OUT,
} from "../../engine/trends/flows.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { withConfidence } from "../figures/confidence.ts";
import { type EnsembleChoice, membersOf } from "../plan/plan-tank.ts";
import type { Said } from "../record-scene.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { flowFigures } from "./flow-figures.ts";
import { flowSentences } from "./flow-words.ts";

/** As many as grains: each member is a run. */
const FLOW_CHOICE: EnsembleChoice = { members: 20, seed: 1 };
/** Less than this share of what comes in is not worth a row. */
const WORTH_A_ROW = 0.005;

const NAMES: Readonly<Record<FlowElement, string>> = { N: "nitrogen", P: "phosphorus" };
const WAY_LABELS = {
  feed: "with the feed",
  fish: "that fish put on (less) or live off (more)",
  new_water: "with new water",
  the_dead: "from bodies of the crew",
  other: "fixed from gas, or with cells that settle",
  gas: "turned to gas in rock and sand, or lost in ways nobody told",
  rock: "bound by rock and sand",
  sorbent: "bound by a sorbent, or lost in ways nobody told",
  skimmer: "by the skimmer",
  filter: "with the filter's dirt",
  water_change: "with water changes",
  by_hand: "wiped off, pulled or siphoned out",
  algae: "in algae that grow",
  waste: "in waste, feed and detritus",
  water: "dissolved in the water",
} as const;

export function flowsFor(facts: TankFacts, choice: EnsembleChoice = FLOW_CHOICE): Said<FlowsOutput> {
  const kinds = kindsOf(companyOf(facts, animals), [], animals).filter(({ residents }) => residents > 0);
  const flows = flowsOf({ facts, members: membersOf(facts, choice), kinds });
  const elements = (["N", "P"] as const).map((element) => elementOf(element, flows[element], facts));
  return {
    output: {
      ...{ schema: "grazewell.flows/1", engine: ENGINE_VERSION, seed: choice.seed, members: choice.members },
      ...{ learned: facts.learned !== undefined, days: FLOW_DAYS },
      tank: { name: facts.name, as_of: facts.asOf },
      ...{ elements, statement: STATEMENT },
    },
    figures: withConfidence(elements.flatMap((flow): Figure[] => flowFigures(flow, facts, choice))),
    advice: [],
  };
}

const HOURS_A_DAY = 24;

function elementOf(element: FlowElement, members: readonly MemberFlows[], facts: TankFacts): ElementFlows {
  const band = (of: (flows: MemberFlows) => number): Spread => rounded(bandOf(members.map(of)));
  const sum = (of: Readonly<Record<string, number>>) => Object.values(of).reduce((all, one) => all + one, 0);
  const comesIn = band((flows) => sum(flows.in));
  const least = WORTH_A_ROW * Math.max(Math.abs(comesIn.central), 1e-6);
  const rows = <Way extends keyof typeof WAY_LABELS>(
    ways: readonly Way[],
    of: (flows: MemberFlows) => Readonly<Record<Way, number>>,
  ) =>
    ways.flatMap((way) => {
      const mg = band((flows) => of(flows)[way]);
      if (Math.max(Math.abs(mg.low), Math.abs(mg.high)) < least) return [];
      return [{ id: way, label: WAY_LABELS[way], mg_per_day: mg, figure: figureId.flow(element, way) }];
    });
  const most = members.filter(({ freed, algaeTake }) => algaeTake > freed / 2).length;
  const untold = {
    ...{ element, name: NAMES[element] },
    in: rows(WAYS_IN, (flows) => flows.in),
    out: rows(WAYS_OUT, (flows) => flows.out),
    stays: rows(STAYS, (flows) => flows.stays),
    comes_in_mg_per_day: comesIn,
    freed_mg_per_day: band(({ freed }) => freed),
    algae_take_mg_per_day: band(({ algaeTake }) => algaeTake),
    algae_most_of_20: Math.round((most / members.length) * 20),
    dissolved_mg: band(({ dissolvedMg }) => dissolvedMg),
    step_mg: stepOf(element, facts),
    passes_hours: band(({ dissolvedMg, freed }) => (freed > 0 ? (HOURS_A_DAY * dissolvedMg) / freed : 0)),
  };
  const { title, sentences } = flowSentences(untold);
  return { ...untold, title, sentences: sentences.map((sentence) => [...sentence]) };
}

/** What the latest test could not tell from nothing, in all the water. */
function stepOf(element: FlowElement, facts: TankFacts): number | null {
  const reading = latestReading(facts.readings, element === "N" ? "no3_mg_n_per_l" : "po4_mg_p_per_l");
  if (reading?.censored !== "below") return null;
  return Number((reading.value.high * facts.waterL.central).toPrecision(3));
}

const rounded = ({ low, central, high }: Spread): Spread => {
  const five = (value: number) => Number(value.toPrecision(5));
  return { low: five(low), central: five(central), high: five(high) };
};
