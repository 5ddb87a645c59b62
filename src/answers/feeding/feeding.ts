/**
 * Feeding of one tank from its facts: what goes in, where it goes, what the fish need, what portions hold, what fasting days
 * change. Quick: nothing here runs the balance. docs/model/feeding.md.
 */
import { FEED_PER_FISH, FOODS } from "../../contract/tank-file/assumptions.ts";
import { type FedGoes, fedDays, fedGoes, leftShare, warmer } from "../../engine/care/feeding/feed.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { exact, factInput, linkTo, spreadText, workedOut } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { nToNitrate, pToPhosphate } from "../../engine/units/nutrients.ts";
import {
  bare,
  careFigures,
  type NumbersPart,
  parameter,
  product,
  quotient,
  roughly,
  scaled,
} from "../numbers-part.ts";
import { type Sentence, told } from "../sentence.ts";
import { FOOD_PARAMETERS, PORTIONS } from "./foods.ts";

export interface Feeding {
  /** The finding: what a day's feed brings. */
  readonly lead: Sentence;
  readonly parts: readonly NumbersPart[];
  readonly figures: readonly Figure[];
}

const feedingFigure = careFigures("feeding", "feeding.md");

const CHANGE_FEED = "the feed a day";
const WEEK = 7;
/** As much as seven days of it weigh in the water: N as nitrate, P as phosphate. */
const AS = {
  n: { element: "nitrogen", ion: "nitrate", unit: "mg N", ionUnit: "mg/L", toIon: nToNitrate },
  p: { element: "phosphorus", ion: "phosphate", unit: "mg P", ionUnit: "mg/L", toIon: pToPhosphate },
} as const;

export function feedingOf(facts: TankFacts): Feeding {
  const nitrogen = broughtFigure("n", facts);
  const phosphorus = broughtFigure("p", facts);
  const own = { given: givenFigure(facts), most: mostFigure(facts) };
  const parts = [
    goesPart(facts, { nitrogen, phosphorus, ...own }),
    needPart(facts, own),
    portionsPart(facts),
    fastingPart(nitrogen),
  ];
  const figures = [nitrogen, phosphorus, ...parts.flatMap((part) => part.figures)];
  return {
    lead: [
      "A day's feed brings ",
      told(`${middle(nitrogen)} mg of nitrogen`, nitrogen.id),
      " and ",
      told(`${middle(phosphorus)} mg of phosphorus`, phosphorus.id),
      ".",
    ],
    parts,
    figures: [...new Map(figures.map((figure) => [figure.id, figure])).values()],
  };
}

const middle = ({ spread }: Figure): string => String(Number(spread.central.toPrecision(2)));

function broughtFigure(which: "n" | "p", facts: TankFacts): Figure {
  const { element, unit } = AS[which];
  const field = which === "n" ? "feedNMgPerG" : "feedPMgPerG";
  return feedingFigure(`${element}_in`, {
    ...{ label: `${element} that a day's feed brings`, unit: `${unit}/d`, at: "what-goes-in" },
    spread: product(facts.feedGPerDay, facts[field]),
    formula: `feed a day x ${element} in a gram of it`,
    inputs: [
      factInput(facts, "feedGPerDay", "feed, as fed", "g/d"),
      factInput(facts, field, `${element} in the feed`, "mg/g"),
    ],
    ...{ confidence: "computed", wouldChange: [CHANGE_FEED, "the kind of food"] },
  });
}

const GOES: readonly (readonly [keyof FedGoes, string])[] = [
  ["leftovers", "left by the fish"],
  ["faeces", "faeces"],
  ["fish", "kept by the fish"],
  ["organic", "dissolved organic"],
  ["dissolved", "ammonia, phosphate"],
];

interface OwnFeed {
  /** The feed as dry pellet, and the most of it that the fish can take. */
  readonly given: Figure;
  readonly most: Figure;
}

