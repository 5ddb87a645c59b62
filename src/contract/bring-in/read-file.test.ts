/** Files as keepers have them, at the door: rows of the catalogue of inputs, sections K and I, and habits of spreadsheets. */
import { describe, expect, test } from "vitest";
import { readText, scene, taken } from "../../../checks/kit/bring-in-scene.ts";
import { atOnce } from "../steps.ts";
import { compareEntries, type HeldEntry } from "./compare.ts";
import { MOST_FILE_BYTES, MOST_FILE_ROWS } from "./limits.ts";
import { planOf } from "./plan.ts";
import type { FileEntry, FileRead } from "./read.ts";
import { readFile } from "./read-file.ts";

const read = (bytes: Uint8Array, answers = {}, context = scene()) =>
  atOnce(readFile(bytes, answers, context));
const refusal = (file: FileRead) => {
  if (file.kind !== "refused") throw new Error(JSON.stringify(file));
  return file.message;
};
const questions = (file: FileRead) => {
  if (file.kind !== "asked") throw new Error(JSON.stringify(file));
  return file.questions;
};
const values = (file: FileRead) =>
  taken(file).entries.map(({ on, body }) => [on, "value" in body ? body.value.central : null]);
const held = (entry: FileEntry, id: string, more: Partial<HeldEntry> = {}): HeldEntry => ({
  id,
  kind: entry.kind,
  on: entry.on,
  body: entry.body as HeldEntry["body"],
  version: 1,
  kept: true,
  changedAt: "2026-05-02T08:00:00.000Z",
  ...more,
});
const compare = (file: FileRead, daybook: readonly HeldEntry[], undone: readonly string[] = []) =>
  atOnce(compareEntries(taken(file).entries, daybook, new Set(undone)));

