/**
 * A what-if answered twice: from twenty runs soon, then from two hundred. By the engine in this browser once it is
 * loaded, until then by the server. A newer change drops an older one, wherever that is being worked out.
 */
import type { TankFacts } from "../../engine/types/tank.ts";
import { to } from "../page.ts";
import type { BesideView } from "../pages/what-if/beside.ts";
import {
  type ChangePart,
  changeOf,
  type FieldFault,
  faultOf,
  queryOf,
  type Typed,
} from "../pages/what-if/typed.ts";
import { engineAddresses } from "./built-addresses.ts";
import { Engine } from "./engine.ts";
import { whenIdle } from "./when-idle.ts";

const ROUNDS = [20, 200] as const;

export interface AnswersHeard {
  readonly doing: (words: string) => void;
  /** With what was typed when it was asked: fields may have changed since. */
  readonly beside: (view: BesideView, typed: Typed) => void;
  readonly faults: (faults: Readonly<Record<string, FieldFault>>) => void;
}

interface Asked {
  readonly parts: readonly ChangePart[];
  readonly typed: Typed;
}

export class WhatIfAnswers {
  readonly #tank: string;
  readonly #heard: AnswersHeard;
  #engine: Engine | null = null;
  #facts: TankFacts | null = null;
  #asking: AbortController | null = null;

  constructor(tank: string, heard: AnswersHeard) {
    this.#tank = tank;
    this.#heard = heard;
    whenIdle(() => {
      // Where it can't be loaded the server goes on answering.
      this.#load().catch(() => undefined);
    });
  }

  async #load(): Promise<void> {
    const [addresses, facts] = await Promise.all([engineAddresses(), fetch(to.whatIfFacts(this.#tank))]);
    this.#facts = (await facts.json()) as TankFacts;
    this.#engine = new Engine(addresses);
    this.#engine.start();
  }

  ask(asked: Asked, round = 0): void {
    this.drop();
    const members = ROUNDS[round];
    if (members === undefined) {
      this.#heard.doing("");
      return;
    }
    this.#heard.doing(
      members === 20
        ? "Working it out from twenty runs ..."
        : "Below, from twenty runs. Two hundred are being worked out ...",
    );
    if (this.#engine?.ready === true && this.#facts !== null) {
      this.#askHere(this.#engine, this.#facts, asked, members, round);
    } else void this.#askServer(asked, members, round);
  }

  /** Whether anything was being worked out. */
  drop(): boolean {
    const dropped = this.#engine?.drop() === true || this.#asking !== null;
    this.#asking?.abort();
    this.#asking = null;
    return dropped;
  }

  #askHere(engine: Engine, facts: TankFacts, asked: Asked, members: number, round: number): void {
    const change = changeOf(asked.parts);
    engine.ask(
      { facts, choice: { members, seed: 1 }, change, parts: [], rows: true },
      {
        answers: (_, rows) => {
          this.#heard.beside(rows as BesideView, asked.typed);
          this.ask(asked, round + 1);
        },
        refused: (lines) => {
          const part = partOf(lines, asked.parts);
          if (part === undefined) this.#heard.doing(lines.join(" "));
          else this.#heard.faults({ [part.field]: faultOf(lines, part) });
        },
        // Another engine may do better: the server's is asked in its place.
        failed: () => void this.#askServer(asked, members, round),
      },
    );
  }

  async #askServer(asked: Asked, members: number, round: number): Promise<void> {
    const asking = new AbortController();
    this.#asking = asking;
    const address = to.whatIfBeside(this.#tank, queryOf(asked.typed, { runs: String(members) }));
    try {
      const response = await fetch(address, { signal: asking.signal });
      if (!response.ok) throw new Error(`the answer was ${response.status}`);
      const told = (await response.json()) as {
        readonly faults: Readonly<Record<string, FieldFault>>;
        readonly beside: BesideView | null;
      };
      if (this.#asking !== asking) return;
      if (told.beside === null) this.#heard.faults(told.faults);
      else {
        this.#heard.beside(told.beside, asked.typed);
        this.ask(asked, round + 1);
      }
    } catch (error) {
      if (asking.signal.aborted) return;
      const why = error instanceof Error ? error.message : String(error);
      this.#heard.doing(`Not worked out: ${why}. "Work it out" asks again.`);
    }
  }
}

/** The part that a refusal speaks of: by its flag, and among animals by its text. */
function partOf(lines: readonly string[], parts: readonly ChangePart[]): ChangePart | undefined {
  const [, flag = "", quoted = ""] = /^--([a-z-]+) "([^"]*)"/.exec(lines[0] ?? "") ?? [];
  const named = { feed: "feed", light: "light", crew: "crew", "water-change": "waterChange" }[flag];
  const fitting = parts.filter(({ change }) => named !== undefined && named in change);
  return fitting.find(({ change }) => change.crew?.[0]?.includes(quoted)) ?? fitting[0];
}
