/**
 * A tank whose heads were counted, all invented: snails that go missing count after count, more seen than on record, a
 * cast shell, glass that is seen bare. What the page of heads can have to say stands on it at once.
 */
import type { Json, Store } from "../../../src/store/store.ts";

const ID = "00000000-0000-4000-8000-0000000000c0";

interface Row {
  readonly kind: string;
  readonly on: string;
  readonly body: Json;
}

const common = (on: string) => ({ observed_text: on, observed_at: null, note: null });
const named = (animal: string) => ({ animal_text: animal.replaceAll("-", " "), animal });
const added = (animal: string, count: number, on: string): Row => ({
  ...{ kind: "addition", on },
  body: {
    ...{ ...common(on), ...named(animal), sold_as: null, count, dead_on_arrival: 0 },
    ...{ condition: null, wave: null, despite_gate: null },
  },
});
const counted = (animal: string, seen: number, on: string, hours: number, torch: boolean): Row => ({
  ...{ kind: "head_count", on },
  body: {
    ...{ ...common(on), ...named(animal), seen_text: `${seen}`, seen, sureness: "counted" },
    ...{ hours_from_lights_out: hours, torch, food_offered: torch },
  },
});
const lost = (animal: string, on: string, certainty: "found" | "feared"): Row => ({
  ...{ kind: "loss", on },
  body: { ...common(on), ...named(animal), count: 1, certainty, body_removed: null, cause: "unknown" },
});
const bare = (on: string): Row => ({
  ...{ kind: "growth", on },
  body: { ...common(on), growth: "film_glass", score: 0, traits: {} },
});

const ROWS: readonly Row[] = [
  added("trochus-snail", 8, "2025-11-05"),
  added("nassarius-snail", 6, "2025-11-05"),
  added("scarlet-hermit", 3, "2026-01-10"),
  added("astraea-snail", 9, "2026-02-01"),
  lost("astraea-snail", "2026-03-02", "found"),
  counted("trochus-snail", 8, "2026-04-20", 2, true),
  counted("astraea-snail", 8, "2026-05-10", 2, true),
  counted("trochus-snail", 3, "2026-05-25", 2, true),
  counted("nassarius-snail", 0, "2026-06-01", -4, false),
  counted("trochus-snail", 2, "2026-06-01", 2, true),
  bare("2026-06-03"),
  counted("nassarius-snail", 8, "2026-06-08", 2, true),
  counted("trochus-snail", 1, "2026-06-08", 2, true),
  {
    ...{ kind: "sign", on: "2026-06-09" },
    body: {
      ...{ ...common("2026-06-09"), sign: "cast_shell", ...named("scarlet-hermit"), count: 1 },
      ...{ kinds_seen: null, hours_from_lights_out: null, traits: {} },
    },
  },
  lost("scarlet-hermit", "2026-06-12", "feared"),
  bare("2026-06-12"),
];

/** Its id. */
export async function addCounted(
  store: Store,
  stamp: { readonly at: string; readonly by: string },
): Promise<string> {
  const { id: keeperId } = await store.keeperNamed("Nell", "keeper-counted", stamp);
  const facts = {
    ...{ grazewell_tank: 1, name: "Counted reef", water_l: "240 L", first_seawater_on: "2025-03-01" },
    floor: { kind: "sand", depth_mm: "40 mm", grain: "fine" },
    fish: [{ animal: "clownfish", count: 2 }],
    animals_present: [{ animal: "copepods", count: "many" }],
  };
  const begun = { at: "2025-11-01T09:00:00.000Z", by: stamp.by };
  await store.addTank({ id: ID, keeperId, demonstration: false, facts }, begun);
  const rows = ROWS.map((row, i) => ({
    ...row,
    id: `00000000-0000-4000-8000-0000000c${String(i).padStart(4, "0")}`,
  }));
  await store.addEntries(ID, rows, stamp);
  return ID;
}
