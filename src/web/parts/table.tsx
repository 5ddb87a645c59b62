/**
 * A table of data with its caption. On a narrow page each row becomes words: every cell says its column's name
 * (`data-column`, written out by the style sheet), so nothing scrolls sideways. Roles are stated because a browser
 * drops those of a table that is laid out otherwise.
 */
import type { ComponentChildren } from "preact";

/** Spread, because a linter that knows no style sheet calls them needless. */
const ROLE = {
  table: { role: "table" },
  rowgroup: { role: "rowgroup" },
  row: { role: "row" },
  columnheader: { role: "columnheader" },
  rowheader: { role: "rowheader" },
  cell: { role: "cell" },
} as const;

export interface Column {
  readonly name: string;
  /** Figures stand to the right on a wide page. */
  readonly numeric?: boolean;
}

export interface TableProps {
  readonly caption: ComponentChildren;
  readonly columns: readonly Column[];
  /** Cells in the order of the columns; the first one names the row. */
  readonly rows: readonly (readonly ComponentChildren[])[];
}

export function Table({ caption, columns, rows }: TableProps) {
  const align = (column: number) => (columns[column]?.numeric === true ? "numeric" : undefined);
  return (
    <table class="table" {...ROLE.table}>
      <caption>{caption}</caption>
      <thead {...ROLE.rowgroup}>
        <tr {...ROLE.row}>
          {columns.map(({ name }, i) => (
            <th key={name} {...ROLE.columnheader} scope="col" class={align(i)}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody {...ROLE.rowgroup}>
        {rows.map((cells, row) => (
          // Rows have no identity but their place.
          <tr key={row} {...ROLE.row}>
            {cells.map((cell, i) =>
              i === 0 ? (
                <th key={columns[i]?.name} {...ROLE.rowheader} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={columns[i]?.name} {...ROLE.cell} class={align(i)} data-column={columns[i]?.name}>
                  {cell}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
