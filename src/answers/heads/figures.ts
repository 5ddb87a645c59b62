/** Figures of the heads with their workings: docs/model/heads.md. */

import type { KindHeads } from "../../engine/heads/kind.ts";
import type { LifeEvent } from "../../engine/heads/life.ts";
import { type HeadRates, RATE_IDS } from "../../engine/heads/rates.ts";
import { seenOf } from "../../engine/heads/seen.ts";
import { headsBand } from "../../engine/heads/summary.ts";
import { kaplanMeier, knownEnds, shareAt } from "../../engine/heads/survival.ts";
import type { TopUp } from "../../engine/heads/top-up.ts";
import type { LessFood } from "../../engine/heads/way-down.ts";
import { exp } from "../../engine/numeric/elementary.ts";
import { DRY_FEED_CARBON } from "../../engine/stocking/fed-by-hand.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Confidence, Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, linkTo, parametersOf, round3, workedOut } from "../../engine/types/link.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import { TABLE } from "../figures/table.ts";
import { dateWords } from "../words.ts";
import { kindRow } from "./rows.ts";
import type { HeadsWork } from "./work.ts";

const HEADS = "heads";
const COUNT = "a count by torch, two hours after lights-out";
const WROTE = "losses written down as they are found";

type Rate = keyof HeadRates;
const FOLLOWED: readonly Rate[] = [
  ...(["found", "foundLate", "fearedOdds", "seenAlike", "ageMost"] as const),
  ...(["troubleShare", "troubleSetsIn", "troubleEnds", "troubleLoss"] as const),
  ...(["arrivalLively", "arrivalUsual", "arrivalWeak", "badBagShare", "badBagLoss"] as const),
];
const ratesOf = (rates: readonly Rate[]) =>
  parametersOf(
    rates.map((rate) => RATE_IDS[rate]),
    TABLE,
  );

interface Made {
  readonly id: string;
  readonly label: string;
  readonly spread: Spread;
  readonly unit: string;
  readonly at: string;
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly rates?: readonly Rate[];
  readonly animal: string;
  readonly confidence?: Confidence;
  readonly change?: readonly string[];
}

const made = ({
  id,
  label,
  spread,
  unit,
  at,
  formula,
  inputs,
  rates,
  animal,
  confidence,
  change,
}: Made): Figure => ({
  ...{ id, label, spread, unit },
  working: {
    ...{ formulaKey: `heads.md#${at}`, formula, inputs, parameters: ratesOf(rates ?? []), animals: [animal] },
    ...{ confidence: confidence ?? "judgement", wouldChange: change ?? [COUNT, WROTE] },
  },
});

const fact = (animal: string, name: string, label: string, value: string): WorkingInput => ({
  ...{ label, value, origin: "figure", figure: figureId.animal(animal, name) },
});

export function headsFigures(work: HeadsWork): Figure[] {
  return [
    ...work.kinds.flatMap((kind) => kindFigures(kind, work)),
    ...work.fed.kinds.map((kind) => fedFigure(kind, work)),
    ...work.orders.flatMap(({ items }) => items.map((item) => topUpFigure(item, work))),
    ...work.wayDown.flatMap(lessFoodFigures),
  ];
}

