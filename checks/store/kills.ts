/**
 * The kills by hand: node checks/store/kills.ts --kills 500 --database sqlite|postgres [--seed 1] [--longest 400]
 * (milliseconds that a writer may write; longer gives more writes a kill)
 * Prints what was acknowledged, lost and torn; ends with 1 if anything was.
 */
import { parseArgs } from "node:util";
import { Chance } from "../kit/chance.ts";
import { DATABASES, ground } from "./grounds.ts";
import { kill, USUAL } from "./killing.ts";

const { values } = parseArgs({
  options: {
    kills: { type: "string", default: "500" },
    database: { type: "string", default: "sqlite" },
    longest: { type: "string", default: String(USUAL.longestMs) },
    seed: { type: "string", default: "1" },
  },
});
const database = DATABASES.find((one) => one === values.database);
if (database === undefined) throw new Error(`--database must be ${DATABASES.join(" or ")}`);

const land = ground(database);
const began = performance.now();
try {
  const toll = await kill(
    database,
    land,
    Number(values.kills),
    new Chance(Number(values.seed)),
    { ...USUAL, longestMs: Number(values.longest) },
    ({ kills, acknowledged, lost, torn }) => {
      if (kills % 25 === 0)
        console.error(`${kills} kills, ${acknowledged} acknowledged, ${lost} lost, ${torn} torn`);
    },
  );
  const seconds = Math.round((performance.now() - began) / 1_000);
  console.log(JSON.stringify({ database, seed: Number(values.seed), seconds, ...toll }));
  process.exitCode = toll.lost + toll.torn + toll.faults.length > 0 ? 1 : 0;
} finally {
  land.end();
}
