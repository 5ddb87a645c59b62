/** Entries of the daybook in words: one plain sentence an entry, and how each field was read. */
import { counted, dateWords, lowered } from "../../answers/words.ts";
import { animalById } from "../../catalogue/index.ts";
import { CHANGED_LABELS, CHORE_LABELS, SIGN_LABELS } from "../../contract/daybook/fields.ts";
import { GROWTH_ANCHORS } from "../../contract/daybook/growth-anchors.ts";
import type { DaybookEntry, EntryBody } from "../../contract/daybook/kinds.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { capital, lowerFirst, unitSigns } from "../parts/text.ts";

const CAUSE_WORDS: Readonly<Record<EntryBody<"loss">["cause"], string>> = {
  unknown: "cause not known",
  starved: "thought to have starved",
  eaten: "thought to have been eaten",
  fell: "thought to have fallen and not righted itself",
  moult: "thought to have died in its moult",
  poisoned: "thought to have been poisoned",
  arrival: "thought to have been hurt on its way here",
  age: "thought to have died of age",
};

/** "3 trochus snails"; the keeper's own words where the catalogue knows none. */
function headsOf(count: number, { animal, animal_text }: { animal: string | null; animal_text: string }) {
  return counted(count, lowered(animal === null ? animal_text : nameOf(animal, animal_text)));
}

const nameOf = (id: string, typed: string): string => animalById.get(id)?.commonName ?? typed;

const joined = (...parts: readonly (string | null | false)[]): string =>
  parts.filter((part) => part !== null && part !== false && part !== "").join(", ");

const lamps = (hours: number | null): string | null => {
  if (hours === null) return null;
  if (hours === 0) return "as the lamps went out";
  return `${counted(Math.abs(hours), "hour")} ${hours < 0 ? "before" : "after"} the lamps went out`;
};

/** One plain sentence, with its stop. */
export function entrySentence(entry: DaybookEntry): string {
  const matter = matterOf(entry).trim();
  return `${matter.startsWith("pH ") ? matter : capital(matter)}.`;
}

function matterOf(entry: DaybookEntry): string {
  switch (entry.kind) {
    case "reading": {
      const { quantity, text } = entry.body;
      return `${MEASURES[quantity].label} ${unitSigns(text)}`;
    }
    case "growth":
      return growthMatter(entry.body);
    case "sign":
      return signMatter(entry.body);
    case "head_count": {
      const { seen, seen_text, sureness, torch, food_offered, hours_from_lights_out } = entry.body;
      const heads = seen === null ? `${seen_text} ${entry.body.animal_text}` : headsOf(seen, entry.body);
      return joined(
        `${sureness === "about" ? "about " : ""}${heads} seen`,
        lamps(hours_from_lights_out),
        torch === true && "by torch",
        food_offered === true && "with food offered",
      );
    }
    case "order": {
      const { count, wave, expected, from_text, despite_gate } = entry.body;
      return joined(
        `${headsOf(count, entry.body)} ordered`,
        from_text !== null && `of ${from_text}`,
        wave !== null && `wave ${wave}`,
        expected !== null && `to come on ${dateWords(expected)}`,
        despite_gate !== null && `though the gate was not met: ${despite_gate}`,
      );
    }
    case "addition": {
      const { count, sold_as, dead_on_arrival, condition, wave, despite_gate } = entry.body;
      return joined(
        `${headsOf(count, entry.body)} added`,
        sold_as !== null && `sold as ${sold_as}`,
        condition !== null && condition !== "usual" && condition,
        wave !== null && `wave ${wave}`,
        dead_on_arrival > 0 && `${dead_on_arrival} more dead on arrival`,
        despite_gate !== null && `though the gate was not met: ${despite_gate}`,
      );
    }
    case "loss": {
      const { count, certainty, cause, body_removed } = entry.body;
      return joined(
        `${headsOf(count, entry.body)} ${certainty === "found" ? "found dead" : "feared lost, nothing found"}`,
        body_removed !== null && (body_removed ? "body taken out" : "body left in the water"),
        cause !== "unknown" && CAUSE_WORDS[cause],
      );
    }
    case "departure":
      return `${headsOf(entry.body.count, entry.body)} moved out, to ${entry.body.to_text}`;
    case "move": {
      const { count, to_text, from_text, condition, despite_gate } = entry.body;
      return joined(
        `${headsOf(count, entry.body)} moved ${to_text === null ? `here from ${from_text ?? ""}` : `to ${to_text}`}`,
        condition !== null && condition !== "usual" && condition,
        despite_gate !== null && `though the gate was not met: ${despite_gate}`,
      );
    }
    case "identification": {
      const { was_text, animal, animal_text, count } = entry.body;
      const now = animal === null ? animal_text : nameOf(animal, animal_text);
      return `what was called ${was_text} is ${lowered(now)}${count === null ? "" : `, ${count} of them`}`;
    }
    case "chore": {
      const { chore, amount_text, film_days } = entry.body;
      return joined(
        CHORE_LABELS[chore],
        amount_text,
        film_days !== null && `${counted(film_days, "day")} after it was last clean`,
      );
    }
    case "change":
      return `${CHANGED_LABELS[entry.body.changed]} from this day on: ${entry.body.to_text}`;
    case "treatment":
      return `${entry.body.substance} ${entry.body.step === "started" ? "put in" : "ended: tested gone or taken out"}`;
    case "outage":
      return `${entry.body.of} off for ${counted(entry.body.hours, "hour")}`;
    case "relocation":
      return `the tank was moved to ${entry.body.to_text}`;
    case "absence": {
      const { from, to, fed_by, every_days, portions } = entry.body;
      return joined(
        `away from home from ${dateWords(from)} to ${dateWords(to)}`,
        fed_by === "nobody" && "nobody comes",
        fed_by === "feeder" && "an automatic feeder feeds",
        fed_by === "sitter" &&
          `a sitter feeds ${every_days === 1 ? "daily" : `every ${counted(every_days ?? 1, "day")}`}`,
        portions !== null && `${counted(portions, "portion")} packed`,
      );
    }
    case "decline":
      return `advice declined: ${entry.body.reason}`;
  }
}

