/**
 * Writes the JSON Schema of everything Grazewell prints or reads as data to docs/schemas, from the contract's own
 * definitions, so that the documents cannot drift from the program. Run: node tools/schemas.ts
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { aheadOutput } from "../src/contract/output/ahead.ts";
import { almanacOutput } from "../src/contract/output/almanac.ts";
import { animalsOutput } from "../src/contract/output/animals.ts";
import { arrivalsOutput } from "../src/contract/output/arrivals.ts";
import { checkOutput } from "../src/contract/output/check.ts";
import { daybookOutput } from "../src/contract/output/daybook.ts";
import { feedingOutput, holidayOutput } from "../src/contract/output/feeding.ts";
import { growthsOutput, keyOutput } from "../src/contract/output/growths.ts";
import { headsOutput } from "../src/contract/output/heads.ts";
import { larderOutput } from "../src/contract/output/larder.ts";
import { nextOutput, roundOutput } from "../src/contract/output/next.ts";
import { startUpOutput } from "../src/contract/output/start-up.ts";
import { sumOutput, sumsOutput } from "../src/contract/output/sum.ts";
import { flowsOutput, trendsOutput } from "../src/contract/output/trends.ts";
import { waterOutput } from "../src/contract/output/water.ts";
import { wavesOutput } from "../src/contract/output/waves.ts";
import { weeksOutput } from "../src/contract/output/weeks.ts";
import { workingOutput } from "../src/contract/output/working.ts";
import { wrongListOutput, wrongOutput } from "../src/contract/output/wrong.ts";
import { tankFileSchema } from "../src/contract/tank-file/schema.ts";

/** File in docs/schemas → what it describes. Add an output here. */
export const SCHEMAS: Readonly<Record<string, { title: string; schema: z.ZodType }>> = {
  "water.schema.json": { title: "What grazewell water --json prints", schema: waterOutput },
  "waves.schema.json": { title: "What grazewell waves --json prints", schema: wavesOutput },
  "larder.schema.json": { title: "What grazewell larder --json prints", schema: larderOutput },
  "ahead.schema.json": { title: "What grazewell ahead --json prints", schema: aheadOutput },
  "animals.schema.json": { title: "What grazewell animals --json prints", schema: animalsOutput },
  "growths.schema.json": { title: "What grazewell what-is-this record --json prints", schema: growthsOutput },
  "key.schema.json": {
    title: "What grazewell what-is-this growth or animal --json prints",
    schema: keyOutput,
  },
  "almanac.schema.json": { title: "What grazewell almanac --json prints", schema: almanacOutput },
  "heads.schema.json": { title: "What grazewell heads --json prints", schema: headsOutput },
  "working.schema.json": { title: "What grazewell working --json prints", schema: workingOutput },
  "daybook.schema.json": { title: "What grazewell daybook --json prints", schema: daybookOutput },
  "trends.schema.json": { title: "What grazewell trends --json prints", schema: trendsOutput },
  "flows.schema.json": { title: "What grazewell trends --flows --json prints", schema: flowsOutput },
  "next.schema.json": { title: "What grazewell next --json prints", schema: nextOutput },
  "round.schema.json": { title: "What grazewell round --json prints", schema: roundOutput },
  "start-up.schema.json": { title: "What grazewell start-up --json prints", schema: startUpOutput },
  "arrivals.schema.json": { title: "What grazewell arrivals --json prints", schema: arrivalsOutput },
  "feeding.schema.json": { title: "What grazewell feeding --json prints", schema: feedingOutput },
  "holiday.schema.json": { title: "What grazewell feeding --from --to --json prints", schema: holidayOutput },
  "weeks.schema.json": { title: "What grazewell weeks --json prints", schema: weeksOutput },
  "wrong.schema.json": { title: "What grazewell wrong --json prints", schema: wrongOutput },
  "wrong-list.schema.json": { title: "What grazewell wrong NAME --json prints", schema: wrongListOutput },
  "sum.schema.json": { title: "What grazewell sum NAME --json prints", schema: sumOutput },
  "sums.schema.json": { title: "What grazewell sum --json prints", schema: sumsOutput },
  "check.schema.json": { title: "What grazewell check --json prints", schema: checkOutput },
  "tank-file.schema.json": { title: "Grazewell tank file, version 1", schema: tankFileSchema },
};

const FOLDER = join(import.meta.dirname, "../docs/schemas");

/** The text of one schema file. */
export function schemaText(title: string, schema: z.ZodType): string {
  const generator = "tools/schemas.ts writes this file";
  const { $schema, ...rest } = z.toJSONSchema(schema);
  return `${JSON.stringify({ $schema, title, $comment: generator, ...rest }, null, 2)}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(FOLDER, { recursive: true });
  for (const [file, { title, schema }] of Object.entries(SCHEMAS)) {
    writeFileSync(join(FOLDER, file), schemaText(title, schema));
    console.log(`docs/schemas/${file}`);
  }
}
