/**
 * How well the round finds what was planted, over seeds. Run: node checks/round/report.ts [seeds] [tanks] [first seed]
 * Prints, for each seed, how many of the ten stand in the first ten rows and how many of those rows are worth acting on.
 */
import { EMERGENCIES, fleet } from "./fleet.ts";
import { rankOf } from "./rank.ts";

const [seeds = 20, tanks = 400, from = 1] = process.argv.slice(2).map(Number);
const TODAY = "2026-06-15";

let worstFound: number = EMERGENCIES.length;
for (let seed = from; seed < from + seeds; seed += 1) {
  const all = fleet(seed, TODAY, tanks);
  const rows = rankOf(all, TODAY);
  const place = new Map(rows.map(({ id }, i) => [id, i + 1]));
  const first = rows.slice(0, 10).map(({ id }) => all.find((tank) => tank.id === id)!);
  const found = first.filter(({ emergency }) => emergency !== null).length;
  const worth = first.filter(({ worthActing }) => worthActing).length;
  worstFound = Math.min(worstFound, found);
  const missed = all.filter(({ id, emergency }) => emergency !== null && (place.get(id) ?? 0) > 10);
  const today = rows.filter((row) => row.first?.urgency === "today").length;
  const week = rows.filter((row) => row.first?.urgency === "this_week").length;
  console.log(
    `seed ${seed}: ${found} of 10 planted in the first ten, ${worth} of the first ten worth acting on; ${today} today, ${week} this week${missed.map(({ id, emergency }) => `; ${emergency} at ${place.get(id)}`).join("")}`,
  );
  if (process.env["SHOW"] !== undefined) {
    for (const { id, first: advice } of rows.slice(0, 14)) {
      console.log(
        "   ",
        id,
        advice?.id,
        advice?.urgency,
        advice?.weight,
        all.find((t) => t.id === id)?.emergency,
      );
    }
  }
}
console.log(`fewest found: ${worstFound} of 10`);
