/**
 * Every judgement of calibration in one place: errors of kits and eyes, what the model is allowed to get wrong, how sure
 * a coincidence must look. None was read in a source; docs/model/calibration.md says what each was held against.
 */
export const JUDGEMENT = {
  /** Nothing older teaches: a tank of four months ago is another one. */
  longestWindowDays: 120,
  /** Fewer observations than this teach nothing. */
  leastObservations: 4,

  /** Errors of kits, one standard deviation in mg N/L or mg P/L and as a share, where a reading's own band is narrower. */
  kit: {
    tan: { absolute: 0.1, relative: 0.1 },
    no2: { absolute: 0.01, relative: 0.15 },
    no3: { absolute: 0.05, relative: 0.2 },
    po4: { absolute: 0.0065, relative: 0.1 },
  },
  /**
   * A kit whose error is the same however little there is tells amounts apart, not factors: below so many times that error
   * its readings are compared nearly as they stand, above as logarithms.
   */
  linearBelow: 3,
  /**
   * A kit that shows nothing speaks for less than where it begins to show: chances of showing nothing, which fall with what
   * is there, as half a normal curve from so many times the kit's scatter before its end, so many times as wide.
   */
  kitEnd: { back: 1.2, times: 1.1 },
  /** Error of a score by eye, half a step and its rounding, in steps of 0 to 4. */
  scoreError: 0.58,
  /** Error of the crop at which a keeper wipes, as a logarithm. */
  filmBackError: 0.35,
  /** Heads by which a count errs besides chance: deaths are expected in a run, and come one by one. */
  headsError: 0.8,

  /** What one kit always adds, as a logarithm; one eye, in steps; one keeper's own threshold, as a logarithm. */
  kitBias: 0.1,
  eyeBias: 0.3,
  /** Of detritus, that its scale is ours as well: nobody has weighed what lifts. */
  dustBias: 0.6,
  wipedAtBias: 0.35,

  /** What the model gets wrong for weeks, one standard deviation on each observation's scale, and for how many days. */
  modelError: {
    ...{ tan: 0.1, no2: 0.15, no3: 0.03, po4: 0.1 },
    ...{ film_glass: 0.32, film_rock: 0.08, film_sand: 0.25, hair_algae: 0.06, film_back: 0.15 },
    detritus_sand: 0.35,
    heads: 0.1,
  },
  modelErrorDays: 21,
  /** Standard deviations off the runs from which an observation counts as outlying. */
  outlyingFrom: 2.5,

  /** Most of each pass that is taken by weighing whole runs, and the share of the runs that must keep a weight. */
  agreeing: { most: 0.6, keep: 0.65 },

  /** Times the share that chance explains, from which a name counts as told of; and how many are learned at most. */
  aboveChance: 1,
  mostNames: 60,
  /**
   * Further passes for tests of water whose runs lie further apart than they allow: how many at most, times the errors'
   * variance is taken in each, times too far apart from which there is one, and share of the variance of their errors
   * within which the other observations are held.
   */
  catchingUp: { passes: 4, times: 2.5, apartFrom: 1.05, heldWithin: 0.3 },

  /** Scores that nothing depends on, by which a pass's mere coincidences are measured. */
  bystanders: 40,
  /** A learned score's spread is never less than this share of the prior's. */
  leastSpread: 0.1,
} as const;
