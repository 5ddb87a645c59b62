/** Salt for new seawater: by the equation for pure sea salt, and by what the keeper's own mix yielded. Never exact. */
import { readPlain } from "../../contract/quantity/plain.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import { READING_DOUBT } from "../../contract/tank-file/assumptions.ts";
import { saltForNew, saltToRaise, yieldOf } from "../../engine/care/changes/salt.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { linkTo } from "../../engine/types/link.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { careFigures, readOtherWater, rowOf, WORK } from "./change-parts.ts";
import { doubted, middle, refusal } from "./parts.ts";
import { cornersOf, independently, inputOf } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { SALINITY, TEMPERATURE } from "./tank-fields.ts";

/** What a dry mix takes beyond pure salt, for the water bound in it: from memory. */
const BOUND = { low: 1.03, central: 1.07, high: 1.12 };

const VOLUME: AmountField = {
  ...{ name: "volume", label: "New water to make", hint: "", input: "amount", empty: "needed" },
  ...{ read: readVolume, example: "20 L", units: ["L", "US gal", "imp gal"] },
};
const FROM: AmountField = {
  ...{ name: "from", label: "Salinity of the water it is mixed into", hint: "", input: "amount" },
  empty: { text: "0 psu", how: "purified water" },
  ...{ read: readOtherWater, example: "0 psu", units: SALINITY.units },
};
const optional = (
  name: string,
  label: string,
  hint: string,
  of: Pick<AmountField, "read" | "example" | "units">,
): AmountField => ({
  ...{ name, label, hint, input: "amount", empty: "optional" },
  ...of,
});

const figure = careFigures("salt-mix");

export const SALT_MIX: Sum = {
  id: "salt-mix",
  group: "changes",
  name: "Salt for new water",
  question: "How much salt does new water take, with my own mix?",
  fields: [
    VOLUME,
    { ...SALINITY, label: "Salinity wanted" },
    { ...TEMPERATURE, empty: { text: "25 C", how: "taken to be mixed warm" } },
    FROM,
    optional(
      "batch_salt",
      "Your last batch: dry mix weighed in",
      "With the two fields below it tells what your mix yields.",
      {
        read: (text, context) => readPlain("mass_g", text, context),
        ...{ example: "780 g", units: ["g", "kg", "lb", "oz"] },
      },
    ),
    optional("batch_water", "Your last batch: water it went into", "", {
      ...{ read: readVolume, example: "20 L", units: ["L", "US gal", "imp gal"] },
    }),
    optional("batch_salinity", "Your last batch: salinity read once clear", "", {
      ...{ read: readSalinity, example: "35 psu", units: SALINITY.units },
    }),
  ],
  examples: [
    { volume: "20 L", salinity: "35 psu" },
    {
      ...{ volume: "10 US gal", salinity: "1.0264 sg 25/25", temperature: "77 F" },
      ...{ batch_salt: "780 g", batch_water: "20 L", batch_salinity: "34.6 psu" },
    },
    { volume: "100 L", salinity: "35 psu", from: "30 psu" },
  ],
  work,
};

