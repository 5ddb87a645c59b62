/** What a dead animal that stays in the water gives off, against this tank's volume. */
import { animalById } from "../../../catalogue/index.ts";
import { FISH_FORM } from "../../../contract/tank-file/assumptions.ts";
import { log } from "../../../engine/numeric/elementary.ts";
import type { Spread } from "../../../engine/types/estimate.ts";
import type { Figure } from "../../../engine/types/figure.ts";
import { factInput, linkTo, workedOut } from "../../../engine/types/link.ts";
import type { TankFacts } from "../../../engine/types/tank.ts";
import { nToAmmonia } from "../../../engine/units/nutrients.ts";
import { shareFigure } from "./ammonia.ts";
import { bare, type NumbersPart, parameter, roughly, troubleFigure } from "./shape.ts";

interface Body {
  readonly name: string;
  readonly words: string;
  readonly wetG: Spread;
  readonly weighed: string;
  /** Parameter of the nitrogen in a gram of it. */
  readonly nitrogen: string;
}

const fish = (cm: number): Body => ({
  ...{ name: `fish_${cm}_cm`, words: `fish of ${cm} cm`, nitrogen: "body.fish_N" },
  wetG: {
    low: FISH_FORM.low * cm ** 3,
    central: FISH_FORM.central * cm ** 3,
    high: FISH_FORM.high * cm ** 3,
  },
  weighed: `0.016 (0.009 to 0.028) x ${cm} cm x ${cm} cm x ${cm} cm`,
});

function ofCatalogue(id: string, words: string, nitrogen: string): Body {
  const animal = animalById.get(id);
  if (animal === undefined) throw new RangeError(`Cannot weigh a dead animal: the catalogue has no ${id}`);
  const { low, central, high } = animal.liveWetMassG;
  return {
    name: id,
    words,
    wetG: { low, central, high },
    weighed: `live weight of a ${animal.commonName}`,
    nitrogen,
  };
}

/** Soft flesh without a shell is reckoned as fish less its scales: as crustaceans, the nearest that was measured. */
const CUCUMBER = () => ofCatalogue("tiger-tail-cucumber", "sea cucumber", "body.crustacean_N");

const BODIES = (): readonly Body[] => [
  ofCatalogue("trochus-snail", "trochus snail", "body.snail_N"),
  ofCatalogue("skunk-cleaner-shrimp", "cleaner shrimp", "body.crustacean_N"),
  fish(5),
  fish(10),
  fish(15),
  CUCUMBER(),
];

export const bodiesPart = ({ facts }: { readonly facts: TankFacts }): NumbersPart => partOf(facts, BODIES());
export const cucumberPart = ({ facts }: { readonly facts: TankFacts }): NumbersPart =>
  partOf(facts, [CUCUMBER()]);

function partOf(facts: TankFacts, bodies: readonly Body[]): NumbersPart {
  const share = shareFigure(facts);
  const each = bodies.map((body) => figuresOf(body, facts, share));
  const half = halfFigure();
  return {
    title: "A dead animal left in the water",
    rows: [{ label: "Half of its nitrogen is in the water after", value: [roughly(half)] }],
    tables: [
      {
        title: "What it comes to here if no filter takes any",
        columns: ["Dead animal", "Nitrogen, mg", "Rise, mg N/L", "Un-ionised, mg NH3/L"],
        rows: each.map(({ body, nitrogen, rise, nh3 }) => [
          [body.words],
          [bare(nitrogen)],
          [bare(rise)],
          [bare(nh3)],
        ]),
      },
    ],
    notes: [
      "A settled tank's filters take much of it as it comes, so a kit may show less, or nothing. Poisons of the animal itself are not in these numbers.",
    ],
    figures: [share, half, ...each.flatMap(({ nitrogen, rise, nh3 }) => [nitrogen, rise, nh3])],
  };
}

function figuresOf(body: Body, facts: TankFacts, share: Figure) {
  const per = parameter(body.nitrogen);
  const { waterL } = facts;
  const wouldChange = ["the animal's size", "the water in the tank"];
  const nitrogen = troubleFigure(`dead.${body.name}.nitrogen`, {
    ...{ label: `nitrogen in a dead ${body.words}`, unit: "mg N", at: "a-dead-animal" },
    spread: {
      low: body.wetG.low * per.low,
      central: body.wetG.central * per.central,
      high: body.wetG.high * per.high,
    },
    formula: "weight x nitrogen in a gram",
    inputs: [
      workedOut(
        `weight: ${body.weighed}`,
        `${body.wetG.central.toPrecision(3)} g (${body.wetG.low.toPrecision(2)} to ${body.wetG.high.toPrecision(2)})`,
      ),
    ],
    parameters: [body.nitrogen],
    ...{ confidence: "judgement", wouldChange: [wouldChange[0]!] },
  });
  const rise = troubleFigure(`dead.${body.name}.rise`, {
    ...{ label: `rise of ammonia by a dead ${body.words}`, unit: "mg N/L", at: "a-dead-animal" },
    spread: {
      low: nitrogen.spread.low / waterL.high,
      central: nitrogen.spread.central / waterL.central,
      high: nitrogen.spread.high / waterL.low,
    },
    formula: "nitrogen in it / water in the tank: all of it as ammonia, none taken by filters",
    inputs: [linkTo(nitrogen), factInput(facts, "waterL", "water", "L")],
    ...{ confidence: "judgement", wouldChange },
  });
  const nh3 = troubleFigure(`dead.${body.name}.nh3`, {
    ...{ label: `un-ionised ammonia by a dead ${body.words}`, unit: "mg NH3/L", at: "ammonia" },
    spread: {
      low: nToAmmonia(rise.spread.low * share.spread.low) / 100,
      central: nToAmmonia(rise.spread.central * share.spread.central) / 100,
      high: nToAmmonia(rise.spread.high * share.spread.high) / 100,
    },
    formula: "rise of ammonia x un-ionised share, as NH3",
    inputs: [linkTo(rise), linkTo(share)],
    ...{ confidence: "judgement", wouldChange: ["the animal's size", "the pH"] },
  });
  return { body, nitrogen, rise, nh3 };
}

function halfFigure(): Figure {
  const { low, central, high } = parameter("dec.flesh_k");
  const days = (rate: number) => log(2) / rate;
  return troubleFigure("dead.half_days", {
    ...{ label: "days until half of a body's nitrogen is in the water", unit: "d", at: "a-dead-animal" },
    spread: { low: days(high), central: days(central), high: days(low) },
    ...{
      formula: "ln 2 / decay of dead flesh",
      inputs: [workedOut("ln 2", log(2).toFixed(3))],
    },
    parameters: ["dec.flesh_k"],
    ...{ confidence: "judgement", wouldChange: ["who eats it first", "the temperature"] },
  });
}
