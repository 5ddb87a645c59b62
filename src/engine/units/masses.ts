/**
 * Atomic masses in g/mol, in one place, and the molar masses built from them.
 * @source IUPAC abridged standard atomic weights
 */
export const ATOMIC_MASS = {
  H: 1.008,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  Na: 22.99,
  Mg: 24.305,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  Ca: 40.078,
} as const;

const { H, C, N, O, P, Ca } = ATOMIC_MASS;

/** Molar masses in g/mol of what test kits and meters report. */
export const MOLAR_MASS = {
  nitrate: N + 3 * O,
  nitrite: N + 2 * O,
  ammonia: N + 3 * H,
  ammonium: N + 4 * H,
  phosphate: P + 4 * O,
  calciumCarbonate: Ca + C + 3 * O,
  calciumOxide: Ca + O,
  /** As the oxygen equations take it (Garcia & Gordon 1992), a shade more exact than 2 O. */
  oxygen: 31.9988,
} as const;
