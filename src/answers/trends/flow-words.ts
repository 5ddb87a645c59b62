/** What a tank's flows of one element say, in milligrams a day. */
import type { ElementFlows } from "../../contract/output/trends.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { plain, type Sentence, told } from "../sentence.ts";
import { chance } from "../words.ts";
import { two } from "./amounts.ts";

type Untold = Omit<ElementFlows, "title" | "sentences">;

/** Ways out that are named; the rest stand in the table. */
const WAYS_NAMED = 3;
/** Readings are noughts for half a day's supply: then the test's silence says nothing. */
const SHOWN_DAYS = 1;

export function flowSentences(flow: Untold): { title: string; sentences: Sentence[] } {
  const { element, name, comes_in_mg_per_day: comesIn, freed_mg_per_day: freed } = flow;
  const id = (what: string) => figureId.flow(element, what);
  const mg = (spread: Spread, what: string) =>
    told(`${two(spread.central)} mg ${element} a day (${two(spread.low)} to ${two(spread.high)})`, id(what));
  const most = told(chance(flow.algae_most_of_20), id("algae_most"));
  const take: Sentence =
    flow.algae_take_mg_per_day.central > 0
      ? [
          "Algae take up ",
          mg(flow.algae_take_mg_per_day, "algae_take"),
          " of it; that is more than half: ",
          most,
          ".",
        ]
      : ["Algae give back about as much as they take up; that they take more than half: ", most, "."];
  const sentences: Sentence[] = [
    ["About ", mg(comesIn, "comes_in"), ` come in, less what fish keep.`],
    ["With what the tank's own waste gives back, about ", mg(freed, "freed"), " are freed into the water."],
    take,
    leaves(flow),
    hidden(flow),
  ];
  const title =
    flow.algae_most_of_20 >= 13
      ? `Algae take most of the ${name} that is freed into the water: ${chance(flow.algae_most_of_20)}`
      : `About ${two(comesIn.central)} mg of ${name} a day come in; algae take up ${two(Math.max(0, flow.algae_take_mg_per_day.central))} mg`;
  return { title: plain([title]), sentences };
}

function leaves({ element, out }: Untold): Sentence {
  const named = [...out]
    .filter(({ mg_per_day }) => mg_per_day.central > 0)
    .sort((a, b) => b.mg_per_day.central - a.mg_per_day.central)
    .slice(0, WAYS_NAMED);
  if (named.length === 0) return ["Next to nothing of it leaves the tank."];
  return [
    "Of what leaves, most is ",
    ...named.flatMap(
      ({ label, mg_per_day, figure }, i): Sentence => [
        i === 0 ? "" : i === named.length - 1 ? ", and " : ", ",
        told(`${two(mg_per_day.central)} mg ${element}`, figure),
        ` a day ${label}`,
      ],
    ),
    ".",
  ];
}

function hidden({ element, dissolved_mg: dissolved, passes_hours: hours, step_mg: step }: Untold): Sentence {
  const id = (what: string) => figureId.flow(element, what);
  const holds: Sentence = [
    "All the water holds ",
    told(`${two(dissolved.central)} mg ${element}`, id("dissolved")),
  ];
  const days = hours.central / 24;
  const passes = told(
    days < 2 ? `about ${two(hours.central)} hours` : `about ${two(days)} days`,
    id("passes"),
  );
  if (step !== null)
    return [
      ...holds,
      ": what is freed stays dissolved for ",
      passes,
      `. The test can't tell less than ${two(step)} mg ${element} in this water from none, so it reads nought while that much passes by.`,
    ];
  return days < SHOWN_DAYS
    ? [
        ...holds,
        ": what is freed stays dissolved for ",
        passes,
        ", so a low reading says little of how much passes by.",
      ]
    : [...holds, ", as much as is freed in ", passes, "."];
}
