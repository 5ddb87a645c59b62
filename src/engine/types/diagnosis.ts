/**
 * Facts by which a growth, a stranger or a loss is told: things with the chances of their traits, causes with the
 * chances of their clues, known faults of tests. Read from facts/{growths,hitchhikers,causes}; chances are judgement
 * unless a source says otherwise.
 */
import type { ShelfId } from "./shelf.ts";
import type { Growth, Reading } from "./tank.ts";

/** A look is free; a night's look takes until tomorrow; a tool has to be found. */
export type Effort = "eye" | "night" | "tool";

export interface KeyOption {
  /** Trait as a sighting keeps it. */
  readonly id: string;
  /** "golden to rust brown". */
  readonly words: string;
}

/** One question of a key. One option: yes or no. Several: they exclude each other. */
export interface KeyQuestion {
  readonly id: string;
  readonly ask: string;
  readonly how: string | null;
  readonly effort: Effort;
  readonly options: readonly KeyOption[];
  /** Of yes or no: what a no says. */
  readonly no: string | null;
  /** Clue of the record that answers it; null where the keeper alone can. */
  readonly record: string | null;
}

/** One thing that a key can find: its share among what is asked about, and how often each trait is seen with it. */
export interface KeyThing {
  readonly id: string;
  readonly prior: number;
  /** By option; those of one question with several options sum to 1. */
  readonly chances: Readonly<Record<string, number>>;
}

export interface TraitKey<Thing extends KeyThing = KeyThing> {
  readonly questions: readonly KeyQuestion[];
  readonly things: readonly Thing[];
}

/** A sentence that a fact says, and what it rests on. */
export interface SaidFact {
  readonly text: string;
  readonly evidence: string;
  readonly sources: readonly string[];
}

/** What an animal does with a growth; `harmed`: it eats it and may die. */
export type Eats = "eats" | "nibbles" | "refuses" | "harmed";

interface Described extends KeyThing {
  readonly name: string;
  readonly also: readonly string[];
  readonly scientific: string;
  readonly looks: SaidFact;
  /** Options whose direction was read in a source, with its keys. */
  readonly read: Readonly<Record<string, readonly string[]>>;
  readonly doLines: readonly SaidFact[];
  readonly dont: readonly SaidFact[];
  readonly stop: SaidFact;
}

export interface GrowthFact extends Described {
  /** Under which growth the daybook scores it; null where it scores none such. */
  readonly sighting: Growth | null;
  readonly shelf: ShelfId | null;
  readonly eaters: readonly { readonly animal: string; readonly eats: Eats; readonly evidence: string }[];
  /** Whether a crew is the answer. */
  readonly crew: "yes" | "partly" | "no";
  readonly crewSaid: SaidFact;
  readonly closesGates: boolean;
  readonly toxin: SaidFact | null;
}

export type Verdict = "leave" | "watch" | "remove";
export type Danger = "stings" | "toxin" | "bites" | "cuts";

export interface HitchhikerFact extends Described {
  readonly verdict: Verdict;
  readonly because: SaidFact;
  /** Its entry in the catalogue; null where there is none. */
  readonly animal: string | null;
  /** Shelves it eats from: a harmless one counts as a mouth. */
  readonly shelves: readonly ShelfId[];
  readonly dangers: readonly Danger[];
}

/** What can be explained: a growth of the daybook, a sign, or a loss beyond the expected. */
export type Effect =
  | Growth
  | "snail_loss"
  | "crew_loss"
  | "waterline_snails"
  | "fallen_snails"
  | "empty_shells"
  | "hiding"
  | "ill_animals"
  | "cloudy_water";

export interface ClueFact {
  readonly id: string;
  readonly from: "record" | "asked";
  readonly ask: string;
  /** Said of the tank where it holds, and where it does not. */
  readonly yes: string;
  readonly no: string;
  /** What would settle it. */
  readonly test: string;
}

export interface CauseFact {
  readonly id: string;
  readonly name: string;
  readonly evidence: string;
  readonly sources: readonly string[];
  /** Effects for which this is asked before all else. */
  readonly askFirst: readonly Effect[];
  /** How often it is at work where the effect is seen, before anything is known. */
  readonly explains: Readonly<Partial<Record<Effect, number>>>;
  /** How often a clue holds where the cause is at work, and where it is not. */
  readonly clues: Readonly<Record<string, { readonly if: number; readonly otherwise: number }>>;
  readonly doLines: readonly SaidFact[];
  readonly dont: readonly SaidFact[];
  readonly stop: SaidFact;
}

/** A known fault of a test. */
export interface TestArtefact {
  readonly id: string;
  readonly of: Reading["quantity"];
  /** More than there is, less, or no more than a step of the kit. */
  readonly shows: "high" | "low" | "step";
  readonly says: SaidFact;
  /** Clues that make it likelier. */
  readonly speaksFor: readonly string[];
  readonly check: SaidFact;
}

/** Snails that leave the water, or sit at its edge by night. */
export interface WaterlineHabit {
  readonly animal: string;
  readonly habit: "leaves" | "edge";
  readonly evidence: string;
  readonly sources: readonly string[];
}

export interface DiagnosisFacts {
  readonly growths: TraitKey<GrowthFact>;
  readonly hitchhikers: TraitKey<HitchhikerFact>;
  readonly clues: readonly ClueFact[];
  readonly causes: readonly CauseFact[];
  readonly artefacts: readonly TestArtefact[];
  readonly waterline: readonly WaterlineHabit[];
}
