/** Fields and cautions of every sum that doses: the salt, its purity, the tank's water, and what can hurt a person. */
import { convertible, readPlain } from "../../contract/quantity/plain.ts";
import { type Raised, raises } from "../../engine/seawater/dosing.ts";
import { molarMass, REAGENTS, type Reagent, type ReagentId } from "../../engine/seawater/reagents.ts";
import type { WorkingInput } from "../../engine/types/figure.ts";
import { fromCanonical } from "../../engine/units/convert.ts";
import { stated } from "./parts.ts";
import type { AmountField, ChoiceField, FromTank, Given } from "./sum.ts";
import { readWith } from "./water-fields.ts";

const ALL = Object.values(REAGENTS);

/** Salts that raise it, the mildest first; null: all of them. Hydroxide of calcium is dosed by its alkalinity alone. */
export const reagentField = (
  what: Raised | null,
  usual: ReagentId | null,
  name = "reagent",
  label = "Pure salt",
  dosedAlready = false,
): ChoiceField => ({
  ...{ name, label, input: "choice", usual },
  hint: "As the jar says: water in the crystal makes it heavier.",
  choices: ALL.filter(
    (of) =>
      what === null || (raises(of, what) && (dosedAlready || what !== "calcium" || of.equivalents === 0)),
  ).map(({ id, label: words, formula }) => ({
    text: id,
    label: `${words.charAt(0).toUpperCase()}${words.slice(1)}, ${formula}`,
  })),
});

export const PURITY: AmountField = {
  ...{ name: "purity", label: "Purity", input: "amount" },
  hint: "By mass, as the jar says. Damp calcium chloride holds less.",
  empty: { text: "100 %", how: "taken to be as its formula says" },
  read: (text, context) => readPlain("percent", text, context),
  ...{ example: "97 %", units: ["%"] },
};

export const GRAMS: AmountField = {
  ...{ name: "grams", label: "Weight of the salt", hint: "", input: "amount", empty: "needed" },
  read: (text, context) => readPlain("mass_g", text, context),
  ...{ example: "5 g", units: ["g", "kg", "oz", "lb"] },
};

export const reagentOf = (given: Given, name = "reagent"): Reagent =>
  REAGENTS[given.choice(name) as ReagentId];

/** Purity as a share; nought is no salt. */
export const purityOf = (given: Given, name = "purity"): { low: number; central: number; high: number } => {
  const { low, central, high } = given.amount(name);
  return { low: low / 100, central: central / 100, high: high / 100 };
};

export const reagentInput = (of: Reagent): WorkingInput => ({
  ...{ label: `${of.label}, ${of.formula}`, value: `${molarMass(of).toFixed(3)} g/mol` },
  origin: "derived",
});

export const purityInput = (given: Given): WorkingInput => stated("purity", given.amount("purity"), "%");

export const DKH = fromCanonical("alkalinity", 1, "dKH");

/** How each quantity is told, and what its changes are held to. */
export interface RaisedRule {
  readonly what: Raised;
  readonly unit: string;
  /** From the unit of the engine to the one it is told in. */
  readonly factor: number;
  /** Most a day where nobody says otherwise, in the unit told; common practice, no source. */
  readonly most: FromTank;
  readonly mostWords: string;
  /** A change, not a level: small amounts are usual. */
  readonly readChange: AmountField["read"];
  /** Above it a target is more than keepers hold, in the unit told; common practice, no source. */
  readonly high: number;
}

const changeRule = (quantity: Raised, unit: string, max: number, example: string): AmountField["read"] =>
  readWith(convertible({ label: "Change", quantity, unit, hard: { min: 0, max, open: true }, example }));

export const RAISED: Readonly<Record<Raised, RaisedRule>> = {
  alkalinity: {
    readChange: changeRule("alkalinity", "meq/L", 5, "0.5 dKH"),
    ...{ what: "alkalinity", unit: "dKH", factor: DKH, high: 12 },
    most: { text: "0.5 dKH", how: "common practice, no source" },
    mostWords: "Keepers raise alkalinity by 0.5 to 1 dKH a day at most; common practice, no source.",
  },
  calcium: {
    readChange: changeRule("calcium", "mg/L", 500, "20"),
    ...{ what: "calcium", unit: "mg/L", factor: 1, high: 480 },
    most: { text: "20 mg/L", how: "common practice, no source" },
    mostWords: "Keepers raise calcium by 20 to 50 mg/L a day at most; common practice, no source.",
  },
  magnesium: {
    readChange: changeRule("magnesium", "mg/L", 1000, "50"),
    ...{ what: "magnesium", unit: "mg/L", factor: 1, high: 1500 },
    most: { text: "50 mg/L", how: "common practice, no source" },
    mostWords: "Keepers raise magnesium by 50 to 100 mg/L a day at most; common practice, no source.",
  },
};

const LABEL = "What the maker's label says goes before anything here.";
const DOCTOR =
  "In an eye: rinse with water for a quarter of an hour and see a doctor. Swallowed: call a doctor or poison centre at once.";

/** Of the salts as the subject of a sentence; `are`: more than one. */
const BY_HAZARD: Readonly<Record<Reagent["hazard"], (names: string, are: boolean) => readonly string[]>> = {
  caustic: (names, are) => [
    `${names} ${are ? "burn" : "burns"} skin and eyes. Wear gloves and goggles; keep it, and its dust, from children and animals.`,
    "Put it into much cold water a little at a time, never water onto it: it heats. Never mix it with acid, bleach or another chemical.",
    DOCTOR,
  ],
  irritant: (names, are) => [
    `${names} ${are ? "irritate" : "irritates"} eyes, skin and lungs: gloves and goggles, raise no dust, keep it from children. Never mix it with acid.`,
    DOCTOR,
  ],
  heats: (names, are) => [
    `${names} ${are ? "heat" : "heats"} as ${are ? "they dissolve" : "it dissolves"}: put it into water a little at a time, never water onto it. Its dust irritates eyes and lungs: gloves and goggles, away from children.`,
  ],
  mild: (names) => [`${names}: raise no dust, and keep it from children.`],
};
const ORDER: readonly Reagent["hazard"][] = ["caustic", "irritant", "heats", "mild"];

/** "Calcium chloride", whatever water is in its crystal. */
const bareName = ({ label }: Reagent): string => label.split(",")[0] ?? label;

/** In this order: the person, the label, the animals. */
export function cautionsOf(reagents: readonly Reagent[]): readonly string[] {
  const person = ORDER.flatMap((hazard) => {
    const names = [...new Set(reagents.filter((one) => one.hazard === hazard).map(bareName))];
    if (names.length === 0) return [];
    const joined = names.join(" and ");
    return BY_HAZARD[hazard](`${joined.charAt(0).toUpperCase()}${joined.slice(1)}`, names.length > 1);
  });
  const alkaline = reagents.some(({ equivalents }) => equivalents > 0);
  return [
    ...new Set(person),
    LABEL,
    "Dissolve it first and let it cool; pour it slowly where the water flows, never over an animal.",
    ...(alkaline
      ? [
          "Too much alkalinity at once kills. Weigh twice, and test before every next step; stop if the water turns white.",
        ]
      : []),
    "Never pour calcium and alkalinity in at the same place or time: they fall out as chalk.",
  ];
}

/** What pH does near the spot, and what is taken as mixed. */
export const MIXED_NOTE =
  "Taken as mixed into all of the water; where it is poured pH and salt are far higher for a minute.";
