/** Which gates stay closed for what is seen: a growth that may be toxic, snails that flee the water, a rise of ammonia. */
import { growthFacts } from "../../catalogue/diagnosis.ts";
import { unfoundDeath } from "../../engine/care/diagnosis/unfound-death.ts";
import { judgeWaterline } from "../../engine/care/diagnosis/waterline.ts";
import type { RecordScene } from "../record-scene.ts";
import type { Sentence } from "../sentence.ts";
import { SUSPECTED_FROM } from "./key.ts";
import { type Outbreak, outbreaksOf } from "./outbreaks.ts";
import { diagnosisOf } from "./scene.ts";

export interface ClosedGate {
  readonly reason: Sentence;
  /** What it is for: a growth of the daybook, or a sign. */
  readonly growth: string | null;
  readonly sign: string | null;
}

export function closedGates(scene: RecordScene): readonly ClosedGate[] {
  const diagnosed = diagnosisOf(scene);
  return gatesOf(outbreaksOf(diagnosed), scene);
}

/** Suspicion by traits is enough: what was logged as diatoms may be dinoflagellates. */
export function suspectedIn({ output, suspects }: Outbreak): boolean {
  if (output.closes_gates && suspects.length === 0) return true;
  const grains = suspects
    .filter(({ id }) => growthFacts.get(id)?.closesGates === true)
    .reduce((sum, { of20 }) => sum + of20, 0);
  // Logged as dinoflagellates, traits must speak clearly against it before the gates open.
  return grains >= SUSPECTED_FROM || (output.growth === "dinoflagellates" && grains >= 1);
}

export function gatesOf(outbreaks: readonly Outbreak[], scene: RecordScene): ClosedGate[] {
  const diagnosed = diagnosisOf(scene);
  const toxic = outbreaks.filter(suspectedIn).map(({ output: { growth } }): ClosedGate => {
    return {
      reason: [
        "A growth is seen that may be dinoflagellates: grazers that eat it can die. Add none until a microscope has told what it is.",
      ],
      ...{ growth, sign: null },
    };
  });
  const climbing = judgeWaterline(diagnosed);
  const death = unfoundDeath(diagnosed);
  return [
    ...toxic.slice(0, 1),
    ...(climbing?.verdict === "test_now"
      ? [
          {
            reason: [
              "Several kinds of snails leave the water: add no animal until oxygen, ammonia and salinity are tested.",
            ],
            ...{ growth: null, sign: "waterline_snails" },
          },
        ]
      : []),
    ...(death === null
      ? []
      : [
          {
            reason: [
              "Ammonia or nitrite rose above this tank's usual: add no animal until two tests a day apart show none.",
            ],
            ...{ growth: null, sign: "unfound_death" },
          },
        ]),
  ];
}
