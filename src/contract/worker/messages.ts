/**
 * What a page and its engine's worker say to each other. Both ends are this program's own, but a message is judged
 * before it is used: a worker of an older build may still live beside a newer page.
 * Limits: the facts were judged by their own reader before a page was drawn from them, and are not judged again.
 */
import type { TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { AheadOutput } from "../output/ahead.ts";
import type { AnimalsOutput } from "../output/animals.ts";
import type { LarderOutput } from "../output/larder.ts";
import type { WavesOutput } from "../output/waves.ts";
import type { WorkingOutput } from "../output/working.ts";

/** Everything that can be answered of a tank, as answers/tank-answers.ts gives it. */
export interface AnswerParts {
  readonly larder: LarderOutput;
  readonly waves: WavesOutput;
  readonly ahead: AheadOutput;
  readonly animals: AnimalsOutput;
  readonly workings: Readonly<Record<string, NonNullable<WorkingOutput["figure"]>>>;
}
export const PARTS = [
  "larder",
  "waves",
  "ahead",
  "animals",
  "workings",
] as const satisfies readonly (keyof AnswerParts)[];
export type Part = (typeof PARTS)[number];

/** A what-if in the words of its fields, as answers/what-if.ts takes it. */
export interface ChangeTexts {
  readonly feed?: string;
  readonly light?: string;
  readonly crew?: readonly string[];
  readonly waterChange?: string;
  readonly dead?: readonly string[];
}

/** Load the solver: from an address, or compiled already by a worker that was ended. */
export interface StartWord {
  readonly kind: "start";
  readonly solver: string | WebAssembly.Module;
}

export interface AskWord {
  readonly kind: "ask";
  /** Comes back with every reply. */
  readonly id: number;
  /** As the page's server read them, the kept readings among them. */
  readonly facts: TankFacts;
  readonly choice: { readonly members: number; readonly seed: number };
  readonly change: ChangeTexts | null;
  /** Sent back; the others stay in the worker, so that a page need not unpack what it does not show. */
  readonly parts: readonly Part[];
  /** Of a what-if: also the few rows that its page shows, drawn from the answers in the worker. */
  readonly rows?: boolean;
}

/** Learn a tank from its daybook: in short turns, so that `stop` is heard. Needs no solver. */
export interface LearnWord {
  readonly kind: "learn";
  readonly id: number;
  readonly facts: TankFacts;
  readonly record: TankRecord;
}

/** Leave off learning; nothing more is said of that id. */
export interface StopWord {
  readonly kind: "stop";
  readonly id: number;
}

export type EngineReply =
  | { readonly kind: "ready"; readonly solver: WebAssembly.Module }
  | { readonly kind: "progress"; readonly id: number; readonly doing: string; readonly share: number }
  | {
      readonly kind: "answers";
      readonly id: number;
      readonly answers: Partial<AnswerParts>;
      readonly rows?: object;
    }
  /** What its page shows of what was learned, or of how little there was. */
  | { readonly kind: "learned"; readonly id: number; readonly seen: object }
  /** The what-if can't be read or done: lines that say how to mend it. */
  | { readonly kind: "refused"; readonly id: number; readonly lines: readonly string[] }
  /** Id null: the solver could not be loaded. */
  | { readonly kind: "failed"; readonly id: number | null; readonly why: string };

/** The message to a worker that `data` is; null for any other. */
export function wordToEngine(data: unknown): StartWord | AskWord | LearnWord | StopWord | null {
  if (!isObject(data)) return null;
  if (data["kind"] === "start") {
    const { solver } = data;
    return typeof solver === "string" || solver instanceof WebAssembly.Module
      ? { kind: "start", solver }
      : null;
  }
  if (data["kind"] === "stop") return Number.isInteger(data["id"]) ? (data as unknown as StopWord) : null;
  if (data["kind"] === "learn") {
    const { id, facts, record } = data;
    const right = Number.isInteger(id) && isObject(facts) && isRecord(record);
    return right ? (data as unknown as LearnWord) : null;
  }
  if (data["kind"] !== "ask") return null;
  const { id, facts, choice, change, parts } = data;
  const right =
    Number.isInteger(id) &&
    isObject(facts) &&
    isObject(choice) &&
    isCount(choice["members"], 2000) &&
    isCount(choice["seed"], 2 ** 31) &&
    (change === null || isChange(change)) &&
    Array.isArray(parts) &&
    parts.every((part) => PARTS.includes(part)) &&
    (data["rows"] === undefined || typeof data["rows"] === "boolean");
  return right ? (data as unknown as AskWord) : null;
}

/** The reply of a worker that `data` is; null for any other. */
export function replyOfEngine(data: unknown): EngineReply | null {
  if (!isObject(data)) return null;
  const { kind, id } = data;
  const right =
    kind === "ready"
      ? data["solver"] instanceof WebAssembly.Module
      : kind === "progress"
        ? Number.isInteger(id) && typeof data["doing"] === "string" && typeof data["share"] === "number"
        : kind === "answers"
          ? Number.isInteger(id) && isObject(data["answers"])
          : kind === "learned"
            ? Number.isInteger(id) && isObject(data["seen"])
            : kind === "refused"
              ? Number.isInteger(id) && isTexts(data["lines"])
              : kind === "failed" && (id === null || Number.isInteger(id)) && typeof data["why"] === "string";
  return right ? (data as unknown as EngineReply) : null;
}

function isChange(value: unknown): boolean {
  if (!isObject(value)) return false;
  return Object.entries(value).every(([name, text]) =>
    name === "crew" || name === "dead"
      ? isTexts(text)
      : ["feed", "light", "waterChange"].includes(name) && typeof text === "string",
  );
}

const isRecord = (value: unknown): boolean =>
  isObject(value) &&
  Array.isArray(value["observations"]) &&
  Array.isArray(value["happenings"]) &&
  typeof value["asOf"] === "string";
const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isCount = (value: unknown, most: number): boolean =>
  Number.isInteger(value) && (value as number) >= 1 && (value as number) <= most;
const isTexts = (value: unknown): boolean =>
  Array.isArray(value) && value.every((text) => typeof text === "string");
