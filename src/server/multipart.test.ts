/** Forms with files, whole and broken. */
import { expect, test } from "vitest";
import { Chance } from "../../checks/kit/chance.ts";
import { boundaryIn, partsOf } from "./multipart.ts";

const BOUNDARY = "----b";
const form = (...parts: readonly (readonly [head: string, body: string | Buffer])[]) =>
  Buffer.concat([
    ...parts.flatMap(([head, body]) => [
      Buffer.from(`--${BOUNDARY}\r\n${head}\r\n\r\n`),
      Buffer.from(body),
      Buffer.from("\r\n"),
    ]),
    Buffer.from(`--${BOUNDARY}--\r\n`),
  ]);
const field = (name: string) => `Content-Disposition: form-data; name="${name}"`;

test("fields and files, bytes as they were", () => {
  const bytes = Buffer.from([0, 255, 13, 10, 45, 45, 13, 10, 13, 10]);
  const body = form(
    [field("once"), "key"],
    [`${field("file")}; filename="Zoë %22x%22.csv"\r\nContent-Type: text/csv`, bytes],
    [`${field("empty")}; filename=""`, ""],
  );
  expect(partsOf(body, BOUNDARY)).toEqual([
    { name: "once", file: null, bytes: Buffer.from("key") },
    { name: "file", file: 'Zoë "x".csv', bytes },
    { name: "empty", file: "", bytes: Buffer.from("") },
  ]);
});

test("the boundary of a content type, quoted or not", () => {
  expect(boundaryIn("multipart/form-data; boundary=----b")).toBe("----b");
  expect(boundaryIn('multipart/form-data; charset=utf-8; boundary="a b"')).toBe("a b");
  expect(boundaryIn("multipart/form-data")).toBeNull();
  expect(boundaryIn("multipart/mixed; boundary=x")).toBeNull();
});

test("what was cut short or spoilt is no form, and never throws", () => {
  const whole = form([field("a"), "1"], [`${field("file")}; filename="x"`, "2"]);
  for (let end = 0; end < whole.length - 4; end += 1)
    expect(partsOf(whole.subarray(0, end), BOUNDARY)).toBeNull();
  expect(partsOf(form(["Content-Type: text/plain", "1"]), BOUNDARY)).toBeNull();
  expect(partsOf(form(...Array.from({ length: 51 }, () => [field("a"), ""] as const)), BOUNDARY)).toBeNull();
  const chance = new Chance(7);
  for (let run = 0; run < 5_000; run += 1) {
    const spoilt = Buffer.from(whole);
    for (let i = chance.whole(1, 5); i > 0; i -= 1)
      spoilt[chance.whole(0, spoilt.length - 1)] = chance.whole(0, 255);
    expect(() => partsOf(spoilt, BOUNDARY)).not.toThrow();
  }
});
