/** Entries about animals: each names one, most count some, and what the record holds is what a count is held against. */
import { inWordsDate } from "../quantity/calendar.ts";
import type { Gather } from "./gather.ts";
import type { EntryBody } from "./kinds.ts";
import { readHoursFromLightsOut, readWave } from "./read-numbers.ts";

type Named = NonNullable<ReturnType<Gather["animal"]>>;

const named = ({ text, found }: Named) => ({ animal_text: text, animal: found?.id ?? null });

/** Heads on record on the day of the entry; null where the animal is the keeper's own, or the day is not known. */
function recorded(gather: Gather, animal: Named | undefined): number | null {
  const id = animal?.found?.id;
  return id === undefined || gather.on === null ? null : gather.context.onRecord(id, gather.on);
}

/** Heads that came or went before the tank's animals were told are in what was told. */
function sayWhereOlder(gather: Gather, animal: Named): void {
  const told = gather.context.toldOn?.(animal.found?.id ?? null) ?? null;
  if (told === null || gather.on === null || gather.on >= told) return;
  const words = `before it was told what lives in the tank, on ${inWordsDate(told)}: kept as history, not counted again`;
  gather.say("observed", "ECHO", words);
}

export function readHeadCount(gather: Gather): EntryBody<"head_count"> | undefined {
  const when = gather.when();
  const animal = gather.animal();
  const known = recorded(gather, animal);
  const heads = gather.heads("seen", "seen", known);
  const hours = readHoursFromLightsOut(gather);
  const torch = gather.yesNo("torch");
  const food = gather.yesNo("food_offered");
  if (animal === undefined || heads === undefined || hours === undefined) return undefined;
  if (torch === undefined || food === undefined || when === undefined) return undefined;
  if (heads.count === 0 && known !== null && known > 0) {
    const words = `kept: none seen. The record has ${known}: lost, hidden or moved? Log that too, or leave it open`;
    gather.say("seen", "ECHO", words);
  }
  return {
    ...when,
    ...named(animal),
    seen_text: gather.text("seen"),
    seen: heads.count,
    sureness: heads.about ? "about" : "counted",
    hours_from_lights_out: hours,
    torch,
    food_offered: food,
  };
}

export function readAddition(gather: Gather): EntryBody<"addition"> | undefined {
  const when = gather.when();
  const animal = gather.animal();
  const dead =
    gather.text("dead_on_arrival") === "" ? { count: 0 } : gather.heads("dead_on_arrival", "other");
  const deadCount = dead?.count ?? (dead === undefined ? undefined : 0);
  // All may have come dead: then none was added, and that is worth keeping.
  const noneAlive = gather.text("count") === "0" && (deadCount ?? 0) > 0;
  const count = noneAlive ? 0 : gather.counted("count", "other");
  const sold = gather.words("sold_as");
  const condition = gather.choice("condition", ["lively", "usual", "weak"]);
  const wave = readWave(gather);
  const despite = gather.reason("despite_gate");
  if (when === undefined || animal === undefined || count === undefined) return undefined;
  if (deadCount === undefined || sold === undefined || condition === undefined) return undefined;
  if (wave === undefined || despite === undefined) return undefined;
  sayWhereOlder(gather, animal);
  return {
    ...when,
    ...named(animal),
    sold_as: sold,
    count,
    dead_on_arrival: deadCount,
    condition,
    wave,
    despite_gate: despite,
  };
}

export function readOrder(gather: Gather): EntryBody<"order"> | undefined {
  const when = gather.when();
  const animal = gather.animal();
  const count = gather.counted("count", "other");
  const wave = readWave(gather);
  const expected = gather.plannedDay("expected");
  const from = gather.words("from");
  const despite = gather.reason("despite_gate");
  if (when === undefined || animal === undefined || count === undefined || wave === undefined)
    return undefined;
  if (expected === undefined || from === undefined || despite === undefined) return undefined;
  return {
    ...when,
    ...named(animal),
    count,
    wave,
    expected,
    from_text: from,
    despite_gate: despite,
  };
}

export function readLoss(gather: Gather): EntryBody<"loss"> | undefined {
  const when = gather.when();
  const animal = gather.animal();
  const count = gather.counted("count", "lost", recorded(gather, animal));
  const certainty = gather.choice("certainty", ["found", "feared"]);
  const removed = gather.yesNo("body_removed");
  const cause = gather.choice("cause", [
    "unknown",
    "starved",
    "eaten",
    "fell",
    "moult",
    "poisoned",
    "arrival",
    "age",
  ]);
  if (when === undefined || animal === undefined || count === undefined) return undefined;
  if (certainty == null || removed === undefined || cause === undefined) return undefined;
  if (certainty === "feared" && removed === true) {
    return gather.doubt(
      "body_removed",
      "CONFLICT",
      "a body was taken out: then the loss is found, not feared",
      [{ label: "leave it empty", text: "" }],
    );
  }
  if (certainty === "found") sayWhereOlder(gather, animal);
  return {
    ...when,
    ...named(animal),
    count,
    certainty,
    body_removed: certainty === "feared" ? null : removed,
    cause: cause ?? "unknown",
  };
}

export function readDeparture(gather: Gather): EntryBody<"departure"> | undefined {
  const when = gather.when();
  const animal = gather.animal();
  const count = gather.counted("count", "lost", recorded(gather, animal));
  const to = gather.words("to");
  if (when === undefined || animal === undefined || count === undefined || to == null) return undefined;
  sayWhereOlder(gather, animal);
  return { ...when, ...named(animal), count, to_text: to };
}

/** Heads that live in another tank by now are known anew there by an entry of its own. */
function sayWhereMoved(gather: Gather, was: Named): void {
  const id = was.found?.id;
  if (id === undefined || gather.on === null) return;
  for (const { tank, count, on } of gather.context.movedOut?.(id, gather.on) ?? []) {
    const words = `${count} of them moved to ${tank} on ${inWordsDate(on)}: log there too what they are`;
    gather.say("was", "ECHO", words);
  }
}

export function readIdentification(gather: Gather): EntryBody<"identification"> | undefined {
  const when = gather.when();
  const was = gather.animal("was");
  const animal = gather.animal();
  const all = gather.text("count") === "" || gather.text("count").toLowerCase() === "all";
  const count = all ? null : gather.counted("count", "lost", recorded(gather, was));
  if (when === undefined || was === undefined || animal === undefined || count === undefined)
    return undefined;
  const same = was.found === null ? was.text === animal.text : was.found.id === animal.found?.id;
  if (same)
    return gather.doubt("animal", "CONFLICT", "the same animal as before; name what it is known to be now");
  sayWhereMoved(gather, was);
  return { ...when, was_text: was.text, was: was.found?.id ?? null, ...named(animal), count };
}
