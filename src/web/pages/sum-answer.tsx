/**
 * The answer of a sum: cautions first, then the answer in one sentence, its numbers, its tables, its limits, what would
 * change it and what was taken for granted. Every number is a door to its working.
 */
import { plain } from "../../answers/sentence.ts";
import type { AskedSum } from "../../answers/sums/ask.ts";
import type { SumAnswer, SumRefusal, SumTable } from "../../answers/sums/sum.ts";
import { Notice } from "../parts/notice.tsx";
import { Table } from "../parts/table.tsx";
import { unitText } from "../parts/text.ts";
import { Rows } from "./rows.tsx";
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
      <Rows of={rows} as="sum-rows" />
      {tables.map((table) =>
        table.columns.length === 2 ? (
          <Pairs key={table.title} {...table} />
        ) : (
          <Table
            key={table.title}
            caption={unitText(table.title)}
            columns={table.columns.map((name) => ({ name: unitText(name) }))}
            rows={table.rows.map((line) => line.map((cell, i) => <Sentence key={i} of={cell} />))}
          />
        ),
      )}
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

/** Two columns are words with what belongs to each: "Day 7", "Step 3". */
function Pairs({ title, columns: [first = ""], rows }: SumTable) {
  return (
    <section>
      <h3>{unitText(title)}</h3>
      <Rows
        of={rows.map(([name = [], value = []]) => ({
          label: /^[\d.]+$/.test(plain(name)) ? `${first} ${plain(name)}` : plain(name),
          value,
        }))}
        as="sum-rows"
      />
    </section>
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
