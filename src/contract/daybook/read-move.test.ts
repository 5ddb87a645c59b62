/** Moves as they are read: which tank, held against the record of the one they leave, and what the receiving one says. */
import { describe, expect, test } from "vitest";
import type { FoundAnimal } from "../quantity/find-animal.ts";
import { NO_PREFERENCES } from "../quantity/preferences.ts";
import { ENTRY_BODIES } from "./kinds.ts";
import type { FoundTank, OtherTank, Receiving } from "./other-tank.ts";
import { type EntryContext, type EntryText, readEntry } from "./read-entry.ts";

const animal = (id: string, commonName: string): FoundAnimal => ({ id, commonName, preysOn: [] });
const trochus = animal("trochus-snail", "banded trochus snail");
const tectus = animal("tectus-snail", "tent top snail");

const HALLWAY: OtherTank = {
  ...{ id: "t2", name: "Hallway", notBefore: "2026-03-01" },
  onRecord: () => 2,
  knownAs: (id) => id,
  toldOn: () => null,
};
const QUIET: Receiving = { said: () => [], gateNotMet: null };

function scene(other: Partial<OtherTank> = {}, receiving: Partial<Receiving> = {}): EntryContext {
  const found = (text: string): FoundTank => {
    if (text === "Twin")
      return { kind: "several", choices: ["a", "b"].map((id) => ({ label: `Twin ${id}`, text: id })) };
    if (text === "Kitchen") return { kind: "itself" };
    if (text !== "Hallway") return { kind: "none", choices: [{ label: "Hallway", text: "Hallway" }] };
    return { kind: "one", tank: { ...HALLWAY, ...other }, receiving: { ...QUIET, ...receiving } };
  };
  return {
    ...{
      preferences: { ...NO_PREFERENCES, locale: "en-GB" },
      today: "2026-06-15",
      zone: null,
      stocked: true,
    },
    ...{ now: "2026-06-15T12:00:00Z", notBefore: "2026-01-10", waterL: 200, onRecord: () => 5 },
    findAnimal: (name) => {
      const one = [trochus, tectus].find(({ id }) => id === name);
      return one === undefined ? { kind: "none" } : { kind: "one", animal: one };
    },
    findTank: found,
  };
}

const MOVE = { animal: "trochus-snail", count: "3", to: "Hallway" };
const read = (typed: EntryText, context: EntryContext = scene()) => readEntry("move", typed, context);
function doubts(typed: EntryText, context: EntryContext = scene()) {
  const outcome = read(typed, context);
  if (outcome.ok) throw new Error("kept, though something was to be asked");
  return outcome.doubts.map(({ field, message, choices }) => [
    field,
    message.kind,
    message.text,
    choices.map(({ text }) => text),
  ]);
}

describe("a move", () => {
  test("keeps the other tank by its id and name, and which way they went", () => {
    const out = read(MOVE);
    const inward = read({ ...MOVE, to: "", from: "Hallway", count: "2" });
    if (!out.ok || !inward.ok) throw new Error("not kept");
    expect(ENTRY_BODIES.move.parse(out.body)).toMatchObject({ to: "t2", to_text: "Hallway", from: null });
    expect(inward.body).toMatchObject({ from: "t2", from_text: "Hallway", to: null, count: 2 });
  });

  test("a tank that is none of the store is said in the same words, whatever the reason", () => {
    const [gone] = doubts({ ...MOVE, to: "t9" });
    const [never] = doubts({ ...MOVE, to: "t8" });
    expect(gone?.[1]).toBe("NOTFOUND");
    expect(gone?.map((part) => String(part).replace("t9", "_"))).toEqual(
      never?.map((part) => String(part).replace("t8", "_")),
    );
  });

  test.each([
    [{ to: "Kitchen" }, "to", "CONFLICT", []],
    [{ to: "Twin" }, "to", "AMBIG", ["a", "b"]],
    [{ to: "" }, "to", "MISSING", []],
    [{ from: "Hallway" }, "from", "CONFLICT", [""]],
  ])("%j is asked about", (change, field, kind, choices) => {
    const [doubt] = doubts({ ...MOVE, ...change });
    expect([doubt?.[0], doubt?.[1], doubt?.[3]]).toEqual([field, kind, choices]);
  });

  test("is refused where only this daybook can be written", () => {
    const { findTank: _, ...alone } = scene();
    expect(doubts(MOVE, alone)[0]?.slice(0, 2)).toEqual(["to", "NOTFOUND"]);
  });

  test("more than the tank they leave has is asked about, with its figure on offer", () => {
    expect(doubts({ ...MOVE, count: "6" })[0]).toEqual([
      "count",
      "CONFLICT",
      expect.stringContaining("5"),
      ["5", "6 (checked)"],
    ]);
    const inward = { ...MOVE, to: "", from: "Hallway" };
    expect(doubts(inward)[0]?.[3]).toEqual(["2", "3 (checked)"]);
    expect(read({ ...MOVE, count: "6 (checked)" }).ok).toBe(true);
  });

  test("no day before either tank's first", () => {
    expect(doubts({ ...MOVE, observed: "2026-01-01" })[0]?.[0]).toBe("observed");
    expect(doubts({ ...MOVE, observed: "2026-02-01" })).toEqual([
      ["observed", "CONFLICT", 'When "2026-02-01": before the first day of Hallway, 1 March 2026', []],
    ]);
  });

  test("what the tank they leave has found out since is the name they move under", () => {
    const knownAs = () => "tectus-snail";
    const asked = doubts(MOVE, { ...scene(), knownAs });
    expect(asked[0]?.[0]).toBe("animal");
    expect(asked[0]?.[3]).toEqual(["tectus-snail"]);
    expect(doubts({ ...MOVE, to: "", from: "Hallway", count: "1" }, scene({ knownAs }))[0]?.[0]).toBe(
      "animal",
    );
    expect(read(MOVE, scene({ knownAs })).ok).toBe(true);
  });

  test("a gate that is not met asks for a reason, and the reason is kept", () => {
    const shut = scene({}, { gateNotMet: "Hallway: Ammonia could be read." });
    expect(doubts(MOVE, shut)).toEqual([
      ["despite_gate", "CONFLICT", expect.stringContaining("Ammonia could be read. Wait, or say why"), []],
    ]);
    const despite = read({ ...MOVE, despite_gate: "the tank leaks" }, shut);
    expect(despite).toMatchObject({ ok: true, body: { despite_gate: "the tank leaks" } });
  });

  test("says what the receiving tank says, and where it is history already", () => {
    const said = [{ kind: "UNUSUAL" as const, text: "Hallway holds fish in quarantine" }];
    const outcome = read(
      { ...MOVE, observed: "2026-04-01" },
      scene({ toldOn: () => "2026-05-01" }, { said: () => said }),
    );
    if (!outcome.ok) throw new Error("not kept");
    expect(outcome.said).toEqual(
      expect.arrayContaining([
        ...said,
        { kind: "ECHO", text: expect.stringContaining("what lives in Hallway, on 1 May 2026") },
      ]),
    );
  });
});
