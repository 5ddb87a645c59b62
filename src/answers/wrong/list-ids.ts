/** Names of the lists of "Something is wrong", in the order of its entry: people, the house, animals, water, equipment. */
export const CRISIS_IDS = [
  "person",
  "ill",
  "sting",
  "water-power",
  "power-cut",
  "pumps",
  "gasping",
  "dead",
  "missing",
  "cucumber",
  "ammonia",
  "warm",
  "cold",
  "salinity",
  "top-off",
  "overflow",
  "chlorine",
  "alkalinity",
  "sand",
  "poison",
  "medicine",
  "slime",
] as const;
export type CrisisId = (typeof CRISIS_IDS)[number];

export const isCrisisId = (id: string): id is CrisisId => (CRISIS_IDS as readonly string[]).includes(id);
