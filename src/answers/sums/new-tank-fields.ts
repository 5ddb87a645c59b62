/** Fields of a tank that is described by its sides, and the water in it by the arithmetic of the tank file. */
import { readPlain } from "../../contract/quantity/plain.ts";
import { readSandDepth } from "../../contract/quantity/sand-depth.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import { type Furnishing, surfacesOf } from "../../contract/tank-file/surfaces.ts";
import type { WorkingInput } from "../../engine/types/figure.ts";
import { round3 } from "../../engine/types/link.ts";
import { readLength } from "./change-parts.ts";
import { inputOf } from "./spread.ts";
import type { AmountField, Given } from "./sum.ts";

const side = (name: string, label: string, example: string): AmountField => ({
  ...{ name, label, hint: "", input: "amount", empty: "needed" },
  ...{ read: readLength, example, units: ["cm", "in"] },
});

export const SIDES: readonly AmountField[] = [
  {
    ...side("length", "Length, outside", "100 cm"),
    hint: "Outside to outside; inner sides give a little too little water.",
  },
  side("width", "Width, front to back", "50 cm"),
  side("height", "Height of the glass", "50 cm"),
];

export const ROCK: AmountField = {
  ...{ name: "rock", label: "Rock, dry", hint: "", input: "amount" },
  empty: { text: "0 kg", how: "no rock" },
  ...{ read: (text, context) => readPlain("rock_kg", text, context), example: "15 kg", units: ["kg", "lb"] },
};

export const SAND: AmountField = {
  ...{ name: "sand", label: "Depth of the sand", hint: "", input: "amount" },
  empty: { text: "0 mm", how: "a bare floor" },
  ...{ read: readSandDepth, example: "30 mm", units: ["mm", "cm", "in"] },
};

export const SUMP: AmountField = {
  ...{ name: "sump", label: "Water in the sump while it runs", hint: "", input: "amount" },
  empty: { text: "0 L", how: "no sump" },
  read: (text, context) =>
    /^\s*0+([.,]0*)?\s*l?\s*$/i.test(text)
      ? {
          ...{ verdict: "accept", original: { text, unit: "L" }, message: null },
          value: { low: 0, central: 0, high: 0, unit: "L", censored: null },
        }
      : readVolume(text, context),
  ...{ example: "40 L", units: ["L", "US gal", "imp gal"] },
};

/** Water, sand and rock of a box with these sides, as the tank file reckons them. */
export function furnished(given: Given) {
  const [length, width, height] = [given.amount("length"), given.amount("width"), given.amount("height")];
  const [rock, sand, sump] = [given.amount("rock"), given.amount("sand"), given.amount("sump")];
  const [lengthCm, widthCm, heightCm] = [length.central, width.central, height.central];
  const stated: Furnishing = {
    waterL: undefined,
    display: {
      sides: {
        ...{ lengthCm, widthCm, heightCm, grossL: (lengthCm * widthCm * heightCm) / 1000 },
        how: `sides of ${round3(lengthCm)} x ${round3(widthCm)} x ${round3(heightCm)} cm`,
      },
    },
    otherChambers: sump.central === 0 ? [] : [{ waterL: { ...sump, how: "said of the sump" } }],
    rockStart: rock.central === 0 ? "none" : "dry",
    floorKind: sand.central === 0 ? "bare" : "sand",
    amounts: { rockKg: { ...rock, how: "said" }, sandDepthMm: { ...sand, how: "said" } },
  };
  const inputs: WorkingInput[] = [
    inputOf("length", length),
    inputOf("width", width),
    inputOf("height", height),
    inputOf("rock", rock),
    inputOf("depth of the sand", sand),
    inputOf("water in the sump", sump),
  ];
  return {
    ...surfacesOf(stated),
    inputs,
    lengthCm,
    widthCm,
    heightCm,
    floorM2: (lengthCm * widthCm) / 10_000,
  };
}
