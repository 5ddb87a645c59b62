/** Texts and values that have broken programs, and ways to break a good body. Our own, drawn from one seeded stream. */
import type { Chance } from "../../kit/chance.ts";

/** Runs of its own mark if it is ever read as markup. */
export const PLANTED = `"'><img src=x onerror=planted()><script>planted()</script><b data-planted="`;

const TEXTS: readonly string[] = [
  "",
  " ",
  "\u0000",
  "\u202e\u0007",
  "\ud800",
  "𝟛 L",
  "٣٠ L",
  "１２",
  "−5",
  "1e999",
  "1e-999",
  "-0",
  "0x10",
  "1,234.5",
  "1.234,5",
  "30 gal",
  "30 US gal (checked)",
  "<2",
  ">100",
  "10-20",
  "5 NO3-N",
  "2026-02-30",
  "0000-00-00",
  "9999-12-31",
  "03/04/2026",
  "yesterday",
  "tomorrow",
  "2026-06-15T25:61+99:99",
  "__proto__",
  "constructor",
  "toString",
  "hasOwnProperty",
  "null",
  "undefined",
  "NaN",
  "Infinity",
  "true",
  "[object Object]",
  PLANTED,
  "javascript:planted()",
  "{{planted()}} <%= planted() %>",
  "'; DROP TABLE tank;--",
  '=HYPERLINK("x","y")',
  "../../../../etc/passwd",
  "%00%2e%2e%2f",
  "a\r\nset-cookie: planted=1",
  "Zoë’s 礁 🪸",
  "e\u0301".repeat(40),
  "x".repeat(201),
  "x".repeat(10_001),
  "9".repeat(400),
  "(".repeat(200),
  "&amp;&#x3c;",
];

const NAMES = [
  "admin",
  "id",
  "version",
  "kept",
  "value",
  "water_l",
  "toString",
  "constructor",
  "length",
  "a.b[0]",
  "",
];

export const nastyText = (chance: Chance): string => chance.pick(TEXTS);

function nastyValue(chance: Chance, deep = 0): unknown {
  const kind = chance.whole(0, deep > 3 ? 6 : 8);
  if (kind <= 2) return nastyText(chance);
  if (kind === 3) return chance.pick([0, -1, 1e308, -1e-308, 2 ** 53, 0.1 + 0.2, 1e21, 5e-324]);
  if (kind === 4) return chance.is(0.5);
  if (kind === 5) return null;
  if (kind === 6) return [];
  if (kind === 7) return Array.from({ length: chance.whole(1, 4) }, () => nastyValue(chance, deep + 1));
  return Object.fromEntries([[chance.pick(NAMES), nastyValue(chance, deep + 1)]]);
}

type Place = Record<string, unknown> | unknown[];
const isPlace = (value: unknown): value is Place => typeof value === "object" && value !== null;

/** Every object and list of a value, itself among them. */
function placesIn(value: unknown): Place[] {
  return isPlace(value) ? [value, ...Object.values(value).flatMap(placesIn)] : [];
}

/** A good body with a few things in it changed. */
export function broken(good: unknown, chance: Chance): unknown {
  const body: unknown = structuredClone(good);
  for (let i = chance.whole(0, 3); i > 0; i -= 1) {
    const place = chance.pick(placesIn(body).concat([{}]));
    const keys = Object.keys(place);
    const what = keys.length === 0 ? "add" : chance.pick(["add", "drop", "put", "put", "put", "put"]);
    if (what === "add") put(place, chance.pick(NAMES), nastyValue(chance));
    else if (what === "drop") delete (place as Record<string, unknown>)[chance.pick(keys)];
    else put(place, chance.pick(keys), nastyValue(chance));
  }
  return body;
}

function put(place: Place, name: string, value: unknown): void {
  Object.defineProperty(place, name === "length" && Array.isArray(place) ? 0 : name, {
    value,
    enumerable: true,
    writable: true,
    configurable: true,
  });
}

/** Text with a letter cut, doubled or put in. */
export function garbled(text: string, chance: Chance): string {
  const at = chance.whole(0, text.length);
  const kind = chance.whole(0, 3);
  if (kind === 0) return text.slice(0, at);
  if (kind === 1) return text.slice(0, at) + text.slice(Math.max(0, at - chance.whole(1, 20)));
  if (kind === 2) return text.slice(0, at) + nastyText(chance) + text.slice(at);
  return text.replaceAll(chance.pick(['"', ":", ",", "{", "}"]), chance.pick(["", "'", "[", "\\", "\n"]));
}
