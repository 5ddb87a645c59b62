/** Signs of the last days in words: snails at the waterline by kind and hour, and causes behind the rest. */
import type { SignOutput } from "../../contract/output/growths.ts";
import { animalsLookIll } from "../../engine/care/diagnosis/artefacts.ts";
import { type DiagnosisScene, observed, within } from "../../engine/care/diagnosis/scene.ts";
import { judgeWaterline, type WaterlineJudged } from "../../engine/care/diagnosis/waterline.ts";
import type { Effect } from "../../engine/types/diagnosis.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { SignSeen } from "../../engine/types/record.ts";
import { causesTold } from "./causes.ts";
import { aboutNow, nameOfAnimal } from "./scene.ts";

export interface SignTold {
  readonly output: SignOutput;
  readonly figures: readonly Figure[];
}

/** A sign is news for a week; a cast shell and a stranger explain nothing by themselves. */
const NEWS_DAYS = 7;
const EXPLAINED: Readonly<Partial<Record<SignSeen["sign"], { effect: Effect; title: string }>>> = {
  fallen_snails: { effect: "fallen_snails", title: "Snails on their backs" },
  empty_shells: { effect: "empty_shells", title: "Empty shells" },
  hiding: { effect: "hiding", title: "An animal that hides" },
  ill_animals: { effect: "ill_animals", title: "Animals that look ill" },
  cloudy_water: { effect: "cloudy_water", title: "Cloudy water" },
};

export function signsTold(scene: DiagnosisScene): SignTold[] {
  const { record } = scene;
  const waterline = judgeWaterline(scene);
  const latest = new Map<string, SignSeen>();
  for (const one of observed(record, "sign")) {
    if (EXPLAINED[one.sign] === undefined || !within(one.on, record.asOf, NEWS_DAYS)) continue;
    latest.set(one.sign, one);
  }
  return [
    ...(waterline === null ? [] : [waterlineTold(scene, waterline)]),
    ...[...latest.values()].filter(({ count }) => count !== 0).map((sign) => signTold(scene, sign)),
  ];
}

function signTold(scene: DiagnosisScene, sign: SignSeen): SignTold {
  const { effect, title } = EXPLAINED[sign.sign] ?? { effect: "ill_animals" as const, title: sign.sign };
  const told = causesTold(scene, subjectOf(effect, sign));
  const ill = sign.sign === "ill_animals" || animalsLookIll(scene);
  return {
    output: {
      ...{ sign: sign.sign, on: sign.on, animal: sign.animal },
      title: sign.animal === null ? title : `${title}: ${nameOfAnimal(sign.animal)}`,
      verdict: ill ? "test_now" : "look",
      said: ill
        ? ["Test ammonia, temperature and salinity today, and move the surface, before anything else."]
        : [],
      asked_first: [...told.askedFirst],
      causes: [...told.causes],
      would_tell: [...told.wouldTell],
    },
    figures: told.figures,
  };
}

const subjectOf = (effect: Effect, sign: SignSeen) =>
  aboutNow(effect, sign.on, {
    ...{ animal: sign.animal, kindsSeen: sign.kindsSeen, hoursFromLightsOut: sign.hoursFromLightsOut },
  });

function waterlineTold(scene: DiagnosisScene, judged: WaterlineJudged): SignTold {
  const { sign, verdict, animals, kinds } = judged;
  const [only] = animals;
  const animal = animals.length === 1 && only !== undefined ? only : null;
  const subject = { ...subjectOf("waterline_snails", sign), animal, kindsSeen: kinds };
  const told = causesTold(scene, subject);
  return {
    output: {
      ...{ sign: "waterline_snails", on: sign.on, animal, verdict },
      title: animal === null ? "Snails at the waterline" : `At the waterline: ${nameOfAnimal(animal)}`,
      said: waterlineWords(judged),
      asked_first: [...told.askedFirst],
      causes: [...told.causes],
      would_tell: [...told.wouldTell],
    },
    figures: told.figures,
  };
}

/** Plain words, no metaphor: something may be wrong with the water. */
function waterlineWords({ verdict, kinds, animals, dark, habit }: WaterlineJudged): string[] {
  const [only] = animals;
  const name = only === undefined ? "this kind" : nameOfAnimal(only);
  if (verdict === "test_now")
    return [
      `${kinds} kinds are at the waterline at once: test oxygen, ammonia and salinity now, today.`,
      "Move the surface while you test: a pump up, an air stone. Dry hands; plug out before you touch a pump.",
    ];
  if (verdict === "habit")
    return habit === "leaves"
      ? [`The ${name} leaves the water by habit. A lid keeps it from falling out of the tank.`]
      : [`In the dark the ${name} goes up to the water's edge by habit. Look again at noon.`];
  if (verdict === "test_soon")
    return [
      `The ${name} at the waterline${dark === false ? " by day" : ""} is not a habit of the kind: test salinity and ammonia within two days.`,
      "Look again tonight and tomorrow at noon; several kinds at once mean test now.",
    ];
  return [
    "Which kind, and how long after the lamps went out? Without that it can't be told yet. Several kinds at once mean test now.",
  ];
}

/** Snails at the waterline as just seen, before anything is kept. */
export function judgedNow(
  scene: DiagnosisScene,
  about: Pick<SignSeen, "animal" | "kindsSeen" | "hoursFromLightsOut">,
): { readonly words: readonly string[]; readonly testNow: boolean } {
  const { record } = scene;
  const seen: SignSeen = {
    ...{ kind: "sign", sign: "waterline_snails", entry: "now", on: record.asOf, count: null, traits: {} },
    ...about,
  };
  const before = record.observations.filter((one) => one.kind !== "sign" || one.sign !== seen.sign);
  const judged = judgeWaterline({ ...scene, record: { ...record, observations: [...before, seen] } });
  return judged === null
    ? { words: [], testNow: false }
    : { words: waterlineWords(judged), testNow: judged.verdict === "test_now" };
}
