/** Kill -9 at random during acknowledged writes: 40 times a database here, 500 by hand (kills.ts). */
import { expect, test } from "vitest";
import { Chance } from "../kit/chance.ts";
import { DATABASES, ground } from "./grounds.ts";
import { FIRST_STARTS, kill } from "./killing.ts";

test.each(DATABASES)(
  "40 kills on %s lose and tear nothing that was acknowledged",
  { timeout: 600_000 },
  async (database) => {
    const land = ground(database);
    const seed = Math.floor(Math.random() * 2 ** 31);
    console.log(`kills on ${database}: seed ${seed}`);
    try {
      const toll = await kill(database, land, 40, new Chance(seed));
      expect(toll).toMatchObject({ kills: 40, lost: 0, torn: 0, faults: [] });
      expect(toll.acknowledged).toBeGreaterThan(40);
    } finally {
      land.end();
    }
  },
);

test.each(DATABASES)(
  "6 first starts on %s, killed while they make the store",
  { timeout: 300_000 },
  async (database) => {
    const land = ground(database);
    try {
      const toll = await kill(
        database,
        land,
        12,
        new Chance(Math.floor(Math.random() * 2 ** 31)),
        FIRST_STARTS,
      );
      expect(toll).toMatchObject({ kills: 6, lost: 0, torn: 0, faults: [] });
    } finally {
      land.end();
    }
  },
);
