/** Cells to a line of CSV: quoted where a reader could take them otherwise. Lines end as spreadsheets write them. */
export const csvLine = (cells: readonly string[]): string => `${cells.map(quoted).join(",")}\r\n`;

const quoted = (cell: string): string =>
  /[",;\t|\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
