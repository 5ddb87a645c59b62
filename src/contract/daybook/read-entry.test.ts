import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { anyTank } from "../../../checks/kit/other-tank.ts";
import type { FindAnimal, FoundAnimal } from "../quantity/find-animal.ts";
import { NO_PREFERENCES } from "../quantity/preferences.ts";
import { ENTRY_FIELDS } from "./fields.ts";
import { ENTRY_BODIES, ENTRY_KINDS, type EntryBody, type EntryKind } from "./kinds.ts";
import { type EntryContext, type EntryDoubt, type EntryText, entryKind, readEntry } from "./read-entry.ts";

const animal = (id: string, commonName: string, prey = 0): FoundAnimal => ({
  id,
  commonName,
  preysOn: Array.from({ length: prey }, (_, i) => ({ id: `prey-${i}`, likelihood: "likely" })),
});
const trochus = animal("trochus-snail", "banded trochus snail");
const turbos = [animal("mexican-turbo", "Mexican turbo"), animal("smooth-turbo", "smooth turbo")];
/** A stand-in for the catalogue, which the contract may not import. */
const find: FindAnimal = (name) => {
  if (name === "turbo snail") return { kind: "several", animals: turbos };
  const one = [trochus, ...turbos].find(({ id }) => id === name || (id === trochus.id && name === "Trochus"));
  if (one !== undefined) return { kind: "one", animal: one };
  return name === "trocus" ? { kind: "near", animals: [trochus] } : { kind: "none" };
};

const scene: EntryContext = {
  preferences: { ...NO_PREFERENCES, locale: "en-GB" },
  today: "2026-06-15",
  now: "2026-06-15T12:00:00Z",
  zone: "Europe/London",
  stocked: true,
  notBefore: "2026-01-10",
  findAnimal: find,
  onRecord: () => 5,
  waterL: 200,
  findTank: anyTank,
};

type Change = Partial<EntryContext>;
function kept<Kind extends EntryKind>(kind: Kind, typed: EntryText, change: Change = {}) {
  const read = readEntry(kind, typed, { ...scene, ...change });
  if (!read.ok) throw new Error(read.doubts.map(({ message }) => message.text).join("; "));
  expect(ENTRY_BODIES[kind].parse(read.body)).toEqual(read.body);
  return read;
}
function doubts(kind: EntryKind, typed: EntryText, change: Change = {}): readonly EntryDoubt[] {
  const read = readEntry(kind, typed, { ...scene, ...change });
  if (read.ok) throw new Error("was kept");
  return read.doubts;
}

interface Row {
  readonly id: string;
  readonly input: string;
  readonly verdict: string;
  readonly kind: string | null;
}
const file = join(import.meta.dirname, "../../../checks/inputs/rows.json");
const rows = JSON.parse(readFileSync(file, "utf8")) as readonly Row[];

const count = (seen: string): EntryText => ({ animal: "trochus-snail", seen });
const cover = (score: string): EntryText => ({ growth: "film_glass", score });
const feed = (to: string): EntryText => ({ changed: "feed", to });

/** Rows of sections F, G and H that an entry can carry: its kind, its texts, the scene, and part of what is kept. */
const carried: Readonly<
  Record<string, readonly [EntryKind, (input: string) => EntryText, Change, Partial<EntryBody> | null]>
