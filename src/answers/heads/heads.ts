/** Heads of one tank, out of its record: who lives here, how sure, what is missing, who is too many; figures and advice. */
import type { HeadsOutput } from "../../contract/output/heads.ts";
import { type Resting, restingOf } from "../../engine/heads/resting.ts";
import { DRY_FEED_CARBON } from "../../engine/stocking/fed-by-hand.ts";
import type { AnimalGroup } from "../../engine/types/animal.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { withConfidence } from "../figures/confidence.ts";
import type { RecordScene, Said } from "../record-scene.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { headsAdvice } from "./advice.ts";
import { headsFigures } from "./figures.ts";
import { kindRow } from "./rows.ts";
import { type HeadsWork, headsWork } from "./work.ts";

export function headsOf(scene: RecordScene): Said<HeadsOutput> {
  const work = headsWork(scene);
  const output = outputOf(work);
  return {
    output,
    figures: withConfidence(headsFigures(work)),
    advice: headsAdvice(output, scene.today),
  };
}

/** Dead, resting or moulted? For the form of losses. */
export const restingWords = (group: AnimalGroup): Resting => restingOf(group);

function outputOf(work: HeadsWork): HeadsOutput {
  const { scene, slower } = work;
  return {
    schema: "grazewell.heads/1",
    engine: ENGINE_VERSION,
    tank: { name: scene.facts.name, as_of: scene.today },
    kinds: work.kinds.map((kind) => kindRow(kind, work)),
    not_followed: work.notFollowed.map(({ animal, why }) => ({
      id: animal.id,
      name: animal.commonName,
      why,
    })),
    orders: work.orders.map(({ latest, worth, heads, items }) => ({
      ...{ latest, worth, heads },
      items: items.map(({ animal, count, why, shelf, latest: by }) => ({
        ...{ id: animal.id, name: animal.commonName, count, why, shelf, latest: by },
        figure: figureId.heads(animal.id, "top_up"),
      })),
    })),
    held_back: work.heldBack.map(({ animal, why }) => ({ id: animal.id, name: animal.commonName, why })),
    growths_back: work.growths.map(({ growth, score, on }) => ({ growth, score, on })),
    bare_glass_days: work.bareDays,
    film_slower: slower === null ? null : { days: slower.days, usual_days: slower.usualDays, on: slower.on },
    way_down: work.wayDown.map(({ animal, heads, shelf, fedShare, shortOf20, lacksMgC, fewer }) => ({
      ...{
        id: animal.id,
        name: animal.commonName,
        heads,
        shelf,
        fed_share: fedShare,
        short_of_20: shortOf20,
      },
      ...{ dry_feed_mg_per_day: lacksMgC / DRY_FEED_CARBON, fewer },
      figures: {
        food: figureId.heads(animal.id, "hand_food"),
        fewer: figureId.heads(animal.id, "fewer"),
        fed: figureId.heads(animal.id, "fed"),
      },
    })),
    statement: STATEMENT,
  };
}
