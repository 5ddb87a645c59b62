import { describe, expect, test } from "vitest";
import { changeOf, changeParts, faultOf, queryOf, stepped, typedOf } from "./typed.ts";

const today = { lightHours: 9.4, changePercent: 10, changeDays: 14 };
const change = (typed: Record<string, string>) => changeOf(changeParts(typed, today).parts);

describe("fields become what the readers read", () => {
  test.each([
    [{}, null],
    [{ feed: "  " }, null],
    [{ feed: "+50 %" }, { feed: "+50 %" }],
    [{ feed: "\u221220 %" }, { feed: "-20 %" }],
    [{ light: "10" }, { light: "10 h" }],
    [{ light: "80 %" }, { light: "80 %" }],
    [{ dark: "3" }, { light: "0 for 3 days" }],
    [{ dark: "1" }, { light: "0 for 1 day" }],
    [{ share: "20" }, { waterChange: "20 % every 14 days" }],
    [{ days: "7" }, { waterChange: "10 % every 7 days" }],
    [{ share: "20 %", days: "1 week" }, { waterChange: "20 % every 1 week" }],
    [{ "crew-trochus-snail": "+2" }, { crew: ["+2 trochus-snail"] }],
    [
      { "crew-trochus-snail": "-1", other: "nerite snail", "other-count": "+3", feed: "x2" },
      { feed: "x2", crew: ["-1 trochus-snail", "+3 nerite snail"] },
    ],
  ])("%o", (typed, expected) => {
    expect(change(typed as unknown as Record<string, string>)).toEqual(expected);
  });

  test("what spans two fields is asked about beside the one to fill or empty", () => {
    expect(Object.keys(changeParts({ light: "10", dark: "3" }, today).faults)).toEqual(["dark"]);
    expect(Object.keys(changeParts({ other: "nerite" }, today).faults)).toEqual(["other-count"]);
    expect(Object.keys(changeParts({ "other-count": "+2" }, today).faults)).toEqual(["other"]);
  });
});

describe("steps", () => {
  test.each([
    ["feed", "", 1, "+10 %"],
    ["feed", "+10 %", -1, ""],
    ["feed", "", -1, "-10 %"],
    ["feed", "-100 %", -1, "-100 %"],
    ["feed", "5 g/day", 1, "5.5 g/day"],
    ["light", "", 1, "10 h"],
    ["light", "24 h", 1, "24 h"],
    ["light", "80 %", -1, "70 %"],
    ["dark", "", 1, "1"],
    ["dark", "1", -1, ""],
    ["share", "", 1, "15 %"],
    ["days", "1", -1, "1"],
    ["crew-trochus-snail", "", 1, "+1"],
    ["crew-trochus-snail", "+1", -1, ""],
    ["crew-trochus-snail", "", -1, "-1"],
  ] as const)("%s %o by %d", (field, text, by, expected) => {
    expect(stepped(field, text, by, today)).toBe(expected);
  });
});

test("a refusal becomes words without flags, its offered texts become fixes of the field", () => {
  const lines = [
    '--crew "trochus": could be two kinds. Which?',
    "Write it as it is meant:",
    '  --crew "+2 tectus-snail"   tent top snail',
  ];
  const part = { field: "other", change: { crew: ["+2 trochus"] } };
  expect(faultOf(lines, part)).toEqual({
    text: 'Animals "trochus": could be two kinds. Which?',
    fixes: [{ text: "tectus-snail", label: "Tent top snail" }],
  });
});

test("a query holds the typed fields alone, and a chosen fix takes its field's place", () => {
  expect(queryOf({ feed: "+10 %", light: "" })).toBe("feed=%2B10+%25");
  expect(typedOf({ feed: "9000 g", "fix-feed": "9 g/day", evil: "1", "crew-a": "+1" })).toEqual({
    feed: "9 g/day",
    "crew-a": "+1",
  });
});
