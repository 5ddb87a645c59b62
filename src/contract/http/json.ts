/**
 * JSON as it comes from outside, read strictly: a name given twice, a name that could reach an object's prototype, a
 * number beyond all numbers and nesting without end are refused with their place, which JSON.parse would let pass.
 * Limits: RFC 8259 and nothing more; the size was bounded before.
 */
import { shown } from "../quantity/show.ts";

export interface JsonFault {
  /** JSON pointer (RFC 6901) of the value. */
  readonly pointer: string;
  readonly kind: "FORMAT" | "RANGE" | "TOOBIG" | "MISSING";
  readonly message: string;
  readonly typed: string | null;
}

export type JsonRead =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: JsonFault };

const DEEPEST = 20;
const NOT_NAMES: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const SPACE = /[ \t\n\r]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON text may not hold them unescaped.
const PLAIN = /[^"\\\u0000-\u001f]*/y;
const WORDS: readonly (readonly [string, unknown])[] = [
  ["true", true],
  ["false", false],
  ["null", null],
];
const ESCAPED: Readonly<Record<string, string>> = {
  '"': '"',
  "\\": "\\",
  "/": "/",
  b: "\b",
  f: "\f",
  n: "\n",
  r: "\r",
  t: "\t",
};

class Stop extends Error {
  readonly fault: JsonFault;
  constructor(fault: JsonFault) {
    super(fault.message);
    this.fault = fault;
  }
}

export const pointerOf = (path: readonly (string | number)[]): string =>
  path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");

export function readJson(text: string): JsonRead {
  if (text.trim() === "") {
    return {
      ok: false,
      fault: { pointer: "", kind: "MISSING", message: "Body: it is empty; send JSON", typed: null },
    };
  }
  try {
    return { ok: true, value: new Reader(text.replace(/^\ufeff/, "")).whole() };
  } catch (error) {
    if (error instanceof Stop) return { ok: false, fault: error.fault };
    throw error;
  }
}

class Reader {
  readonly #text: string;
  readonly #path: (string | number)[] = [];
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  whole(): unknown {
    const value = this.#value();
    this.#space();
    if (this.#at < this.#text.length) throw this.#unread("the end");
    return value;
  }

  #value(): unknown {
    this.#space();
    const letter = this.#text[this.#at];
    if (letter === "{") return this.#object();
    if (letter === "[") return this.#list();
    if (letter === '"') return this.#string();
    for (const [word, value] of WORDS) {
      if (this.#text.startsWith(word, this.#at)) {
        this.#at += word.length;
        return value;
      }
    }
    return this.#number();
  }

  #object(): Record<string, unknown> {
    const object: Record<string, unknown> = {};
    this.#enter();
    if (this.#takes("}")) return object;
    for (;;) {
      this.#space();
      const name = this.#string();
      this.#path.push(name);
      if (NOT_NAMES.has(name)) throw this.#stop("FORMAT", `"${name}" is not a name that can be kept`, name);
      if (Object.hasOwn(object, name))
        throw this.#stop("FORMAT", `"${shown(name)}" is given twice; keep one`, name);
      if (!this.#takes(":")) throw this.#unread("a colon");
      object[name] = this.#value();
      this.#path.pop();
      if (this.#takes("}")) return object;
      if (!this.#takes(",")) throw this.#unread('a comma or "}"');
    }
  }

  #list(): unknown[] {
    const list: unknown[] = [];
    this.#enter();
    if (this.#takes("]")) return list;
    for (;;) {
      this.#path.push(list.length);
      list.push(this.#value());
      this.#path.pop();
      if (this.#takes("]")) return list;
      if (!this.#takes(",")) throw this.#unread('a comma or "]"');
    }
  }

  #enter(): void {
    this.#at += 1;
    if (this.#path.length >= DEEPEST)
      throw this.#stop("TOOBIG", `must be nested at most ${DEEPEST} deep`, null);
  }

  #string(): string {
    if (this.#text[this.#at] !== '"') throw this.#unread("a name or text in double quotes");
    this.#at += 1;
    let read = "";
    for (;;) {
      read += this.#match(PLAIN) ?? "";
      const letter = this.#text[this.#at];
      this.#at += 1;
      if (letter === '"') return read;
      if (letter !== "\\") {
        this.#at -= 1;
        throw this.#unread("the closing quote of a text (line breaks in it are written \\n)");
      }
      read += this.#escape();
    }
  }

  #escape(): string {
    const letter = this.#text[this.#at] ?? "";
    const plain = ESCAPED[letter];
    if (plain !== undefined) {
      this.#at += 1;
      return plain;
    }
    const code = /^u([0-9a-fA-F]{4})/.exec(this.#text.slice(this.#at, this.#at + 5));
    if (code === null) throw this.#unread("one of the escapes of JSON");
    this.#at += 5;
    return String.fromCharCode(Number.parseInt(code[1]!, 16));
  }

  #number(): number {
    const text = this.#match(NUMBER);
    if (text === undefined || text === "") throw this.#unread("a value");
    const value = Number(text);
    if (Number.isFinite(value)) return value;
    throw this.#stop("RANGE", `"${shown(text)}": must be a finite number`, text);
  }

  #match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text)?.[0];
    this.#at += found?.length ?? 0;
    return found;
  }

  #space(): void {
    this.#match(SPACE);
  }

  #takes(letter: string): boolean {
    this.#space();
    if (this.#text[this.#at] !== letter) return false;
    this.#at += 1;
    return true;
  }

  #unread(wanted: string): Stop {
    const line = this.#text.slice(0, this.#at).split("\n").length;
    const found = this.#text.slice(this.#at, this.#at + 20);
    const here = found === "" ? "the end" : `"${shown(found)}"`;
    return this.#stop("FORMAT", `not JSON at line ${line}: expected ${wanted}, found ${here}`, found);
  }

  #stop(kind: JsonFault["kind"], words: string, typed: string | null): Stop {
    const name = this.#path.findLast((step) => typeof step === "string");
    const label = name === undefined ? "Body" : shown(name);
    return new Stop({ pointer: pointerOf(this.#path), kind, message: `${label}: ${words}`, typed });
  }
}
