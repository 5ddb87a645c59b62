import { describe, expect, test } from "vitest";
import { referenceTank } from "../engine/larder/test-kit/reference-tank.ts";
import { Refusal } from "./refusal.ts";
import { type WhatIfFlags, whatIf } from "./what-if.ts";

const tank = referenceTank({
  present: [
    { id: "blue-leg-hermit", count: 5, on: "2026-05-01" },
    { id: "clownfish", count: 2, on: "2026-05-01" },
  ],
});
const change = (flags: WhatIfFlags) => whatIf(flags, tank)!;
function refusal(flags: WhatIfFlags): Refusal {
  try {
    whatIf(flags, tank);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error(`${JSON.stringify(flags)} was taken`);
}
const feedOf = (text: string) => change({ feed: text }).facts.feedGPerDay;

describe("nothing asked", () => {
  test("is no what-if", () => expect(whatIf({}, tank)).toBeNull());
});

describe("--feed", () => {
  const today = tank.feedGPerDay.central;

  test.each([
    ["0.4 g/day", 0.4],
    ["400 mg", 0.4],
    ["+50 %", 1.5 * today],
    ["-25%", 0.75 * today],
    ["x2", 2 * today],
    ["×0.5", 0.5 * today],
    ["+150 %", 2.5 * today],
  ])("%s", (text, grams) => expect(feedOf(text).central).toBeCloseTo(grams, 9));

  test("a share of today's keeps today's doubt", () => {
    const wide = referenceTank({
      feedGPerDay: { low: 0.1, central: 0.2, high: 0.4, origin: "assumed", how: "assumed" },
    });
    expect(whatIf({ feed: "x2" }, wide)!.facts.feedGPerDay).toMatchObject({ low: 0.2, high: 0.8 });
  });

  test("a weight is no longer assumed", () => {
    const unsaid = referenceTank({ assumed: ["feedGPerDay", "ph"] });
    expect(whatIf({ feed: "0.4 g" }, unsaid)!.facts.assumed).toEqual(["ph"]);
  });
});

describe("--light", () => {
  test("hours", () => expect(change({ light: "10 h" }).facts.lightHours.central).toBe(10));

  test("a dimmer dims every surface alike", () => {
    const { facts } = change({ light: "50 %" });
    expect(facts.parRock.central).toBeCloseTo(tank.parRock.central / 2, 9);
    expect(facts.parGlass.high).toBeCloseTo(tank.parGlass.high / 2, 9);
  });

  test("dark days leave the facts and come as events", () => {
    const { facts, events, changes } = change({ light: "0 for 3 days" });
    expect(facts).toEqual(tank);
    expect(events).toEqual([
      { t: 0, kind: "set", light: 0 },
      { t: 3, kind: "set", light: 1 },
    ]);
    expect(changes).toEqual(["3 days without light"]);
  });
});

describe("--crew", () => {
  const heads = (flags: WhatIfFlags, id: string) =>
    change(flags).facts.present.find((row) => row.id === id)?.count ?? 0;

  test("more, fewer, so many in all", () => {
    expect(heads({ crew: ["+2 blue-leg-hermit"] }, "blue-leg-hermit")).toBe(7);
    expect(heads({ crew: ["-3 blue-leg-hermit"] }, "blue-leg-hermit")).toBe(2);
    expect(heads({ crew: ["4 nerite-snail"] }, "nerite-snail")).toBe(4);
    expect(heads({ crew: ["0 blue-leg-hermit"] }, "blue-leg-hermit")).toBe(0);
  });

  test("names are read as anywhere, and several changes add up", () => {
    const { events, changes } = change({
      crew: ["+2 Trochus snails", "+1 trochus snail", "-1 blue leg hermit"],
    });
    expect(events.map((event) => ("count" in event ? [event.kind, event.count] : []))).toEqual([
      ["addAnimals", 2],
      ["addAnimals", 1],
      ["removeAnimals", 1],
    ]);
    expect(changes[0]).toBe("2 banded trochus snails added");
  });
});

describe("--water-change", () => {
  test.each(["20 % every 7 days", "20% each week", "20 percent every 7 d"])("%s", (text) => {
    const { waterChangeFraction, waterChangeEveryDays } = change({ waterChange: text }).facts;
    expect(waterChangeFraction.central).toBeCloseTo(0.2, 9);
    expect(waterChangeEveryDays.central).toBe(7);
  });
});

describe("--dead", () => {
  test("a fish by weight, today or on a day", () => {
    expect(change({ dead: ["5 g fish"] }).events).toEqual([
      { t: 0, kind: "fishDeath", grams: 5, found: false },
    ]);
    expect(change({ dead: ["5g fish on day 10"] }).events[0]).toMatchObject({ t: 10, grams: 5 });
  });

  test("a fish by kind weighs what its kind weighs", () => {
    expect(change({ dead: ["1 clownfish"] }).events[0]).toMatchObject({ kind: "fishDeath" });
  });

  test("one of the crew is gone from the tank and lies in it", () => {
    const { facts, events } = change({ dead: ["1 blue-leg-hermit on day 3"] });
    expect(facts.present[1] ?? facts.present[0]).toMatchObject({ id: "blue-leg-hermit", count: 4 });
    expect(events).toEqual([{ t: 3, kind: "crewDeath", species: "blue-leg-hermit", count: 1, found: false }]);
  });
});

describe("what can't be read or done is refused with flag, value, what is allowed and a fix", () => {
  test.each<[WhatIfFlags, RegExp]>([
    [{ feed: "lots" }, /^--feed "lots": .*such as 0\.2/],
    [{ feed: "40 g" }, /^--feed "40 g": .*Did you mean/],
    [{ feed: "+5000 %" }, /^--feed .*0 to 900/],
    [{ light: "10" }, /^--light "10": hours or per cent\?/],
    [{ light: "30 h" }, /^--light .*0 to 24/],
    [{ light: "6 h for 3 days" }, /dark days/],
    [{ light: "0 for 0 days" }, /^--light/],
    [{ crew: ["trochus"] }, /a number and an animal are needed: write "2 trochus-snail"/],
    [{ crew: ["+2 hermit"] }, /^--crew "hermit": not in our list\. Did you mean/],
    [{ crew: ["-3"] }, /^--crew "-3": .*write "-2 trochus-snail"/],
    [{ crew: ["+2 unicorns"] }, /"unicorns" is not in our list/],
    [{ crew: ["-9 blue-leg-hermit"] }, /5 live here: write "-5 blue-leg-hermit"/],
    [{ crew: ["-1 trochus-snail"] }, /none lives here/],
    [{ crew: ["+1 clownfish"] }, /does not live off the shelves/],
    [{ waterChange: "20 %" }, /write "20 % every 7 days"/],
    [{ waterChange: "120 % every 7 days" }, /0 to 100/],
    [{ dead: ["3 trochus-snail"] }, /none lives here/],
    [{ dead: ["5 g fish on day 2.5"] }, /a whole day is needed: write "5 g fish on day/],
  ])("%o", (flags, words) => {
    const error = refusal(flags);
    expect(error.lines[0]).toMatch(words);
  });

  test("each choice stands as it can be typed", () => {
    expect(refusal({ crew: ["+2 hermit"] }).lines.join("\n")).toContain('--crew "+2 blue-leg-hermit"');
  });
});
