/** What a page's route is given and what it gives back; the app turns replies into HTTP. */
import type { TankAnswers } from "../answers/tank-answers.ts";
import type { WhatIfFlags } from "../answers/what-if.ts";
import type { Since } from "../contract/daybook/apply/scene.ts";
import type { DaybookEntry } from "../contract/daybook/kinds.ts";
import type { Notice } from "../contract/tank-file/finding.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { TankRecord } from "../engine/types/record.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import type { EntryRow, Store, TankRow } from "../store/store.ts";
import type { Page, TankHead } from "../web/page.ts";

export interface AnswerChoice {
  readonly members: number;
  readonly seed: number;
}

/** The engine, in threads of its own, with what it said before kept by facts. With a daybook it learns from that first. */
export interface AnswerSource {
  /** Waits for the answers; the same facts asked for at once are worked out once. */
  of(
    facts: TankFacts,
    choice?: AnswerChoice,
    change?: WhatIfFlags,
    daybook?: TankRecord,
  ): Promise<TankAnswers>;
  /** What is known already; null starts the work in the background. */
  ready(facts: TankFacts, choice?: AnswerChoice, daybook?: TankRecord): TankAnswers | null;
}

/** A kept tank, read. */
export interface LoadedTank {
  readonly row: TankRow;
  readonly head: TankHead;
  readonly document: TankFile;
  /** The document with its daybook as of today; `facts` are read from it. */
  readonly applied: TankFile;
  readonly facts: TankFacts;
  readonly notices: readonly Notice[];
  /** Latest readings first, at most 200. */
  readonly readings: readonly EntryRow[];
  /** Latest first: of readings the last 200 of each quantity, of other kinds the last 2,000 each. */
  readonly entries: readonly DaybookEntry[];
  /** When each part of the document was given: entries count from then on. */
  readonly since: Since;
  /** The daybook as the engine takes it. */
  readonly record: TankRecord;
  /** IANA zone where it stands; null where nobody said. */
  readonly zone: string | null;
  /** The day there, ISO date; this machine's where its zone is not known. */
  readonly today: string;
}

export interface PageContext {
  readonly store: Store;
  readonly answers: AnswerSource;
  /** ISO date, in the machine's zone. */
  readonly today: string;
  /** Instant, UTC. */
  readonly now: string;
  /** Null where there is no such tank, or it was taken away. */
  readonly loadTank: (id: string) => Promise<LoadedTank | null>;
  readonly newId: () => string;
}

export interface PageRequest {
  readonly params: Readonly<Record<string, string>>;
  readonly query: Readonly<Record<string, string>>;
  /** As the client names this machine: "127.0.0.1:8420". */
  readonly host?: string;
  /** Fields of a sent form; null on GET. */
  readonly form: URLSearchParams | null;
  /** The file of a form that has one, where its route takes files; null where none was chosen. */
  readonly file?: { readonly name: string; readonly bytes: Uint8Array } | null;
}

export type PageReply =
  | { readonly kind: "page"; readonly page: Page; readonly status?: number }
  | { readonly kind: "redirect"; readonly to: string }
  | { readonly kind: "file"; readonly name: string; readonly type: string; readonly text: string }
  /** A file too long to be made at once. */
  | {
      readonly kind: "pieces";
      readonly name: string;
      readonly type: string;
      readonly pieces: AsyncIterable<string>;
    }
  /** Bytes of a picture, which never change under their address. */
  | {
      readonly kind: "picture";
      readonly name: string;
      readonly type: string;
      readonly sha256: string;
      readonly read: () => Promise<Uint8Array | null>;
    }
  /** What was looked for, in words. */
  | { readonly kind: "not_found"; readonly what: string };

export interface PageRoute {
  readonly method: "GET" | "POST";
  /** As the server writes patterns: `/tanks/:tank/larder`. */
  readonly path: string;
  /** Takes a form with a file: its body may be longer than others. */
  readonly takes?: "file";
  readonly answer: (request: PageRequest, context: PageContext) => Promise<PageReply>;
}