function kindFigures(kind: KindHeads, work: HeadsWork): Figure[] {
  const { life, came, living, byAgeAlone, ahead, lossPerYear } = kind;
  const { id, commonName: name } = life.animal;
  const row = kindRow(kind, work);
  const added = life.events.filter((one): one is LifeEvent & { kind: "added" } => one.kind === "added");
  const cameFigure = made({
    ...{
      id: figureId.heads(id, "came"),
      label: `${name}: all that ever came`,
      spread: exact(came),
      unit: HEADS,
    },
    ...{ at: "came", formula: "heads there before the daybook + heads added since", animal: id },
    inputs: [
      workedOut("there before the daybook tells of them", `${life.before}`),
      ...added.map(({ on, count }) => workedOut(`added on ${dateWords(on)}`, `${count}`)),
    ],
    ...{ confidence: "measured", change: ["additions that were not logged"] },
  });
  const loss = lossFigure(kind);
  const seen = seenFigure(kind, work);
  const counts = life.events.filter((one) => one.kind === "counted").length;
  const seenInputs: WorkingInput[] = [
    linkTo(cameFigure, "all that ever came"),
    workedOut(
      "found dead, feared lost, moved out",
      `${row.lost_found}, ${row.lost_feared}, ${row.moved_out}`,
    ),
    workedOut("counts in the daybook", `${counts}`),
    linkTo(seen, "chance of being seen, counted the best way"),
    linkTo(loss, "share lost in a year"),
  ];
  const now = made({
    ...{ id: figureId.heads(id, "now"), label: `${name}: heads that live today`, spread: headsBand(living) },
    ...{ unit: HEADS, at: "whole-numbers", animal: id, rates: FOLLOWED, inputs: seenInputs },
    formula:
      "each whole number weighed by how well it foretells every addition, body, fear and count; likeliest, and nine tenths of the chances",
  });
  const byAge = made({
    ...{ id: figureId.heads(id, "by_age"), label: `${name}: heads that age alone would leave` },
    ...{ spread: headsBand(byAgeAlone), unit: HEADS, at: "whole-numbers", animal: id },
    formula: "the same with nothing seen: who came, who moved out, the journey, and the catalogue's loss",
    inputs: [
      linkTo(cameFigure, "all that ever came"),
      fact(id, "yearly_loss", "loss in a year by the catalogue", lossText(life.animal.annualLossFraction)),
      fact(id, "lifespan", "lifespan", `${round3(life.animal.lifespanYears.central)} years`),
    ],
    rates: ["ageMost", "arrivalLively", "arrivalUsual", "arrivalWeak", "badBagShare", "badBagLoss"],
    change: ["how old they were when they came", "a source that measured the lifespan"],
  });
  const later = ahead.map(({ weeks, living: then }) =>
    made({
      ...{ id: figureId.heads(id, `weeks_${weeks as 4 | 12 | 26}`), spread: headsBand(then), unit: HEADS },
      ...{ label: `${name}: heads in ${weeks} weeks, nobody added`, at: "ahead", animal: id },
      formula: "heads today, lessened week by week at the rates that fit the record",
      inputs: [linkTo(now, "heads today"), linkTo(loss, "share lost in a year")],
      rates: ["ageMost", "troubleShare", "troubleSetsIn", "troubleEnds", "troubleLoss"],
    }),
  );
  return [
    ...[cameFigure, loss, seen, now, byAge, ...later],
    ...(row.known === null ? [] : [knownFigure(kind)]),
    ...(work.asked.has(id) ? [ratioFigure(kind, work)] : []),
  ];

  function lossFigure({ life: { animal } }: KindHeads): Figure {
    return made({
      ...{ id: figureId.heads(id, "loss"), label: `${name}: share lost in a year, no trouble about` },
      ...{ spread: lossPerYear, unit: "of 1", at: "following", animal: id },
      formula:
        "the catalogue's band of yearly losses, each point weighed by how well it foretells the record",
      inputs: [
        fact(id, "yearly_loss", "loss in a year by the catalogue", lossText(animal.annualLossFraction)),
        workedOut("counts, and losses found, outside the 72 hours after an arrival", countsText(kind)),
      ],
      rates: ["found", "foundLate", "seenAlike", "ageMost"],
    });
  }
}

const lossText = ({ low, central, high }: Spread): string =>
  `${round3(central)} (${round3(low)} to ${round3(high)})`;

const countsText = ({ life: { events } }: KindHeads): string => {
  const counts = events.filter(({ kind }) => kind === "counted").length;
  const found = events.reduce((sum, one) => sum + (one.kind === "found" ? one.count : 0), 0);
  return `${counts} counts, ${found} found`;
};

function seenFigure({ life: { animal } }: KindHeads, work: HeadsWork): Figure {
  const { id, commonName } = animal;
  const day = animal.active === "day";
  const row = kindRow(work.kinds.find((kind) => kind.life.animal === animal)!, work);
  const best = seenOf(
    animal,
    {
      ...{ hoursFromLightsOut: day ? -2 : 2, torch: !day, foodOffered: row.seen.way.includes("food") },
      lightHours: work.scene.facts.lightHours.central,
    },
    work.rates,
  );
  return made({
    ...{ id: figureId.heads(id, "seen"), label: `${commonName}: chance that a living head is seen` },
    ...{ spread: row.seen.chance, unit: "of 1", at: "chance-of-being-seen", animal: id },
    formula: "chance in its own hours, its odds times those of torch, hour and food",
    inputs: [workedOut("counted", row.seen.way)],
    rates: best.kind === "chance" ? best.parts : [],
    change: ["counts of a number that is known for sure"],
  });
}

function knownFigure({ life }: KindHeads): Figure {
  const { id, commonName } = life.animal;
  const ends = knownEnds(life);
  const steps = kaplanMeier(ends);
  const share = shareAt(steps, 90);
  const band = steps.filter(({ days }) => days <= 90).at(-1)?.band;
  const [low, high] = [band?.low ?? share, band?.high ?? share];
  return made({
    ...{
      id: figureId.heads(id, "known"),
      label: `${commonName}: share that lives 90 days, by known ends alone`,
    },
    ...{ spread: { low, central: share, high }, unit: "of 1", at: "known-ends", animal: id },
    formula:
      "product over days of deaths of 1 - deaths / heads at risk (Kaplan and Meier), 95 % band by Greenwood",
    inputs: [
      workedOut("heads followed", `${ends.length}`),
      workedOut(
        "found dead, the 72 hours after arrival left out",
        `${ends.filter(({ died }) => died).length}`,
      ),
    ],
    ...{ confidence: "computed", change: [WROTE, "heads nobody found dead count as living here"] },
  });
}