describe("section K: files", () => {
  test("I-129: an empty file", () => {
    expect(refusal(readText(""))).toEqual({ kind: "MISSING", text: "The file is empty" });
    expect(refusal(readText("\ufeff \n")).kind).toBe("MISSING");
  });

  test("I-130: a header alone has no rows", () => {
    expect(taken(readText("date,nitrate"))).toMatchObject({ rows: 0, entries: [], faults: [] });
  });

  test("I-131: UTF-8 with its mark", () => {
    expect(values(readText("\ufeffdate,nitrate\r\n2026-06-01,10"))).toEqual([["2026-06-01", 10]]);
  });

  test("I-132: semicolons, a decimal comma, points in dates: found, and said", () => {
    const file = readText("date;nitrate\n01.06.2026;10,5");
    expect(values(file)).toEqual([["2026-06-01", 10.5]]);
    expect(taken(file).said.join("; ")).toMatch(/semicolon.*day first.*decimal comma/);
  });

  test("I-133: UTF-16, with and without its mark, either end first", () => {
    const le = Buffer.from("date,nitrate\r\n2026-06-01,10\r\n", "utf16le");
    const be = Buffer.from(le).swap16();
    for (const bytes of [le, be, Buffer.from([0xff, 0xfe, ...le]), Buffer.from([0xfe, 0xff, ...be])]) {
      const file = read(bytes);
      expect(values(file)).toEqual([["2026-06-01", 10]]);
      expect(taken(file).said[0]).toMatch(/UTF-16/);
    }
  });

  test("I-134: bytes that are no UTF-8 are shown, and asked about", () => {
    const bytes = Buffer.concat([
      Buffer.from("date,nitrate,note\n2026-06-01,10,"),
      Buffer.from([0x5a, 0x6f, 0xeb]),
    ]);
    const [question] = questions(read(bytes));
    expect(question).toMatchObject({
      name: "encoding",
      kind: "FORMAT",
      text: expect.stringContaining("Shown as 'Zoë'. Right?"),
    });
    const file = taken(read(bytes, { encoding: "windows-1252" }));
    expect(file.entries[0]?.body.note).toBe("Zoë");
  });

  test("I-135: the same file twice: nothing is new", () => {
    const file = readText("date,nitrate,ph\n2026-06-01,10,8.1\n2026-06-02,12,");
    const daybook = taken(file).entries.map((entry, i) => held(entry, `e${i}`));
    expect(compare(file, daybook)).toMatchObject({ fresh: [], clashes: [], deleted: [] });
    expect(compare(file, daybook).same).toHaveLength(3);
  });

  test("I-136: two equal readings five minutes apart are two, with a zone and without one", () => {
    const text = "date,time,nitrate\n2026-06-01,10:00,10\n2026-06-01,10:05,10";
    for (const zone of ["Europe/London", null]) {
      const file = readText(text, {}, scene({ zone }));
      expect(compare(file, []).fresh).toHaveLength(2);
      const daybook = taken(file).entries.map((entry, i) => held(entry, `e${i}`));
      expect(compare(file, daybook)).toMatchObject({ fresh: [], twice: [], clashes: [] });
    }
  });

  test("I-137: the same time and quantity with another value: mine, the file's, or both", () => {
    const [mine] = taken(readText("date,nitrate\n2026-06-01,12")).entries as [FileEntry];
    const comparison = compare(readText("date,nitrate\n2026-06-01,10"), [held(mine, "e1")]);
    expect(comparison.clashes).toHaveLength(1);
    expect(planOf(comparison, {})).toMatchObject({ add: [], change: [], undecided: 1 });
    expect(planOf(comparison, { clash: "mine" })).toMatchObject({ add: [], change: [], undecided: 0 });
    expect(planOf(comparison, { clash: "file" }).change).toHaveLength(1);
    expect(planOf(comparison, { "clash.2.2": "both" }).add).toHaveLength(1);
    expect(planOf(comparison, { clash: "perhaps" }).undecided).toBe(1);
  });

  test("I-138: what was deleted stays out, unless it is brought back; what an undo took away was not deleted", () => {
    const file = readText("date,nitrate\n2026-06-01,10");
    const gone = held(taken(file).entries[0] as FileEntry, "e1", { kept: false, version: 2 });
    const comparison = compare(file, [gone]);
    expect(comparison.deleted).toHaveLength(1);
    expect(planOf(comparison, {})).toMatchObject({ add: [], change: [] });
    expect(planOf(comparison, { deleted: "bring_back" }).change).toHaveLength(1);
    expect(compare(file, [gone], ["e1"]).fresh).toHaveLength(1);
  });

  test("I-139: good rows are ready beside those to mend, each with line, field, value and fix", () => {
    const bad = ["2026-06-01,trace", "2026-06-20,10", "2026-02-30,11"];
    const good = Array.from(
      { length: 997 },
      (_, i) => `${new Date(Date.UTC(2023, 0, 1 + i)).toISOString().slice(0, 10)},10`,
    );
    const file = taken(readText(["date,nitrate", ...bad, ...good].join("\n")));
    expect(file).toMatchObject({ rows: 1000, faulty: 3 });
    expect(file.entries).toHaveLength(997);
    expect(file.faults.map(({ line, label, typed }) => [line, label, typed])).toEqual([
      [2, "nitrate", "trace"],
      [3, "date", "2026-06-20"],
      [4, "date", "2026-02-30"],
    ]);
    const mended = { "cell.2.2": "<2", "cell.3.1": "2026-06-10", "row.4": "leave_out" };
    const again = taken(readText(["date,nitrate", ...bad, ...good].join("\n"), mended));
    expect(again).toMatchObject({ faulty: 0, leftOut: 1 });
    expect(again.entries).toHaveLength(999);
  });

  test("I-140: a quote that never closes is told with its line", () => {
    const lines = [
      "date,nitrate,note",
      ...Array.from({ length: 12 }, () => "2026-06-01,10,"),
      '2026-06-02,11,"open',
    ];
    expect(refusal(readText(lines.join("\n"))).text).toBe("Line 14: a quote opens and never closes");
  });

  test("I-141: a row longer than the header is set aside; empty cells at its end are none", () => {
    const text =
      "date,nitrate,ph,kh,note\n2026-06-01,10,8.1,8,\n2026-06-02,10,5,8.1,8,x\n2026-06-03,10,8.1,8,,,";
    const file = taken(readText(text, { "column.4": "reading:alkalinity_dkh:dKH" }));
    expect(file.faults.map(({ line, message }) => [line, message.kind])).toEqual([[3, "FORMAT"]]);
    expect(file.faults[0]?.message.text).toContain(
      "Line 3 has 6 fields, the header 5; an unquoted decimal comma?",
    );
    expect(new Set(file.entries.map(({ on }) => on))).toEqual(new Set(["2026-06-01", "2026-06-03"]));
  });

  test("I-142: an unknown header is asked about, with what it may be first, and remembered", () => {
    const text = "date,NO3 (mg/l)\n2026-06-01,10";
    const [question] = questions(readText(text));
    expect(question).toMatchObject({ name: "column.2", kind: "AMBIG" });
    expect(question?.text).toContain("map it to Nitrate, mg/L as NO3?");
    expect(question?.choices[0]?.value).toBe("reading:no3_mg_per_l:mg/L as NO3");
    expect(values(readText(text, { "column.2": "reading:no3_mg_per_l:mg/L as NO3" }))).toEqual([
      ["2026-06-01", 10],
    ]);
    const context = scene();
    const remembered = { "no3 (mg/l)": "reading:no3_mg_per_l:mg/L as N" };
    const again = readText(text, {}, { ...context, columns: { ...context.columns, remembered } });
    expect(values(again)[0]?.[1]).toBeCloseTo(44.27, 2);
    expect(taken(again).columns[1]).toMatchObject({ from: "remembered" });
  });

  test("I-143: a name that a spreadsheet took for a date", () => {
    const text =
      "kind,date,animal,seen\nhead_count,2026-06-01,1-Mar,8\nhead_count,2026-06-02,trochus snail,8";
    const file = taken(readText(text, {}, scene({ onRecord: () => 9 })));
    expect(file.faults).toMatchObject([{ line: 2, name: "cell.2.3", typed: "1-Mar" }]);
    expect(file.faults[0]?.message.text).toContain("looks changed by a spreadsheet. What did it say?");
    expect(file.entries).toHaveLength(1);
  });

  test("I-144: more than 10 MiB", () => {
    const { kind, text } = refusal(read(new Uint8Array(MOST_FILE_BYTES + 10_000_001).fill(0x31)));
    expect(kind).toBe("TOOBIG");
    expect(text).toBe("Files up to 10 MiB; this one has 19.5 MiB. Split it by year");
  });

  test("I-145: 100,001 rows; 100,000 are read", () => {
    const rows = (count: number) => `date,ph\n${"2026-06-01,8.1\n".repeat(count)}`;
    expect(refusal(readText(rows(MOST_FILE_ROWS + 1))).kind).toBe("TOOBIG");
    expect(taken(readText(rows(MOST_FILE_ROWS))).rows).toBe(MOST_FILE_ROWS);
  });

  test("I-147: a picture, whatever it is called; a workbook; other bytes", () => {
    expect(refusal(read(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))).text).toBe(
      "This is a picture, not a table",
    );
    expect(refusal(read(Buffer.from("PK\u0003\u0004rest"))).text).toMatch(/workbook.*Save the sheet as CSV/);
    expect(refusal(readText("date,ph\n2026-06-01,\u0000")).text).toMatch(/not a table.*line 2/);
  });
});

