/** Long work in steps, with a turn for everybody else between some of them: the server goes on answering meanwhile. */
import type { Steps } from "../../contract/steps.ts";

/** So long a stretch is not felt by who waits for a page. */
const STRETCH_MS = 12;

export const turn = (): Promise<void> => new Promise((next) => setImmediate(next));

export async function inTurn<T>(steps: Steps<T>): Promise<T> {
  let began = performance.now();
  for (;;) {
    const { value, done } = steps.next();
    if (done === true) return value;
    if (performance.now() - began < STRETCH_MS) continue;
    await turn();
    began = performance.now();
  }
}
