/** Numbers of care that stand together: rows, tables and their limits, every number a door to its working. */
import type { NumbersPart } from "../../answers/numbers-part.ts";
import { Table } from "../parts/table.tsx";
import { unitText } from "../parts/text.ts";
import { Rows } from "./rows.tsx";
import { Sentence } from "./sentence.tsx";

export function NumbersSection({ part: { title, rows, tables, notes } }: { readonly part: NumbersPart }) {
  return (
    <section>
      <h2>{title}</h2>
      <Rows of={rows} as="facts" />
      {tables.map((table) => (
        <Table
          key={table.title}
          caption={table.title}
          columns={table.columns.map((name, i) => ({ name: unitText(name), numeric: i > 0 }))}
          rows={table.rows.map((row) => row.map((cell, i) => <Sentence key={i} of={cell} />))}
        />
      ))}
      {notes.map((note) => (
        <p key={note} class="note">
          {note}
        </p>
      ))}
    </section>
  );
}