> = {
  "I-075": ["head_count", count, { onRecord: () => 12 }, { seen: 12, sureness: "counted" }],
  "I-076": ["head_count", count, {}, { seen: 0 }],
  "I-077": ["head_count", count, {}, null],
  "I-078": ["head_count", count, {}, null],
  "I-079": ["head_count", count, { waterL: 20, onRecord: () => 5000 }, null],
  "I-080": ["head_count", count, {}, { seen: null, seen_text: "many" }],
  "I-081": ["head_count", count, { onRecord: () => 8 }, { seen: 8, sureness: "about" }],
  "I-082": ["head_count", count, {}, null],
  "I-083": ["head_count", count, { onRecord: () => 12 }, { seen: 12 }],
  "I-084": ["addition", (input) => ({ animal: input, count: "2" }), {}, null],
  "I-085": ["addition", (input) => ({ animal: input, count: "2" }), {}, { animal: "trochus-snail" }],
  "I-086": ["addition", (input) => ({ animal: input, count: "2" }), {}, null],
  "I-087": [
    "addition",
    (input) => ({ animal: input, count: "2" }),
    {},
    { animal: null, animal_text: "Zzyzx" },
  ],
  "I-088": ["addition", (input) => ({ animal: input, count: "1" }), {}, { animal_text: "mantis shrimp" }],
  "I-089": [
    "addition",
    (input) => ({ animal: "trochus-snail", count: "2", observed: input }),
    { notBefore: "2026-06-01" },
    null,
  ],
  "I-090": [
    "loss",
    (input) => ({ animal: "trochus-snail", count: input, certainty: "found" }),
    { onRecord: () => 3 },
    null,
  ],
  "I-092": ["growth", cover, {}, { score: 2, score_text: "30%" }],
  "I-093": ["growth", cover, {}, null],
  "I-094": ["growth", cover, {}, null],
  "I-095": ["growth", cover, {}, { score: 4 }],
  "I-099": ["change", feed, {}, { to: 2 }],
  "I-100": ["change", feed, {}, null],
  "I-101": ["change", feed, {}, { to: 0.12 }],
  "I-102": ["change", feed, { waterL: 100 }, null],
  "I-103": ["change", feed, {}, { to: null, to_text: "every other day" }],
};

describe("rows of the inputs catalogue", () => {
  test.each(Object.keys(carried))("%s", (id) => {
    const row = rows.find((one) => one.id === id);
    const [kind, typedOf, change, stored] = carried[id]!;
    const read = readEntry(kind, typedOf(row!.input), { ...scene, ...change });
    const keeps = row!.verdict === "accept" || row!.verdict === "convert" || row!.verdict === "flag";
    expect(read.ok).toBe(keeps);
    expect(stored === null).toBe(!keeps);
    const messages = read.ok ? read.said : read.doubts.map(({ message }) => message);
    if (stored !== null && read.ok) expect(read.body).toMatchObject(stored);
    // What a score stands for is said of each: an echo is no part of the row.
    if (row!.kind !== null && row!.kind !== "ECHO") expect(messages.map((m) => m.kind)).toContain(row!.kind);
    if (row!.kind === "ECHO") expect(messages).not.toEqual([]);
    for (const { text } of messages)
      expect(text).toContain(`"${typedOf(row!.input)["observed"] ?? row!.input}"`);
  });

  test("what is offered can be sent, and is then kept", () => {
    for (const [id, [kind, typedOf, change]] of Object.entries(carried)) {
      const row = rows.find((one) => one.id === id)!;
      const typed = typedOf(row.input);
      const read = readEntry(kind, typed, { ...scene, ...change });
      if (read.ok) continue;
      for (const { field, choices } of read.doubts) {
        if (row.verdict === "ask") expect(choices, id).not.toEqual([]);
        for (const { text } of choices) {
          if (text === null) continue;
          expect(
            readEntry(kind, { ...typed, [field]: text }, { ...scene, ...change }).ok,
            `${id}: ${text}`,
          ).toBe(true);
        }
      }
    }
  });

  test("none seen of five leaves the question open, and says so", () => {
    expect(
      kept("head_count", count("0"))
        .said.map(({ text }) => text)
        .join(),
    ).toContain("lost, hidden or moved?");
  });
});

/** One entry of each kind, with every field of its table. */
const FULL: Readonly<Record<EntryKind, EntryText>> = {
  reading: { quantity: "no3_mg_per_l", text: "5", unit: "mg/L as NO3", kit_step: "2" },
  growth: { growth: "diatoms", score: "3", "trait.lifts_in_a_puff": "yes" },
  sign: {
    sign: "fallen_snails",
    animal: "trochus-snail",
    count: "2",
    kinds_seen: "1",
    hours_from_lights_out: "3 before",
    "trait.shell_closed": "no",
  },
  head_count: {
    animal: "trochus-snail",
    seen: "4?",
    hours_from_lights_out: "2",
    torch: "yes",
    food_offered: "no",
  },
  order: {
    animal: "mexican-turbo",
    count: "3",
    wave: "2",
    expected: "2026-06-20",
    from: "the shop in Mill Lane",
    despite_gate: "they come once a month",
  },
  addition: {
    animal: "mexican-turbo",
    count: "3",
    sold_as: "turbo",
    dead_on_arrival: "1",
    condition: "lively",
    wave: "2",
    despite_gate: "the shop held them",
  },
  loss: { animal: "trochus-snail", count: "1", certainty: "found", body_removed: "yes", cause: "fell" },
  departure: { animal: "trochus-snail", count: "1", to: "Bo's tank" },
  move: { animal: "trochus-snail", count: "1", to: "Hallway", condition: "lively", despite_gate: "it leaks" },
  identification: { was: "trochus-snail", animal: "smooth-turbo", count: "2" },
  chore: { chore: "glass_wiped", amount: "half", film_days: "4" },
  change: { changed: "feed", to: "0.4 g", food: "nori" },
  treatment: { substance: "praziquantel", step: "started" },
  outage: { of: "power", hours: "90 min" },
  relocation: { to: "the hall", zone: "Asia/Kolkata" },
  absence: { from: "2026-07-01", to: "2026-07-15", fed_by: "sitter", every_days: "3", portions: "4" },
  decline: { advice: "wave.2", reason: "away until July" },
};

