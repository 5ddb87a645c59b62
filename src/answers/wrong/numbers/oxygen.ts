/**
 * Hours of oxygen with the pumps off, from the runs of the weeks ahead: figures that go with the engine's answers, and
 * the part that shows them once they are there.
 */

import type { Forecast } from "../../../engine/ahead/forecast.ts";
import { ofTwenty } from "../../../engine/ahead/forecast.ts";
import { hoursOfOxygen, LONGEST_HOURS } from "../../../engine/care/trouble/still-water.ts";
import type { Member } from "../../../engine/larder/members.ts";
import { bandOf } from "../../../engine/numeric/quantile.ts";
import type { Figure } from "../../../engine/types/figure.ts";
import { figureId } from "../../../engine/types/figure-id.ts";
import { exact, factInput, linkTo, workedOut } from "../../../engine/types/link.ts";
import type { TankFacts } from "../../../engine/types/tank.ts";
import { told } from "../../sentence.ts";
import type { TankAnswers } from "../../tank-answers.ts";
import { chance } from "../../words.ts";
import { type NumbersPart, parameter, troubleFigure } from "./shape.ts";

const WITHIN_HOURS = [2, 4, 8, 12, 24] as const;
const HOURS = "pumps_off.hours";
export const HOURS_FIGURE = figureId.care("wrong", HOURS);
const within = (hours: number): string => `pumps_off.within_${hours}`;

export function oxygenFigures(
  forecast: Forecast,
  members: readonly Member[],
  facts: TankFacts,
  dawn: Figure | undefined,
): Figure[] {
  if (forecast.dawnOxygen === null || dawn === undefined) return [];
  const alarm = parameter("tox.O2_alarm").central;
  const hours = hoursOfOxygen(forecast.dawnOxygen, members, alarm);
  if (hours.length === 0) return [];
  const figure = troubleFigure(HOURS, {
    ...{ label: "hours of oxygen with all pumps off", spread: bandOf(hours), unit: "h", at: "still-water" },
    formula: `ln((at dawn - L) / (alarm - L)) / still surface, L = what it settles at; ${LONGEST_HOURS} h at most`,
    inputs: [
      linkTo(dawn, "oxygen at dawn, pumps on"),
      workedOut("alarm", `${alarm} mg/L`),
      workedOut("exchange of a still surface", "0.02 to 0.1 an hour, tall and narrow to shallow and wide"),
      factInput(facts, "waterL", "water", "L"),
      factInput(facts, "fishWetG", "fish", "g wet"),
      factInput(facts, "feedGPerDay", "feed", "g/d"),
      factInput(facts, "temperatureC", "temperature", "C"),
      workedOut("runs", String(hours.length)),
    ],
    parameters: ["tox.O2_alarm", "gas.kLa_tank", "gas.fish_routine", "gas.fish_Q10"],
    ...{ confidence: "judgement", wouldChange: ["the weight of the fish", "an air stone on a battery"] },
  });
  return [
    figure,
    ...WITHIN_HOURS.map((limit) =>
      troubleFigure(within(limit), {
        ...{ label: `runs of 20 in which oxygen is at the alarm within ${limit} hours`, unit: "of 20" },
        spread: exact(ofTwenty(hours.filter((one) => one <= limit).length / hours.length)),
        ...{ at: "still-water", formula: "runs with so many hours or fewer, out of all, in twentieths" },
        inputs: [linkTo(figure), workedOut("runs", String(hours.length))],
        ...{ confidence: "judgement", wouldChange: ["the weight of the fish", "the water's warmth"] },
      }),
    ),
  ];
}

/** Null where the answers have none: a tank that holds no water yet. */
export function oxygenPart({ workings }: Pick<TankAnswers, "workings">): NumbersPart | null {
  const hours = workings[HOURS_FIGURE];
  if (hours === undefined) return null;
  const { low, central, high } = hours.value;
  const most = (value: number) => (value >= LONGEST_HOURS ? `${LONGEST_HOURS} or more` : String(tidy(value)));
  return {
    title: "Oxygen with all pumps off",
    rows: [
      {
        label: "Hours until oxygen is at the alarm",
        value: [told(`${most(central)} h (${most(low)} to ${most(high)})`, hours.id)],
      },
    ],
    tables: [
      {
        title: "How many of 20 runs are at the alarm by then",
        columns: ["Time", "At the alarm"],
        rows: WITHIN_HOURS.flatMap((limit) => {
          const found = workings[figureId.care("wrong", within(limit))];
          if (found === undefined) return [];
          const runs = found.value.central;
          return [[[`within ${limit} hours`], [told(chance(runs), found.id)]]];
        }),
      },
    ],
    notes: [
      "From dawn, when there is least. Everything is taken to go on as it does with pumps; water that stands in layers, or many fish in one corner, run out sooner.",
    ],
    figures: [],
  };
}

const tidy = (value: number): number => (value < 10 ? Number(value.toFixed(1)) : Math.round(value));
