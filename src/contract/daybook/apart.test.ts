import { expect, test } from "vitest";
import { apartIn } from "./apart.ts";

test.each([
  ["quarantine: 2 clownfish", { what: "quarantine", step: "started", words: "2 clownfish" }],
  ["Quarantine ended", { what: "quarantine", step: "ended", words: "" }],
  ["quarantine over, 2 clownfish", { what: "quarantine", step: "ended", words: "2 clownfish" }],
  ["Fallow period started", { what: "fallow", step: "started", words: "" }],
  ["fallow done", { what: "fallow", step: "ended", words: "" }],
  ["moved the quarantine pump", null],
  ["quarantined", null],
  ["new lamp", null],
])("%s", (text, expected) => expect(apartIn(text)).toEqual(expected));
