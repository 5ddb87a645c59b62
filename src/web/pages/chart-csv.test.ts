import fc from "fast-check";
import { expect, test } from "vitest";
import { cellOf } from "./chart-csv.ts";

test("a text that a spreadsheet would run gets an apostrophe before it", () => {
  for (const start of ["=", "+", "-", "@", "\t", "\r"])
    expect(cellOf(`${start}HYPERLINK("x")`)).toMatch(/^"?'/);
});

test("a number stays a number, also a negative one", () => {
  expect(cellOf(-1.5)).toBe("-1.5");
});

test("quotes, commas and breaks stay inside their cell", () => {
  expect(cellOf('say "film", twice\nover')).toBe('"say ""film"", twice\nover"');
});

test("whatever text comes, the cell reads back to it, apart from the apostrophe", () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const cell = cellOf(text);
      const inside = cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell;
      expect([text, `'${text}`]).toContain(inside);
    }),
  );
});
