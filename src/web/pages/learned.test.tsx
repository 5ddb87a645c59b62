/** What the daybook has taught, as a page: every number opens its working; too little is said, with what it would take. */
import { describe, expect, test } from "vitest";
import type { LearnedOutput, LearnedQuantity } from "../../answers/learned/output.ts";
import { renderPart } from "../part.tsx";
import { learnedPage } from "./learned.tsx";

const head = { id: "tank-1", name: "Kitchen tank", keeper: "Nell", demonstration: false };
const quantity = (id: string, seen: LearnedQuantity["seen"], left: number): LearnedQuantity => ({
  ...{ id, label: `label of ${id}`, unit: "mg N/d", seen, spread_left: left, figure: `learned.${id}` },
  before: { low: 1, central: 4, high: 16 },
  after: { low: 3, central: 5, high: 7 },
  pulled_by: { group: "no3", label: "nitrate", way: "up" },
});
const learned: LearnedOutput = {
  ...{ observations: 9, least: 4 },
  taught: {
    ...{ from: "2026-05-01", to: "2026-06-15", members: 200 },
    quantities: [quantity("a", "hardly", 0.95), quantity("b", "well", 0.3)],
    groups: [{ group: "no3", label: "nitrate", observations: 9, share: 0.42, figure: "learned.share.no3" }],
    readings: [
      {
        ...{ entry: "e-1", on: "2026-05-02", group: "no3", label: "nitrate", moved: "label of b" },
        ...{ way: "down", pull: "much", outlying: true },
      },
    ],
  },
};
const htmlOf = (output: LearnedOutput | null): string => renderPart(learnedPage({ head, learned: output }));
const text = (html: string) => html.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");

describe("taught", () => {
  const html = htmlOf(learned);
  test("the first sentence says what is well seen", () => {
    expect(/<h1>(.*?)<\/h1>/.exec(html)![1]).toBe("Label of b: well seen");
  });
  test("several are counted in the first sentence and named below, as their names hold commas", () => {
    const two = {
      ...learned.taught!,
      quantities: [quantity("a", "partly", 0.7), quantity("b", "partly", 0.6)],
    };
    const told = htmlOf({ ...learned, taught: two });
    expect(/<h1>(.*?)<\/h1>/.exec(told)![1]).toBe("2 of 2 quantities of this tank are partly seen");
    expect(text(told)).toContain("Partly: label of b; label of a.");
  });
  test("before, now and shares open their workings", () => {
    for (const figure of ["learned.a", "learned.b", "learned.share.no3"])
      expect(html).toContain(`data-figure="${figure}"`);
  });
  test("an observation that lies off is told of and leads to its entry", () => {
    expect(text(html)).toContain("moved it much; lies off every version");
    expect(html).toContain("/tanks/tank-1/daybook/entries/e-1");
  });
});

test("too little: how much there is, how much it takes, and what teaches most", () => {
  const few = text(htmlOf({ observations: 2, least: 4, taught: null }));
  expect(few).toContain("Not enough in the daybook to learn from");
  expect(few).toContain("2 observed so far");
  expect(text(htmlOf(null))).toContain("Nothing that teaches has been observed");
});
