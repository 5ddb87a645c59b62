/** Pieces that the pages of "What is this?" share: causes with their evidence, lists of what to do, links that keep. */

import { chance } from "../../answers/words.ts";
import type { CauseOutput, QuestionOutput } from "../../contract/output/growths.ts";
import type { Effect } from "../../engine/types/diagnosis.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";
import { capital } from "../parts/text.ts";

export function Lines({ title, of }: { readonly title: string; readonly of: readonly string[] }) {
  if (of.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {of.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

interface CausesProps {
  readonly causes: readonly CauseOutput[];
  readonly wouldTell: readonly QuestionOutput[];
  /** Workings shown in place, where no page has them; null where each number opens its own. */
  readonly inPlace: readonly Figure[] | null;
}

/** Most are read by nobody under stress: the first three stand open. */
const OPEN = 3;

export function Causes({ causes, wouldTell, inPlace }: CausesProps) {
  if (causes.length === 0) return <p>No cause of those known here is likelier than 1 of 20.</p>;
  const first = causes.slice(0, OPEN);
  const rest = causes.slice(OPEN);
  return (
    <>
      <ol class="causes">
        {first.map((cause, i) => (
          <Cause key={cause.id} cause={cause} inPlace={inPlace} first={i === 0} />
        ))}
      </ol>
      {rest.length === 0 ? null : (
        <Disclosure summary={rest.length === 1 ? "One further cause" : `${rest.length} further causes`}>
          <ol class="causes" start={OPEN + 1}>
            {rest.map((cause) => (
              <Cause key={cause.id} cause={cause} inPlace={inPlace} first={false} />
            ))}
          </ol>
        </Disclosure>
      )}
      {wouldTell.length === 0 ? null : (
        <Lines title="What would tell them apart" of={wouldTell.map(({ test }) => test)} />
      )}
    </>
  );
}

interface CauseProps {
  readonly cause: CauseOutput;
  readonly inPlace: readonly Figure[] | null;
  /** What to do stands open, or under a fold. */
  readonly first: boolean;
}

function Cause({ cause, inPlace, first }: CauseProps) {
  const words = chance(cause.of_20);
  const quiet = cause.for.length + cause.against.length === 0;
  return (
    <li>
      <p>
        <strong>{capital(cause.name)}</strong>:{" "}
        {inPlace === null ? <Quantity figure={cause.figure}>{words}</Quantity> : words}.
      </p>
      {quiet ? (
        <p>Nothing that is known speaks for it or against it.</p>
      ) : (
        <>
          <Evidence name="For it" of={cause.for} none="nothing that is known" />
          <Evidence name="Against it" of={cause.against} none="nothing that is known" />
        </>
      )}
      {first ? (
        <WhatToDo cause={cause} />
      ) : (
        <Disclosure summary="What to do then">
          <WhatToDo cause={cause} />
        </Disclosure>
      )}
      {inPlace === null ? null : <InPlace figure={inPlace.find(({ id }) => id === cause.figure) ?? null} />}
    </li>
  );
}

function WhatToDo({ cause }: { readonly cause: CauseOutput }) {
  return (
    <>
      {cause.do.length === 0 ? null : (
        <p>
          <strong>Do:</strong> {cause.do.join(" ")}
        </p>
      )}
      {cause.dont.length === 0 ? null : (
        <p>
          <strong>Do not:</strong> {cause.dont.join(" ")}
        </p>
      )}
      <p>{cause.stop}</p>
    </>
  );
}

function Evidence({
  name,
  of,
  none,
}: {
  readonly name: string;
  readonly of: readonly string[];
  readonly none: string;
}) {
  return (
    <p>
      {name}: {of.length === 0 ? `${none}.` : of.join(" ")}
    </p>
  );
}

/** How a number came about, where it has no page: it rests on answers given just now. */
function InPlace({ figure }: { readonly figure: Figure | null }) {
  if (figure === null) return null;
  return (
    <Disclosure summary="How this number came about">
      <Table
        caption={`${figure.working.formula}. Judgement: common practice, unless the sources page says otherwise.`}
        columns={[{ name: "What went in" }, { name: "What it does" }]}
        rows={figure.working.inputs.map(({ label, value }) => [label, value])}
      />
    </Disclosure>
  );
}

export const EFFECT_WORDS: readonly (readonly [Effect, string])[] = [
  ["waterline_snails", "Snails at or above the waterline"],
  ["fallen_snails", "Snails on their backs"],
  ["snail_loss", "A snail died or is missing"],
  ["crew_loss", "Another animal of the crew died or is missing"],
  ["empty_shells", "Empty shells"],
  ["hiding", "An animal hides"],
  ["ill_animals", "Animals look ill: limp, gasping, pale"],
  ["cloudy_water", "Cloudy water"],
];

export function queryOf(params: Readonly<Record<string, string>>): string {
  return new URLSearchParams(Object.entries(params)).toString();
}

export function Hidden({ params }: { readonly params: Readonly<Record<string, string>> }) {
  return (
    <>
      {Object.entries(params).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
    </>
  );
}
