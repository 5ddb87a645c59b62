/**
 * The answer of a sum: cautions first, then the answer in one sentence, its numbers, its tables, its limits, what would
 * change it and what was taken for granted. Every number is a door to its working.
 */
import type { AskedSum } from "../../answers/sums/ask.ts";
import type { SumAnswer, SumRefusal } from "../../answers/sums/sum.ts";
import { Notice } from "../parts/notice.tsx";
import { Table } from "../parts/table.tsx";
import { unitText } from "../parts/text.ts";
import { Sentence } from "./sentence.tsx";

type Answered = Extract<AskedSum, { ok: true }>;

export function SumAnswerPart({ answer, taken, said }: Answered) {
  return (
    <section class="sum-answer" aria-labelledby="answer">
      <h2 id="answer">Answer</h2>
      {answer.cautions.length === 0 ? null : (
        <Notice kind="danger" title="Before you start">
          <Lines of={answer.cautions} />
        </Notice>
      )}
      {answer.kind === "none" ? <None {...answer} /> : <Worked {...answer} />}
      {taken.length + said.length === 0 ? null : (
        <section>
          <h3>Taken for granted</h3>
          <ul>
            {taken.map(({ field, label, text, how }) => (
              <li key={field}>{unitText(`${label}: ${text}, ${how}.`)}</li>
            ))}
            {said.map(({ text }) => (
              <li key={text}>{unitText(stopped(text))}</li>
            ))}
          </ul>
        </section>
      )}
    </section>
  );
}

function None({ because, field }: SumRefusal) {
  return (
    <p class="sum-lead">
      <Sentence of={because} />
      {field === null ? null : (
        <>
          {" "}
          <a href={`#${field}`}>To that field</a>
        </>
      )}
    </p>
  );
}

function Worked({ lead, rows, tables, notes, wouldChange }: SumAnswer) {
  return (
    <>
      <p class="sum-lead">
        <Sentence of={lead} />
      </p>
      {rows.length === 0 ? null : (
        <dl class="sum-rows">
          {rows.map(({ label, value }) => (
            <div key={label}>
              <dt>{unitText(label)}</dt>
              <dd>
                <Sentence of={value} />
              </dd>
            </div>
          ))}
        </dl>
      )}
      {tables.map(({ title, columns, rows: lines }) => (
        <Table
          key={title}
          caption={unitText(title)}
          columns={columns.map((name) => ({ name: unitText(name) }))}
          rows={lines.map((line) => line.map((cell, i) => <Sentence key={i} of={cell} />))}
        />
      ))}
      {notes.length === 0 ? null : (
        <section>
          <h3>Limits</h3>
          <Lines of={notes} />
        </section>
      )}
      {wouldChange.length === 0 ? null : (
        <section>
          <h3>What would change it</h3>
          <p>
            <Sentence of={wouldChange} />
          </p>
        </section>
      )}
    </>
  );
}

const Lines = ({ of }: { readonly of: readonly string[] }) => (
  <ul>
    {of.map((text) => (
      <li key={text}>{unitText(text)}</li>
    ))}
  </ul>
);

const stopped = (text: string): string => (/[.?!]$/.test(text) ? text : `${text}.`);