describe("every kind", () => {
  test.each(ENTRY_KINDS)("%s is kept with all its fields, and each field is in the table", (kind) => {
    const typed = { ...FULL[kind], observed: "2026-06-14", note: "as seen" };
    const { on, body } = kept(kind, typed);
    expect(on).toBe("2026-06-14");
    expect(body.note).toBe("as seen");
    const known = ENTRY_FIELDS[kind].map(({ name }) => name);
    for (const name of Object.keys(typed)) {
      expect(known).toContain(name.startsWith("trait.") ? "traits" : name);
    }
    expect(Object.values(body)).not.toContain(undefined);
  });

  test.each(ENTRY_KINDS)("%s says all that is missing at once, each by its field", (kind) => {
    const needed = ENTRY_FIELDS[kind].filter((field) => field.needed).map(({ name }) => name);
    expect(new Set(doubts(kind, {}).map(({ field }) => field))).toEqual(
      // What was measured comes first: its reader is not known before. A move needs one of two tanks.
      new Set(kind === "reading" ? ["quantity"] : kind === "move" ? [...needed, "to"] : needed),
    );
  });

  test.each(ENTRY_KINDS)(
    "%s takes no day ahead, none before the tank, and no field of another kind",
    (kind) => {
      expect(doubts(kind, { ...FULL[kind], observed: "2026-06-20" })[0]?.message.kind).toBe("FUTURE");
      expect(doubts(kind, { ...FULL[kind], observed: "2026-01-02" })[0]?.message.kind).toBe("CONFLICT");
      expect(doubts(kind, { ...FULL[kind], mood: "fine" })[0]).toMatchObject({ field: "mood" });
    },
  );

  test("each choice of a table is taken by its text and by its label", () => {
    for (const kind of ENTRY_KINDS) {
      for (const { name, input, choices } of ENTRY_FIELDS[kind]) {
        if (input !== "choice") continue;
        for (const { text, label } of choices) {
          for (const typed of [text, label]) {
            const read = readEntry(kind, { ...FULL[kind], [name]: typed }, scene);
            const own = read.ok ? [] : read.doubts.filter(({ field }) => field === name);
            // A quantity is known by its name alone, as it was before there was a table.
            if (kind !== "reading") expect(own, `${kind} ${name} ${typed}`).toEqual([]);
          }
        }
      }
    }
  });

  test("an unknown kind is told with those there are", () => {
    expect(entryKind("growth")).toBe("growth");
    expect(entryKind("mood")).toMatchObject({ field: "kind", choices: { length: ENTRY_KINDS.length } });
  });
});

