/** Away from home, by laws: no care within, each kind once before and after; feed as whoever stands in gives it. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { animalById, modelParameters } from "../../catalogue/index.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { Absence } from "../types/tank.ts";
import { awayDays, careAround, feedAround } from "./away.ts";
import { careEvents } from "./care.ts";
import { acrossMembers, finish, forecast } from "./forecast.ts";
import { crewKind } from "./start.ts";

const away = (leave: number, back: number, way: "nothing" | "sitter" | "feeder" = "sitter") => ({
  ...{ leave, back, way, everyDays: 2 },
});

test("days are counted from the facts' own; what is over is none, the first goes first", () => {
  const absence = (from: string, to: string): Absence => ({ from, to, fedBy: "nobody", everyDays: 1 });
  const absences = [absence("2026-08-01", "2026-08-05"), absence("2026-06-01", "2026-06-20")];
  expect(awayDays({ asOf: "2026-06-15", absences })).toMatchObject([
    { leave: -14, back: 5, way: "nothing" },
    { leave: 47, back: 51 },
  ]);
  expect(awayDays({ asOf: "2026-06-20", absences: [absences[1]!] })).toEqual([]);
});

describe("care", () => {
  test("none falls into the time away; each kind that would have is done before it and on coming back", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5, max: 60 }), fc.integer({ min: 1, max: 42 }), (leave, days) => {
        const usual = careEvents(referenceTank(), 120);
        const gone = away(leave, leave + days);
        if (gone.back <= 0) return;
        const moved = careAround(usual, [gone]);
        expect(moved.filter(({ t }) => t >= gone.leave && t < gone.back)).toEqual([]);
        const within = new Set(usual.flatMap(({ t, kind }) => (t >= leave && t < gone.back ? [kind] : [])));
        for (const kind of within) {
          const days_ = moved.flatMap((event) => (event.kind === kind ? [event.t] : []));
          expect(days_.some((t) => Math.abs(t - gone.back) <= 1)).toBe(true);
          if (leave > 1) expect(days_.some((t) => t >= leave - 2 && t < leave)).toBe(true);
        }
        for (const { t } of moved) expect(t).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test("without an absence it is as it was", () => {
    const usual = careEvents(referenceTank(), 60);
    expect(careAround(usual, [])).toEqual(usual);
  });
});

describe("feed", () => {
  const given = (events: ReturnType<typeof feedAround>, day: number) => {
    const last = events.findLast(({ t }) => t <= day);
    return last?.kind === "set" ? last.feed : undefined;
  };

  test("a sitter on every second day, not on the day of leaving; as usual again on coming back", () => {
    const events = feedAround(2, [away(3, 9)], 20);
    expect([2, 3, 4, 5, 6, 7, 8, 9, 15].map((day) => given(events, day) ?? 2)).toEqual([
      2, 0, 0, 2, 0, 2, 0, 2, 2,
    ]);
  });

  test("nobody feeds; of a time that has begun today is one of its days", () => {
    expect(feedAround(2, [away(-3, 4, "nothing")], 20)).toEqual([
      { t: 0, kind: "set", feed: 0 },
      { t: 4, kind: "set", feed: 2 },
    ]);
    expect(feedAround(2, [], 20)).toEqual([]);
  });
});

test("a forecast knows of it: dark and unfed, less nitrate comes in than at home", () => {
  const none = { low: 0, central: 0, high: 0, origin: "stated", how: "dark" } as const;
  const dark = referenceTank({ lightHours: none, waterChangeFraction: none });
  const absences: readonly Absence[] = [
    { from: dayAfter(dark.asOf, 2), to: dayAfter(dark.asOf, 30), fedBy: "nobody", everyDays: 1 },
  ];
  const members = drawMembers(dark, modelParameters, { count: 3, seed: 1 });
  const kinds = [crewKind(animalById.get("trochus-snail")!, 3)];
  const nitrate = (facts: typeof dark) =>
    acrossMembers(
      finish(forecast({ facts, members, kinds, events: [], days: 28, seed: 1 })).quantities.no3,
      4,
    );
  const [home, gone] = [nitrate(dark), nitrate({ ...dark, absences })];
  for (const m of members.keys()) expect(gone[m]).toBeLessThan(home[m]!);
});

function dayAfter(iso: string, days: number): string {
  return new Date(Date.parse(iso) + days * 86_400_000).toISOString().slice(0, 10);
}
