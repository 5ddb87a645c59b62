/** Bytes of any kind at the door: never a crash, never a wait; and a file with a hole in it is read or told, not half kept. */
import { expect, test } from "vitest";
import { scene } from "../../../checks/kit/bring-in-scene.ts";
import { Chance } from "../../../checks/kit/chance.ts";
import { atOnce } from "../steps.ts";
import type { FileRead } from "./read.ts";
import { readFile } from "./read-file.ts";

const RUNS = 20_000;
/** Generous for a busy machine: a hang is longer. */
const STEPS_MOST = 100_000;

const BITS: readonly string[] = [
  "date,nitrate\n2026-06-01,10\n",
  "date;NO3 (mg/l)\n01.06.2026;10,5\n",
  '{"grazewell_daybook":1,"entries":[',
  '{"entry":"e1","kind":"reading","on":"2026-06-01","body":{"quantity":"ph","text":"8.1"}}',
  "kind,on,entry,observed_text,note\n",
  "chore,2026-06-01,e1,today,x\n",
  ...[
    '"',
    '""',
    "'",
    ",",
    ";",
    "\t",
    "|",
    "\r",
    "\n",
    "\r\n",
    "\u0000",
    "\ufeff",
    "\ud800",
    "sep=;\n",
    "=1+1",
  ],
  ...[
    "03/04/2026",
    "46188",
    "1,300",
    "1.300,5",
    "9".repeat(400),
    "\u202e",
    "١٢",
    "__proto__",
    "constructor",
    "]}",
  ],
];

function bytes(chance: Chance): Uint8Array {
  if (chance.is(0.3)) return Uint8Array.from({ length: chance.whole(0, 200) }, () => chance.whole(0, 255));
  const text = Array.from({ length: chance.whole(1, 14) }, () => chance.pick(BITS)).join("");
  const made = chance.is(0.2) ? Buffer.from(text, "utf16le") : Buffer.from(text);
  if (made.length > 0 && chance.is(0.4)) made[chance.whole(0, made.length - 1)] = chance.whole(0, 255);
  return made.subarray(0, chance.is(0.2) ? chance.whole(0, made.length) : made.length);
}

/** Whatever is asked is answered by the first that is on offer, until nothing is asked any more. */
function answeredThrough(file: Uint8Array): FileRead {
  const answers: Record<string, string> = {};
  for (let round = 0; round < 30; round += 1) {
    const steps = readFile(file, answers, scene());
    for (let step = 0; step < STEPS_MOST; step += 1) {
      const { done, value } = steps.next();
      if (done !== true) continue;
      if (value.kind !== "asked") return value;
      for (const { name, choices } of value.questions) answers[name] = choices[0]?.value ?? "";
      break;
    }
  }
  return atOnce(readFile(file, answers, scene()));
}

test(`${RUNS} files of random bytes`, { timeout: 300_000 }, () => {
  const chance = new Chance(20_260_615);
  const ends: Record<string, number> = {};
  for (let run = 0; run < RUNS; run += 1) {
    const file = bytes(chance);
    const read = answeredThrough(file);
    ends[read.kind] = (ends[read.kind] ?? 0) + 1;
    if (read.kind === "read") {
      expect(read.entries.every(({ on }) => /^\d{4}-\d\d-\d\d$/.test(on))).toBe(true);
      expect(read.faulty).toBeLessThanOrEqual(read.rows);
    } else if (read.kind === "refused") expect(read.message.text).not.toMatch(/undefined|\[object/);
  }
  expect(ends["read"]).toBeGreaterThan(500);
  expect(ends["asked"] ?? 0).toBe(0);
});
