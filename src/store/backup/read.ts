/** The lines of a backup, each file's hash held against the manifest's. */
import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import type { Row, Shape } from "../rows.ts";
import { changed, fileOf, type Manifest, type TableInBackup } from "./manifest.ts";
import type { Source } from "./pour.ts";

/** Throws at the first table that is not as it was written. */
export async function verify(folder: string, { tables }: Manifest): Promise<void> {
  for (const table of tables) {
    if ((await hashOf(folder, table)) !== table.sha256) throw changed(`table ${table.table}`);
  }
}

export const backupSource = (folder: string, { tables }: Manifest): Source => ({
  shapes: tables,
  rows: (shape) => rowsIn(folder, shape),
});

async function* rowsIn(folder: string, shape: Shape): AsyncGenerator<Row> {
  // A line ends in a line feed alone: other ends of lines stand escaped, or as text of their own, inside JSON.
  const input = createReadStream(fileOf(folder, shape), "utf8");
  let rest = "";
  for await (const chunk of input) {
    // Joined at a line's end alone: a line with a picture is long.
    const lines = String(chunk).split("\n");
    lines[0] = rest + lines[0];
    rest = lines.pop() ?? "";
    for (const line of lines) yield JSON.parse(line) as Row;
  }
}

async function hashOf(folder: string, table: TableInBackup): Promise<string | null> {
  const hash = createHash("sha256");
  try {
    for await (const chunk of createReadStream(fileOf(folder, table))) hash.update(chunk);
  } catch {
    return null; // the file is not there: not as it was written, either
  }
  return hash.digest("hex");
}
