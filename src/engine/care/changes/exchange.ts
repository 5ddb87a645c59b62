/**
 * Salinity brought to another in daily steps by taking tank water out and putting other water in. By mass, so that it is
 * exact. docs/model/water-changes.md, "Steps of salinity".
 */
import { density } from "../../seawater/density.ts";
import { type Celsius, type PracticalSalinity, practicalSalinity } from "../../units/quantity.ts";

export interface SalinityStep {
  readonly from: number;
  readonly to: number;
  /** Litres of tank water to take out. */
  readonly outL: number;
  /** Litres of the other water to put in: as many kg as were taken out. */
  readonly inL: number;
}

/** Equal steps of at most `perDay`. `other` must lie beyond `to`. @throws OutOfRange as the density */
export function salinitySteps(
  litres: number,
  temperature: Celsius,
  from: number,
  to: number,
  other: number,
  perDay: number,
): SalinityStep[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / perDay - 1e-9));
  const steps: SalinityStep[] = [];
  const kg = (litres * density(temperature, practicalSalinity(from))) / 1000;
  for (let i = 0; i < count; i += 1) {
    const at = from + ((to - from) * i) / count;
    const next = from + ((to - from) * (i + 1)) / count;
    const share = (at - next) / (at - other);
    const moved = kg * share;
    steps.push({
      from: at,
      to: next,
      outL: litresOf(moved, temperature, practicalSalinity(at)),
      inL: litresOf(moved, temperature, practicalSalinity(other)),
    });
  }
  return steps;
}

const litresOf = (kg: number, temperature: Celsius, psu: PracticalSalinity): number =>
  (1000 * kg) / density(temperature, psu);
