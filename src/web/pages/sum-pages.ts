/**
 * Pages of the water sums from what their address says: for the server, and for the service worker where the network is
 * gone. All by GET: nothing is saved, and an address holds all that was asked.
 */
import { askSum } from "../../answers/sums/ask.ts";
import type { SumContext, SumText } from "../../answers/sums/given.ts";
import { sumWorking } from "../../answers/sums/output.ts";
import type { Sum } from "../../answers/sums/sum.ts";
import { SUMS, sumOf } from "../../answers/sums/table.ts";
import { workingOf } from "../../answers/working.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { FIX } from "./form-fields.tsx";
import { sumPage, sumWorkingPage } from "./sum.tsx";
import { sumsPage } from "./sums.tsx";

export type SumsReply =
  | { readonly kind: "page"; readonly page: Page; readonly status?: number }
  | { readonly kind: "redirect"; readonly to: string }
  | { readonly kind: "not_found"; readonly what: string };

/** For whom, and what is known; head and `context.tank` are null where somebody only wants to reckon. */
export interface SumsScene {
  readonly head: TankHead | null;
  readonly context: SumContext;
}

export interface SumsAsked {
  /** Null: the list of all. */
  readonly sum: string | null;
  /** Null: the sum itself. */
  readonly figure: string | null;
  readonly query: Readonly<Record<string, string>>;
}

export function sumsReply({ sum: id, figure, query }: SumsAsked, scene: SumsScene): SumsReply {
  if (id === null) return { kind: "page", page: sumsPage({ head: scene.head, sums: SUMS }) };
  const sum = sumOf(id);
  if (sum === null) return { kind: "not_found", what: "sum of that name" };
  return figure === null ? one(sum, query, scene) : working(sum, figure, query, scene);
}

function one(sum: Sum, query: SumsAsked["query"], { head, context }: SumsScene): SumsReply {
  if (Object.keys(query).some((name) => name.startsWith(FIX)))
    return { kind: "redirect", to: to.sum(head?.id ?? null, sum.id, fixed(query)) };
  const typed = typedOf(query);
  const sent = Object.keys(typed).length > 0;
  const asked = askSum(sum, typed, context);
  return {
    kind: "page",
    page: sumPage({ head, tank: context.tank, sum, typed, sent, asked }),
    ...(sent && !asked.ok ? { status: 422 } : {}),
  };
}

function working(sum: Sum, id: string, query: SumsAsked["query"], { head, context }: SumsScene): SumsReply {
  const typed = typedOf(query);
  const figure = figureOf(sum, typed, id, context);
  if (figure === null) return { kind: "not_found", what: "figure of that name in this sum" };
  const view = { head, figure, asOf: context.today };
  const own = new URLSearchParams(Object.entries(typed)).toString();
  return { kind: "page", page: sumWorkingPage({ working: view, sum, query: own }) };
}

function figureOf(sum: Sum, typed: SumText, id: string, context: SumContext) {
  const asked = askSum(sum, typed, context);
  return (asked.ok ? sumWorking(asked.answer, id) : null) ?? workingOf(null, id);
}

/** Names of a query that are no field's. */
const OWN = new Set(["part", "wait"]);

const typedOf = (query: SumsAsked["query"]): SumText =>
  Object.fromEntries(Object.entries(query).filter(([name]) => !OWN.has(name)));

/** A chosen fix in the place of what was typed; it brings its own unit. */
function fixed(query: SumsAsked["query"]): string {
  const typed: Record<string, string> = {};
  for (const [name, text] of Object.entries(query)) if (!name.startsWith(FIX)) typed[name] = text;
  for (const [name, text] of Object.entries(query)) {
    if (!name.startsWith(FIX)) continue;
    typed[name.slice(FIX.length)] = text;
    delete typed[`${name.slice(FIX.length)}.unit`];
  }
  return new URLSearchParams(typed).toString();
}
