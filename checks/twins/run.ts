/**
 * Twin experiments in numbers: `node checks/twins/run.ts [TANKS] [TRUTH] [FIRST_SEED] [HABITS]
 * [MEMBERS]`, on two threads; prints a table. Habits: habits.ts.
 * The tables of docs/validation.md are made so; CI runs twenty tanks (twins.test.ts).
 */
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { habitsNamed, type TwinResult, twin } from "./one.ts";
import { tableOf } from "./table.ts";

const THREADS = 2;

interface Asked {
  readonly truth: string;
  readonly habits: string;
  readonly members: number;
}

if (isMainThread) {
  const [tanks = "20", truth = "own", first = "1", habits = "usual", members = "160"] = process.argv.slice(2);
  const began = performance.now();
  const results = await inThreads(Number(tanks), Number(first), {
    ...{ truth, habits, members: Number(members) },
  });
  console.log(
    `${results.length} tanks, truths: ${truth}, habits: ${habits}, ${members} members, seeds from ${first}, ${Math.round((performance.now() - began) / 1000)} s`,
  );
  console.log(tableOf(results));
} else {
  const { seeds, truth, habits, members } = workerData as Asked & { readonly seeds: readonly number[] };
  for (const seed of seeds) parentPort?.postMessage(twin(seed, truth, members, habitsNamed(habits)));
}

async function inThreads(tanks: number, first: number, asked: Asked): Promise<TwinResult[]> {
  const results: TwinResult[] = [];
  const shares = Array.from({ length: THREADS }, (_, thread) =>
    Array.from({ length: tanks }, (_, i) => first + i).filter((seed) => seed % THREADS === thread),
  );
  await Promise.all(
    shares.map(
      (seeds) =>
        new Promise<void>((done, failed) => {
          const worker = new Worker(new URL(import.meta.url), { workerData: { seeds, ...asked } });
          worker.on("message", (result: TwinResult) => {
            results.push(result);
            process.stderr.write(`\r${results.length} of ${tanks} `);
          });
          worker.on("error", failed);
          worker.on("exit", () => done());
        }),
    ),
  );
  process.stderr.write("\n");
  return results.sort((a, b) => a.seed - b.seed);
}