function growthMatter({ growth, score }: EntryBody<"growth">): string {
  const { label, anchors } = GROWTH_ANCHORS[growth];
  return `${label} ${score} of 4: ${lowerFirst((anchors[score] ?? "").replace(": ", ", "))}`;
}

function signMatter(body: EntryBody<"sign">): string {
  const { sign, animal_text, animal, count, kinds_seen, hours_from_lights_out } = body;
  const who =
    animal_text === null ? null : lowered(animal === null ? animal_text : nameOf(animal, animal_text));
  return joined(
    `${SIGN_LABELS[sign]}${count === null ? "" : `: ${count}`}`,
    who,
    kinds_seen !== null && `${counted(kinds_seen, "kind")} so`,
    lamps(hours_from_lights_out),
  );
}

/** How each field was read, a line a field; null where the sentence says all. */
export function asRead({ kind, body }: DaybookEntry): readonly string[] {
  const lines: (string | false | null)[] = [];
  if (kind === "reading") {
    const { value, censored, quantity } = body;
    const figure = (one: number) => String(Number(one.toPrecision(4)));
    const unit = MEASURES[quantity].units[0] ?? "";
    const range = value.low === value.high ? "" : `, from ${figure(value.low)} to ${figure(value.high)}`;
    lines.push(
      censored !== null && `${censored} what the test can tell`,
      unitSigns(`${`${figure(value.central)} ${unit}`.trim()}${range}`),
    );
  }
  if ("animal" in body && body.animal_text !== null) {
    lines.push(
      body.animal === null
        ? `"${body.animal_text}" is not in the catalogue: kept as you named it, and counted for nothing`
        : `"${body.animal_text}" is ${lowered(nameOf(body.animal, body.animal_text))}`,
    );
  }
  if (kind === "chore" && body.share !== null) lines.push(`${Math.round(body.share * 1000) / 10} % of it`);
  if (kind === "change" && body.to !== null) lines.push(`read as ${body.to}`);
  if ("traits" in body) {
    for (const [trait, seen] of Object.entries(body.traits)) {
      lines.push(`${trait.replaceAll(/[._-]/g, " ")}: ${seen ? "yes" : "no"}`);
    }
  }
  if (body.observed_at !== null) lines.push(`at ${body.observed_at}`);
  return lines.filter((line) => line !== null && line !== false);
}