describe("section I: dates in a file", () => {
  const one = (date: string, more: Parameters<typeof scene>[0] = {}, answers = {}) =>
    readText(`date,nitrate\n${date},10`, answers, scene(more));
  const dayOf = (file: FileRead) => taken(file).entries.map(({ on }) => on);
  const faultOf = (file: FileRead) => taken(file).faults[0]?.message;
  const prefers = (dateOrder: "dmy" | "mdy") => ({
    preferences: { ...scene().entry.preferences, dateOrder },
  });

  test("I-104, I-105, I-116: days that can only be one", () => {
    expect(dayOf(one("2026-06-14"))).toEqual(["2026-06-14"]);
    expect(dayOf(one("14 Jun"))).toEqual(["2026-06-14"]);
    expect(dayOf(one("2024-02-29"))).toEqual(["2024-02-29"]);
  });

  test("I-106: the keeper's habit; what the file shows comes before it", () => {
    expect(dayOf(one("03/04/2026", prefers("dmy")))).toEqual(["2026-04-03"]);
    const american = readText("date,ph\n03/04/2026,8.1\n03/25/2026,8.1", {}, scene(prefers("dmy")));
    expect(dayOf(american)).toEqual(["2026-03-04", "2026-03-25"]);
    expect(taken(american).said.join()).toContain("month first");
  });

  test("I-107: without one, one answer for the whole file", () => {
    const [question, ...others] = questions(readText("date,ph\n03/04/2026,8.1\n05/06/2026,8.2"));
    expect(others).toEqual([]);
    expect(question?.text).toContain("3 April 2026 or 4 March 2026? One answer for the whole file");
    expect(dayOf(one("03/04/2026", {}, { dates: "mdy" }))).toEqual(["2026-03-04"]);
  });

  test("I-108, I-109, I-112, I-115: days that there are not, are to come, or long past", () => {
    expect(faultOf(one("31/02/2026", {}, { dates: "dmy" }))).toMatchObject({
      kind: "FORMAT",
      text: expect.stringContaining("February 2026 has 28 days"),
    });
    expect(faultOf(one("2026-06-20"))?.kind).toBe("FUTURE");
    expect(faultOf(one("1926-06-15"))).toMatchObject({
      kind: "RANGE",
      text: expect.stringContaining("Did you mean 2026?"),
    });
    expect(faultOf(one("2026-02-29"))?.kind).toBe("FORMAT");
  });

  test("I-110, I-111: instants with their offset", () => {
    expect(taken(one("2026-06-15T23:30+14:00")).entries[0]?.body.observed_at).toBe(
      "2026-06-15T23:30:00+14:00",
    );
    expect(dayOf(one("2026-06-15T12:04:00Z"))).toEqual(["2026-06-15"]);
  });

  test("I-113, I-114: hours that the clocks left out, or had twice, are asked about row by row", () => {
    const spring = taken(one("2026-03-29T01:30")).faults[0];
    expect(spring).toMatchObject({ name: "cell.2.1", message: { kind: "AMBIG" } });
    expect(spring?.choices.map(({ text }) => text)).toEqual(["2026-03-29T00:30:00Z", "2026-03-29T01:30:00Z"]);
    const autumn = one("2026-10-25T01:30", { today: "2026-11-01", now: "2026-11-01T12:00:00Z" });
    expect(taken(autumn).faults[0]?.choices.map(({ text }) => text)).toEqual([
      "2026-10-25T00:30:00Z",
      "2026-10-25T01:30:00Z",
    ]);
  });

  test("I-117: a spreadsheet's count of days, asked once; its share of a day is the hour", () => {
    const [question] = questions(one("46188"));
    expect(question).toMatchObject({
      name: "day_numbers",
      text: expect.stringContaining("15 June 2026. Read the column so?"),
    });
    expect(dayOf(one("46188", {}, { day_numbers: "yes" }))).toEqual(["2026-06-15"]);
    const hour = taken(one("46187.75", {}, { day_numbers: "yes" })).entries[0];
    expect(hour?.body.observed_text).toBe("2026-06-14T18:00");
    expect(faultOf(one("46188", {}, { day_numbers: "no" }))?.kind).toBe("FORMAT");
  });

  test("a date left out is not today", () => {
    expect(faultOf(one(""))?.kind).toBe("MISSING");
  });
});

