/**
 * Types into the forms of the built program and takes the tab away while typing, 200 times or as often as the argument
 * says; prints what was lost and exits 1 where anything was. The check does it 20 times (checks/browser).
 */
import { chromium } from "playwright-core";
import { makeCast } from "../checks/browser/kit/cast.ts";
import { EXECUTABLE } from "../checks/browser/kit/executable.ts";
import { interruptTyping } from "../checks/browser/kit/interruptions.ts";
import { startProgram } from "../checks/browser/kit/program.ts";
import { to } from "../src/web/page.ts";

const times = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 1);

const program = await startProgram(makeCast);
const browser = await chromium.launch({
  executablePath: EXECUTABLE,
  args: ["--no-sandbox", "--disable-dev-shm-usage"],
});
const { first, demo } = program.prepared;
const forms = [
  to.newTank(),
  to.singleForm(first),
  to.question(first, 4),
  to.question(first, 6),
  to.tank(demo, "readings"),
];
const context = await browser.newContext({ viewport: { width: 360, height: 640 } });
const began = performance.now();
const { tried, lost } = await interruptTyping(
  context,
  forms.map((form) => program.address + form),
  times,
  seed,
);
for (const loss of lost) console.log(JSON.stringify(loss));
console.log(
  `seed ${seed}: ${tried} interruptions, ${lost.length} lost, ${Math.round((performance.now() - began) / 1000)} s`,
);
await browser.close();
await program.stop();
process.exitCode = lost.length === 0 ? 0 : 1;
