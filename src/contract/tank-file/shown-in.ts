/** Units in which pages show a quantity and offer it first, one choice for each: a keeper may mix them. */

export const SHOWN_IN = {
  volume: ["L", "US gal", "imp gal"],
  length: ["cm", "in"],
  temperature: ["C", "F"],
  /** Specific gravity is shown at 25/25 C. */
  salinity: ["psu", "sg"],
  alkalinity: ["dKH", "meq/L", "mg/L as CaCO3"],
  nitrate: ["NO3", "NO3-N"],
  phosphate: ["PO4", "PO4-P"],
} as const;

export type ShownQuantity = keyof typeof SHOWN_IN;
export type ShownUnit<Q extends ShownQuantity = ShownQuantity> = (typeof SHOWN_IN)[Q][number];
export type ShownIn = { readonly [Q in ShownQuantity]: ShownUnit<Q> };

export const SHOWN_QUANTITIES = Object.keys(SHOWN_IN) as ShownQuantity[];
