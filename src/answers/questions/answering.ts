/** One question's answer in a sent form, as entries of a tank file; what can't be read at once is a doubt. */
import { withUnit } from "../../contract/daybook/read-reading.ts";
import { readDate } from "../../contract/quantity/date.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { type FieldDoubt, withText } from "./doubts.ts";
import { fieldsOf, type TextField } from "./fields.ts";
import { parseAnimals } from "./parse.ts";
import { animalLines, rawOf, type Values, valuesOf } from "./prefill.ts";
import { UNSURE_WATER } from "./questions.ts";

/** Place in the file and what is to stand there; `undefined` takes it out. */
type Change = readonly [string, unknown];

export class Answering {
  readonly #question: number;
  readonly #sent: Values;
  readonly #before: TankFile;
  readonly #today: string;
  readonly #doubts: FieldDoubt[];
  readonly #shown: Values;

  constructor(question: number, sent: Values, before: TankFile, today: string, doubts: FieldDoubt[]) {
    this.#question = question;
    this.#sent = sent;
    this.#before = before;
    this.#today = today;
    this.#doubts = doubts;
    this.#shown = valuesOf(question, before);
  }

  changes(): readonly Change[] {
    switch (this.#question) {
      case 1:
        return this.#water();
      case 2:
        return [["first_seawater_on", this.#day("first_seawater")], ...this.#words()];
      case 4:
        return this.#animals();
      case 5:
        return this.#floor();
      case 6:
        return this.#food();
      case 7:
        return this.#readings();
      case 8:
        return this.#trouble();
      default:
        return [...this.#texts(), ...this.#words()];
    }
  }

  #text(name: string): string {
    return this.#sent[name]?.trim() ?? "";
  }

  #unchanged(name: string): boolean {
    const unit = `${name}_unit`;
    const same = (key: string) => (this.#sent[key] ?? "").trim() === (this.#shown[key] ?? "").trim();
    return same(name) && (this.#shown[unit] === undefined || this.#sent[unit] === undefined || same(unit));
  }

  #field(name: string): TextField {
    const field = fieldsOf(this.#question).find((one) => one.name === name);
    if (field?.kind !== "text") throw new TypeError(`Cannot read ${name}: no text field of that name`);
    return field;
  }

  /** A text with its unit; undefined where nothing was entered. */
  #amount(name: string): unknown {
    const text = this.#text(name);
    if (text === "") return undefined;
    const field = this.#field(name);
    if (this.#unchanged(name)) return rawOf(field, this.#before);
    const unit = this.#sent[`${name}_unit`] ?? field.units?.[0] ?? null;
    const known = unit !== null && (field.units ?? []).includes(unit) ? unit : null;
    if (name === "sides")
      return /[a-z"″']/i.test(text.replace(/x|by/gi, "")) ? text : `${text} ${known ?? "cm"}`;
    return withUnit(text, known, preferencesOf(this.#before.preferences));
  }

  /** Days are written out: "yesterday" would mean another day when the file is read again. */
  #day(name: string): unknown {
    const text = this.#text(name);
    if (text === "") return undefined;
    if (this.#unchanged(name)) return rawOf(this.#field(name), this.#before);
    const outcome = readDate(text, {
      preferences: preferencesOf(this.#before.preferences),
      today: this.#today,
      future: name === "first_seawater" ? "planned" : "refuse",
      label: this.#field(name).label,
    });
    if (isKept(outcome)) return outcome.value;
    this.#doubts.push({ field: name, text: outcome.message.text, choices: withText(outcome.choices) });
    return undefined;
  }

  /** Radio buttons of the question; one that shows no button as pressed keeps what it can't show. */
  #words(): readonly Change[] {
    return fieldsOf(this.#question).flatMap((field): Change[] => {
      if (field.kind !== "words") return [];
      const value = this.#text(field.name);
      const known = field.options.some((option) => option.value === value);
      return this.#unchanged(field.name) || !known ? [] : [[field.path, value === "" ? undefined : value]];
    });
  }

  #texts(): readonly Change[] {
    return fieldsOf(this.#question).flatMap((field): Change[] =>
      field.kind === "text" ? [[field.path, this.#amount(field.name)]] : [],
    );
  }

  #water(): readonly Change[] {
    if (this.#text("water_unsure") !== "" && this.#text("water") === "" && this.#text("sides") === "")
      return [
        ["water_l", UNSURE_WATER["water_l"]],
        ["display_sides_cm", undefined],
      ];
    const water = this.#amount("water");
    const sides = this.#amount("sides");
    if (water === undefined && sides === undefined) {
      const outcome = readVolume("", { preferences: preferencesOf(this.#before.preferences) });
      if (outcome.message !== null)
        this.#doubts.push({ field: "water", text: outcome.message.text, choices: [] });
    }
    return [
      ["water_l", water],
      ["display_sides_cm", sides],
    ];
  }

  #animals(): readonly Change[] {
    const lines = Object.keys(this.#sent)
      .filter((name) => /^animal_\d+$/.test(name))
      .sort((a, b) => Number(a.slice(7)) - Number(b.slice(7)))
      .map((name) => this.#text(name))
      .filter((line) => line !== "");
    if (lines.length === 0) {
      const nothing = this.#text("animals_none") !== "" ? [] : undefined;
      return [
        ["animals_present", nothing],
        ["fish", nothing],
      ];
    }
    const old = [...animalLines(this.#before)];
    const lists: Record<"animals_present" | "fish", unknown[]> = { animals_present: [], fish: [] };
    for (const line of lines) {
      const at = old.findIndex((one) => one.line === line);
      const [same] = at < 0 ? [] : old.splice(at, 1);
      if (same !== undefined) lists[same.list].push(same.entry);
      else lists.animals_present.push(...animalOf(line));
    }
    return [
      ["animals_present", lists.animals_present.length === 0 ? undefined : lists.animals_present],
      ["fish", lists.fish.length === 0 ? undefined : lists.fish],
    ];
  }

  #floor(): readonly Change[] {
    const depth = this.#amount("sand_depth");
    const words = this.#words();
    // A depth without a word means sand, as on the command line.
    const implied = depth !== undefined && this.#text("floor") === "";
    return [...words, ["floor.depth_mm", depth], ...(implied ? [["floor.kind", "sand"] as const] : [])];
  }

  #food(): readonly Change[] {
    const fields = fieldsOf(6).filter((field) => field.kind === "text");
    const foods = fields.flatMap((field) => {
      const text = this.#text(field.name);
      const kind = field.path.slice("feeding.foods.".length);
      if (text === "") return [];
      if (/^some$/i.test(text)) return [{ kind }];
      return [{ kind, g_per_day: this.#amount(field.name) }];
    });
    const none = this.#text("food_none") !== "";
    return [["feeding.foods", foods.length > 0 ? foods : none ? [] : undefined], ...this.#words()];
  }

  #readings(): readonly Change[] {
    const named = (["no3_mg_per_l", "po4_mg_per_l", "alkalinity_dkh"] as const).map(
      (key, i) => [key, this.#amount(["nitrate", "phosphate", "alkalinity"][i] ?? "")] as const,
    );
    const all = this.#before.readings ?? [];
    const last = all.at(-1);
    const on = this.#day("measured_on") ?? last?.on ?? this.#today;
    const rest = Object.entries(last ?? {}).filter(
      ([key]) => key !== "on" && named.every(([name]) => name !== key),
    );
    const told = [...rest, ...named.filter(([, value]) => value !== undefined)];
    const list = [...all.slice(0, -1), ...(told.length === 0 ? [] : [{ on, ...Object.fromEntries(told) }])];
    return [
      ["temperature_c", this.#amount("temperature")],
      ["salinity_psu", this.#amount("salinity")],
      ["readings", list.length === 0 ? undefined : list],
    ];
  }

  #trouble(): readonly Change[] {
    const trouble = this.#text("trouble");
    const medicine = this.#text("medicine");
    const said = this.#text("wrong");
    const yes = said === "yes" || (said === "" && (trouble !== "" || medicine !== ""));
    if (yes && trouble === "" && medicine === "") {
      const text = "What is wrong: nothing entered. Say what is dead or gasping, or the medicine by its name";
      this.#doubts.push({ field: "trouble", text, choices: [] });
    }
    const names = medicine.split(/\s*[,;]\s*/).filter((name) => name !== "");
    return [
      ["trouble", yes && trouble !== "" ? trouble : undefined],
      ["medicines", yes && names.length > 0 ? names : undefined],
    ];
  }
}

/** One line, one kind: the command line's reading of it. */
function animalOf(line: string): readonly unknown[] {
  const answer = parseAnimals(line);
  const list = answer.kind === "entries" ? answer.entries["animals_present"] : [];
  return Array.isArray(list) ? list : [];
}
