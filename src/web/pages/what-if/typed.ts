/**
 * The fields of a what-if as they are typed, and what they mean: texts in, the texts that answers/what-if.ts reads out.
 * Also what a step up or down makes of a field. Shared by server and browser. Pure.
 * Limits: judges only what spans two fields; the readers of the contract judge the rest.
 */
import type { ChangeTexts } from "../../../contract/worker/messages.ts";
import { capital } from "../../parts/text.ts";

/** By field name; an empty field is as today. Also the query of the page's address. */
export type Typed = Readonly<Record<string, string>>;

/** What the tank has today, for steps and for halves that are left out. */
export interface TodayValues {
  readonly lightHours: number;
  readonly changePercent: number;
  readonly changeDays: number;
}

export interface FieldFault {
  readonly text: string;
  /** Texts to put in the field instead. */
  readonly fixes: readonly { readonly text: string; readonly label: string }[];
}
export type Faults = Readonly<Record<string, FieldFault>>;

/** One part of the change, with the field that an error in it belongs to. */
export interface ChangePart {
  readonly field: string;
  readonly change: ChangeTexts;
}

const CREW = "crew-";
export const crewField = (animal: string): string => `${CREW}${animal}`;
const FIELDS = ["feed", "light", "dark", "share", "days", "other-count", "other"] as const;

/** How messages name the fields; those of single animals are "Animals". */
const LABELS: Readonly<Record<string, string>> = {
  feed: "Feed a day",
  light: "Light a day",
  dark: "Dark days",
  share: "Share of the water",
  days: "Every so many days",
};

const fault = (text: string): FieldFault => ({ text, fixes: [] });

export function changeParts(typed: Typed, today: TodayValues): { parts: ChangePart[]; faults: Faults } {
  const said = (name: string) => (typed[name] ?? "").trim().replaceAll("\u2212", "-");
  const parts: ChangePart[] = [];
  const faults: Record<string, FieldFault> = {};
  if (said("feed") !== "") parts.push({ field: "feed", change: { feed: said("feed") } });
  const [light, dark] = [said("light"), said("dark")];
  if (light !== "" && dark !== "") {
    faults["dark"] = fault("Hours of light and dark days can't be tried at once: leave one of them empty");
  } else if (light !== "") parts.push({ field: "light", change: { light: withUnit(light, "h") } });
  else if (dark !== "")
    parts.push({ field: "dark", change: { light: `0 for ${withUnit(dark, daysOf(dark))}` } });
  const [share, days] = [said("share"), said("days")];
  if (share !== "" || days !== "") {
    const part = withUnit(share === "" ? String(today.changePercent) : share, "%");
    const every = days === "" ? String(today.changeDays) : days;
    const waterChange = `${part} every ${withUnit(every, daysOf(every))}`;
    parts.push({ field: share === "" ? "days" : "share", change: { waterChange } });
  }
  for (const [name, text] of Object.entries(typed)) {
    if (!name.startsWith(CREW) || text.trim() === "") continue;
    parts.push({ field: name, change: { crew: [`${said(name)} ${name.slice(CREW.length)}`] } });
  }
  const [other, count] = [said("other"), said("other-count")];
  if (other !== "" && count !== "") parts.push({ field: "other", change: { crew: [`${count} ${other}`] } });
  else if (other !== "") faults["other-count"] = fault(`How many of "${other}"? Write +2 to add two`);
  else if (count !== "") faults["other"] = fault(`Which animal? "${count}" stands alone`);
  return { parts, faults };
}

/** All parts as one change; null where nothing is changed. */
export function changeOf(parts: readonly ChangePart[]): ChangeTexts | null {
  if (parts.length === 0) return null;
  const crew = parts.flatMap(({ change }) => change.crew ?? []);
  const all = Object.assign({}, ...parts.map(({ change }) => change)) as ChangeTexts;
  return crew.length === 0 ? all : { ...all, crew };
}

