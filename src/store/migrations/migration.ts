/** One step of the store's shape: does one thing, says which, runs whole or not at all on both databases. */
import type { Spelling } from "../tables.ts";

export interface Migration {
  /** Four digits and what it makes: never changed once released. */
  readonly name: string;
  readonly statements: (spelling: Spelling) => readonly string[];
}
