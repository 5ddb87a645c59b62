/**
 * A wave is ordered, or has come: logged from a form filled in by the plan and by what is on order. Its gate is judged
 * both times. Where it is not met, or nobody can tell, waiting is the way out that costs one tap, and going on all the
 * same takes a reason. Works without script.
 */
import type { JudgedGate } from "../../answers/bench/gate.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { counted, dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";
import { capital } from "../parts/text.ts";
import { GateJudged, gateFinding } from "./bench-gate.tsx";
import { errorOf, summaryOf } from "./form-fields.tsx";

export type WaveDeed = "order" | "arrival";

/** One kind of the form. */
export interface WaveKind {
  readonly id: string;
  readonly name: string;
  /** What stands in its field. */
  readonly heads: number;
  /** "Planned: 5. On order: 5." */
  readonly hint: string;
}

export interface WaveView {
  readonly head: TankHead;
  readonly deed: WaveDeed;
  readonly wave: { readonly number: number; readonly from: string };
  readonly kinds: readonly WaveKind[];
  readonly gate: JudgedGate;
  /** The same form sent twice keeps one. */
  readonly once: string;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
}

/** Name of the field that holds how many of a kind are asked for, or came alive. */
export const countField = (animal: string): string => `count.${animal}`;
/** Of those that came: how many were dead. */
export const deadField = (animal: string): string => `dead.${animal}`;

const WORDS = {
  order: {
    title: (wave: number) => `Order wave ${wave}`,
    gloss: "Nothing is added by ordering. The gate is looked at now, and again when they arrive.",
    heading: "What you ask for",
    count: "Ordered",
    despite: "Why order all the same",
    send: "Log the order",
  },
  arrival: {
    title: (wave: number) => `Wave ${wave} has come?`,
    gloss:
      "Log what arrived alive; what did not come is 0. The plan is made anew from what lives, whatever was ordered.",
    heading: "What arrived",
    count: "Alive",
    despite: "Why add them all the same",
    send: "Log what arrived",
  },
} as const;

export function benchWavePage(view: WaveView): Page {
  const { head, deed, wave, gate, doubts } = view;
  const words = WORDS[deed];
  const waves = to.tank(head.id, "waves");
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${words.title(wave.number)}, ${head.name}`,
    tank: head,
    here: deed === "order" ? "errands" : "waves",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        <h1>{words.title(wave.number)}</h1>
        <p class="gloss">
          Planned from {dateWords(wave.from)}. {words.gloss}
        </p>
        {gate.state === "met" ? null : (
          <Notice kind="look" title={gateFinding(gate)}>
            <p>Waiting is a plan: nothing is lost by it.</p>
            <p>
              <a class="action first" href={waves}>
                Wait, and go back to the waves
              </a>
            </p>
          </Notice>
        )}
        <GateJudged tank={head.id} gate={gate} />
        <WaveForm {...view} />
      </>
    ),
  };
}

function WaveForm({ head, deed, wave, kinds, gate, once, values, doubts }: WaveView) {
  const words = WORDS[deed];
  const open = gate.state === "met";
  const error = (name: string) => errorOf(name, doubts);
  const action = deed === "order" ? to.orderWave(head.id, wave.number) : to.acceptWave(head.id, wave.number);
  return (
    <form method="post" action={action}>
      <h2>{words.heading}</h2>
      <input type="hidden" name="once" value={once} />
      {kinds.map(({ id, name, heads, hint }) => (
        <fieldset key={id} class="wave-kind">
          <legend>
            {capital(counted(2, name).slice(2))} <span class="hint">{hint}</span>
          </legend>
          <Field
            name={countField(id)}
            label={words.count}
            keypad="numeric"
            value={values[countField(id)] ?? String(heads)}
            error={error(countField(id))}
          />
          {deed === "order" ? null : (
            <Field
              name={deadField(id)}
              label="Dead on arrival"
              keypad="numeric"
              value={values[deadField(id)] ?? ""}
              error={error(deadField(id))}
            />
          )}
        </fieldset>
      ))}
      {deed === "order" ? <OrderFields values={values} error={error} /> : null}
      <Field
        name="observed"
        label="When"
        hint={
          deed === "order"
            ? "The day you asked, such as today, 14 Jun"
            : "Such as today, 14 Jun, or with the hour: 2026-06-14T10:30"
        }
        value={values["observed"] ?? "today"}
        width="middle"
        error={error("observed")}
      />
      {open ? null : (
        <Field
          name="despite_gate"
          label={words.despite}
          hint="Needed, as the gate is not known to be met; kept with each kind"
          value={values["despite_gate"] ?? ""}
          error={error("despite_gate")}
          lines={2}
        />
      )}
      <Field
        name="note"
        label="Note"
        hint="May be left empty"
        value={values["note"] ?? ""}
        error={error("note")}
        lines={2}
      />
      <div class="actions">
        <button type="submit">{open ? words.send : "Log it, with the reason"}</button>
        <a class="action" href={to.tank(head.id, "waves")}>
          Wait
        </a>
      </div>
    </form>
  );
}

interface OrderFieldsProps {
  readonly values: Values;
  readonly error: (name: string) => ReturnType<typeof errorOf>;
}

const OrderFields = ({ values, error }: OrderFieldsProps) => (
  <>
    <Field
      name="from"
      label="Of whom"
      hint="May be left empty"
      value={values["from"] ?? ""}
      error={error("from")}
    />
    <Field
      name="expected"
      label="Should come on"
      hint="Such as 4 Dec; may be left empty"
      value={values["expected"] ?? ""}
      width="middle"
      error={error("expected")}
    />
  </>
);
