/** What to mind about an animal, for keeper, tank and animal: risks of the catalogue as sentences. */
import type { Animal, AnimalRisk } from "../../engine/types/animal.ts";

/** Risks that other sentences of the entry tell already (who eats whom, what it wants, what it must have) are left out. */
const SENTENCES: Readonly<Partial<Record<AnimalRisk, string>>> = {
  venomous_or_spiny: "Its spines or sting hurt people: wear gloves; see a doctor if stung.",
  spine_hazard: "Its spines can wound: wear gloves; see a doctor for a deep wound or one that swells.",
  toxic_if_eaten: "It is poisonous to what eats it.",
  releases_toxin_on_death: "It can poison a tank as it dies: take a failing one out at once.",
  eggs_toxic: "Its eggs are poisonous to fish.",
  inks: "Frightened or hurt, it gives off ink: carbon and a water change take it out.",
  copper_sensitive: "Copper kills it, also what an old treatment has left in rock.",
  may_starve: "It often starves in tanks that are too clean for it.",
  mis_sold: "Several kinds are sold under this name: look before you buy.",
  falls_and_dies: "It cannot turn itself over: set fallen ones upright.",
  escapes: "It climbs out of open tanks.",
  jumps: "It jumps out of open tanks.",
  cool_water: "It comes from cooler water and dies early in a warm tank.",
  bulldozer: "It knocks over what is not fixed.",
  undermines_rock: "It digs under rock: the rock must stand on the glass.",
  buries_corals: "It lets sand fall on corals.",
  grows_too_large: "It outgrows small tanks.",
  reproduces_in_tank: "It breeds in tanks.",
  eats_coral_polyps: "It may nip corals.",
  eats_coralline: "It also eats the pink crust algae.",
  eats_worms_pods: "It eats the small worms and pods that help a tank.",
  carries_objects: "It carries off loose corals and shells.",
  needs_target_feeding: "It needs food brought to it.",
  steals_food_from_corals: "It takes food from corals.",
  pump_intake_hazard: "Pump inlets tear it: each needs a guard.",
  territorial: "It chases its like from its ground.",
};

const SICK = "If it sickens, ask an aquatic vet before treating.";
const NO_RELEASE = "Never let it go into the wild: return it, rehome it, or ask a shop.";

/** Risks to people, and of poison to the tank: told wherever an animal is proposed, not only in its entry. */
const HAZARDS: readonly AnimalRisk[] = [
  "venomous_or_spiny",
  "spine_hazard",
  "toxic_if_eaten",
  "releases_toxin_on_death",
  "eggs_toxic",
  "inks",
];

export const hazardsOf = ({ risks }: Animal): string[] =>
  HAZARDS.filter((risk) => risks.includes(risk)).flatMap((risk) => SENTENCES[risk] ?? []);

export const cautionsOf = ({ risks }: Animal): string[] => [
  ...risks.flatMap((risk) => SENTENCES[risk] ?? []),
  SICK,
  NO_RELEASE,
];
