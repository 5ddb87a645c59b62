/** A store with one invented tank in it, five snails and no entries: what the daybook's commands are tried on. */
import { openStore } from "../../src/store/open.ts";

const STAMP = { at: "2026-05-01T09:00:00.000Z", by: "test" };

/** @param place of the store, which is made */
export async function makeKitchen(place: string): Promise<void> {
  const store = await openStore(place);
  try {
    const { id: keeperId } = await store.keeperNamed("Ada (invented)", "ada", STAMP);
    const facts = {
      grazewell_tank: 1,
      name: "Kitchen (invented)",
      water_l: "200 L",
      first_seawater_on: "2026-01-10",
      animals_present: [{ animal: "trochus-snail", count: 5 }],
    };
    await store.addTank({ id: "kitchen", keeperId, demonstration: false, facts }, STAMP);
  } finally {
    await store.close();
  }
}
