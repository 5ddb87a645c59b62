/**
 * A form with a file, as browsers send it (RFC 7578), cut into its parts by hand: the whole was bounded before it comes
 * here. Strict: what is not built so is no form. Limits: no nested parts, no encodings of transfer.
 */
export interface Part {
  readonly name: string;
  /** Null for a field without a file. */
  readonly file: string | null;
  readonly bytes: Buffer;
}

/** A form that came so: told from every other body by what it is. */
export class SentParts {
  readonly parts: readonly Part[];
  constructor(parts: readonly Part[]) {
    this.parts = parts;
  }
}

const MOST_PARTS = 50;
const MOST_HEAD_BYTES = 4_096;
const END_OF_LINE = Buffer.from("\r\n");
const END_OF_HEAD = Buffer.from("\r\n\r\n");

export function boundaryIn(contentType: string): string | null {
  const match = /^multipart\/form-data\s*;(?:.*;)?\s*boundary=(?:"([^"]{1,70})"|([^\s;"]{1,70}))/i.exec(
    contentType,
  );
  return match?.[1] ?? match?.[2] ?? null;
}

/** Null where it is not built as a form with files is. */
export function partsOf(body: Buffer, boundary: string): readonly Part[] | null {
  const mark = Buffer.from(`--${boundary}`);
  const between = Buffer.from(`\r\n--${boundary}`);
  if (!body.subarray(0, mark.length).equals(mark)) return null;
  const parts: Part[] = [];
  let at = mark.length;
  for (;;) {
    if (body.subarray(at, at + 2).toString("latin1") === "--") return parts;
    if (!body.subarray(at, at + 2).equals(END_OF_LINE) || parts.length >= MOST_PARTS) return null;
    at += 2;
    const headEnd = body.indexOf(END_OF_HEAD, at);
    if (headEnd < 0 || headEnd - at > MOST_HEAD_BYTES) return null;
    const start = headEnd + END_OF_HEAD.length;
    const end = body.indexOf(between, start);
    const named = nameIn(body.toString("utf8", at, headEnd));
    if (end < 0 || named === null) return null;
    parts.push({ ...named, bytes: body.subarray(start, end) });
    at = end + between.length;
  }
}

function nameIn(head: string): Pick<Part, "name" | "file"> | null {
  const line = head.split("\r\n").find((one) => /^content-disposition\s*:\s*form-data\b/i.test(one));
  const name = parameterIn("name", line);
  return name === null ? null : { name, file: parameterIn("filename", line) };
}

/** Browsers write a quote inside a name as %22, and the ends of lines likewise. */
function parameterIn(key: string, line: string | undefined): string | null {
  const value = new RegExp(`;\\s*${key}="([^"]*)"`, "i").exec(line ?? "")?.[1];
  return value === undefined ? null : value.replace(/%22/g, '"').replace(/%0[da]/gi, " ");
}
