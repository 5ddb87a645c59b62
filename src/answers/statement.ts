/** What every plan and forecast says of itself, and the cautions of the work it asks for. */
export const STATEMENT =
  "These are estimates from a model and from figures of mixed quality, with their range. Your own counts and tests overrule them.";

export const CAUTION = {
  mains:
    "Mains electricity by water: unplug what you will touch, keep drip loops; wiring is for a licensed electrician and the local code.",
  wounds:
    "Cuts, stings and spines in tank water: gloves, wash at once; a doctor if a wound swells or you feel ill.",
  sick: "Sick animals and medicines: ask an aquatic vet before treating; copper kills the crew.",
  wild: "Never release animals or tank water into the wild: return, rehome, or ask a shop.",
} as const;
