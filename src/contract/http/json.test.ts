import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readJson } from "./json.ts";

describe("what JSON.parse takes", () => {
  test("is read to the same value", () => {
    fc.assert(
      fc.property(
        // The standard's own reader keeps the last of two names, and takes names that we refuse.
        fc.json({ maxDepth: 6 }).filter((text) => !/__proto__|constructor|prototype/.test(text)),
        (text) => {
          expect(readJson(text)).toEqual({ ok: true, value: JSON.parse(text) });
        },
      ),
    );
  });

  test.each(['"\\u00e9\\ud83e\\udeb8\\n"', "[]", "{}", " [ 1 , -0.5e-3 ] ", "\ufeff[1]", "0", "-0", "1E5"])(
    "%s",
    (text) => {
      expect(readJson(text)).toEqual({ ok: true, value: JSON.parse(text.replace("\ufeff", "")) });
    },
  );
});

test("what JSON.parse refuses is refused, and nothing else is thrown", () => {
  const broken = fc.tuple(fc.json({ maxDepth: 3 }), fc.nat(), fc.string({ unit: "binary", maxLength: 3 }));
  fc.assert(
    fc.property(broken, ([text, at, letters]) => {
      const place = at % (text.length + 1);
      const changed = `${text.slice(0, place)}${letters}${text.slice(place + 1)}`;
      let parses = true;
      try {
        JSON.parse(changed);
      } catch {
        parses = false;
      }
      const read = readJson(changed);
      if (!parses && !changed.startsWith("\ufeff")) expect(read.ok, changed).toBe(false);
    }),
    { numRuns: 3000 },
  );
});

const faultOf = (text: string) => {
  const read = readJson(text);
  if (read.ok) throw new Error("was taken");
  return read.fault;
};

test.each([
  ['{"a":{"b/c":[1,{"x":1,"x":2}]}}', "/a/b~1c/1/x", "FORMAT"],
  ['{"a":1e999}', "/a", "RANGE"],
  ['{"a":{"__proto__":{}}}', "/a/__proto__", "FORMAT"],
  ['{"constructor":1}', "/constructor", "FORMAT"],
  ["", "", "MISSING"],
  ["[1,]", "/1", "FORMAT"],
  ['{"a":"\n"}', "/a", "FORMAT"],
  ["[01]", "", "FORMAT"],
  ["nul", "", "FORMAT"],
  ["[NaN]", "/0", "FORMAT"],
])("%s is refused at %s: %s", (text, pointer, kind) => {
  expect(faultOf(text)).toMatchObject({ pointer, kind });
});

test("20 deep is read, 21 deep is not, and a million deep costs nothing", () => {
  const nested = (deep: number) => `${"[".repeat(deep)}${"]".repeat(deep)}`;
  expect(readJson(nested(20)).ok).toBe(true);
  expect(faultOf(nested(21)).kind).toBe("TOOBIG");
  expect(faultOf(nested(1_000_000)).kind).toBe("TOOBIG");
});

test("names of Object's own are plain names here", () => {
  const read = readJson('{"toString":1,"hasOwnProperty":2,"valueOf":3}');
  expect(read).toEqual({ ok: true, value: { toString: 1, hasOwnProperty: 2, valueOf: 3 } });
});