/** A refusal's lines as a field's error: flags become words, offered texts become fixes. */
export function faultOf(lines: readonly string[], { field, change }: ChangePart): FieldFault {
  const [first = ""] = lines;
  const [whole = ""] = [change.feed ?? change.light ?? change.waterChange ?? change.crew?.[0]];
  const fixes = lines.flatMap((line) => {
    const [, text, label] = /^ {2}--[a-z-]+ "(.+)" {3}(.+)$/.exec(line) ?? [];
    if (text === undefined || label === undefined) return [];
    const fixed = fieldText(field, text);
    return fixed === null ? [] : [{ text: fixed, label: capital(label) }];
  });
  const words = first
    .replace(/^--[a-z-]+/, LABELS[field] ?? "Animals")
    .replace("grazewell animals names every kind", "the field guide names every kind")
    .replace("change --feed instead", "change the feed instead");
  return { text: words === "" ? `${LABELS[field] ?? "Animals"} "${whole}" can't be read` : words, fixes };
}

/** The part of an offered text that belongs into the field itself; null where it would not fit there alone. */
function fieldText(field: string, text: string): string | null {
  if (field === "feed" || field === "light") return text;
  if (field === "dark") return /^0 for (.+)$/.exec(text)?.[1] ?? null;
  if (field === "share") return /^(.+) every /.exec(text)?.[1] ?? null;
  if (field === "days") return / every (.+)$/.exec(text)?.[1] ?? null;
  const [, count, name] = /^(\S+) (.+)$/.exec(text) ?? [];
  return (field === "other" ? name : count) ?? null;
}

/** A field after one step up (1) or down (-1); empty where it is as today again. */
export function stepped(field: string, text: string, by: 1 | -1, today: TodayValues): string {
  const typed = text.trim().replaceAll("\u2212", "-");
  const [, sign = "", number = "", unit = ""] = /^([+-]?)\s*(\d+(?:\.\d+)?)\s*(.*)$/.exec(typed) ?? [];
  const value = number === "" ? null : Number(`${sign}${number}`);
  if (field === "feed") {
    if (value !== null && unit !== "%")
      return `${Number((value * (1 + 0.1 * by)).toPrecision(2))} ${unit || "g"}`;
    return signed(Math.min(900, Math.max(-100, (value ?? 0) + 10 * by)), " %");
  }
  if (field === "light") {
    if (unit === "%") return `${Math.min(300, Math.max(0, (value ?? 100) + 10 * by))} %`;
    return `${Math.min(24, Math.max(0, (value ?? Math.round(today.lightHours)) + by))} h`;
  }
  if (field === "dark") {
    const days = (value ?? 0) + by;
    return days < 1 ? "" : String(Math.min(14, days));
  }
  if (field === "share") return `${Math.min(100, Math.max(0, (value ?? today.changePercent) + 5 * by))} %`;
  if (field === "days") return String(Math.max(1, (value ?? today.changeDays) + by));
  return signed((value ?? 0) + by, "");
}

const signed = (value: number, unit: string): string =>
  value === 0 ? "" : `${value > 0 ? "+" : "-"}${Math.abs(value)}${unit}`;
const withUnit = (text: string, unit: string): string => (/^[\d.,]+$/.test(text) ? `${text} ${unit}` : text);
const daysOf = (text: string): string => (text === "1" ? "day" : "days");

/** The page's query: what is typed, without empty fields. */
export function queryOf(typed: Typed, more: Typed = {}): string {
  const query = new URLSearchParams(
    Object.entries({ ...typed, ...more }).filter(([, text]) => text.trim() !== ""),
  );
  return query.toString();
}

/** The fields of a query, with a fix that a button offered put in place. */
export function typedOf(query: Typed): Typed {
  const typed: Record<string, string> = {};
  for (const [name, text] of Object.entries(query)) {
    if ((FIELDS as readonly string[]).includes(name) || name.startsWith(CREW)) typed[name] = text;
  }
  for (const [name, text] of Object.entries(query)) {
    if (name.startsWith("fix-")) typed[name.slice("fix-".length)] = text;
  }
  return typed;
}