function goesPart(
  facts: TankFacts,
  { nitrogen, phosphorus, given, most }: OwnFeed & { readonly nitrogen: Figure; readonly phosphorus: Figure },
): NumbersPart {
  const left = leftShare(given.spread.central, most.spread.central, facts.uneatenShare.central);
  const of = (id: string) => parameter(id).central;
  const central = {
    n: fedGoes({ left, faeces: of("fN"), kept: of("gN"), organic: of("oN") }),
    p: fedGoes({ left, faeces: of("fP"), kept: of("gP"), organic: 0 }),
  };
  const rows = GOES.map(([way, words]) => {
    const of = (which: "n" | "p", total: Figure) =>
      feedingFigure(`${AS[which].element}_${way}`, {
        ...{ label: `${AS[which].element} of a day's feed: ${words}`, unit: `${AS[which].unit}/d` },
        ...{ spread: scaled(total.spread, central[which][way]), at: "where-it-goes" },
        formula: `${AS[which].element} that the feed brings x share, the shares at their middle`,
        inputs: [
          linkTo(total),
          workedOut("share of it", `${(100 * central[which][way]).toFixed(0)} %`),
          factInput(facts, "uneatenShare", "share that fish leave of what they can take", "of 1"),
          ...(noFish(facts) ? [] : [linkTo(given), linkTo(most)]),
        ],
        parameters: which === "n" ? ["fN", "gN", "oN"] : ["fP", "gP"],
        ...{ confidence: "judgement", wouldChange: ["the share that fish leave", CHANGE_FEED] },
      });
    return { words, n: of("n", nitrogen), p: of("p", phosphorus) };
  });
  const stays = (["n", "p"] as const).map((which) => {
    const total = which === "n" ? nitrogen : phosphorus;
    const { element, ion, ionUnit, toIon } = AS[which];
    const kept = central[which].fish;
    return feedingFigure(`${ion}_week`, {
      ...{ label: `${ion} of a week's feed, if nothing took any out`, unit: ionUnit, at: "where-it-goes" },
      spread: quotient(scaled(total.spread, (1 - kept) * WEEK * toIon(1)), facts.waterL),
      formula: `${element} that the feed brings, less what fish keep, x 7 days as ${ion} / water`,
      inputs: [linkTo(total), linkTo(rows[2]![which]), factInput(facts, "waterL", "water", "L")],
      ...{
        confidence: "judgement",
        wouldChange: [CHANGE_FEED, "algae, skimmer, water changes: what takes it out"],
      },
    });
  });
  return {
    title: "What goes in, and where it goes",
    rows: stays.map((figure) => ({
      label: `A week of it, if nothing took any out: ${figure.label.split(" ")[0]}`,
      value: [roughly(figure)],
    })),
    tables: noFish(facts)
      ? []
      : [
          {
            title: "Of a day's feed",
            columns: ["Where", "Nitrogen, mg a day", "Phosphorus, mg a day"],
            rows: rows.map(({ words, n, p }) => [[words], [bare(n)], [bare(p)]]),
          },
        ],
    notes: [
      ...(noFish(facts) ? ["No fish live here: all of it is left for the crew, or rots."] : []),
      "Leftovers and faeces feed the crew first, and become ammonia and phosphate later. Fewer leftovers is the one change that costs nothing: what is left after two minutes was too much.",
    ],
    figures: [...rows.flatMap(({ n, p }) => [n, p]), ...stays],
  };
}

const noFish = ({ fishWetG }: TankFacts): boolean => fishWetG.high === 0;

const FISH_WOULD_CHANGE = ["the weight of the fish", "how much they swim and grow"];

const mostFigure = (facts: TankFacts): Figure =>
  feedingFigure("most", {
    ...{ label: "dry food that these fish can take at most", unit: "g/d", at: "what-fish-need" },
    spread: product(facts.fishWetG, parameter("rationMax")),
    formula: "weight of the fish x largest ration of a gram",
    inputs: [factInput(facts, "fishWetG", "fish", "g wet")],
    ...{ parameters: ["rationMax"], confidence: "judgement", wouldChange: FISH_WOULD_CHANGE },
  });

