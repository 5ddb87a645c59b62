/**
 * Events of the record that no good news has settled yet: losses, signs, outages, medicine, readings out of the usual.
 * One list, so that bench and round judge by the same, and so that silence after any of them is known.
 */
import type { HeadsChanged, Outage, SignSeen } from "../../engine/types/record.ts";
import { calmDays, isCalm, isSettled } from "./calm.ts";
import type { KnownOfTank } from "./known.ts";

/** A loss or ill animals: two days of good news, the first a week later. */
const SLOW = { after: 7, needed: 2 };
/** What a look on the next day tells. */
const QUICK = { after: 1, needed: 1 };

export interface Unsettled {
  readonly found: readonly HeadsChanged[];
  readonly feared: readonly HeadsChanged[];
  readonly signs: readonly SignSeen[];
  readonly outages: readonly Outage[];
  /** Medicines of the record that were put in and not taken out, by name as typed. */
  readonly medicines: readonly { readonly substance: string; readonly entry: string }[];
  /** Days of good news. */
  readonly calm: readonly string[];
}

export function unsettled(known: KnownOfTank): Unsettled {
  const { observations, happenings } = known.record;
  const calm = calmDays(known);
  const stands = (on: string, by: typeof SLOW) => !isSettled(on, calm, by);
  const lost = (kind: HeadsChanged["kind"]) =>
    happenings.filter((one): one is HeadsChanged => one.kind === kind && stands(one.on, SLOW));
  return {
    found: lost("lost_found"),
    feared: lost("lost_feared").filter((one) => !wasCounted(one, known)),
    signs: observations.filter(
      (one): one is SignSeen =>
        one.kind === "sign" && stands(one.on, one.sign === "ill_animals" ? SLOW : QUICK),
    ),
    outages: happenings.filter((one): one is Outage => one.kind === "outage" && stands(one.on, QUICK)),
    medicines: runningMedicines(known),
    calm,
  };
}

/** Half or more of the kind were seen on that day or later. */
const wasCounted = ({ animal, on }: HeadsChanged, known: KnownOfTank): boolean =>
  known.record.observations.some(
    (one) => one.kind === "heads" && one.animal === animal && one.on >= on && isCalm(one, known),
  );

function runningMedicines({ record }: KnownOfTank): Unsettled["medicines"] {
  const running = new Map<string, { substance: string; entry: string }>();
  for (const one of record.happenings) {
    if (one.kind !== "treated") continue;
    const name = one.substance.trim().toLowerCase();
    if (one.step === "started") running.set(name, { substance: one.substance, entry: one.entry });
    else running.delete(name);
  }
  return [...running.values()];
}
