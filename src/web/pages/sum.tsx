/**
 * One water sum: the answer where there is one, then what it is asked with. A form by GET, so that an asked sum has an
 * address that can be kept, and works without script. Nothing is saved.
 */

import { withText } from "../../answers/questions/doubts.ts";
import { type AskedSum, knownOf, splitUnit } from "../../answers/sums/ask.ts";
import type { SumDoubt, SumText } from "../../answers/sums/given.ts";
import type { Sum, SumTank } from "../../answers/sums/sum.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { WorkingOf } from "../parts/tank-context.ts";
import { summaryOf } from "./form-fields.tsx";
import { SumAnswerPart } from "./sum-answer.tsx";
import { SumForm } from "./sum-form.tsx";
import { WorkingArticle, type WorkingView } from "./working.tsx";

export interface SumView {
  readonly head: TankHead | null;
  readonly tank: SumTank | null;
  readonly sum: Sum;
  /** Of the address: texts by field name, units under `<name>.unit`. */
  readonly typed: SumText;
  /** Something was sent; false on a first look, where empty fields are nobody's mistake. */
  readonly sent: boolean;
  readonly asked: AskedSum;
}

export function sumPage(view: SumView): Page {
  const { head, sum, sent, asked } = view;
  const tank = head?.id ?? null;
  const doubts = asked.ok || !sent ? [] : doubtsOf(sum, asked.doubts);
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${sum.name}${head === null ? "" : `, ${head.name}`}`,
    tank: head,
    here: head === null ? null : "sums",
    body: (
      <WorkingOf.Provider value={workingsOf(tank, sum, queryOf(sum, view))}>
        <div class="sum">
          <h1>{sum.name}</h1>
          <p class="gloss">{sum.question}</p>
          <ErrorSummary errors={summaryOf(doubts)} />
          {asked.ok ? <SumAnswerPart {...asked} /> : null}
          <SumForm {...view} values={valuesOf(view)} doubts={doubts} answered={asked.ok} />
          <p class="beside-actions">
            <a class="action" href={to.sums(tank)}>
              All water sums
            </a>
          </p>
        </div>
      </WorkingOf.Provider>
    ),
  };
}

/** How one of its numbers came about; further ones with the same values. */
export function sumWorkingPage({
  working,
  sum,
  query,
}: {
  readonly working: WorkingView;
  readonly sum: Sum;
  readonly query: string;
}): Page {
  const { head, figure } = working;
  const tank = head?.id ?? null;
  return {
    title: `How do you know? ${figure.label}`,
    tank: head,
    here: null,
    body: (
      <WorkingOf.Provider value={workingsOf(tank, sum, query)}>
        <p class="note">
          From the sum <a href={to.sum(tank, sum.id, query)}>{sum.name}</a>.
        </p>
        <WorkingArticle {...working} />
      </WorkingOf.Provider>
    ),
  };
}

/** A sum's own figures and those of no tank are worked out with the same values; a tank's facts are the tank's. */
const workingsOf = (tank: string | null, sum: Sum, query: string) => (_: string | null, figure: string) =>
  tank === null || figure.startsWith("sum.")
    ? to.sumWorking(tank, sum.id, figure, query)
    : to.working(tank, figure);

/** What was asked, as an address has it: empty fields are left out. */
function queryOf(sum: Sum, { typed }: Pick<SumView, "typed">): string {
  const names = sum.fields.flatMap(({ name }) => [name, `${name}.unit`]);
  const filled = names.flatMap((name): [string, string][] => {
    const text = (typed[name] ?? "").trim();
    return text === "" || (name.endsWith(".unit") && (typed[name.slice(0, -5)] ?? "").trim() === "")
      ? []
      : [[name, text]];
  });
  return new URLSearchParams(filled).toString();
}

/** As typed; on a first look as the tank knows it. */
function valuesOf({ sum, tank, typed, sent }: SumView): SumText {
  if (sent) return typed;
  const values: Record<string, string> = {};
  for (const field of sum.fields) {
    const known = knownOf(field, tank);
    if (known === null) continue;
    const { text, unit } =
      field.input === "amount" ? splitUnit(field, known.text) : { text: known.text, unit: "" };
    values[field.name] = text;
    if (unit !== "") values[`${field.name}.unit`] = unit;
  }
  return values;
}

/** Beside its field; what belongs to none stands at the first. */
function doubtsOf(sum: Sum, doubts: readonly SumDoubt[]) {
  const names = new Set(sum.fields.map(({ name }) => name));
  return doubts.map(({ field, message, choices }) => ({
    field: names.has(field) ? field : (sum.fields[0]?.name ?? ""),
    text: message.text,
    choices: withText(choices),
  }));
}