const givenFigure = (facts: TankFacts): Figure =>
  feedingFigure("given_dry", {
    ...{ label: "your feed, as dry pellet of the same carbon", unit: "g/d", at: "what-fish-need" },
    spread: scaled(product(facts.feedGPerDay, facts.feedCMgPerG), 1 / FOODS.dry_pellet.c.central),
    formula: "feed a day x carbon in a gram / carbon in a gram of dry pellet",
    inputs: [
      factInput(facts, "feedGPerDay", "feed, as fed", "g/d"),
      factInput(facts, "feedCMgPerG", "carbon in the feed", "mg/g"),
      workedOut("carbon in dry pellet", `${FOODS.dry_pellet.c.central} mg/g`),
    ],
    parameters: ["feed.pellet.moisture"],
    ...{ confidence: "computed", wouldChange: [CHANGE_FEED, "the kind of food"] },
  });

function needPart(facts: TankFacts, { given, most }: OwnFeed): NumbersPart {
  const fish = facts.fishWetG;
  if (noFish(facts))
    return {
      title: "What the fish need",
      rows: [{ label: "Yours, as dry pellet", value: [roughly(given)] }],
      tables: [],
      notes: ["No fish live here, so none need feeding: what goes in feeds crew, corals and algae."],
      figures: [given],
    };
  const known = !facts.assumed.includes("fishWetG");
  const heat = warmer(parameter("gas.fish_Q10").central, facts.temperatureC.central);
  const inputs = [
    factInput(facts, "fishWetG", "fish", "g wet"),
    factInput(facts, "temperatureC", "temperature", "C"),
    workedOut("warmth, against 25 C", `x ${heat.toFixed(2)}`),
  ];
  const wouldChange = FISH_WOULD_CHANGE;
  const upkeep = feedingFigure("upkeep", {
    ...{ label: "dry food that keeps these fish their weight", unit: "g/d", at: "what-fish-need" },
    spread: scaled(product(fish, parameter("maintFeed")), heat),
    ...{ formula: "weight of the fish x food for upkeep of a gram x warmth", inputs },
    parameters: ["maintFeed", "gas.fish_Q10"],
    ...{ confidence: "judgement", wouldChange },
  });
  const usual = feedingFigure("usual", {
    ...{ label: "dry food that is commonly given to so much fish", unit: "g/d", at: "what-fish-need" },
    spread: product(fish, FEED_PER_FISH),
    formula: "weight of the fish x 0.025 g (0.01 to 0.06) a gram: common practice, no source",
    inputs: inputs.slice(0, 1),
    ...{ confidence: "judgement", wouldChange },
  });
  const figures = [upkeep, usual, most, given];
  const against = known && fish.central > 0 ? againstRow(given, upkeep) : null;
  return {
    title: "What the fish need",
    rows: [
      { label: "Yours, as dry pellet", value: [roughly(given)] },
      { label: "Keeps these fish their weight", value: [roughly(upkeep)] },
      { label: "Commonly given to so much fish", value: [roughly(usual)] },
      { label: "The most that they can take", value: [roughly(most)] },
      ...(against === null ? [] : [against.row]),
    ],
    tables: [],
    notes: [
      ...(known && given.spread.central > most.spread.central
        ? [
            "You give more than these fish can take: the rest is left for the crew, or rots. Give less, and see what is left after two minutes.",
          ]
        : []),
      known
        ? "Grown fish in a display hardly grow: the nearer to upkeep, the cleaner the water. A fish that thins behind the head gets too little."
        : "The weight of the fish was not said: it is guessed from the feed, so the two can't be held against each other. Say the fish in question 4.",
    ],
    figures: against === null ? figures : [...figures, against.figure],
  };
}

function againstRow(given: Figure, upkeep: Figure) {
  const figure = feedingFigure("times_upkeep", {
    ...{ label: "your feed against upkeep", unit: "times", at: "what-fish-need" },
    spread: quotient(given.spread, upkeep.spread),
    ...{ formula: "your feed as dry pellet / food for upkeep", inputs: [linkTo(given), linkTo(upkeep)] },
    ...{ confidence: "judgement", wouldChange: ["the weight of the fish", CHANGE_FEED] },
  });
  return { figure, row: { label: "Yours against upkeep", value: [roughly(figure)] } };
}

