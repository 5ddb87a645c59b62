/** The record's scene as diagnosis takes it, with the catalogue and the facts of diagnosis. */
import { diagnosis } from "../../catalogue/diagnosis.ts";
import { animalById } from "../../catalogue/index.ts";
import type { DiagnosisScene, Subject } from "../../engine/care/diagnosis/scene.ts";
import type { Effect } from "../../engine/types/diagnosis.ts";
import type { RecordScene } from "../record-scene.ts";

export const diagnosisOf = ({ facts, record }: RecordScene): DiagnosisScene => ({
  ...{ facts, record },
  ...{ animals: animalById, diagnosis },
});

export const aboutNow = (effect: Effect, on: string, more: Partial<Subject> = {}): Subject => ({
  ...{ effect, on, animal: null, kindsSeen: null, hoursFromLightsOut: null },
  ...more,
});

export const nameOfAnimal = (id: string): string => animalById.get(id)?.commonName ?? id;
