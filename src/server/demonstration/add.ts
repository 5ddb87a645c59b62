/** Puts the invented tanks into a store that has never held a tank: for trying out, beside "new tank". */
import type { Store } from "../../store/store.ts";

const DONE = "demonstration";

export async function addDemonstration(store: Store, today: string, now: string): Promise<void> {
  if ((await store.setting(DONE)) !== null || (await store.tanks()).length > 0) return;
  const stamp = { at: now, by: "Grazewell" };
  await store.together(async (desk) => {
    await desk.saveSetting(DONE, { added_on: today }, stamp);
  });
}
