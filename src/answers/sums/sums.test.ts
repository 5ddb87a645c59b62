/** Holds of every sum in the table: its examples are read and answered, and what it says can be asked about. */
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import type { Sentence } from "../sentence.ts";
import { readSum } from "./given.ts";
import type { Sum } from "./sum.ts";
import { SUMS } from "./table.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };

const answersOf = (sum: Sum) =>
  sum.examples.map((typed) => {
    const read = readSum(sum, typed, CONTEXT);
    if (!read.ok) throw new Error(read.doubts.map(({ message }) => message.text).join("\n"));
    return sum.work(read.given, null);
  });

const figuresIn = (sentences: readonly Sentence[]) =>
  sentences.flatMap((sentence) =>
    sentence.flatMap((part) => (typeof part === "string" ? [] : [part.figure])),
  );

describe.each(SUMS.map((sum) => [sum.id, sum] as const))("%s", (_, sum) => {
  test("its examples are answered", () => {
    expect(sum.examples.length).toBeGreaterThan(0);
    expect(answersOf(sum).filter(({ kind }) => kind === "answer").length).toBeGreaterThan(0);
  });

  test("every number that it links to is one of its figures, and no figure is left untold", () => {
    for (const answer of answersOf(sum)) {
      const sentences =
        answer.kind === "none"
          ? [answer.because]
          : [
              answer.lead,
              answer.wouldChange,
              ...answer.rows.map(({ value }) => value),
              ...answer.tables.flatMap(({ rows }) => rows.flat()),
            ];
      const linked = new Set(figuresIn(sentences));
      const from = answer.figures.flatMap(({ working }) => working.inputs.map(({ figure }) => figure));
      const ids = new Set(answer.figures.map(({ id }) => id));
      expect([...linked].filter((id) => !ids.has(id))).toEqual([]);
      expect([...ids].filter((id) => !linked.has(id) && !from.includes(id))).toEqual([]);
      for (const id of ids) expect(id).toMatch(new RegExp(`^sum\\.${sum.id}\\.`));
    }
  });

  test("an empty form names every field that is needed", () => {
    const read = readSum(sum, {}, CONTEXT);
    const needed = sum.fields.filter((field) =>
      field.input === "choice" ? field.usual === null : field.empty === "needed",
    );
    expect(read.ok ? [] : read.doubts.map(({ field }) => field)).toEqual(needed.map(({ name }) => name));
  });

  test("a field it does not know is told of", () => {
    const read = readSum(sum, { ...sum.examples[0], moon: "full" }, CONTEXT);
    expect(read.ok ? [] : read.doubts.map(({ field }) => field)).toEqual(["moon"]);
  });
});
