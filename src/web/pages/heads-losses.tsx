/** More died than usually do: the causes in their order, what speaks for and against each, what would tell. */
import { counted, withDates } from "../../answers/words.ts";
import type { KindOutput } from "../../contract/output/heads.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Quantity } from "../parts/quantity.tsx";

const SHOWN = 4;

type Question = NonNullable<KindOutput["question"]>;

export function HeadsLosses({ kind, question }: { readonly kind: KindOutput; readonly question: Question }) {
  const first = question.causes.slice(0, SHOWN);
  const rest = question.causes.slice(SHOWN);
  return (
    <section id={`losses-${kind.id}`}>
      <h2>What may have taken the {counted(2, kind.name).slice(2)}</h2>
      <p>
        The record fits trouble of their own{" "}
        <Quantity figure={kind.figures.ratio ?? kind.figures.now}>
          {question.ratio >= 1000 ? "over 1000" : Number(question.ratio.toPrecision(2))} times
        </Quantity>{" "}
        better than the loss that is usual. That is a question, not a finding: of ten tanks where nothing is
        amiss, up to one looks so.
      </p>
      <ol>
        {first.map((cause) => (
          <Cause key={cause.id} cause={cause} />
        ))}
      </ol>
      {rest.length === 0 ? null : (
        <Disclosure summary={`${rest.length} further causes`}>
          <ul>
            {rest.map((cause) => (
              <Cause key={cause.id} cause={cause} />
            ))}
          </ul>
        </Disclosure>
      )}
      <p>
        Sick animals and medicines are for an aquatic vet; nothing is dosed on a guess. Copper kills the crew.
      </p>
    </section>
  );
}

function Cause({ cause }: { readonly cause: Question["causes"][number] }) {
  const speaks = cause.for.length === 0 ? "nothing logged" : cause.for.join("; ");
  return (
    <li>
      <strong>{cause.name}.</strong> For it: {withDates(speaks)}.
      {cause.against.length === 0 ? "" : ` Against it: ${withDates(cause.against.join("; "))}.`} What would
      tell: {cause.tell}
    </li>
  );
}
