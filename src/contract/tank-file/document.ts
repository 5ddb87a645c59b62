/**
 * Text to plain data, for YAML and JSON alike: small, shallow, without aliases, tags or keys given twice.
 * Keeps the line of every place, for the findings.
 */
import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from "yaml";
import type { Message, MessageKind } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import type { Path } from "./finding.ts";
import { deepestFlow, isPicture } from "./guards.ts";
import { syntaxFaults } from "./syntax.ts";

const MOST_BYTES = 1024 * 1024;
const DEEPEST = 20;
const TOO_DEEP = `must be nested at most ${DEEPEST} deep`;
const EMPTY = "it is empty. Start it with grazewell_tank: 1 and water_l";

export interface Fault {
  readonly path: Path;
  readonly line: number | null;
  readonly typed: string | null;
  readonly message: Message;
}

export interface Parsed {
  readonly data: unknown;
  readonly faults: readonly Fault[];
  readonly lineOf: (path: Path) => number | null;
}

const nowhere = (): null => null;

const stop = (kind: MessageKind, text: string, line: number | null = null): Parsed => ({
  data: undefined,
  faults: [{ path: [], line, typed: null, message: { kind, text: `Tank file: ${text}` } }],
  lineOf: nowhere,
});

export function parseText(raw: string): Parsed {
  const text = raw.replace(/^\ufeff/, "");
  if (text.trim() === "") return stop("MISSING", EMPTY);
  const bytes = text.length > MOST_BYTES ? text.length : new TextEncoder().encode(text).length;
  if (bytes > MOST_BYTES) {
    return stop("TOOBIG", `must be 1 MiB or less; this one has ${(bytes / MOST_BYTES).toFixed(1)} MiB`);
  }
  if (isPicture(text)) return stop("FORMAT", "this is a picture or another binary file, not text");
  if (deepestFlow(text) > DEEPEST) return stop("TOOBIG", TOO_DEEP);
  return readDocument(text);
}

/** Data that were text once, and were judged then. What is null was left blank, as in text. */
export const plainData = (data: object): Parsed => ({
  data: withoutNulls(data),
  faults: [],
  lineOf: nowhere,
});

function withoutNulls(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutNulls);
  if (typeof value !== "object" || value === null) return value ?? undefined;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, withoutNulls(inner)]));
}

function readDocument(text: string): Parsed {
  const lines = new LineCounter();
  const tabless = text.replace(/^\t+/gm, (tabs) => "  ".repeat(tabs.length));
  const doc = parseDocument(tabless, {
    lineCounter: lines,
    version: "1.2",
    schema: "core",
    merge: false,
    // The parser compares every name with every other; `walk` looks them up instead.
    uniqueKeys: false,
    prettyErrors: false,
    stringKeys: true,
    // "silent" would also keep quiet about a second document.
    logLevel: "error",
  });
  const lineAt = (offset: number | undefined): number | null =>
    offset === undefined ? null : lines.linePos(offset).line;
  if (doc.errors.some(({ code }) => code === "RESOURCE_EXHAUSTION")) return stop("TOOBIG", TOO_DEEP);
  const broken = syntaxFaults(doc.errors, lineAt);
  const places = new Map<string, number | null>();
  const faults = [...broken];
  const fault = (
    path: Path,
    node: Node | null,
    words: string,
    typed: string | null = null,
    kind: MessageKind = "FORMAT",
  ) =>
    faults.push({
      path,
      line: lineAt(node?.range?.[0]),
      typed,
      message: { kind, text: `Tank file: ${words}` },
    });
  const walk = (node: unknown, path: Path): unknown => {
    if (path.length > DEEPEST) {
      fault([], node as Node, TOO_DEEP, null, "TOOBIG");
      return undefined;
    }
    if (isAlias(node)) {
      fault(path, node, `"*${shown(node.source)}": a reference to another place is not taken; write it out`);
      return undefined;
    }
    if (isMap(node)) {
      const object: Record<string, unknown> = Object.create(null);
      for (const { key, value } of node.items) {
        const name = isScalar(key) ? String(key.value) : "";
        const place = [...path, name];
        places.set(JSON.stringify(place), lineAt(isScalar(key) ? key.range?.[0] : node.range?.[0]));
        if (name === "__proto__" || name === "constructor" || name === "prototype") {
          fault(place, isScalar(key) ? key : node, `"${name}" is not a name a tank file can hold`, name);
        } else if (name in object) {
          fault(place, isScalar(key) ? key : node, `"${shown(name)}" is given twice; keep one`, name);
        } else object[name] = walk(value, place);
      }
      return { ...object };
    }
    if (isSeq(node)) {
      return node.items.map((item, i) => {
        const place = [...path, i];
        places.set(JSON.stringify(place), lineAt((item as Node | null)?.range?.[0]));
        return walk(item, place);
      });
    }
    if (!isScalar(node)) return undefined;
    if (node.tag !== undefined && !node.tag.startsWith("tag:yaml.org,2002:")) {
      fault(path, node, `"${shown(node.tag)}": a tag is not taken; leave it out`);
    }
    if (typeof node.value === "number" && !Number.isFinite(node.value)) {
      const typed = node.source ?? String(node.value);
      fault(path, node, `"${shown(typed)}": must be a finite number`, typed, "RANGE");
      return undefined;
    }
    return node.value ?? undefined;
  };
  if (broken.length === 0 && doc.contents === null) return stop("MISSING", EMPTY);
  const data = broken.length > 0 ? undefined : walk(doc.contents, []);
  const lineOf = (path: Path): number | null => {
    for (let end = path.length; end > 0; end -= 1) {
      const line = places.get(JSON.stringify(path.slice(0, end)));
      if (line !== undefined) return line;
    }
    return null;
  };
  return { data, faults, lineOf };
}