function work(given: Given): SumAnswer | SumRefusal {
  const [volume, to, temperature, from] = [
    given.amount("volume"),
    given.amount("salinity"),
    given.amount("temperature"),
    given.amount("from"),
  ];
  if (from.central >= to.central)
    return refusal(
      [`It is at ${from.central} psu already: salt only raises it. To lower it, change for fresh water.`],
      "from",
    );
  const fresh = from.central === 0;
  const inputs = [
    inputOf("new water", volume),
    inputOf("salinity wanted", to),
    inputOf("temperature", temperature),
    inputOf("salinity to begin with", from),
  ];
  const references = [WORK.millero, WORK.eos80];
  const pureG = (v: number, s: number, t: number, s0: number): number => {
    const [wanted, begins] = [practicalSalinity(s), practicalSalinity(s0)];
    return fresh && s0 === 0
      ? 1000 * saltForNew(v, celsius(t), wanted).saltKg
      : 1000 * saltToRaise(v, celsius(t), begins, wanted).saltKg;
  };
  const pure = figure({
    ...{ name: "pure", label: "pure sea salt", unit: "g", at: "salt", inputs, references },
    spread: cornersOf([volume, to, temperature, from], ([v = 0, s = 0, t = 25, s0 = 0]) =>
      pureG(v, s, t, s0),
    ),
    formula: fresh
      ? "new water × density × g of salt a kg"
      : "water in it × g of salt a kg wanted ÷ (1000 − the same), less the salt in it",
    wouldChange: ["the salinity wanted", "how much new water"],
  });
  const yields = yieldFigure(given, temperature);
  if ("kind" in yields) return yields;
  const own = yields.figure;
  const perPure: Spread =
    own === null
      ? BOUND
      : { low: 100 / own.spread.high, central: 100 / own.spread.central, high: 100 / own.spread.low };
  const mix = figure({
    ...{ name: "mix", label: "dry salt mix", unit: "g", at: "salt", references: [WORK.memory] },
    spread: independently([pure.spread, perPure], ([g = 0, more = 1]) => g * more),
    formula:
      own === null
        ? "pure sea salt × 1.03 to 1.12, for the water bound in a mix"
        : "pure sea salt ÷ yield of your mix",
    inputs: [linkTo(pure), ...(own === null ? [] : [linkTo(own)])],
    judged: own === null,
    wouldChange: ["a batch of your own, weighed and read", "the salinity instrument"],
  });
  const water = figure({
    ...{
      name: "water",
      label: fresh ? "fresh water to begin with" : "litres in the end",
      unit: "L",
      at: "salt",
      inputs,
      references,
    },
    spread: cornersOf([volume, to, temperature, from], ([v = 0, s = 0, t = 25, s0 = 0]) =>
      fresh
        ? saltForNew(v, celsius(t), practicalSalinity(s)).waterL
        : saltToRaise(v, celsius(t), practicalSalinity(s0), practicalSalinity(s)).litres,
    ),
    formula: "mass of water alone, by its density",
  });
  return {
    kind: "answer",
    lead: ["Weigh in about ", middle(mix), " of your dry mix, then let the instrument decide."],
    rows: [
      rowOf("Dry salt mix, about", mix),
      rowOf("Pure sea salt in it", pure),
      ...(own === null ? [] : [rowOf("Yield of your mix", own)]),
      rowOf(fresh ? "Fresh water to begin with" : "Litres in the end", water),
    ],
    tables: [
      {
        title: "In this order",
        columns: ["Step", "What"],
        rows: ORDER.map((text, i) => [[String(i + 1)], [text]]),
      },
    ],
    cautions: CAUTIONS,
    notes: [
      own === null
        ? "Mixes differ, and take up water from the air once opened: weigh one batch, read it, and enter it here."
        : "A yield holds for one bag kept dry; damp salt yields less.",
      "Begin with nine tenths, read, then add the rest: salt that is in can't be taken out.",
    ],
    wouldChange: ["Your instrument: 1 psu too low there is about 3 % too much salt here."],
    figures: [mix, pure, ...(own === null ? [] : [own]), water],
  };
}

const BATCH = ["batch_salt", "batch_water", "batch_salinity"] as const;

/** Of a batch that was weighed and read; null where none was told. */
function yieldFigure(
  given: Given,
  temperature: Spread,
): { readonly figure: ReturnType<typeof figure> | null } | SumRefusal {
  const [salt, litres, read] = BATCH.map(given.maybe);
  const missing = BATCH.find((name) => given.maybe(name) === null);
  if (BATCH.every((name) => given.maybe(name) === null) || salt == null || litres == null || read == null) {
    if (missing === undefined || BATCH.every((name) => given.maybe(name) === null)) return { figure: null };
    return refusal(
      ["A batch needs all three: salt weighed in, water, and the salinity that came of it."],
      missing,
    );
  }
  const tested = doubted(read, READING_DOUBT.salinity_psu, 0.5);
  const found = figure({
    ...{ name: "yield", label: "sea salt in your mix", unit: "%", at: "salt" },
    spread: independently(
      [salt, litres, tested],
      ([g = 1, l = 0, s = 0]) =>
        100 * yieldOf(g, l, celsius(temperature.central), practicalSalinity(0), practicalSalinity(s)),
    ),
    formula: "salt that the reading tells of ÷ mix weighed in",
    inputs: [inputOf("mix weighed in", salt), inputOf("water", litres), inputOf("salinity read", tested)],
    references: [WORK.millero, WORK.eos80],
    wouldChange: ["the salinity instrument"],
  });
  if (found.spread.central > 110 || found.spread.central < 60)
    return refusal(
      [
        `That batch would be ${Math.round(found.spread.central)} % salt; dry mixes hold about 88 to 97 %. Look at its three fields again.`,
      ],
      "batch_salt",
    );
  return { figure: found };
}

const ORDER = [
  "Water into a clean vessel that holds food; never salt first and water onto it",
  "A pump to stir, a heater for the temperature of the tank; both under water before they are plugged in",
  "Salt in by handfuls while it stirs, nine tenths of it",
  "Wait until it is clear, some hours to a day as the maker says; then read salinity twice, an hour apart",
  "Add salt or water until it reads as the tank does, within 0.5 psu; temperature within 1 °C",
  "Change the water slowly, pumps and heaters of the tank off where they would fall dry",
];

const CAUTIONS = [
  "Mains by water: a socket behind a residual-current device (RCD, GFCI), drip loops in the cables, hands out before plugging in. Fixed wiring is for a licensed electrician and the local code.",
  "A litre of seawater weighs about 1 kg: pump it rather than carry it. Salt dust stings eyes and cuts; pour low.",
];
