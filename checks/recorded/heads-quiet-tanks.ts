/**
 * How often invented tanks are asked about, and how often bands hold the truth: the table of docs/model/heads.md.
 * `node checks/recorded/heads-quiet-tanks.ts 80` (a quarter of an hour for all rows; name rows to have only those).
 */
import { animals, supplyParameters } from "../../src/catalogue/index.ts";
import { askFrom, headsOfKind } from "../../src/engine/heads/kind.ts";
import { isFollowed, lifeOf } from "../../src/engine/heads/life.ts";
import { headRates } from "../../src/engine/heads/rates.ts";
import { headsAt } from "../../src/engine/heads/summary.ts";
import { inventedTank, type Twist } from "../../src/engine/heads/test-kit/invented-tank.ts";

const rates = headRates(supplyParameters);
const crew = animals.filter(
  (one) => isFollowed(one) && (one.role === "crew" || one.role === "crew_with_caution"),
);
const WEEKLY: Twist = { days: 182, countEvery: 7, lossScore: null, seenScore: null, troublePerDay: null };

/** Scores in a band of nine tenths: 1.645 is its upper end. */
const ROWS: Readonly<Record<string, Twist>> = {
  "counted weekly": WEEKLY,
  "counted fortnightly": { ...WEEKLY, countEvery: 14 },
  "never counted": { ...WEEKLY, countEvery: null },
  "all kinds ill-seen": { ...WEEKLY, seenScore: -1.645 },
  "all kinds short-lived": { ...WEEKLY, lossScore: 1.645 },
  "both, somewhat": { ...WEEKLY, lossScore: 1.2, seenScore: -1.2 },
  "one kind loses 4 % a day": { ...WEEKLY, troublePerDay: 0.04 },
  "one kind loses 10 % a day": { ...WEEKLY, troublePerDay: 0.1 },
};

function row(name: string, twist: Twist, tanks: number): string {
  let asked = 0;
  let first = 0;
  let inside = 0;
  let kinds = 0;
  for (let seed = 0; seed < tanks; seed += 1) {
    const tank = inventedTank(crew, rates, seed, twist);
    const from = askFrom(tank.length);
    const own = tank.map(({ animal, facts, record, alive }) => {
      const { trouble, living } = headsOfKind(lifeOf(animal, facts, record, rates), rates);
      kinds += 1;
      if (alive >= headsAt(living, 0.1) && alive <= headsAt(living, 0.9)) inside += 1;
      return trouble.most >= from;
    });
    if (own[0] === true) first += 1;
    if (own.some((one) => one)) asked += 1;
  }
  const share = (count: number, of: number): string => `${((100 * count) / of).toFixed(1)} %`;
  return `| ${name} | ${share(asked, tanks)} | ${share(first, tanks)} | ${share(inside, kinds)} |`;
}

const [tanks = "200", ...named] = process.argv.slice(2);
console.log(
  "| tanks | asked about | its first kind asked about | 8 of 10 bands hold |\n| --- | --- | --- | --- |",
);
for (const [name, twist] of Object.entries(ROWS)) {
  if (named.length === 0 || named.includes(name)) console.log(row(name, twist, Number(tanks)));
}
