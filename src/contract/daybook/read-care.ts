/** Entries about what was done or befell: chores, treatments, outages, a move, advice declined. Changes: read-change.ts. */
import { readPlain } from "../quantity/plain.ts";
import { isZone } from "../quantity/zone.ts";
import type { Gather } from "./gather.ts";
import { CHORES } from "./kinds/care.ts";
import type { EntryBody } from "./kinds.ts";
import { readDuration, readShare } from "./read-numbers.ts";

export function readChore(gather: Gather): EntryBody<"chore"> | undefined {
  const chore = gather.choice("chore", CHORES);
  const share = readShare(gather, "amount", chore === "water_change" ? "water" : "other");
  const days = filmDays(gather, chore ?? null);
  const when = gather.when();
  if (chore == null || share === undefined || days === undefined || when === undefined) return undefined;
  return { ...when, chore, amount_text: gather.text("amount") || null, share, film_days: days };
}

function filmDays(gather: Gather, chore: string | null): number | null | undefined {
  const typed = gather.text("film_days");
  if (typed === "") return null;
  if (chore !== null && chore !== "glass_wiped") {
    const words = "belongs to wiping the glass; leave it empty here";
    return gather.doubt("film_days", "CONFLICT", words, [{ label: "leave it empty", text: "" }]);
  }
  const { preferences } = gather.context;
  const outcome = readPlain("days", typed, { preferences, label: gather.label("film_days"), unit: "d" });
  const days = gather.take("film_days", outcome)?.central;
  return days !== undefined && days > 365
    ? gather.doubt("film_days", "RANGE", "must be 365 days or fewer")
    : days;
}

export function readTreatment(gather: Gather): EntryBody<"treatment"> | undefined {
  const substance = gather.words("substance");
  const step = gather.choice("step", ["started", "ended"]);
  const when = gather.when();
  if (substance == null || step == null || when === undefined) return undefined;
  return { ...when, substance, step };
}

export function readOutage(gather: Gather): EntryBody<"outage"> | undefined {
  const of = gather.choice("of", ["power", "pumps", "heater", "lamp", "skimmer"]);
  const hours = readDuration(gather, "hours");
  const when = gather.when();
  if (of == null || hours === undefined || when === undefined) return undefined;
  return { ...when, of, hours };
}

export function readRelocation(gather: Gather): EntryBody<"relocation"> | undefined {
  const to = gather.words("to");
  const zone = gather.words("zone");
  const when = gather.when();
  if (to == null || zone === undefined || when === undefined) return undefined;
  if (zone !== null && !isZone(zone)) {
    return gather.doubt("zone", "FORMAT", "not a time zone we know; enter one such as Europe/London");
  }
  return { ...when, to_text: to, zone };
}

export function readDecline(gather: Gather): EntryBody<"decline"> | undefined {
  const advice = gather.words("advice");
  const reason = gather.reason("reason");
  const when = gather.when();
  const { asked } = gather.context;
  const found = asked?.find(({ id }) => id === advice);
  if (advice != null && asked !== undefined && found === undefined) {
    const choices = asked.map(({ id, does }) => ({ label: does, text: id }));
    return gather.doubt(
      "advice",
      "NOTFOUND",
      "no such advice stands today; one of these can be declined",
      choices,
    );
  }
  if (advice == null || reason == null || when === undefined) return undefined;
  const rested = found?.restsOn === undefined ? {} : { rests_on: found.restsOn };
  return { ...when, advice, reason, ...rested };
}
