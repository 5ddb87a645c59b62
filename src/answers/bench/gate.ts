/**
 * The gate before the next wave, judged from the daybook: each condition met, not met, or not to be told, with the
 * entries it rests on and what entry would settle it. A condition that only eyes can judge stays with the eyes.
 * Limits: the first wave of the plan alone; a later one is judged once those before it have come.
 */
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { GATE_WORDS, MORE_THAN_EATEN, SIGN_OF_SHELF } from "../../engine/stocking/gates.ts";
import type { ShelfId } from "../../engine/types/shelf.ts";
import { headsCondition, testsCondition, unexplainedLosses } from "./gate-animals.ts";
import { moreThanEaten, shelfCondition } from "./gate-shelves.ts";
import { stopCondition } from "./gate-stop.ts";
import type { KnownOfTank } from "./known.ts";

export type GateState = "met" | "not_met" | "cannot_tell";

export interface Finding {
  readonly state: GateState;
  /** What was found, one sentence. */
  readonly because: string;
  /** Entries it rests on. */
  readonly entries: readonly string[];
  /** What entry would settle it, one sentence; null where it is settled. */
  readonly settle: string | null;
  /** Kind of that entry; null where none would. */
  readonly by: EntryKind | null;
  /** Where only time settles it: ISO date from which it could be met. */
  readonly settledOn?: string;
}

export interface Condition extends Finding {
  /** As the plan says it. */
  readonly text: string;
}

export interface JudgedGate {
  readonly wave: number;
  /** All met; one not met; else not to be told. What stops the wave counts as not met. */
  readonly state: GateState;
  readonly onlyIf: readonly Condition[];
  /** Null where its window is open: nothing brings it sooner. */
  readonly soonerIf: Condition | null;
  /** `met` here means: stop. */
  readonly stopIf: Condition;
  /** The day from which what is not met could be, where only time settles it: ISO date after today, or null. */
  readonly lookAgain: string | null;
}

export type Wave = WavesOutput["waves"][number];

export function judgeGate(wave: Wave, plan: WavesOutput, known: KnownOfTank): JudgedGate {
  const onlyIf = wave.only_if.map((text): Condition => ({ text, ...conditionOf(text, plan, known) }));
  const stopIf = { text: wave.stop_if, ...stopCondition(wave.stop_if, known) };
  const states = onlyIf.map(({ state }) => state);
  const state: GateState =
    stopIf.state === "met" || states.includes("not_met")
      ? "not_met"
      : states.includes("cannot_tell")
        ? "cannot_tell"
        : "met";
  const soonerIf =
    wave.sooner_if === GATE_WORDS.open
      ? null
      : { text: wave.sooner_if, ...soonerCondition(wave.sooner_if, known) };
  const lookAgain =
    onlyIf
      .flatMap(({ state, settledOn }) => (state === "not_met" && settledOn !== undefined ? [settledOn] : []))
      .filter((on) => on > known.today)
      .toSorted()
      .at(-1) ?? null;
  return { wave: wave.number, state, onlyIf, soonerIf, stopIf, lookAgain };
}

function conditionOf(text: string, plan: WavesOutput, known: KnownOfTank): Finding {
  if (text === GATE_WORDS.firstTests) return testsCondition(known, { days: 3 });
  if (text === GATE_WORDS.testsSince) return both(testsCondition(known, null), unexplainedLosses(known));
  if (text.startsWith(GATE_WORDS.heads)) return headsCondition(text, plan, known);
  const shelf = shelfOf(SIGN_OF_SHELF, text);
  return shelf === null ? BY_EYE : shelfCondition(shelf, known);
}

function soonerCondition(text: string, known: KnownOfTank): Finding {
  const shelf = shelfOf(MORE_THAN_EATEN, text);
  return shelf === null ? BY_EYE : moreThanEaten(shelf, known);
}

const shelfOf = (words: Readonly<Record<ShelfId, string>>, text: string): ShelfId | null =>
  (Object.entries(words).find(([, one]) => one === text)?.[0] as ShelfId | undefined) ?? null;

/** No entry of the daybook speaks of it. */
const BY_EYE: Finding = {
  state: "cannot_tell",
  because: "No entry of the daybook tells of it.",
  entries: [],
  settle: "Look with your own eyes.",
  by: null,
};

/** The worse of two, with the entries of both, and what would settle the other too. */
function both(a: Finding, b: Finding): Finding {
  const order: readonly GateState[] = ["not_met", "cannot_tell", "met"];
  const [worse, other] = order.indexOf(a.state) <= order.indexOf(b.state) ? [a, b] : [b, a];
  const untold = other.state !== "met" || worse.state === "met";
  return {
    ...worse,
    because: untold ? `${worse.because} ${other.because}` : worse.because,
    entries: [...worse.entries, ...other.entries],
    settle: untold && other.settle !== null ? `${worse.settle ?? ""} ${other.settle}`.trim() : worse.settle,
  };
}
