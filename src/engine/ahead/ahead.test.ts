import { describe, expect, test } from "vitest";
import { animalById, modelParameters } from "../../catalogue/index.ts";
import { FF, FG, headsAt, NO3, PO4, reserveAt, TAN } from "../balance/pools.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { TankFacts } from "../types/tank.ts";
import { careEvents } from "./care.ts";
import { acrossMembers, finish, forecast, ofTwenty, QUANTITIES, type QuantityId } from "./forecast.ts";
import { crewKind, standingOf, unionisedShareOn } from "./start.ts";

const trochus = animalById.get("trochus-snail")!;
const hermit = animalById.get("blue-leg-hermit")!;
const membersOf = (facts: TankFacts, count = 20) => drawMembers(facts, modelParameters, { count, seed: 1 });

describe("start", () => {
  test("heads are what the keeper says, with a reserve between empty and full", () => {
    const facts = referenceTank();
    const kinds = [crewKind(trochus, 3), crewKind(hermit, 0)];
    for (const member of membersOf(facts)) {
      const y = standingOf(member, kinds, facts).state;
      expect(y[headsAt(0)]).toBe(3);
      expect(y[headsAt(1)]).toBe(0);
      expect(y[reserveAt(1, 2)]).toBe(0);
      const level = y[reserveAt(0, 2)]! / (3 * kinds[0]!.species.eFull);
      expect(level).toBeGreaterThan(0);
      expect(level).toBeLessThanOrEqual(1.1);
    }
  });

  test("readings and sightings overrule the run-up", () => {
    const facts = referenceTank({
      readings: [
        {
          quantity: "no3_mg_n_per_l",
          value: { low: 2, central: 2, high: 2 },
          censored: null,
          on: "2026-06-14",
        },
        {
          quantity: "po4_mg_p_per_l",
          value: { low: 0.01, central: 0.01, high: 0.01 },
          censored: null,
          on: null,
        },
        {
          quantity: "tan_mg_n_per_l",
          value: { low: 0.1, central: 0.1, high: 0.1 },
          censored: null,
          on: null,
        },
      ],
      sightings: { film_glass: "covered", hair_algae: "none" },
    });
    const [member] = membersOf(facts);
    const y = standingOf(member!, [], facts).state;
    expect(y[NO3]! / member!.inputs.V).toBeCloseTo(2, 9);
    expect(y[PO4]! / member!.inputs.V).toBeCloseTo(0.01, 9);
    expect(y[TAN]! / member!.inputs.V).toBeCloseTo(0.1, 9);
    expect(y[FG]! / member!.inputs.Ag).toBe(1200);
    expect(y[FF]! / member!.inputs.Ar).toBe(100);
  });

  test("a tank that holds no water yet starts from its filling", () => {
    const facts = referenceTank({
      ageDays: { low: -3, central: -3, high: -3, origin: "stated", how: "typed" },
    });
    const [member] = membersOf(facts);
    const y = standingOf(member!, [], facts).state;
    expect(y[TAN]! / member!.inputs.V).toBeCloseTo(2, 9); // the first ammonia of a filling
    expect([...y].every((value) => value >= 0)).toBe(true);
  });

  test("a tank long settled holds what its keeper reads, in the middle of the runs", () => {
    const reading = (quantity: "no3_mg_n_per_l" | "po4_mg_p_per_l", value: number) => ({
      ...{ quantity, value: { low: value, central: value, high: value }, censored: null, on: "2026-06-14" },
    });
    const facts = referenceTank({
      ageDays: { low: 600, central: 600, high: 600, origin: "stated", how: "typed" },
      feedGPerDay: { low: 0.6, central: 0.6, high: 0.6, origin: "stated", how: "typed" },
      readings: [reading("no3_mg_n_per_l", 2), reading("po4_mg_p_per_l", 0.03)],
    });
    const outlook = finish(
      forecast({ facts, members: membersOf(facts), kinds: [], events: [], days: 56, seed: 1 }),
    );
    const middle = (id: QuantityId) => acrossMembers(outlook.quantities[id], 8).sort()[10]!;
    expect(middle("no3") / (2 * 4.4266)).toBeGreaterThan(0.3);
    expect(middle("no3") / (2 * 4.4266)).toBeLessThan(2);
    expect(middle("po4") / (0.03 * 3.0661)).toBeLessThan(2.5);
  });

  test("a phosphate remover that the keeper has lowers phosphate, with a reading or without", () => {
    const reading = {
      quantity: "po4_mg_p_per_l",
      value: { low: 0.06, central: 0.06, high: 0.06 },
      censored: null,
      on: null,
    } as const;
    for (const readings of [[], [reading]]) {
      const middle = (phosphateSorbentMgP: number | null) => {
        const facts = referenceTank({ phosphateSorbentMgP, readings });
        const outlook = finish(
          forecast({ facts, members: membersOf(facts), kinds: [], events: [], days: 28, seed: 1 }),
        );
        return acrossMembers(outlook.quantities.po4, 4).sort()[10]!;
      };
      expect(middle(400)).toBeLessThan(0.8 * middle(null));
    }
  });

  test("the un-ionised share passed to the balance stays a share at the edges of its equation", () => {
    const share = unionisedShareOn("nbs");
    for (const [t, s, ph] of [
      [25, 35, 8.2],
      [-2, 0, 5],
      [45, 60, 11],
    ] as const) {
      expect(share(t, s, ph)).toBeGreaterThan(0);
      expect(share(t, s, ph)).toBeLessThanOrEqual(1);
    }
  });
});

