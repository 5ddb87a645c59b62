/** How a keeper's shop sells and sends: a few fields, each of which may stay empty. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";
import { errorOf, summaryOf } from "./form-fields.tsx";

export interface ShopView {
  readonly head: TankHead;
  readonly version: number;
  /** Kinds whose pack is asked for: those of the next wave, and those that have one already. */
  readonly kinds: readonly { readonly id: string; readonly name: string }[];
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly clash: boolean;
}

/** Name of the field for a pack of a kind. */
export const packField = (animal: string): string => `pack.${animal}`;

export function shopPage({ head, version, kinds, values, doubts, clash }: ShopView): Page {
  const field = (name: string, label: string, hint: string) => (
    <Field
      name={name}
      label={label}
      hint={hint}
      keypad="decimal"
      value={values[name] ?? ""}
      error={errorOf(name, doubts)}
    />
  );
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}Your shop, ${head.name}`,
    tank: head,
    here: "errands",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        {clash ? (
          <Notice kind="look" title="This was changed since you opened it">
            <p>What is kept now stands below. Enter again what you want otherwise.</p>
          </Notice>
        ) : null}
        <h1>How your shop sells and sends</h1>
        <p class="lead">
          All of it may stay empty. Errands then say what to ask for, without packs and days.
        </p>
        <form method="post" action={to.shop(head.id)} novalidate>
          <input type="hidden" name="version" value={version} />
          {field("lead_days", "Days from asking to coming", "Such as 3")}
          {field("least_heads", "Least order, in heads", "Such as 10")}
          {field("holds_below_c", "Sends nothing when it is colder outside than", "°C, or 41 F")}
          {field("holds_above_c", "Sends nothing when it is warmer outside than", "°C, or 86 F")}
          {kinds.length === 0 ? null : <h2>Sold in packs of</h2>}
          {kinds.map(({ id, name }) => (
            <div key={id}>{field(packField(id), name, "Heads in a pack; empty: one by one")}</div>
          ))}
          <div class="actions">
            <button type="submit">Keep</button>
            <a class="action" href={to.tank(head.id, "errands")}>
              Back to errands
            </a>
          </div>
        </form>
      </>
    ),
  };
}