describe("spreadsheets' habits", () => {
  test("thousands are told from decimals by the other figures of the file, else asked once", () => {
    const mg = (cells: string[], answers = {}) =>
      readText(`date;magnesium\n${cells.map((cell) => `2026-06-01;${cell}`).join("\n")}`, answers);
    expect(values(mg(["1,300", "1300.5"])).map(([, value]) => value)).toEqual([1300, 1300.5]);
    expect(values(mg(["1.300", "1300,5"])).map(([, value]) => value)).toEqual([1300, 1300.5]);
    expect(questions(mg(["1,300"]))[0]).toMatchObject({ name: "decimal" });
    expect(values(mg(["1,300"], { decimal: "point" }))[0]?.[1]).toBe(1300);
  });

  test("a text is kept in the keeper's own sign, so that it means the same ever after", () => {
    const [entry] = taken(readText("date;calcium\n2026-06-01;1.234,5\n2026-06-02;420,25")).entries;
    expect(entry?.body).toMatchObject({ text: "1234.5 mg/L" });
  });

  test("a cell that was mended is in the keeper's own signs, and says nothing of the file's", () => {
    const text = "date;calcium;ph\n2026-06-01;1.234,5;81\n2026-06-02;1.200;8,1";
    const file = taken(readText(text, { "cell.2.3": "8.1" }));
    expect(file.said.join()).toContain("decimal comma");
    expect(file.entries.map(({ body }) => ("text" in body ? body.text : ""))).toEqual([
      "1234.5 mg/L",
      "8.1",
      "1200 mg/L",
      "8.1",
    ]);
  });

  test("apostrophes before formulas come off, others stay; cells with nothing but a dash are empty", () => {
    const file = taken(readText(`date,nitrate,ph,note\n2026-06-01,10,-,'=1+1\n2026-06-02,n/a,8.1,'tis fine`));
    expect(file.entries.map(({ body }) => body.note)).toEqual(["=1+1", "'tis fine"]);
  });

  test("columns and rows with nothing in them are passed over; a sheet's own word on its separator is heard", () => {
    const file = readText("sep=;\ndate;nitrate;;\n2026-06-01;10;;\n;;;\n2026-06-02;11;;\n");
    expect(values(file)).toEqual([
      ["2026-06-01", 10],
      ["2026-06-02", 11],
    ]);
  });

  test("a row an entry, of any kind; losses of what earlier rows added are no surprise", () => {
    const text = [
      "kind;date;animal;count;certainty;quantity;text;unit;note",
      "addition;2026-05-01;trochus snail;5;;;;;",
      "loss;2026-05-09;trochus snail;2;found;;;;",
      ";2026-05-10;;;;NO3;5;mg/l as no3;a note",
      "Chore done;2026-05-11;;;;;;;",
    ].join("\n");
    const file = taken(readText(text));
    expect(file.entries.map(({ kind }) => kind)).toEqual(["addition", "loss", "reading"]);
    expect(file.faults).toMatchObject([{ line: 5, message: { kind: "MISSING" } }]);
  });

  test("a table without dates or quantities is told by what it has", () => {
    expect(refusal(readText("nitrate\n10")).text).toContain("no column holds the date");
    expect(refusal(readText("date,colour\n2026-06-01,", {})).text).toMatch(
      /no column holds a quantity.*"colour"/,
    );
  });
});