function ratioFigure(kind: KindHeads, { asked }: HeadsWork): Figure {
  const { id, commonName } = kind.life.animal;
  const own = asked.get(id)!;
  return made({
    ...{ id: figureId.heads(id, "ratio"), label: `${commonName}: how far the record speaks for trouble` },
    ...{ spread: exact(exp(Math.min(own.ratio, 20))), unit: "times", at: "when-to-ask", animal: id },
    formula:
      "chance of the record where trouble may set in / chance of it where only the catalogue's loss and age take heads",
    inputs: [
      workedOut("asked from", `${round3(exp(own.from))} times`),
      workedOut("record last spoke for it on", dateWords(own.lastSpokeOn)),
      workedOut("in the record", countsText(kind)),
    ],
    rates: ["troubleSetsIn", "troubleEnds", "troubleLoss", "found", "seenAlike"],
  });
}

function fedFigure(kind: HeadsWork["fed"]["kinds"][number], { fed }: HeadsWork): Figure {
  const { animal, heads, fed: share } = kind;
  const { id, commonName } = animal;
  return made({
    ...{ id: figureId.heads(id, "fed"), label: `${commonName}: share of its need that the shelves give` },
    ...{ spread: share, unit: "of 1", at: "the-way-down", animal: id },
    formula:
      "over its shelves: share of the diet x supply / what all there want of it, 1 at most; in each run",
    inputs: [
      workedOut("heads that likely live", `${heads}`),
      ...SHELVES.filter((shelf) => animal.diet[shelf] > 0).map(
        (shelf): WorkingInput => ({
          label: `${SHELF_NAME[shelf]}: wanted by all that likely live, beside what it grows`,
          value: `${round3(fed.wanted[shelf])} mg C/d`,
          ...{ origin: "figure", figure: figureId.supply(shelf) },
        }),
      ),
    ],
    ...{ confidence: "computed", change: ["what the shelves grow: how much film is seen", COUNT] },
  });
}

function topUpFigure({ animal, count, why, shelf, latest }: TopUp, work: HeadsWork): Figure {
  const { id, commonName } = animal;
  const kind = work.kinds.find((one) => one.life.animal.id === id)!;
  const row = kindRow(kind, work);
  return made({
    ...{ id: figureId.heads(id, "top_up"), label: `${commonName}: heads to order`, spread: exact(count) },
    ...{ unit: HEADS, at: "topping-up", animal: id },
    formula:
      "heads once brought less those that likely live, as far as the pessimistic supply feeds them and room allows",
    inputs: [
      {
        ...workedOut("heads that live today", `${row.living.likely}`),
        origin: "figure",
        figure: row.figures.now,
      },
      { ...workedOut("all that ever came", `${row.came}`), origin: "figure", figure: row.figures.came },
      workedOut("moved out", `${row.moved_out}`),
      ...(why === "group" || shelf === null
        ? [fact(id, "group_min", "least group", `${animal.groupMin}`)]
        : [
            {
              ...workedOut(`${SHELF_NAME[shelf]}: what 15 of 20 runs reach`, "see there"),
              ...{ origin: "figure" as const, figure: figureId.pessimistic(shelf) },
            },
          ]),
      workedOut("latest day", dateWords(latest)),
    ],
    change: [COUNT, "what the shelves grow"],
  });
}

function lessFoodFigures({ animal, heads, fedShare, lacksMgC, fewer, shelf }: LessFood): Figure[] {
  const { id, commonName } = animal;
  const share: WorkingInput = {
    ...{ label: "share of its need that it gets", value: `${round3(fedShare)} of 1`, origin: "figure" },
    figure: figureId.heads(id, "fed"),
  };
  const there = workedOut("heads that likely live", `${heads}`);
  const bare = shelf === "film_glass" ? [workedOut("film on glass", "seen bare, or slow to return")] : [];
  const change = ["looks at the glass, scored", COUNT];
  return [
    made({
      ...{ id: figureId.heads(id, "hand_food"), label: `${commonName}: dry food to give by hand` },
      ...{ spread: exact(lacksMgC / DRY_FEED_CARBON), unit: "mg/d", at: "the-way-down", animal: id, change },
      formula: `what all of them need x (1 - share they get) / carbon in dry feed, ${DRY_FEED_CARBON} of its weight`,
      inputs: [
        there,
        share,
        fact(
          id,
          "break_even",
          "break-even intake of one",
          `${round3(animal.breakEvenIntakeMgCPerDay)} mg C/d`,
        ),
        ...bare,
      ],
    }),
    made({
      ...{ id: figureId.heads(id, "fewer"), label: `${commonName}: heads too many` },
      ...{ spread: exact(fewer), unit: HEADS, at: "the-way-down", animal: id, change },
      formula: "heads x (1 - share of their need that they get), made whole; one stays",
      inputs: [there, share, ...bare],
    }),
  ];
}
