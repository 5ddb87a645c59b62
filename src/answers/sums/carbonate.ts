/** All of the carbonate system from any two of its four, with what the tests may be off by carried through. */
import type { Amount } from "../../contract/quantity/outcome.ts";
import { ARAGONITE_PRODUCT_ERROR, aragoniteSaturation } from "../../engine/seawater/aragonite.ts";
import {
  type CarbonatePair,
  type CarbonateState,
  carbonateFrom,
  type Water,
} from "../../engine/seawater/carbonate.ts";
import { fugacity, partialPressure } from "../../engine/seawater/co2.ts";
import { perKilogram } from "../../engine/seawater/composition.ts";
import { totalToNbs } from "../../engine/seawater/ph-scale.ts";
import type { SeawaterSource } from "../../engine/seawater/sources.ts";
import type { WorkingInput } from "../../engine/types/figure.ts";
import { microatmosphere, micromolePerKilogram, phTotal } from "../../engine/units/quantity.ts";
import { figuresOf, middle, refusal, row, stated } from "./parts.ts";
import { independently } from "./spread.ts";
import type { AmountField, ChoiceField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE } from "./tank-fields.ts";
import {
  ALKALINITY,
  fitNotes,
  middleWater,
  onTotal,
  PH_BY,
  PH_SCALE,
  phDoubted,
  phInput,
  plainRule,
  readWith,
  TEST_NOTE,
  testedAlkalinity,
  testedWater,
  waterInputs,
  waterOf,
} from "./water-fields.ts";

export const CARBONATE_SOURCES: readonly SeawaterSource[] = [
  ...(["lueker-2000", "dickson-1990-borate", "millero-1995", "weiss-1974", "uppstrom-1974"] as const),
  ...(["dickson-1990", "dickson-riley-1979", "takahashi-1982"] as const),
];

const FROM: ChoiceField = {
  ...{ name: "from", label: "What was measured", hint: "", input: "choice", usual: "alkalinity_ph" },
  choices: [
    { text: "alkalinity_ph", label: "Alkalinity and pH" },
    { text: "alkalinity_carbon", label: "Alkalinity and inorganic carbon" },
    { text: "alkalinity_co2", label: "Alkalinity and CO2" },
    { text: "ph_carbon", label: "pH and inorganic carbon" },
    { text: "ph_co2", label: "pH and CO2" },
    { text: "carbon_co2", label: "Inorganic carbon and CO2" },
  ],
};

const CARBON: AmountField = {
  ...{ name: "carbon", label: "Dissolved inorganic carbon", hint: "From a laboratory.", input: "amount" },
  empty: "optional",
  read: readWith(
    plainRule("Inorganic carbon", "umol/kg", ["umol", "umol kg-1"], { min: 1, max: 25_000 }, "2100 umol/kg"),
  ),
  ...{ example: "2100 umol/kg", units: ["umol/kg"] },
};

const CO2_PRESSURE: AmountField = {
  ...{ name: "co2", label: "CO2 of the water, as partial pressure", hint: "", input: "amount" },
  empty: "optional",
  read: readWith(plainRule("CO2", "µatm", ["ppm", "microatm"], { min: 1, max: 200_000 }, "450 µatm")),
  ...{ example: "450 µatm", units: ["µatm"] },
};

/** What each part is read with where no range was typed; carbon and CO2 come from laboratories: as typed. */
interface Part {
  readonly amount: Amount;
  readonly input: WorkingInput;
  readonly put: (value: number, water: Water) => Readonly<Record<string, number>>;
}

function partOf(name: string, given: Given): Part | null {
  const amount = given.maybe(name);
  if (amount === null) return null;
  if (name === "alkalinity") {
    const tested = testedAlkalinity(amount);
    const put = (value: number, water: Water) => ({ alkalinity: perKilogram(value, water) });
    return { amount: tested, input: stated("alkalinity", tested, "meq/L"), put };
  }
  if (name === "ph") {
    const read = phDoubted(given);
    const put = (value: number, water: Water) => ({ ph: onTotal(value, read.scale, water) });
    return { amount: read.ph as Amount, input: phInput(read), put };
  }
  if (name === "carbon")
    return {
      ...{ amount, input: stated("dissolved inorganic carbon", amount, "umol/kg") },
      put: (value) => ({ dic: micromolePerKilogram(value) }),
    };
  const put = (value: number, { temperature }: Water) => ({
    fco2: fugacity(microatmosphere(value), temperature),
  });
  return { amount, input: stated("partial pressure of CO2", amount, "µatm"), put };
}

interface Shown {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly formula: string;
  readonly of: (state: CarbonateState, water: Water) => number;
  readonly own?: number;
  readonly source?: SeawaterSource;
}

