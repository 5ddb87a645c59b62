/**
 * The gate before the next wave, as the daybook has it: each condition met, not met or not to be told, in word and
 * shape; the entries it rests on, and what entry would settle it.
 */

import { inFull } from "../../answers/animals/fit-words.ts";
import type { Condition, GateState, JudgedGate } from "../../answers/bench/gate.ts";
import { KIND_LABELS } from "../../contract/daybook/fields.ts";
import { to } from "../page.ts";
import { lowerFirst } from "../parts/text.ts";

interface GateProps {
  readonly tank: string;
  readonly gate: JudgedGate;
  readonly level?: 2 | 3;
}

const GATE_WORDS: Readonly<Record<GateState, string>> = {
  met: "Met",
  not_met: "Not met",
  cannot_tell: "Can't tell yet",
};

export const gateFinding = ({ state, stopIf, onlyIf }: JudgedGate): string => {
  if (stopIf.state === "met") return "Stop: the daybook speaks against adding any.";
  const met = onlyIf.filter((one) => one.state === "met").length;
  if (state === "met") return "Met: the daybook has all that the gate asks for.";
  return `${state === "not_met" ? "Not met" : "Can't tell yet"}: ${met} of ${onlyIf.length} conditions are met.`;
};

export function GateJudged({ tank, gate, level = 2 }: GateProps) {
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <section class="gate-section">
      <Heading>The gate of wave {gate.wave}, as the daybook has it</Heading>
      <p>{gateFinding(gate)} Your own eyes count for more.</p>
      <ul class="gate-judged">
        {gate.onlyIf.map((condition) => (
          <li key={condition.text}>
            <OneCondition tank={tank} condition={condition} />
          </li>
        ))}
        {gate.soonerIf === null ? null : (
          <li>
            <OneCondition
              tank={tank}
              condition={gate.soonerIf}
              before="Sooner if"
              words={{ met: "It is so", not_met: "It is not so" }}
            />
          </li>
        )}
        <li>
          <OneCondition
            tank={tank}
            condition={gate.stopIf}
            before="Stop if"
            words={{ met: "It is so: stop", not_met: "Not seen" }}
            mark={gate.stopIf.state === "met" ? "not_met" : "met"}
          />
        </li>
      </ul>
    </section>
  );
}

interface OneConditionProps {
  readonly tank: string;
  readonly condition: Condition;
  readonly before?: string;
  readonly words?: Readonly<Partial<Record<GateState, string>>>;
  /** Shape, where it is not the state's own. */
  readonly mark?: GateState;
}

function OneCondition({ tank, condition, before, words, mark }: OneConditionProps) {
  const { state, text, because, entries, settle, by } = condition;
  return (
    <>
      <p>
        <GateMark state={mark ?? state}>{words?.[state] ?? GATE_WORDS[state]}</GateMark>:{" "}
        {before === undefined ? inFull(text) : `${before} ${lowerFirst(inFull(text))}`}
      </p>
      <p>
        {because}
        {entries.slice(-4).map((entry, i) => (
          <>
            {" "}
            <a href={to.entry(tank, entry)}>{i === 0 ? "Entry it rests on" : `another (${i + 1})`}</a>
          </>
        ))}
      </p>
      {settle === null ? null : (
        <p>
          What would settle it: {lowerFirst(settle)}
          {by === null ? null : (
            <>
              {" "}
              <a href={to.newEntry(tank, by)}>Log it: {lowerFirst(KIND_LABELS[by])}</a>
            </>
          )}
        </p>
      )}
    </>
  );
}

function GateMark({ state, children }: { readonly state: GateState; readonly children: string }) {
  return (
    <span class={`gate-state ${state.replace("_", "-")}`}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {state === "met" ? (
          <path d="M2.5 8.5 6.5 12.5 13.5 4" />
        ) : state === "not_met" ? (
          <path d="M2.5 8H13.5" />
        ) : (
          <circle cx="8" cy="8" r="5.75" stroke-dasharray="3.2 2.8" />
        )}
      </svg>
      <span>{children}</span>
    </span>
  );
}
