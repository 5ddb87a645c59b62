/**
 * Known faults of tests that a reading may be: they come before alarm, unless animals look ill. A reading of the last
 * week that is high, low or no more than a step of its kit is held against facts/causes/test-artefacts.yaml.
 * docs/model/diagnosis.md#artefacts
 */
import type { TestArtefact } from "../../types/diagnosis.ts";
import type { ReadingSeen } from "../../types/record.ts";
import type { Reading } from "../../types/tank.ts";
import { clueOf } from "./clues.ts";
import { type DiagnosisScene, readingsOf, type Subject, signsSeen, within } from "./scene.ts";

export interface MayBeTest {
  readonly artefact: TestArtefact;
  readonly reading: ReadingSeen;
  /** Clues of the record that hold and make it likelier. */
  readonly because: readonly string[];
  /** Animals look ill: the reading is taken as true until it is tested again. */
  readonly animalsIll: boolean;
}

const NEWS_DAYS = 7;
const ILL_DAYS = 3;

/** Outside these a reading is out of the ordinary, in the unit of its name: the reader's own bounds, and judgement. */
const ORDINARY: Readonly<
  Partial<Record<Reading["quantity"], { readonly low: number; readonly high: number }>>
> = {
  tan_mg_n_per_l: { low: 0, high: 0.2 },
  no2_mg_n_per_l: { low: 0, high: 0.1 },
  no3_mg_n_per_l: { low: 0.25, high: 20 / 4.4268 },
  po4_mg_p_per_l: { low: 0.005, high: 0.1 / 3.0661 },
  salinity_psu: { low: 33, high: 36 },
  ph: { low: 7.8, high: 8.5 },
  alkalinity_meq_per_l: { low: 2.3, high: 4 },
  calcium_mg_per_l: { low: 380, high: 480 },
};

function fits({ shows, of }: TestArtefact, { value, censored, step }: ReadingSeen): boolean {
  const ordinary = ORDINARY[of];
  if (ordinary === undefined) return false;
  if (shows === "step")
    return censored === null && step !== null && value.central > 0 && value.central <= step * 1.01;
  if (censored === "below") return false;
  return shows === "high" ? value.central > ordinary.high : value.central < ordinary.low;
}

/** Animals that looked ill, gasped, or climbed out in several kinds within days. */
export const animalsLookIll = ({ record }: DiagnosisScene): boolean =>
  signsSeen(record, "ill_animals").some((one) => one.count !== 0 && within(one.on, record.asOf, ILL_DAYS)) ||
  signsSeen(record, "waterline_snails").some(
    (one) => (one.kindsSeen ?? 1) >= 2 && one.count !== 0 && within(one.on, record.asOf, ILL_DAYS),
  );

export function mayBeTests(scene: DiagnosisScene): MayBeTest[] {
  const ill = animalsLookIll(scene);
  return scene.diagnosis.artefacts.flatMap((artefact) => {
    const reading = readingsOf(scene, artefact.of)
      .filter((one) => within(one.on, scene.record.asOf, NEWS_DAYS))
      .at(-1);
    if (reading === undefined || !fits(artefact, reading)) return [];
    const subject: Subject = {
      ...{ effect: "ill_animals", on: reading.on, animal: null, kindsSeen: null, hoursFromLightsOut: null },
    };
    const because = artefact.speaksFor.filter((id) => clueOf(id, scene, subject).holds === true);
    // One that needs a reason is not brought up without it.
    if (artefact.speaksFor.length > 0 && because.length === 0) return [];
    return [{ artefact, reading, because, animalsIll: ill }];
  });
}
