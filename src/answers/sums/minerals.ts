/** Calcium, magnesium and alkalinity beside what the sea holds at the tank's own salinity. */
import type { Amount } from "../../contract/quantity/outcome.ts";
import type { Water } from "../../engine/seawater/carbonate.ts";
import { naturalAlkalinityMeqPerL, naturalMgPerL } from "../../engine/seawater/composition.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { fromCanonical } from "../../engine/units/convert.ts";
import { ATOMIC_MASS } from "../../engine/units/masses.ts";
import { figuresOf, linkTo, middle, row, stated, times } from "./parts.ts";
import { independently } from "./spread.ts";
import type { Given, Sum, SumAnswer } from "./sum.ts";
import { SALINITY, TEMPERATURE } from "./tank-fields.ts";
import {
  ALKALINITY,
  CALCIUM,
  MAGNESIUM,
  TEST_NOTE,
  testedAlkalinity,
  testedCalcium,
  testedMagnesium,
  testedWater,
  waterInputs,
  waterOf,
} from "./water-fields.ts";

interface Mineral {
  readonly name: "calcium" | "magnesium" | "alkalinity";
  /** Told in this. */
  readonly unit: string;
  /** From the canonical unit to the one it is told in. */
  readonly factor: number;
  readonly natural: (water: Water) => number;
  readonly tested: (amount: Amount) => Amount;
}

const DKH_PER_MEQ = fromCanonical("alkalinity", 1, "dKH");
const MINERALS: readonly Mineral[] = [
  {
    ...{ name: "calcium", unit: "mg/L", factor: 1, tested: testedCalcium },
    natural: (water) => naturalMgPerL("calcium", water),
  },
  {
    ...{ name: "magnesium", unit: "mg/L", factor: 1, tested: testedMagnesium },
    natural: (water) => naturalMgPerL("magnesium", water),
  },
  {
    ...{ name: "alkalinity", unit: "dKH", factor: DKH_PER_MEQ, tested: testedAlkalinity },
    natural: naturalAlkalinityMeqPerL,
  },
];

const figure = figuresOf("minerals");

function work(given: Given): SumAnswer {
  const tested = testedWater(given);
  const water = [tested.temperature, tested.salinity];
  const found = MINERALS.flatMap((mineral) => {
    const amount = given.maybe(mineral.name);
    return amount === null ? [] : [{ mineral, amount: mineral.tested(amount) }];
  });
  const natural = new Map<string, Figure>(
    MINERALS.map(({ name, unit, factor, natural: of }) => [
      name,
      figure({
        ...{ name: `natural_${name}`, label: `${name} of the sea at this salinity`, unit, at: "composition" },
        spread: independently(water, ([t = 0, s = 0]) => factor * of(waterOf(t, s))),
        formula: "what the reference sea salt holds, by salinity and density",
        ...{ inputs: waterInputs(tested), sources: ["millero-2008", "millero-poisson-1981"] },
        wouldChange: ["the salinity"],
      }),
    ]),
  );
  const shares = found.map(({ mineral: { name, unit, factor, natural: of }, amount }) =>
    figure({
      ...{ name: `share_${name}`, label: `your ${name}, of what the sea has`, unit: "%", at: "composition" },
      spread: independently([...water, amount], ([t = 0, s = 0, a = 0]) => (100 * a) / of(waterOf(t, s))),
      formula: "yours over the sea's, at one salinity",
      inputs: [stated(name, times(amount, factor), unit), linkTo(natural.get(name) as Figure)],
      wouldChange: [`a truer ${name} or salinity`],
    }),
  );
  const [calcium, magnesium] = ["calcium", "magnesium"].map((wanted) =>
    found.find(({ mineral }) => mineral.name === wanted),
  );
  const ratio =
    calcium === undefined || magnesium === undefined || calcium.amount.low <= 0
      ? []
      : [
          figure({
            ...{ name: "ratio", label: "magnesium atoms for each of calcium; the sea has 5.14", unit: "" },
            spread: independently(
              [magnesium.amount, calcium.amount],
              ([mg = 0, ca = 0]) => mg / ATOMIC_MASS.Mg / (ca / ATOMIC_MASS.Ca),
            ),
            ...{ at: "composition", formula: "moles of the one over moles of the other" },
            inputs: [
              stated("magnesium", magnesium.amount, "mg/L"),
              stated("calcium", calcium.amount, "mg/L"),
            ],
            sources: ["iupac-weights"],
          }),
        ];
  const all = [...natural.values()];
  const [first] = shares;
  return {
    kind: "answer",
    lead:
      first === undefined
        ? [
            "At this salinity the sea has ",
            middle(all[0] as Figure),
            " of calcium and ",
            middle(all[1] as Figure),
            " of magnesium.",
          ]
        : [
            "Your ",
            found[0]?.mineral.name ?? "",
            " is ",
            middle(first),
            " of what the sea has at this salinity.",
          ],
    rows: [...all, ...shares, ...ratio].map((one) => row(one)),
    ...{ tables: [], cautions: [] },
    notes: [
      TEST_NOTE,
      "Compared with the tank's own salinity: at 33 psu natural calcium is 397 mg/L, not the 421 of 35.",
      "Keepers hold calcium at 380 to 460 mg/L, magnesium at 1250 to 1400, alkalinity at 6.5 to 11 dKH; common practice, no source.",
      "Where all three are off by the same share, it is the salinity that is off.",
    ],
    wouldChange: ["A salinity that is truer moves all of them alike."],
    figures: [...all, ...shares, ...ratio],
  };
}

export const MINERALS_SUM: Sum = {
  id: "minerals",
  group: "chemistry",
  name: "Calcium, magnesium, alkalinity",
  question: "Are they low, or is the water only less salty?",
  fields: [
    { ...CALCIUM, empty: "optional" },
    { ...MAGNESIUM, empty: "optional" },
    { ...ALKALINITY, empty: "optional" },
    ...[SALINITY, TEMPERATURE],
  ],
  examples: [
    {
      calcium: "400 mg/L",
      magnesium: "1240 mg/L",
      alkalinity: "7 dKH",
      salinity: "33 psu",
      temperature: "25 C",
    },
    { magnesium: "1350 mg/L", salinity: "1.026 sg 20/20", temperature: "78 F" },
    { salinity: "35 psu", temperature: "25 C" },
  ],
  work,
};
