/**
 * Text to plain data, for YAML and JSON alike: small, shallow, without aliases, tags or keys given twice.
 * Keeps the line of every place, for the findings.
 */
import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from "yaml";
import type { Message, MessageKind } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import type { Path } from "./finding.ts";

const MOST_BYTES = 1024 * 1024;
const DEEPEST = 20;

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
  if (text.trim() === "") return stop("MISSING", "it is empty. Start it with grazewell_tank: 1 and water_l");
  const bytes = text.length > MOST_BYTES ? text.length : new TextEncoder().encode(text).length;
  if (bytes > MOST_BYTES) {
    return stop("TOOBIG", `must be 1 MiB or less; this one has ${(bytes / MOST_BYTES).toFixed(1)} MiB`);
  }
  if (isPicture(text)) return stop("FORMAT", "this is a picture or another binary file, not text");
  if (deepestFlow(text) > DEEPEST) return stop("TOOBIG", `must be nested at most ${DEEPEST} deep`);
  try {
    return readDocument(text);
  } catch (error) {
    // Deep block nesting ends in the parser's own recursion limit.
    if (error instanceof RangeError) return stop("TOOBIG", `must be nested at most ${DEEPEST} deep`);
    throw error;
  }
}

function readDocument(text: string): Parsed {
  const lines = new LineCounter();
  const tabless = text.replace(/^\t+/gm, (tabs) => "  ".repeat(tabs.length));
  const doc = parseDocument(tabless, {
    lineCounter: lines,
    version: "1.2",
    schema: "core",
    merge: false,
    uniqueKeys: true,
    prettyErrors: false,
    stringKeys: true,
    logLevel: "silent",
  });
  const lineAt = (offset: number | undefined): number | null =>
    offset === undefined ? null : lines.linePos(offset).line;
  const broken = doc.errors.map((error): Fault => {
    const line = lineAt(error.pos[0]);
    const where = line === null ? "" : `line ${line}: `;
    const words = error.code === "DUPLICATE_KEY" ? "a name is given twice" : plain(error.code, error.message);
    return { path: [], line, typed: null, message: { kind: "FORMAT", text: `Tank file: ${where}${words}` } };
  });
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
      fault([], node as Node, `must be nested at most ${DEEPEST} deep`, null, "TOOBIG");
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

function plain(code: string, message: string): string {
  if (code === "TAB_AS_INDENT") return "a tab stands where spaces belong";
  if (code === "MULTIPLE_DOCS") return "holds more than one document; keep one";
  if (code === "BAD_ALIAS") return "a reference to another place is not taken; write it out";
  // The parser's own words name the trouble well, but blame: take only the place and a hint.
  const quote = /quote|"|'/.test(message) ? " Look for a quote that opens and never closes." : "";
  return `can't be read as YAML or JSON here. Look at the spaces in front, the colon and the brackets.${quote}`;
}

function isPicture(text: string): boolean {
  const start = text.slice(0, 512);
  return (
    start.includes("\0") ||
    /^.{0,2}PNG\r?\n|^GIF8|^.{0,8}JFIF|^%PDF|^PK[^\w\s:]/.test(start) ||
    start.split("\ufffd").length > 8
  );
}

/** Deepest nesting of brackets, over-counting those in quotes: a file that trips it by quotes is no tank file. */
function deepestFlow(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    if (c === 91 || c === 123) deepest = Math.max(deepest, ++depth);
    else if (c === 93 || c === 125) depth = Math.max(0, depth - 1);
  }
  return deepest;
}
