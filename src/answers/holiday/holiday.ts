/**
 * Leaving home: what twenty versions of the tank come to by the day of return when nobody feeds, when a sitter gives packed
 * portions, when an automatic feeder does; and how many bags to pack. docs/model/feeding.md, "Leaving home".
 */
import { animals } from "../../catalogue/index.ts";
import { FEEDER_GIVES, type Way } from "../../engine/ahead/away.ts";
import { ofTwenty } from "../../engine/ahead/forecast.ts";
import { type HomeAgain, holidayRuns, WAYS } from "../../engine/care/holiday/runs.ts";
import { bandOf } from "../../engine/numeric/quantile.ts";
import { kindsOf } from "../../engine/stocking/check.ts";
import { companyOf } from "../../engine/stocking/waves.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { exact, factInput, spreadText, workedOut } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { bare, parameter } from "../numbers-part.ts";
import { type EnsembleChoice, membersOf } from "../plan/plan-tank.ts";
import { type Sentence, type Told, told } from "../sentence.ts";
import { chance } from "../words.ts";
import { daysBetween, HOLIDAY_AT, type HolidaySpan, holidayFigure, packingOf } from "./packing.ts";

export interface HolidayOutput extends HolidaySpan {
  readonly days: number;
  /** What differs most between the ways, in a sentence. */
  readonly finding: Sentence;
  readonly ways: readonly {
    readonly way: Way;
    readonly nitrate: Told;
    readonly phosphate: Told;
    /** Runs of 20 in which ammonia came over what harms over days. */
    readonly ammonia: Told;
    readonly film: Told;
    readonly lost: Told;
  }[];
}

interface HolidaySaid {
  readonly output: HolidayOutput;
  readonly figures: readonly Figure[];
}

export const WAY_WORDS: Readonly<Record<Way, string>> = {
  nothing: "nobody feeds",
  sitter: "a sitter, packed portions",
  feeder: "an automatic feeder",
};

export function holidayOf(facts: TankFacts, span: HolidaySpan, choice: EnsembleChoice): HolidaySaid {
  const { from, to, sitterEvery } = span;
  const [leave, back] = [daysBetween(facts.asOf, from), daysBetween(facts.asOf, to)];
  const runs = holidayRuns({
    ...{ facts, members: membersOf(facts, choice), seed: choice.seed, leave, back, sitterEvery },
    kinds: kindsOf(companyOf(facts, animals), [], animals),
  });
  const limit = parameter("tox.NH3_chronic").central;
  const of = (way: Way) => figuresOf(way, runs[way], limit, facts, span);
  const made = WAYS.map((way) => ({ way, ...of(way) }));
  const packing = packingOf(facts, span);
  return {
    output: {
      ...{ from, to, sitterEvery, days: back - leave },
      finding: findingOf(made),
      ways: made.map(({ way, nitrate, phosphate, ammonia, film, lost }) => ({
        way,
        nitrate: bare(nitrate),
        phosphate: bare(phosphate),
        ammonia: told(chance(ammonia.spread.central), ammonia.id),
        film: bare(film),
        lost: told(spreadText(lost.spread, "1"), lost.id),
      })),
    },
    figures: [
      ...packing.figures,
      ...made.flatMap(({ nitrate, phosphate, ammonia, film, lost }) => [
        nitrate,
        phosphate,
        ammonia,
        film,
        lost,
      ]),
    ],
  };
}

interface Made {
  readonly nitrate: Figure;
  readonly phosphate: Figure;
  readonly ammonia: Figure;
  readonly film: Figure;
  readonly lost: Figure;
}

function figuresOf(
  way: Way,
  runs: readonly HomeAgain[],
  limit: number,
  facts: TankFacts,
  { from, to, sitterEvery }: HolidaySpan,
): Made {
  const gives = {
    nothing: "nothing",
    sitter: sitterEvery === 1 ? "a usual day's feed daily" : `a usual day's feed every ${sitterEvery} days`,
    feeder: `${FEEDER_GIVES} times a usual day's feed, daily: judgement`,
  } as const;
  const inputs = [
    workedOut("feeding while away", gives[way]),
    workedOut("usual care until the day of leaving, none from then on", `${from} to ${to}`),
    factInput(facts, "feedGPerDay", "feed a day, as fed", "g/d"),
    factInput(facts, "fishWetG", "fish", "g wet"),
    factInput(facts, "waterL", "water", "L"),
    workedOut("runs", String(runs.length)),
  ];
  const figure = (
    name: string,
    label: string,
    spread: Spread,
    unit: string,
    more: Partial<Parameters<typeof holidayFigure>[1]> = {},
  ) =>
    holidayFigure(`${way}.${name}`, {
      ...{ label: `${label}, ${WAY_WORDS[way]}`, spread, unit, at: HOLIDAY_AT, inputs },
      formula: "the runs of the weeks ahead, to the day of return",
      ...{ confidence: "computed", wouldChange: ["readings before you leave", "the feed while away"] },
      ...more,
    });
  const band = (of: (run: HomeAgain) => number): Spread => bandOf(runs.map(of));
  const over = runs.filter(({ worstAmmoniaMgPerL }) => worstAmmoniaMgPerL > limit).length;
  return {
    nitrate: figure(
      "nitrate",
      "nitrate on return",
      band((run) => run.nitrateMgPerL),
      "mg/L as NO3",
      {
        parameters: ["dRock", "dSand", "oN", "gN"],
      },
    ),
    phosphate: figure(
      "phosphate",
      "phosphate on return",
      band((run) => run.phosphateMgPerL),
      "mg/L as PO4",
      {
        parameters: ["kRock", "capRock", "gP"],
      },
    ),
    ammonia: figure(
      "ammonia",
      "runs of 20 in which ammonia harms while away",
      exact(ofTwenty(over / runs.length)),
      "of 20",
      {
        inputs: [...inputs, workedOut("harms over days from", `${limit} mg NH3/L`)],
        parameters: ["tox.NH3_chronic", "muA", "KT"],
      },
    ),
    film: figure(
      "film",
      "film on the glass on return",
      band((run) => run.filmMgCPerM2),
      "mg C/m2",
      {
        parameters: ["muFilm", "kapFilm", "cG"],
      },
    ),
    lost: figure(
      "lost",
      "crew that died while away, of age or hunger",
      wholeBand(runs.map(({ lost }) => lost)),
      "heads",
    ),
  };
}

/** Heads are whole, in the band too. */
function wholeBand(heads: readonly number[]): Spread {
  const { low, central, high } = bandOf(heads);
  return { low: Math.round(low), central: Math.round(central), high: Math.round(high) };
}

function findingOf(made: readonly (Made & { readonly way: Way })[]): Sentence {
  const [nothing, sitter, feeder] = WAYS.map((way) => made.find((one) => one.way === way)!);
  return [
    "Nitrate on return: ",
    bare(nothing!.nitrate),
    " mg/L if nobody feeds, ",
    bare(sitter!.nitrate),
    " with a sitter, ",
    bare(feeder!.nitrate),
    " with a feeder.",
  ];
}
