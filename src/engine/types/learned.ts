/**
 * What a tank's daybook has taught the ensemble. Every parameter and fact that members vary in is drawn as a standard
 * normal score; learning moves the scores of those that readings can tell of, and leaves the others to the prior.
 */
export interface Learned {
  /** Symbols of parameters and names of facts whose scores were learned, as drawMembers() names them. */
  readonly names: readonly string[];
  /** One row a learned member, in the order of `names`. A draw of more members goes through them again. */
  readonly scores: readonly (readonly number[])[];
}
