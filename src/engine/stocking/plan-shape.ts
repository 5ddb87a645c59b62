/** What a plan is made from and what it says: types only. */
import type { CrewKind } from "../ahead/start.ts";
import type { Larder } from "../larder/larder.ts";
import type { Animal } from "../types/animal.ts";
import type { ShelfId } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import type { PlanCheck } from "./check.ts";
import type { Gate } from "./gates.ts";
import type { Binding, LimitCost } from "./limits.ts";
import type { Resident } from "./residents.ts";
import type { Reason } from "./suitability.ts";
import type { Unknown } from "./unknowns.ts";
import type { PlanningTools, WaveDraft } from "./waves.ts";

export interface PlannedAnimal {
  readonly animal: Animal;
  readonly count: number;
  readonly eats: readonly ShelfId[];
  readonly binding: Binding;
  readonly cautions: readonly string[];
  /** Spare shells to buy with it, each worn one with this many. */
  readonly spareShells: number;
}

export interface Wave {
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly day: number;
  readonly plannedShare: number;
  readonly animals: readonly PlannedAnimal[];
  readonly gate: Gate;
  readonly larder: Larder;
  readonly draft: WaveDraft;
}

export interface Refused {
  readonly animal: Animal;
  readonly status: "not_yet" | "never";
  readonly reasons: readonly Reason[];
}

/** An animal that would fit but is not in the plan, and why. */
export interface Spare {
  readonly animal: Animal;
  readonly why: string;
  /** What the reason rests on; null where that is no figure. */
  readonly figure: string | null;
}

/** A shelf that the crew does not eat down, and whose job it then is. */
export interface HandWork {
  readonly shelf: ShelfId;
  /** Left at the central supply, mg C/d. */
  readonly leftMgC: number;
  readonly text: string;
}

export interface FedByHand {
  readonly animal: Animal;
  /** Heads of the kind by the last wave: the food is for all of them. */
  readonly heads: number;
  /** Food needed beyond the larder, mg C/d and mg of dry feed a day. */
  readonly mgC: number;
  readonly dryFeedMg: number;
  /** In the tank already, wished for, or of an earlier wave that others now eat beside. */
  readonly standing: "resident" | "wished" | "planned";
}

export interface WishAnswer {
  readonly animal: Animal;
  readonly status: "in_plan" | "refused";
  /** What the wish costs the others: kinds that come in fewer heads. */
  readonly costs: readonly { readonly animal: Animal; readonly fewer: number }[];
}

export interface WhatWouldChange {
  readonly unknown: Unknown;
  readonly headsIfLow: number | null;
  readonly headsIfHigh: number | null;
}

/** A number that was cut because the forecast starved it. */
export interface Mend {
  readonly id: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** Of 20 runs, those that fed the first number through 90 days. */
  readonly fedOf20: number;
}

export interface Plan {
  readonly kind: "waves" | "nothing_yet";
  /** Why nothing yet, or nothing more; empty for a plan with waves. */
  readonly because: readonly string[];
  /** Of the number in each; null where it tells none. */
  readonly becauseFigures: readonly (string | null)[];
  /** Day to look again, where nothing is planned. */
  readonly lookAgain: string | null;
  readonly waves: readonly Wave[];
  readonly residents: readonly Resident[];
  readonly refused: readonly Refused[];
  readonly spare: readonly Spare[];
  readonly handWork: readonly HandWork[];
  readonly fedByHand: readonly FedByHand[];
  readonly wishes: readonly WishAnswer[];
  readonly check: PlanCheck | null;
  readonly mends: readonly Mend[];
  readonly wouldChange: readonly WhatWouldChange[];
  readonly limitCosts: readonly LimitCost[];
  readonly drafts: readonly WaveDraft[];
  readonly kinds: readonly CrewKind[];
  /** Whether every wave was solved to proven optimality. */
  readonly proven: boolean;
}

export interface PlanRequest extends PlanningTools {
  readonly facts: TankFacts;
  readonly seed: number;
  /** Also what each limit costs: half as much work again. */
  readonly withLimitCosts: boolean;
  /** Days of weeks ahead, with oxygen, that the caller wants of the plan's check. */
  readonly outlookDays?: number | undefined;
}
