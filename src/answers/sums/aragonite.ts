/** Whether shells and corals can build: saturation of aragonite, with the tank's own calcium where it was tested. */
import { ARAGONITE_PRODUCT_ERROR, aragoniteSaturation } from "../../engine/seawater/aragonite.ts";
import { carbonateFrom } from "../../engine/seawater/carbonate.ts";
import { calciumPerKilogram, perKilogram } from "../../engine/seawater/composition.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { toCanonical } from "../../engine/units/convert.ts";
import { CARBONATE_SOURCES } from "./carbonate.ts";
import { figuresOf, linkTo, middle, number, row, stated } from "./parts.ts";
import { independently } from "./spread.ts";
import type { Given, Sum, SumAnswer } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE } from "./tank-fields.ts";
import {
  ALKALINITY,
  CALCIUM,
  fitNotes,
  middleWater,
  onTotal,
  PH_BY,
  PH_SCALE,
  phDoubted,
  phInput,
  TEST_NOTE,
  testedAlkalinity,
  testedCalcium,
  testedWater,
  waterInputs,
  waterOf,
} from "./water-fields.ts";

const figure = figuresOf("aragonite");

function work(given: Given): SumAnswer {
  const tested = testedWater(given);
  const alkalinity = testedAlkalinity(given.amount("alkalinity"));
  const ph = phDoubted(given);
  const typed = given.maybe("calcium");
  const calcium = typed === null ? null : testedCalcium(typed);
  const names = ["temperature", "salinity", "alkalinity", "pH", "calcium"];
  const inputs = [
    tested.temperature,
    tested.salinity,
    alkalinity,
    ph.ph,
    ...(calcium === null ? [] : [calcium]),
  ];
  const at = ([t = 0, s = 0, a = 0, reading = 0, ca]: readonly number[]) => {
    const water = waterOf(t, s);
    const state = carbonateFrom(
      { alkalinity: perKilogram(a, water), ph: onTotal(reading, ph.scale, water) },
      water,
    );
    return aragoniteSaturation(state, water, ca === undefined ? undefined : calciumPerKilogram(ca, water));
  };
  const { shares, ...spread } = independently(inputs, at, ARAGONITE_PRODUCT_ERROR);
  const widest = names[shares.indexOf(Math.max(...shares))] ?? "pH";
  const saturation = figure({
    ...{ name: "saturation", label: "saturation of aragonite", unit: "", at: "aragonite", spread },
    formula: "calcium times carbonate over the solubility product",
    inputs: [
      stated("alkalinity", alkalinity, "meq/L"),
      phInput(ph),
      ...(calcium === null ? [] : [stated("calcium", calcium, "mg/L")]),
      ...waterInputs(tested),
    ],
    sources: [
      ...CARBONATE_SOURCES,
      "mucci-1983",
      ...(calcium === null ? (["riley-tongudai-1967"] as const) : []),
    ],
    wouldChange: [`a truer ${widest}`],
  });
  const middles = inputs.map(({ central }) => central);
  const moved = STEPS.filter(({ index }) => index < middles.length).map(({ name, label, index, by }) =>
    figure({
      ...{ name, label: `saturation with ${label}`, unit: "", at: "aragonite" },
      spread: bare(at(middles.with(index, (middles[index] ?? 0) + by))),
      formula: `the same with ${label}`,
      inputs: [linkTo(saturation)],
    }),
  );
  return {
    kind: "answer",
    lead: ["Aragonite is saturated ", middle(saturation), " times", meaning(saturation.spread)],
    rows: [row(saturation)],
    tables: [
      {
        title: "What would move it",
        columns: ["With", "Saturation"],
        rows: moved.map((one, i) => [[STEPS[i]?.label ?? ""], [number(one)]]),
      },
    ],
    cautions: [],
    notes: [
      ...(calcium === null ? ["Calcium was not tested: taken as the sea has it at this salinity."] : []),
      ...fitNotes(middleWater(tested)),
      TEST_NOTE,
      "Open reef water has about 3 to 4 (from memory). Below 1 bare shell dissolves; inside an animal other rules hold.",
      "High saturation is no aim of its own: it also grows on heaters and pumps.",
    ],
    wouldChange: [`A truer ${widest} would narrow it most.`],
    figures: [saturation, ...moved],
  };
}

const bare = (value: number): Spread => ({ low: value, central: value, high: value });

/** One step of each test that a keeper could take; `index` into the inputs above. */
const STEPS = [
  { name: "ph_up", label: "pH 0.1 higher", index: 3, by: 0.1 },
  { name: "alkalinity_up", label: "1 dKH more", index: 2, by: toCanonical("alkalinity", 1, "dKH") },
  { name: "calcium_up", label: "20 mg/L more calcium", index: 4, by: 20 },
] as const;

function meaning({ low, high }: Spread): string {
  if (high < 1) return ": bare shell dissolves in this water.";
  return low > 1 ? ": shell can be built in it." : ": the tests can't tell whether bare shell dissolves.";
}

export const ARAGONITE: Sum = {
  id: "aragonite",
  group: "chemistry",
  name: "Aragonite",
  question: "Can shells and corals build in this water?",
  fields: [ALKALINITY, PH, PH_SCALE, PH_BY, { ...CALCIUM, empty: "optional" }, SALINITY, TEMPERATURE],
  examples: [
    {
      alkalinity: "8 dKH",
      ph: "8.2",
      ph_scale: "nbs",
      calcium: "420 mg/L",
      salinity: "35 psu",
      temperature: "25 C",
    },
    {
      alkalinity: "140 mg/L as CaCO3",
      ph: "7.9",
      ph_by: "kit",
      salinity: "1.025 sg 20/20",
      temperature: "77 F",
    },
  ],
  work,
};
