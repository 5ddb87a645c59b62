/** Fish and food: either follows from the other where only one was told, in a wide band. */
import type { Estimate, Spread } from "../../engine/types/estimate.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { ANY_FISH_G, FEED_PER_FISH, FOODS, HAND_FED_G } from "./assumptions.ts";
import { exactly, product, scaled, spread, sum } from "./bands.ts";
import { estimate, type Filler } from "./estimates.ts";
import type { Stated, ToldFish, ToldFood } from "./stated.ts";

type FeedFacts = Pick<
  TankFacts,
  "feedGPerDay" | "feedCMgPerG" | "feedNMgPerG" | "feedPMgPerG" | "handFedMgCPerDay" | "fishWetG"
>;

export function feedOf(stated: Stated, { assume, assumed }: Filler): FeedFacts {
  const fish = stated.fish === undefined ? undefined : weightOf(stated.fish);
  const foods = stated.foods;
  const weighed = foods?.every(({ gPerDay }) => gPerDay !== undefined) === true ? foods : undefined;
  const handFed = stated.handFed.map(({ kind, gPerDay }) => product(gPerDay ?? HAND_FED_G, FOODS[kind].c));
  const handFedMgCPerDay =
    handFed.length === 0
      ? estimate("assumed", exactly(0), "none unless said")
      : estimate("stated", sum(...handFed), "food given to the crew by hand");
  if (weighed !== undefined) {
    const total = sum(exactly(0), ...weighed.map(({ gPerDay }) => gPerDay ?? exactly(0)));
    const how = weighed
      .map(({ kind, gPerDay }) => `${FOODS[kind].label} ${gPerDay?.how ?? ""}`.trim())
      .join(", ");
    const fishWetG =
      fish ??
      fishFromFeed(product(total, scaled(mixture(weighed, "c"), 1 / FOODS.dry_pellet.c.central)), assumed);
    const feedGPerDay = estimate("stated", total, how === "" ? "nothing is fed" : how);
    return { feedGPerDay, ...contents(weighed), handFedMgCPerDay, fishWetG };
  }
  const kinds = foods ?? [];
  const fishWetG = fish ?? assume("fishWetG");
  const dry = fish === undefined ? assume("feedGPerDay") : feedFromFish(fish, assumed);
  if (kinds.length === 0) {
    const parts = {
      feedCMgPerG: assume("feedCMgPerG"),
      feedNMgPerG: assume("feedNMgPerG"),
      feedPMgPerG: assume("feedPMgPerG"),
    };
    return { feedGPerDay: dry, ...parts, handFedMgCPerDay, fishWetG };
  }
  // As much carbon as the dry food would have brought, in the foods that are given.
  const watery = FOODS.dry_pellet.c.central / mixture(kinds, "c").central;
  const feedGPerDay = estimate(
    dry.origin,
    scaled(dry, watery),
    `${dry.how}, as ${kinds.map(({ kind }) => FOODS[kind].label).join(" and ")}`,
  );
  return { feedGPerDay, ...contents(kinds), handFedMgCPerDay, fishWetG };
}

function weightOf(fish: readonly ToldFish[]): Estimate {
  if (fish.length === 0) return estimate("stated", exactly(0), "no fish");
  const each = fish.map(({ count, eachG }) => scaled(eachG ?? ANY_FISH_G, count));
  const head = fish.reduce((all, { count }) => all + count, 0);
  return estimate("derived", sum(...each), `${head} fish, by size`);
}

function feedFromFish(fish: Estimate, assumed: string[]): Estimate {
  assumed.push("feedGPerDay");
  if (fish.central === 0)
    return estimate("assumed", spread(0, 0.02, 0.2), "no fish: only what is given for the crew");
  return estimate("assumed", product(fish, FEED_PER_FISH), "0.025 g of dry food a day for each gram of fish");
}

function fishFromFeed(dry: Spread, assumed: string[]): Estimate {
  assumed.push("fishWetG");
  const { low, central, high } = FEED_PER_FISH;
  return estimate(
    "assumed",
    product(dry, spread(1 / high, 1 / central, 1 / low)),
    "a gram of fish for each 0.025 g of dry food",
  );
}

const weights = (foods: readonly ToldFood[]): number[] => {
  const each = foods.map(({ gPerDay }) => gPerDay?.central ?? 1);
  const total = each.reduce((all, g) => all + g, 0);
  return total > 0 ? each.map((g) => g / total) : foods.map(() => 1 / foods.length);
};

/** Contents of a gram of the mixture. The foods' errors are taken together: labels err the same way. */
function mixture(foods: readonly ToldFood[], key: "c" | "n" | "p"): Spread {
  const shares = weights(foods);
  const of = (end: keyof Spread) =>
    foods.reduce((all, { kind }, i) => all + (shares[i] ?? 0) * FOODS[kind][key][end], 0);
  return foods.length === 0 ? FOODS.dry_pellet[key] : spread(of("low"), of("central"), of("high"));
}

function contents(
  foods: readonly ToldFood[],
): Pick<FeedFacts, "feedCMgPerG" | "feedNMgPerG" | "feedPMgPerG"> {
  const how = foods.length === 0 ? "dry pellet" : foods.map(({ kind }) => FOODS[kind].label).join(" and ");
  const part = (key: "c" | "n" | "p") => estimate("derived", mixture(foods, key), how);
  return { feedCMgPerG: part("c"), feedNMgPerG: part("n"), feedPMgPerG: part("p") };
}
