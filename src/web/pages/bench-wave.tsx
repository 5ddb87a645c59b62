/**
 * A wave has come: what arrived is logged, from a form filled in by the plan. Where the gate is not met, or nobody can
 * tell, waiting is the way out that costs one tap, and adding all the same takes a reason. Works without script.
 */
import type { JudgedGate } from "../../answers/bench/gate.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { counted, dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";
import { GateJudged, gateFinding } from "./bench-gate.tsx";
import { errorOf, summaryOf } from "./form-fields.tsx";

export interface WaveView {
  readonly head: TankHead;
  readonly wave: TankAnswers["waves"]["waves"][number];
  readonly gate: JudgedGate;
  /** The same form sent twice adds one wave. */
  readonly once: string;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
}

/** Name of the field that holds how many of a kind came. */
export const countField = (animal: string): string => `count.${animal}`;

export function benchWavePage(view: WaveView): Page {
  const { head, wave, gate, once, values, doubts } = view;
  const open = gate.state === "met";
  const waves = to.tank(head.id, "waves");
  const error = (name: string) => errorOf(name, doubts);
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}Wave ${wave.number} has come, ${head.name}`,
    tank: head,
    here: "waves",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        <h1>Wave {wave.number} has come?</h1>
        <p class="gloss">
          Planned from {dateWords(wave.from)}. Log what arrived alive; what did not come is 0.
        </p>
        {open ? null : (
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
        <form method="post" action={to.acceptWave(head.id, wave.number)}>
          <h2>What arrived</h2>
          <input type="hidden" name="once" value={once} />
          {wave.animals.map(({ id, name, count }) => (
            <Field
              key={id}
              name={countField(id)}
              label={`Alive: ${counted(2, name).slice(2)}`}
              hint={`Planned: ${count}`}
              keypad="numeric"
              value={values[countField(id)] ?? String(count)}
              error={error(countField(id))}
            />
          ))}
          <Field
            name="observed"
            label="When"
            hint="Such as today, yesterday, 14 Jun"
            value={values["observed"] ?? "today"}
            width="middle"
            error={error("observed")}
          />
          {open ? null : (
            <Field
              name="despite_gate"
              label="Why add them all the same"
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
            <button type="submit">{open ? "Log what arrived" : "Log it, with the reason"}</button>
            <a class="action" href={waves}>
              Wait
            </a>
          </div>
        </form>
      </>
    ),
  };
}
