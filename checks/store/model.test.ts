/** Random acts against a page of maps, the same on both databases; at the end the two hold the same rows. */
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { acts, perform, sameAsModel } from "./acts.ts";
import { DATABASES, type Ground, ground } from "./grounds.ts";
import { Model } from "./model.ts";

let lands: Ground[] = [];
beforeAll(() => {
  lands = DATABASES.map((database) => ground(database));
});
afterAll(() => {
  for (const land of lands) land.end();
});

test("whatever is done, both databases answer as the model does, and end with the same rows", async () => {
  await fc.assert(
    fc.asyncProperty(acts, async (all) => {
      const ends: unknown[] = [];
      for (const land of lands) {
        const spot = land.spot();
        const store = await spot.open();
        const model = new Model();
        try {
          for (const [n, act] of all.entries()) await perform(act, n, store, model);
          await sameAsModel(store, model);
        } finally {
          await store.close();
        }
        ends.push(await spot.rows());
      }
      expect(ends[0]).toEqual(ends[1]);
    }),
    { numRuns: 40 },
  );
});
