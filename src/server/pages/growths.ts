/** "What is this?": what the record says, the trait keys, odd behaviour. All by GET: an address is a state. */
import { causesTold } from "../../answers/growths/causes.ts";
import { growthsOf } from "../../answers/growths/growths.ts";
import { KEYS, type KeyName, keyFound } from "../../answers/growths/key.ts";
import { aboutNow, diagnosisOf, nameOfAnimal } from "../../answers/growths/scene.ts";
import { judgedNow } from "../../answers/growths/signs.ts";
import { starvingKinds } from "../../answers/growths/starving.ts";
import type { Effect, GrowthFact, KeyQuestion } from "../../engine/types/diagnosis.ts";
import { to } from "../../web/page.ts";
import { growthsPage } from "../../web/pages/growths.tsx";
import { type KeyView, traitsOf } from "../../web/pages/growths-key.tsx";
import type { OddView } from "../../web/pages/growths-odd.tsx";
import { EFFECT_WORDS } from "../../web/pages/growths-parts.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { ofTank } from "./of-tank.ts";

export const GROWTHS_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: to.tank(":tank", "growths"), answer: ofTank(show) },
];

function show(tank: LoadedTank, { query }: PageRequest, context: PageContext): PageReply {
  const { see } = query;
  const part =
    see === "growth" || see === "animal"
      ? keyView(see, query, tank)
      : see === "odd"
        ? oddView(query, tank)
        : homeView(tank, context);
  return { kind: "page", page: growthsPage({ head: tank.head, part }) };
}

function homeView(tank: LoadedTank, context: PageContext) {
  const scene = sceneOf(tank, context);
  const hungry = starvingKinds(context.answers.ready(tank.facts), scene);
  return { kind: "home" as const, output: growthsOf(scene).output, hungry };
}

const sceneOf = ({ facts, record }: LoadedTank, { today }: PageContext) => ({ facts, record, today });

type Query = PageRequest["query"];

/** What an address may hold of a key, and nothing else: an unknown trait is left out. */
function accepted(questions: readonly KeyQuestion[], query: Query): Record<string, string> {
  const params: Record<string, string> = {};
  for (const { id, options } of questions) {
    const picked = query[`pick.${id}`];
    for (const option of options) {
      const said = picked === option.id ? "yes" : query[`trait.${option.id}`];
      if (said === "yes" || said === "no") params[`trait.${option.id}`] = said;
    }
    if (query[`skip.${id}`] === "1") params[`skip.${id}`] = "1";
  }
  return params;
}

function keyView(name: KeyName, query: Query, tank: LoadedTank): KeyView {
  const { questions } = KEYS[name];
  const params = accepted(questions, query);
  const skipped = new Set(questions.map(({ id }) => id).filter((id) => params[`skip.${id}`] === "1"));
  const scene = diagnosisOf({ ...tank, today: tank.record.asOf });
  const found = keyFound(name, traitsOf(params), skipped, scene);
  const { named } = found;
  const sighting = named !== null && "sighting" in named ? (named satisfies GrowthFact).sighting : null;
  return {
    ...{ kind: "key", name, params, found },
    answered: questions.flatMap((question) => {
      const names = [...question.options.map(({ id }) => `trait.${id}`), `skip.${question.id}`].filter(
        (one) => params[one] !== undefined,
      );
      return names.length === 0 ? [] : [{ question, names }];
    }),
    causes: sighting === null ? null : causesTold(scene, aboutNow(sighting, scene.record.asOf)),
  };
}

const EFFECTS = EFFECT_WORDS.map(([effect]) => effect);
/** An hour well into the dark, and one well before it. */
const HOURS: Readonly<Record<string, number>> = { dark: 2, lit: -4 };

function oddView(query: Query, tank: LoadedTank): OddView {
  const effect: Effect | null = EFFECTS.find((one) => one === query["what"]) ?? null;
  const present = tank.facts.present
    .filter(({ count }) => count > 0)
    .map(({ id }) => ({ id, name: nameOfAnimal(id) }));
  const animal = present.some(({ id }) => id === query["animal"]) ? (query["animal"] ?? "") : "";
  const kinds = query["kinds"] === "1" || query["kinds"] === "2" ? query["kinds"] : "";
  const hour = query["hour"] === "lit" || query["hour"] === "dark" ? query["hour"] : "";
  const scene = diagnosisOf({ ...tank, today: tank.record.asOf });
  const params = Object.fromEntries(
    scene.diagnosis.clues.flatMap(({ id }) => {
      const said = query[`clue.${id}`];
      return said === "yes" || said === "no" ? [[`clue.${id}`, said]] : [];
    }),
  );
  const answers = Object.fromEntries(
    Object.entries(params).map(([name, said]) => [name.slice("clue.".length), said === "yes"]),
  );
  const about = {
    animal: animal === "" ? null : animal,
    kindsSeen: kinds === "" ? null : Number(kinds),
    hoursFromLightsOut: HOURS[hour] ?? null,
  };
  const judged = effect === "waterline_snails" ? judgedNow(scene, about) : null;
  return {
    ...{ kind: "odd", effect, animal, kinds, hour, present, params },
    told: effect === null ? null : causesTold(scene, aboutNow(effect, scene.record.asOf, about), answers),
    waterline: judged?.words ?? [],
    testNow: judged?.testNow ?? effect === "ill_animals",
  };
}
