/**
 * Twin experiments in numbers: `node checks/twins/run.ts [TANKS] [TRUTH] [FIRST_SEED]`, on two threads; prints a table.
 * The tables of docs/validation.md are made so; CI runs twenty tanks (twins.test.ts).
 */
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { type TwinResult, twin } from "./one.ts";
import { tableOf } from "./table.ts";

const THREADS = 2;

if (isMainThread) {
  const [tanks = "20", truth = "own", first = "1"] = process.argv.slice(2);
  const began = performance.now();
  const results = await inThreads(Number(tanks), truth, Number(first));
  console.log(
    `${results.length} tanks, truths: ${truth}, seeds from ${first}, ${Math.round((performance.now() - began) / 1000)} s`,
  );
  console.log(tableOf(results));
} else {
  const { seeds, truth } = workerData as { seeds: readonly number[]; truth: string };
  for (const seed of seeds) parentPort?.postMessage(twin(seed, truth));
}

async function inThreads(tanks: number, truth: string, first: number): Promise<TwinResult[]> {
  const results: TwinResult[] = [];
  const shares = Array.from({ length: THREADS }, (_, thread) =>
    Array.from({ length: tanks }, (_, i) => first + i).filter((seed) => seed % THREADS === thread),
  );
  await Promise.all(
    shares.map(
      (seeds) =>
        new Promise<void>((done, failed) => {
          const worker = new Worker(new URL(import.meta.url), { workerData: { seeds, truth } });
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
