/** Whatever is typed into the fields of an entry: told or kept, never thrown; and what is kept never makes a tank unreadable. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { anyTank } from "../../../checks/kit/other-tank.ts";
import { findAnimal } from "../../catalogue/index.ts";
import { applyDaybook } from "../../contract/daybook/apply/apply.ts";
import { ENTRY_FIELDS, type EntryField } from "../../contract/daybook/fields.ts";
import {
  type DaybookEntry,
  ENTRY_BODIES,
  ENTRY_KINDS,
  type EntryKind,
} from "../../contract/daybook/kinds.ts";
import { type EntryText, readEntry } from "../../contract/daybook/read-entry.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { entryContext } from "./entry-context.ts";
import { recordOf } from "./record.ts";

const today = "2026-06-15";
const DOCUMENT: TankFile = {
  grazewell_tank: 1,
  water_l: "12 L",
  first_seawater_on: "2025-06-01",
  preferences: { locale: "de-DE" },
  animals_present: [{ animal: "trochus-snail", count: "5?" }],
};
const facts = readTankFile(JSON.stringify(DOCUMENT), { today, findAnimal });
if (!facts.ok) throw new Error(facts.findings[0]?.message.text);
const context = entryContext(
  { document: DOCUMENT, facts: facts.facts, entries: [], since: {} },
  { today, now: null },
  {
    findTank: anyTank,
  },
);

const TYPED = [
  ..."0|1|2|3|7|12|40|5000|1,5|1.5|1.234|-1|8?|many|about 3|2-3|<2|>4|half|a third|all|30 %|130 %|0.3".split(
    "|",
  ),
  ..."20 L|5 gal|90 min|2 days|3 before|24|on|off|yes|no|a pinch|2 cubes|every other day|500 g/day".split(
    "|",
  ),
  ..."0,4 g pellet|1 g mysis twice a week|0.5 g/day (checked)|50 % (checked)|12 (checked)|double|+20 %".split(
    "|",
  ),
  ..."trochus-snail|turbo snail|Trochus sp.|Zzyzx|mantis shrimp|nassarius-snail|clownfish|yellow-tang".split(
    "|",
  ),
  ..."today|14 Jun|03/04/2026|2026-06-01|2026-06-20|2025-01-01|2026-06-14T21:30|Europe/London".split("|"),
  "",
  " ",
  "\u0000",
  "\u202egnp",
  "١٢",
  "__proto__",
  "x".repeat(300),
  "👩‍👩‍👧‍👦".repeat(60),
];

/** What often is meant by a field of that input: some of what is typed must come through the door. */
const MEANT: Readonly<Record<EntryField["input"], readonly string[]>> = {
  choice: [],
  yes_no: [],
  traits: [],
  words: ["as before", "Bo's tank", "the shop held them"],
  tank: ["Hallway"],
  animal: ["trochus-snail", "nassarius-snail", "clownfish", "yellow-tang", "tectus-snail", "Zzyzx"],
  count: ["1", "3", "5", "4?", "200 (checked)", "5000 (checked)"],
  amount: ["2", "8,1", "half", "30 %", "4 L", "0,4 g"],
  when: ["today", "14 Jun", "2026-06-01", "2026-05-20"],
  day: ["2026-06-20", "2026-07-01", "2026-07-15"],
  note: ["as seen"],
};

function textFor({ name, input, choices }: EntryField): fc.Arbitrary<string> {
  const any = fc.oneof(fc.constantFrom(...TYPED), fc.string({ maxLength: 12 }));
  const own = [...choices.map(({ text }) => text), ...(name === "unit" ? [""] : MEANT[input])];
  return fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...own) }, { weight: 1, arbitrary: any });
}

const typedEntry = fc.constantFrom(...ENTRY_KINDS).chain((kind) => {
  const fields = ENTRY_FIELDS[kind].filter(({ input }) => input !== "traits");
  const texts = fc.record(Object.fromEntries(fields.map((field) => [field.name, textFor(field)])), {
    requiredKeys: fields.filter(({ needed }) => needed).map(({ name }) => name),
  });
  return texts.map((typed) => ({ kind, typed: typed as EntryText }));
});

/** Kinds whose fields seldom suit each other by chance: one that is kept, so that the check of all kinds hangs on no luck. */
const SUITED: { readonly kind: EntryKind; readonly typed: EntryText }[] = [
  { kind: "reading", typed: { quantity: "ph", text: "8,1", observed: "today" } },
  { kind: "change", typed: { changed: "light_hours", to: "8 h", observed: "today" } },
  { kind: "absence", typed: { from: "2026-07-01", to: "2026-07-15", fed_by: "sitter", observed: "today" } },
];

const kept = new Map<string, number>();

test("every kind is told or kept, and a tank with what was kept still reads", () => {
  let made = 0;
  fc.assert(
    fc.property(fc.array(typedEntry, { maxLength: 12 }), (all) => {
      const entries = all.flatMap(({ kind, typed }): DaybookEntry[] => {
        const read = readEntry(kind, typed, context);
        if (!read.ok) {
          expect(read.doubts).not.toEqual([]);
          for (const { message, label } of read.doubts) {
            expect(message.text).toMatch(/\S/);
            expect(label).toMatch(/\S/);
          }
          return [];
        }
        expect(ENTRY_BODIES[kind].parse(read.body)).toEqual(read.body);
        expect(read.on <= today).toBe(true);
        kept.set(kind, (kept.get(kind) ?? 0) + 1);
        made += 1;
        return [{ id: `e${made}`, kind, on: read.on, body: read.body } as DaybookEntry];
      });
      const { document } = applyDaybook(DOCUMENT, entries, { today, findAnimal, since: {} });
      const result = readTankFile(JSON.stringify(document), { today, findAnimal });
      expect(result.ok ? [] : result.findings).toEqual([]);
      expect(recordOf(entries, today).asOf).toBe(today);
    }),
    { numRuns: 900, examples: [[SUITED]] },
  );
});

test("every kind came through", () => {
  expect([...kept.keys()].toSorted()).toEqual(ENTRY_KINDS.toSorted());
});