describe("animals", () => {
  test("all may have come dead, and then none was added", () => {
    const { body } = kept("addition", { animal: "trochus-snail", count: "0", dead_on_arrival: "3" });
    expect(body).toMatchObject({ count: 0, dead_on_arrival: 3 });
    expect(doubts("addition", { animal: "trochus-snail", count: "0" })[0]).toMatchObject({ field: "count" });
  });
  test("a crowd needs a figure to be added, lost or moved; a rough one will do", () => {
    const [doubt] = doubts("addition", { animal: "trochus-snail", count: "many" });
    expect(kept("addition", { animal: "trochus-snail", count: doubt!.choices[1]!.text! }).body.count).toBe(
      1000,
    );
  });
  test("the record's own figure is offered for a loss beyond it", () => {
    const [doubt] = doubts("loss", { animal: "trochus-snail", count: "8", certainty: "found" });
    expect(doubt!.choices.map(({ text }) => text)).toEqual(["5", "8 (checked)"]);
  });
  test("a keeper's own animal is held against nothing", () => {
    expect(kept("head_count", { animal: "Zzyzx", seen: "40" }).body.seen).toBe(40);
  });
  test("a body taken out was found", () => {
    const typed = { animal: "trochus-snail", count: "1", certainty: "feared", body_removed: "yes" };
    expect(doubts("loss", typed)[0]).toMatchObject({ field: "body_removed", message: { kind: "CONFLICT" } });
  });
  test("nothing is known anew as itself", () => {
    const typed = { was: "trochus-snail", animal: "Trochus" };
    expect(doubts("identification", typed)[0]?.message.kind).toBe("CONFLICT");
  });
  test.each([
    ["2", 2],
    ["3 before", -3],
    ["1.5 h after", 1.5],
    ["-2", -2],
    ["about 2", 2],
  ])("hours from lights-out: %s is %d", (typed, hours) => {
    const { body } = kept("head_count", { ...count("4"), hours_from_lights_out: typed });
    expect(body.hours_from_lights_out).toBe(hours);
  });
  test.each(["30", "noon", "2 days"])("hours from lights-out: %s is asked about", (typed) => {
    const [doubt] = doubts("head_count", { ...count("4"), hours_from_lights_out: typed });
    expect(doubt?.field).toBe("hours_from_lights_out");
  });
});

describe("how much", () => {
  const changed = (amount: string) => kept("chore", { chore: "water_change", amount }).body.share;
  test.each([
    ["10 %", 0.1],
    ["20 L", 0.1],
    ["half of it", 0.5],
    ["a third", 1 / 3],
    ["5 US gal", (5 * 3.785411784) / 200],
  ])("water: %s", (typed, share) => expect(changed(typed)).toBeCloseTo(share, 9));
  test("a bare number of water is per cent or litres, and both are on offer", () => {
    const [doubt] = doubts("chore", { chore: "water_change", amount: "20" });
    expect(doubt?.choices.map(({ text }) => text)).toEqual(["20 %", "20 L"]);
  });
  test("more than the tank holds is asked about; of an unknown volume litres are no share", () => {
    expect(doubts("chore", { chore: "water_change", amount: "300 L" })[0]?.message.kind).toBe("CONFLICT");
    expect(kept("chore", { chore: "water_change", amount: "20 L" }, { waterL: null }).body.share).toBeNull();
  });
  test("of other things a bare number is per cent, or asked about where it could be a share", () => {
    expect(kept("chore", { chore: "algae_removed", amount: "40" }).body.share).toBe(0.4);
    expect(doubts("chore", { chore: "algae_removed", amount: "0.5" })[0]?.message.kind).toBe("AMBIG");
  });
  test("days until the glass needed it again belong to wiping it", () => {
    expect(doubts("chore", { chore: "sand_stirred", film_days: "3" })[0]?.field).toBe("film_days");
  });
  test.each([
    ["6", 6],
    ["90 min", 1.5],
    ["2 days", 48],
  ])("an outage of %s", (hours, h) => expect(kept("outage", { of: "pumps", hours }).body.hours).toBe(h));
});

describe("absences", () => {
  const away = { from: "1 Jul 2026", to: "2026-07-15", fed_by: "sitter" };
  test("days as keepers write them; a sitter who is told nothing feeds on every second day", () => {
    const { body } = kept("absence", away);
    expect(body).toMatchObject({ from: "2026-07-01", to: "2026-07-15", every_days: 2, portions: null });
  });
  test("of a time that is over, too", () => {
    const past = { from: "2026-05-01", to: "2026-05-09", fed_by: "nobody" };
    expect(kept("absence", past).body).toMatchObject({ fed_by: "nobody", every_days: null });
  });
  test.each([
    [{ to: "2026-07-01" }, "to", "RANGE"],
    [{ to: "2026-08-13" }, "to", "RANGE"],
    [{ from: "soon" }, "from", "FORMAT"],
    [{ every_days: "8" }, "every_days", "RANGE"],
    [{ every_days: "1.5" }, "every_days", "RANGE"],
    [{ fed_by: "nobody", every_days: "2" }, "every_days", "CONFLICT"],
    [{ fed_by: "feeder", portions: "6" }, "portions", "CONFLICT"],
    [{ portions: "many" }, "portions", "FORMAT"],
  ])("%j is told", (change, field, kind) => {
    expect(doubts("absence", { ...away, ...change })[0]).toMatchObject({ field, message: { kind } });
  });
});

