/** Every judgement of start-up in one place. None was read in a source; docs/model/start-up.md says what each is held against. */
export const START_UP = {
  /** From here a usual kit can tell it from nothing, mg N/L: the bench's gate judges by the same (answers/bench/water.ts). */
  readable: { tan: 0.1, no2: 0.03 },
  /** The test: so much ammonia, mg N/L, gone within a day, and nitrite with it. Common practice, no source. */
  testDoseMgNPerL: 1,
  /** Fed in the runs, where nothing lives there, whenever ammonia is gone and nitrite is no more than this, mg N/L. */
  fedWhileNitriteMgNPerL: 1,
  /** A stocked tank takes no dose: it counts as done once both were unreadable on so many midnights in a row. */
  clearDays: 4,
  /**
   * Days from filling by which a start-up has ended: the upper end of nit.startup.days_unseeded (75) and of days_seeded
   * (28), each and a third more, and the middle of the two. Versions of the tank that would not are left out; an older
   * tank gets `moreDays` from today.
   */
  endsWithinDays: { live: 37, mixed: 68, dry: 100, none: 100 },
  moreDays: 45,
  /** Of the versions drawn at least so many must be left, or the bands say little. */
  leastLeft: 20,
  /** Older tanks are past it, whatever a test reads. */
  longestDays: 180,
  /** A test older than this says little of where the cycle stands, days. */
  freshDays: 10,
} as const;
