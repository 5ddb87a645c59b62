/**
 * Growths and signs of the record: what each may be, why, what to do and not to do, which gates stay closed, which tests
 * to doubt first, a death that nobody found. Quick and pure. docs/model/diagnosis.md
 */
import type { GrowthsOutput } from "../../contract/output/growths.ts";
import { type MayBeTest, mayBeTests } from "../../engine/care/diagnosis/artefacts.ts";
import {
  type OtherCause,
  type UnfoundDeath,
  unfoundDeath,
} from "../../engine/care/diagnosis/unfound-death.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { RecordScene, Said } from "../record-scene.ts";
import { plain } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { growthAdvice } from "./advice.ts";
import { clueWords } from "./causes.ts";
import { riseFigure } from "./figures.ts";
import { gatesOf } from "./gates.ts";
import { outbreaksOf } from "./outbreaks.ts";
import { diagnosisOf } from "./scene.ts";
import { signsTold } from "./signs.ts";
import { starvingKinds } from "./starving.ts";

export function growthsOf(scene: RecordScene): Said<GrowthsOutput> {
  const diagnosed = diagnosisOf(scene);
  const outbreaks = outbreaksOf(diagnosed);
  const signs = signsTold(diagnosed);
  const death = unfoundDeath(diagnosed);
  const output: GrowthsOutput = {
    ...{ schema: "grazewell.growths/1", engine: ENGINE_VERSION },
    tank: { name: scene.facts.name, as_of: scene.today },
    growths: outbreaks.map((outbreak) => outbreak.output),
    signs: signs.map((sign) => sign.output),
    tests_first: mayBeTests(diagnosed).map(testOf),
    unfound_death: death === null ? null : deathOf(death),
    hungry: starvingKinds(null, scene).map(({ animal, name, heads, inWeeks, said }) => ({
      ...{ animal, name, heads, in_weeks: inWeeks, said: plain(said) },
    })),
    gates_closed: gatesOf(outbreaks, scene).map(({ reason, growth, sign }) => ({
      ...{ reason: plain(reason), growth, sign },
    })),
    statement: STATEMENT,
  };
  return {
    output,
    figures: [
      ...outbreaks.flatMap(({ figures }) => figures),
      ...signs.flatMap(({ figures }) => figures),
      ...(death === null ? [] : [riseFigure(death)]),
    ],
    advice: growthAdvice(output, outbreaks, scene.today),
  };
}

const QUANTITY: Readonly<Record<string, string>> = {
  ...{ tan_mg_n_per_l: "Ammonia", no2_mg_n_per_l: "Nitrite", no3_mg_n_per_l: "Nitrate" },
  ...{ po4_mg_p_per_l: "Phosphate", salinity_psu: "Salinity", temperature_c: "Temperature", ph: "pH" },
  ...{ alkalinity_meq_per_l: "Alkalinity", calcium_mg_per_l: "Calcium", magnesium_mg_per_l: "Magnesium" },
};
const quantityName = (id: string): string => QUANTITY[id] ?? id;

function testOf({ artefact, reading, because, animalsIll }: MayBeTest) {
  return {
    ...{ id: artefact.id, quantity: quantityName(artefact.of), on: reading.on },
    ...{ says: artefact.says.text, check: artefact.check.text, animals_ill: animalsIll },
    because: because.map((id) => clueWords({ id, holds: true, on: null })),
  };
}

const OTHER_WORDS: Readonly<Record<OtherCause, string>> = {
  young_tank: "the tank is young, and its filter still grows",
  fed_more: "feeding was raised",
  many_added: "many animals were added",
  outage: "pumps, power or heating failed",
  treatment: "a treatment was given",
  filter_changed: "the filter was changed",
  sand_stirred: "the sand was stirred",
  known_death: "a death is known whose body may still lie there",
  leftovers: "much food was left over",
};

function deathOf(death: UnfoundDeath): NonNullable<GrowthsOutput["unfound_death"]> {
  const { quantity, on, rise, usual, named, others, nitriteToo, cloudyToo } = death;
  const with_ = [...(nitriteToo ? ["nitrite rose too"] : []), ...(cloudyToo ? ["the water is cloudy"] : [])];
  return {
    ...{ quantity: quantityName(quantity), on, named, others: [...others] },
    rise_mg_n_per_l: Number(rise.toPrecision(2)),
    figure: figureId.unfoundRise(),
    usual_mg_n_per_l: usual === null ? null : Number(usual.toPrecision(2)),
    said: [
      named
        ? "No other cause is known: something may have died where it is not seen."
        : `It may come from something known: ${others.map((one) => OTHER_WORDS[one]).join("; ")}. A death that nobody found would look the same.`,
      ...(with_.length === 0 ? [] : [`With it: ${with_.join(", ")}.`]),
    ],
  };
}
