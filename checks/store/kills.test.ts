/** Kill -9 at random during acknowledged writes: 40 times a database here, 500 by hand (kills.ts). */
import { expect, test } from "vitest";
import { Chance } from "../kit/chance.ts";
import { DATABASES, ground } from "./grounds.ts";
import { FIRST_STARTS, kill } from "./killing.ts";

/** Another seed each time, said, so that a failure can be had again. */
function chanceOf(what: string): Chance {
  const seed = Math.floor(Math.random() * 2 ** 31);
  console.log(`${what}: seed ${seed}`);
  return new Chance(seed);
}

test.each(DATABASES)(
  "40 kills on %s lose and tear nothing that was acknowledged",
  { timeout: 600_000 },
  async (database) => {
    const land = ground(database);
    try {
      const toll = await kill(database, land, 40, chanceOf(`kills on ${database}`));
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
      const toll = await kill(database, land, 6, chanceOf(`first starts on ${database}`), FIRST_STARTS);
      expect(toll).toMatchObject({ kills: 6, lost: 0, torn: 0, faults: [] });
    } finally {
      land.end();
    }
  },
);