describe("care", () => {
  test("intervals become whole days, none today", () => {
    const events = careEvents(
      referenceTank({ wipeGlassEveryDays: { low: 6, central: 6.4, high: 7, origin: "stated", how: "" } }),
      22,
    );
    expect(events.filter(({ kind }) => kind === "wipeGlass").map(({ t }) => t)).toEqual([6, 12, 18]);
    expect(events.every(({ t }) => Number.isInteger(t) && t > 0)).toBe(true);
  });

  test("a tank without a filter has none cleaned; nothing is changed where nobody changes water", () => {
    const none = { low: 0, central: 0, high: 0, origin: "stated" as const, how: "" };
    const kinds = careEvents(referenceTank({ filterChangeDays: null, waterChangeFraction: none }), 100).map(
      ({ kind }) => kind,
    );
    expect(new Set(kinds)).toEqual(new Set(["wipeGlass"]));
  });
});

describe("forecast", () => {
  const facts = referenceTank();
  const members = membersOf(facts);
  const kinds = [crewKind(trochus, 2), crewKind(hermit, 4)];
  const plan = { facts, members, kinds, events: [], days: 84, seed: 5 };
  const outlook = finish(forecast(plan));

  test("every quantity has a finite value, never below zero, for every member and week", () => {
    expect(outlook.weeks).toBe(13);
    for (const id of Object.keys(QUANTITIES) as QuantityId[]) {
      const { values } = outlook.quantities[id];
      expect(values).toHaveLength(members.length * 13);
      expect(
        values.every((value) => Number.isFinite(value) && value >= 0),
        id,
      ).toBe(true);
    }
  });

  test("dawn oxygen on request: between nothing and saturation, and nothing else changes", () => {
    expect(outlook.dawnOxygen).toBeNull();
    const asked = finish(forecast({ ...plan, withOxygen: true }));
    expect(asked.quantities).toEqual(outlook.quantities);
    expect(asked.dawnOxygen!.values.every((value) => value > 3 && value < 6.8)).toBe(true);
  });

  test("heads are whole and never grow by themselves", () => {
    for (const { heads } of outlook.kinds) {
      expect(heads.values.every(Number.isInteger)).toBe(true);
      for (let week = 1; week < outlook.weeks; week += 1) {
        const before = acrossMembers(heads, week - 1);
        acrossMembers(heads, week).forEach((now, m) => {
          expect(now).toBeLessThanOrEqual(before[m]!);
        });
      }
    }
  });

  test("the same seed gives the same runs; a member alone is the member in the crowd", () => {
    expect(finish(forecast(plan))).toEqual(outlook);
    const alone = finish(forecast({ ...plan, members: members.slice(0, 1) }));
    expect([...alone.quantities.no3.values]).toEqual([...outlook.quantities.no3.values.slice(0, 13)]);
  });

  test("it reports after every member, so that it can be stopped", () => {
    const steps = [...forecast({ ...plan, members: members.slice(0, 3), days: 7 })];
    expect(steps.map(({ done }) => done)).toEqual([1, 2, 3]);
  });

  test("grains: a share in twentieths", () => {
    expect([0, 0.26, 0.5, 0.99, 1].map(ofTwenty)).toEqual([0, 5, 10, 20, 20]);
  });
});
