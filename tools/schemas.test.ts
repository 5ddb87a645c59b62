import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { SCHEMAS, schemaText } from "./schemas.ts";

test.each(Object.entries(SCHEMAS))(
  "docs/schemas/%s is what the contract says today",
  (file, { title, schema }) => {
    const written = readFileSync(join(import.meta.dirname, "../docs/schemas", file), "utf8");
    expect(written, "run: node tools/schemas.ts").toBe(schemaText(title, schema));
  },
);
