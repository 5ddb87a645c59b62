/** A calm, settled tank of 200 L, a year old, and its daybook, to be bent by each test of diagnosis. */

import { diagnosis } from "../../src/catalogue/diagnosis.ts";
import { animalById } from "../../src/catalogue/index.ts";
import type { DiagnosisScene, Subject } from "../../src/engine/care/diagnosis/scene.ts";
import type { Effect } from "../../src/engine/types/diagnosis.ts";
import type { Estimate, Known } from "../../src/engine/types/estimate.ts";
import type { Happening, Observation, TankRecord } from "../../src/engine/types/record.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { randomTank } from "./tanks.ts";

export const AS_OF = "2026-06-15";

const exact = (central: number): Estimate => ({
  ...{ low: central, central, high: central },
  ...{ origin: "stated", how: "typed" },
});
const known = <T>(value: T): Known<T> => ({ value, origin: "stated" });

const CALM: TankFacts = {
  ...randomTank(7),
  name: "invented",
  asOf: AS_OF,
  ...{ waterL: exact(200), displayL: exact(180), ageDays: exact(365) },
  ...{ glassM2: exact(0.8), litRockM2: exact(0.8), sandM2: exact(0.25), lightHours: exact(9) },
  ...{ feedGPerDay: exact(0.4), feedNMgPerG: exact(77) },
  ...{ waterChangeFraction: exact(0.1), waterChangeEveryDays: exact(7) },
  ...{ sourceWater: known<"tap" | "conditioned" | "purified">("purified"), skimmer: known(true) },
  ...{ medicines: [], trouble: null, sightings: {}, readings: [], planned: [], assumed: [] },
  present: [
    { id: "trochus-snail", count: 3, on: "2025-09-01" },
    { id: "nassarius-snail", count: 3, on: "2025-09-01" },
  ],
};

type Loose<T> = T extends unknown ? Omit<T, "entry"> & { entry?: string } : never;

export interface Bent {
  readonly facts?: Partial<TankFacts>;
  readonly observations?: readonly Loose<Observation>[];
  readonly happenings?: readonly Loose<Happening>[];
  readonly asOf?: string;
}

const dated = <T extends { readonly on: string }>(rows: readonly T[]): T[] =>
  [...rows].sort((a, b) => a.on.localeCompare(b.on));

export function recordOf({ observations = [], happenings = [], asOf = AS_OF }: Bent): TankRecord {
  return {
    observations: dated(observations).map((one, i) => ({ entry: `o${i}`, ...one }) as Observation),
    happenings: dated(happenings).map((one, i) => ({ entry: `h${i}`, ...one }) as Happening),
    declined: [],
    asOf,
  };
}

export function bentFacts({ facts = {}, asOf = AS_OF }: Bent): TankFacts {
  return { ...CALM, asOf, ...facts };
}

export const diagnosisScene = (bent: Bent = {}): DiagnosisScene => ({
  ...{ facts: bentFacts(bent), record: recordOf(bent) },
  ...{ animals: animalById, diagnosis },
});

export const subjectOf = (effect: Effect, more: Partial<Subject> = {}): Subject => ({
  ...{ effect, on: AS_OF, animal: null, kindsSeen: null, hoursFromLightsOut: null },
  ...more,
});

export const reading = (
  quantity: Extract<Observation, { kind: "reading" }>["quantity"],
  central: number,
  on: string,
  more: { step?: number | null; censored?: "below" | "above" | null } = {},
): Loose<Observation> => ({
  ...{ kind: "reading", quantity, on, flag: null },
  value: { low: central, central, high: central },
  step: more.step ?? null,
  censored: more.censored ?? null,
});

export const growth = (
  name: Extract<Observation, { kind: "growth" }>["growth"],
  score: number,
  on: string = AS_OF,
  traits: Readonly<Record<string, boolean>> = {},
): Loose<Observation> => ({ kind: "growth", growth: name, score, on, traits });

export const sign = (
  name: Extract<Observation, { kind: "sign" }>["sign"],
  more: Partial<Omit<Extract<Observation, { kind: "sign" }>, "kind" | "sign">> = {},
): Loose<Observation> => ({
  ...{ kind: "sign", sign: name, on: AS_OF, animal: null, count: null },
  ...{ kindsSeen: null, hoursFromLightsOut: null, traits: {} },
  ...more,
});
