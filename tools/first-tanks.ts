/**
 * Plans of first tanks over sizes and ages beside what the trade does, and where the two part: docs/reports/practice.md.
 * The bounds themselves are tests: checks/practice. Run: node tools/first-tanks.ts
 */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { firstTank } from "../checks/kit/first-tank.ts";
import { planTank } from "../checks/stocking/judge.ts";
import type { Plan } from "../src/engine/stocking/plan.ts";
import type { AnimalGroup } from "../src/engine/types/animal.ts";
import { loadSolver } from "../src/solver/highs.ts";

const PAGE = join(import.meta.dirname, "../docs/reports/practice.md");
const MEMBERS = 200;
const SIZES = [76, 95, 113, 132, 151];
const AGES = [42, 60, 90, 120];
const SHRIMP = "skunk-cleaner-shrimp";

const version = execFileSync("git", ["rev-parse", "--short", "HEAD"], { encoding: "utf8" }).trim();
const solve = await loadSolver();
const planned = (litres: number, age: number, changes: Readonly<Record<string, unknown>> = {}): Plan =>
  planTank(firstTank(litres, age, changes), solve, MEMBERS, 1);

const bought = ({ waves }: Plan) =>
  waves.flatMap(({ day, animals }) => animals.map(({ animal, count }) => ({ animal, count, day })));
const ofGroup = (plan: Plan, group: AnimalGroup): number =>
  bought(plan)
    .filter(({ animal }) => animal.group === group)
    .reduce((sum, { count }) => sum + count, 0);
const wavesText = ({ waves }: Plan): string =>
  waves
    .map(
      ({ day, animals }) =>
        `day ${day}: ${animals.map(({ animal, count }) => `${count} ${animal.id}`).join(", ")}`,
    )
    .join("; ");
const outText = (plan: Plan, id: string): string =>
  plan.refused
    .find(({ animal }) => animal.id === id)
    ?.reasons.map(({ text }) => text)
    .join(" ") ??
  plan.spare.find(({ animal }) => animal.id === id)?.why ??
  "in the plan";

const rows: string[] = [];
const snails: number[] = [];
const hermits: number[] = [];
for (const litres of SIZES) {
  for (const age of AGES) {
    const plan = planned(litres, age);
    snails.push(ofGroup(plan, "snail"));
    hermits.push(ofGroup(plan, "hermit"));
    const cuts = plan.mends.map(({ id, from, to }) => `${id} ${from} to ${to}`).join(", ");
    rows.push(
      `| ${litres} | ${age} | ${snails.at(-1)} | ${hermits.at(-1)} | ${wavesText(plan)} | ${cuts} | ${outText(plan, SHRIMP)} |`,
    );
  }
}

const deep = planned(151, 150, { floor: { kind: "sand", depth_mm: 50, grain: "fine" } });
const conches = ["tiger-conch", "fighting-conch"].map((id) => `- ${id}: ${outText(deep, id)}`);

const wishes = SIZES.map((litres) => {
  const plan = planned(litres, 60, { wishes: [SHRIMP] });
  const fed = plan.fedByHand.find(({ animal }) => animal.id === SHRIMP);
  const costs = plan.wishes[0]?.costs.map(({ fewer, animal }) => `${fewer} ${animal.id}`).join(", ");
  const check = plan.check?.kinds.find(({ id }) => id === SHRIMP);
  const hand =
    fed === undefined ? "nothing" : `${fed.mgC.toFixed(1)} mg C, ${Math.round(fed.dryFeedMg)} mg dry`;
  return `| ${litres} | ${hand} | ${costs === "" ? "nobody" : costs} | ${check?.aliveOf20} of 20 |`;
});

const NONE = {
  ...{ film_glass: "none", film_rock: "none", film_sand: "none", diatoms: "none", hair_algae: "none" },
};
const bare = SIZES.map((litres) => {
  const today = bought(planned(litres, 60, { sightings: NONE })).filter(({ day }) => day === 0);
  const names = today.map(({ animal, count }) => `${count} ${animal.id}`).join(", ");
  return `- ${litres} L: ${names === "" ? "nobody" : names}`;
});

const span = (values: readonly number[]) => `${Math.min(...values)} to ${Math.max(...values)}`;
writeFileSync(
  PAGE,
  `# First tanks beside the habits of the trade

\`node tools/first-tanks.ts\` wrote this page at ${version}; ${MEMBERS} members each. The tank: checks/kit/first-tank.ts (sand 30 mm,
rock 0.1 kg a litre, two small clownfish, 1.77 mg of pellet a litre and day, film in patches). Habits are common practice,
no source; the bounds are tests (checks/practice/first-tank.test.ts).

| litres | age, d | snails | hermits | waves | cut by the forecast | cleaner shrimp |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join("\n")}

## Where they agree

- Snails of all kinds: about ten by habit (4 to 16 allowed), ${span(snails)} planned.
- No tang, star, urchin, cucumber, sea slug or fish in any of them; the first wave is never the whole crew.

## Known conflicts

**Hermits.** About ten small ones by habit (2 to 14 allowed), ${span(hermits)} planned: the number follows detritus and
leftovers, which ceriths share.

**A conch.** Habit adds one. 30 mm of sand is too thin for it; with 50 mm in 151 L at 150 days food stands against it:

${conches.join("\n")}

**A cleaner shrimp.** Habit adds one, and feeds it without counting. Unasked, the plan leaves it out (last column above).
Wished for in a tank of 60 days it comes with this much food by hand a day on its hungriest wave's day, and costs the
others this. The runs feed nobody: "alive" is what happens if the keeper does not.

| litres | by hand | fewer of the others | alive at 90 days unfed |
| --- | --- | --- | --- |
${wishes.join("\n")}

**No film to be seen.** Habit buys nobody. The arithmetic plans no grazer that day, but finds waste enough for:

${bare.join("\n")}

**Large grazers one at a time.** The wave programme shares film out perfectly and buys one astraea, nerite or trochus; the
forecast cuts them where they starve in more than 5 of 20 runs ("cut by the forecast").
`,
);