const SHOWN: readonly Shown[] = [
  ...[
    {
      ...{ name: "ph_total", label: "pH on the total scale", unit: "" },
      formula: "the acidity at which the parts of alkalinity add up to what was measured",
      of: ({ ph }: CarbonateState) => ph,
    },
    {
      ...{ name: "ph_nbs", label: "pH as an ordinary meter shows it (NBS)", unit: "" },
      formula: "pH on the total scale and the step between the scales",
      of: ({ ph }: CarbonateState, { temperature, salinity }: Water) =>
        totalToNbs(phTotal(ph), temperature, salinity),
    },
  ],
  ...(
    [
      ["alkalinity", "alkalinity", "alkalinity"],
      [
        "dic",
        "dissolved inorganic carbon",
        "carbonate alkalinity over what a mole of carbon holds at this pH",
      ],
      ["bicarbonate", "bicarbonate", "carbon times its share at this pH"],
      ["carbonate", "carbonate", "carbon times its share at this pH"],
      ["co2", "CO2 in the water", "carbon times its share at this pH"],
      ["borateAlkalinity", "alkalinity that is borate", "boron of this salinity times its share at this pH"],
    ] as const
  ).map(([name, label, formula]) => ({
    ...{ name: name.toLowerCase(), label, formula, unit: "umol/kg" },
    of: (state: CarbonateState) => state[name],
  })),
  {
    ...{ name: "pco2", label: "partial pressure of CO2", unit: "µatm" },
    formula: "CO2 in the water over its solubility; fugacity to pressure by 0.3 %",
    of: ({ fco2 }, { temperature }) => partialPressure(fco2, temperature),
  },
  {
    ...{ name: "aragonite", label: "saturation of aragonite, calcium as the sea has it", unit: "" },
    formula: "calcium of this salinity times carbonate over the solubility product",
    of: (state, water) => aragoniteSaturation(state, water),
    ...{ own: ARAGONITE_PRODUCT_ERROR, source: "mucci-1983" },
  },
];

const figure = figuresOf("carbonate");

function work(given: Given): SumAnswer | SumRefusal {
  const names = given.choice("from").split("_");
  const parts = names.map((name) => ({ name, part: partOf(name, given) }));
  for (const { name, part } of parts) {
    if (part !== null) continue;
    const label = {
      alkalinity: "the alkalinity",
      ph: "the pH",
      carbon: "the inorganic carbon",
      co2: "the CO2",
    };
    return refusal([`To work from that pair, enter ${label[name as keyof typeof label]} too.`], name);
  }
  const [one, two] = parts.map(({ part }) => part as Part) as [Part, Part];
  const tested = testedWater(given);
  const inputs = [tested.temperature, tested.salinity, one.amount, two.amount];
  const stateAt = ([t = 0, s = 0, a = 0, b = 0]: readonly number[]) => {
    const water = waterOf(t, s);
    const pair = { ...one.put(a, water), ...two.put(b, water) } as unknown as CarbonatePair;
    return { state: carbonateFrom(pair, water), water };
  };
  const { shares } = independently(inputs, (values) => stateAt(values).state.fco2);
  const widest = ["temperature", "salinity", one.input.label, two.input.label][
    shares.indexOf(Math.max(...shares))
  ] as string;
  const figures = SHOWN.map(({ name, label, unit, formula, of, own = 0, source }) =>
    figure({
      ...{ name, label, unit, formula, at: "carbonate-system" },
      spread: independently(
        inputs,
        (values) => {
          const { state, water } = stateAt(values);
          return of(state, water);
        },
        own,
      ),
      inputs: [one.input, two.input, ...waterInputs(tested)],
      sources: [...CARBONATE_SOURCES, ...(source === undefined ? [] : [source])],
      wouldChange: [`a truer ${widest}`],
    }),
  );
  const find = (name: string) =>
    figures.find(({ id }) => id.endsWith(`.${name}`)) as (typeof figures)[number];
  return {
    kind: "answer",
    lead: [
      "This water holds ",
      middle(find("dic")),
      " of inorganic carbon, and its CO2 presses with ",
      middle(find("pco2")),
      ".",
    ],
    rows: figures.map((one) => row(one)),
    ...{ tables: [], cautions: [] },
    notes: [
      ...fitNotes(middleWater(tested)),
      TEST_NOTE,
      "Phosphate, silicate and organic acids are left out of the alkalinity: nothing below 1 mg/L of phosphate.",
    ],
    wouldChange: [`A truer ${widest} would narrow it most.`],
    figures,
  };
}

export const CARBONATE: Sum = {
  id: "carbonate",
  group: "chemistry",
  name: "Carbonate system",
  question: "What follows from two of alkalinity, pH, carbon and CO2?",
  fields: [
    FROM,
    { ...ALKALINITY, empty: "optional" },
    { ...PH, empty: "optional" },
    ...[PH_SCALE, PH_BY, CARBON, CO2_PRESSURE, SALINITY, TEMPERATURE],
  ],
  examples: [
    { alkalinity: "8 dKH", ph: "8.2", ph_scale: "nbs", salinity: "35 psu", temperature: "25 C" },
    {
      from: "alkalinity_carbon",
      alkalinity: "2.9 meq/L",
      carbon: "2450 umol/kg",
      salinity: "34 psu",
      temperature: "78 F",
    },
    { from: "ph_co2", ph: "8.1", ph_by: "kit", co2: "500-700 µatm", salinity: "35 psu", temperature: "25 C" },
  ],
  work,
};