function portionsPart(facts: TankFacts): NumbersPart {
  const rows = PORTIONS.map(({ food, words, g }) => {
    const { n, p, label } = FOODS[food];
    const weight = workedOut("weight as fed", `${spreadText(g, "g")}: common practice, no source`);
    const of = (which: "n" | "p", per: Spread) =>
      feedingFigure(`portion.${food}.${which}`, {
        ...{ label: `${AS[which].element} in ${words}`, unit: AS[which].unit, at: "foods" },
        spread: product(g, per),
        formula: `weight x ${AS[which].element} in a gram`,
        inputs: [weight, workedOut(`${AS[which].element} in a gram of ${label}`, spreadText(per, "mg"))],
        ...{ parameters: FOOD_PARAMETERS[food], confidence: "judgement" },
        wouldChange: ["its weight: weigh ten at once", "the label's protein"],
      });
    const [nitrogen, phosphorus] = [of("n", n), of("p", p)];
    const rise = feedingFigure(`portion.${food}.nitrate`, {
      ...{ label: `nitrate that ${words} comes to here at most`, unit: "mg/L", at: "foods" },
      spread: quotient(scaled(nitrogen.spread, nToNitrate(1)), facts.waterL),
      formula: "its nitrogen, all as nitrate / water",
      inputs: [linkTo(nitrogen), factInput(facts, "waterL", "water", "L")],
      ...{ confidence: "judgement", wouldChange: ["the portion's weight", "the water in the tank"] },
    });
    return { words, nitrogen, phosphorus, rise };
  });
  return {
    title: "What a portion holds",
    rows: [],
    tables: [
      {
        title: "Each as fed; frozen food thawed, its water poured off",
        columns: ["Portion", "Nitrogen, mg", "Phosphorus, mg", "Nitrate at most, mg/L"],
        rows: rows.map(({ words, nitrogen, phosphorus, rise }) => [
          [words],
          [bare(nitrogen)],
          [bare(phosphorus)],
          [bare(rise)],
        ]),
      },
    ],
    notes: [
      "The water of thawed food holds a fifth or so of its nitrogen: pour it off. Nori goes to grazers: clip it where a pump can't take it, and take out what is left by evening.",
    ],
    figures: rows.flatMap(({ nitrogen, phosphorus, rise }) => [nitrogen, phosphorus, rise]),
  };
}

function fastingPart(nitrogen: Figure): NumbersPart {
  const rows = [0, 1, 2, 3].map((fasts) => {
    const week = feedingFigure(`fasting_${fasts}`, {
      ...{ label: `nitrogen a week with ${fasts} fasting days in it`, unit: "mg N", at: "fasting" },
      spread: scaled(nitrogen.spread, WEEK * fedDays(fasts)),
      // What a day's feed rests on stands here too: a source is no further than from the day's own figure.
      formula: `nitrogen that a day's feed brings (${nitrogen.working.formula}) x days fed in seven`,
      inputs: [...nitrogen.working.inputs, workedOut("days fed in seven", String(7 - fasts))],
      ...{ confidence: "computed", wouldChange: [CHANGE_FEED] },
    });
    const less = feedingFigure(`fasting_${fasts}.less`, {
      ...{ label: `less feed by ${fasts} fasting days a week`, unit: "%", at: "fasting" },
      spread: exact(100 * (1 - fedDays(fasts))),
      ...{ formula: "fasting days / 7", inputs: [workedOut("fasting days", String(fasts))] },
      ...{ confidence: "computed", wouldChange: ["feeding more on the other days: it undoes it"] },
    });
    return { fasts, week, less };
  });
  return {
    title: "Fasting days",
    rows: [],
    tables: [
      {
        title: "A week, the other days fed as now",
        columns: ["Fasting days a week", "Nitrogen, mg a week", "Less, %"],
        rows: rows.map(({ fasts, week, less }) => [
          [String(fasts)],
          [bare(week)],
          [told(`${less.spread.central.toFixed(0)}`, less.id)],
        ]),
      },
    ],
    notes: [
      "Grown fish of ordinary size bear a day without food in a week. Not so young fish, dragonets, pipefish, anthias and others that peck all day, animals that are ill or have just come: those are fed daily.",
      "What the crew eats of leftovers goes down as much: look at it again in Weeks ahead by a what-if of less feed.",
    ],
    figures: rows.flatMap(({ week, less }) => [week, less]),
  };
}