describe("changes", () => {
  const to = (changed: string, text: string) => kept("change", { changed, to: text }).body;
  test("feed names its food and how often", () => {
    expect(to("feed", "1 g mysis every other day")).toMatchObject({ to: 0.5, food: "frozen_mysis" });
    expect(to("feed", "0.4 g of pellets")).toMatchObject({ to: 0.4, food: "dry_pellet" });
    expect(to("feed", "daily").to).toBeNull();
  });
  test("a choice keeps the food and how often", () => {
    const [doubt] = doubts("change", { changed: "feed", to: "2 cubes mysis twice a week" });
    const text = doubt!.choices[1]!.text!;
    expect(to("feed", text)).toMatchObject({ to: (7 * 2) / 7, food: "frozen_mysis" });
  });
  test("two foods at once are asked about", () => {
    expect(doubts("change", { changed: "feed", to: "1 g flakes", food: "nori" })[0]?.field).toBe("food");
  });
  test("strength is a share of what it was", () => {
    expect(to("light_strength", "half").to).toBe(0.5);
    expect(to("light_strength", "+20 %").to).toBeCloseTo(1.2, 12);
    expect(doubts("change", { changed: "light_strength", to: "0.5" })[0]?.choices).toHaveLength(2);
  });
  test("a skimmer is on or off; what else is kept in words", () => {
    expect(to("skimmer", "off").to).toBe(0);
    expect(to("other", "new pump").to).toBeNull();
    expect(doubts("change", { changed: "skimmer", to: "perhaps" })[0]?.choices).toHaveLength(2);
  });
});

test("a score is a number, a word, a share, or asked about; what it stands for is said", () => {
  for (const typed of ["2", "thin", "2 thin", "30 %"]) {
    expect(kept("growth", { growth: "film_glass", score: typed }).body.score).toBe(2);
  }
  expect(
    doubts("growth", { growth: "film_glass", score: "2-3" })[0]?.choices.map(({ text }) => text),
  ).toEqual(["2", "3"]);
  expect(doubts("growth", { growth: "film_glass", score: "7" })[0]?.choices[0]?.text).toBe("7 %");
  const said = kept("growth", { growth: "film_glass", score: "4" }).said.map(({ text }) => text);
  expect(said.join()).toContain("the back glass can't be seen");
});

test("text longer than can be kept is told, not lost at the next reading", () => {
  const many = "👩‍👩‍👧‍👦".repeat(2000);
  expect(doubts("outage", { of: "power", hours: "2", note: many })[0]).toMatchObject({
    field: "note",
    message: { kind: "TOOBIG" },
  });
  expect(doubts("reading", { quantity: "ph", text: "8.1", note: many })[0]?.field).toBe("note");
});

test("a zone is one that the platform knows, and no mere offset", () => {
  expect(doubts("relocation", { to: "x", zone: "+01:00" })[0]?.field).toBe("zone");
  expect(doubts("relocation", { to: "x", zone: "Europe/Lundon" })[0]?.field).toBe("zone");
});

describe("declining", () => {
  const asked = [
    { id: "silence", does: "Test the water.", restsOn: "reading 7" },
    { id: "hungry", does: "Feed the snails.", restsOn: undefined },
  ];

  test("keeps what the advice rested on when it was declined", () => {
    expect(kept("decline", { advice: "silence", reason: "away" }, { asked }).body.rests_on).toBe("reading 7");
    expect(kept("decline", { advice: "hungry", reason: "away" }, { asked }).body).not.toHaveProperty(
      "rests_on",
    );
  });

  test("of advice that does not stand is asked about, with what does", () => {
    const [doubt, ...more] = doubts("decline", { advice: "wave.2", reason: "away" }, { asked });
    expect(more).toEqual([]);
    expect(doubt).toMatchObject({
      field: "advice",
      message: { kind: "NOTFOUND" },
      choices: [
        { label: "Test the water.", text: "silence" },
        { label: "Feed the snails.", text: "hungry" },
      ],
    });
  });

  test("from a file is kept as it was, whatever stands today", () => {
    expect(kept("decline", { advice: "wave.2", reason: "away" }).body.advice).toBe("wave.2");
  });
});
