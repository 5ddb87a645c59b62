/** Symbols of facts/parameters/model-larder.yaml: how much of what grows and drops counts as food. */
export const SIZING_SYMBOLS = [
  "cropGlass",
  "cropRock",
  "unwiped",
  "grownInDay",
  "grownInWidth",
  "filShare",
  "leftReach",
  "detSand",
  "detCrevice",
  "detFood",
  "recycled",
  "fishLost",
  "bubbleGrowth",
  "bubbleCrop",
  "colonised",
  "tanUsual",
  "no3Usual",
  "po4Usual",
  "sorbentRate",
] as const;

export type SizingSymbol = (typeof SIZING_SYMBOLS)[number];
export type SizingValues = Readonly<Record<SizingSymbol, number>>;
