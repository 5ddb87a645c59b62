/**
 * What was typed is there on return, however the tab was lost; what was kept is in the daybook once, whatever was cut
 * (U6). 20 times each; GRAZEWELL_INTERRUPTIONS=200 for the full run of the second, tools/interruptions.ts for the first.
 */
import { expect, inject, test } from "vitest";
import { openStore } from "../../src/store/open.ts";
import { to } from "../../src/web/page.ts";
import { addressOf, newContext, watched } from "./kit/browser.ts";
import { makeCast } from "./kit/cast.ts";
import { interruptLogging, type Surface } from "./kit/interrupted-logging.ts";
import { interruptTyping } from "./kit/interruptions.ts";
import { startStoppable } from "./kit/stoppable.ts";

test("20 interruptions while typing, nothing lost", async () => {
  const { first, demo } = inject("cast");
  const { context, faults, close } = await watched({ viewport: { width: 360, height: 640 } });
  const forms = [
    to.singleForm(first),
    to.question(first, 4),
    to.question(first, 6),
    to.tank(demo, "readings"),
  ];
  const { tried, lost } = await interruptTyping(context, forms.map(addressOf), 20, 20_260_615);
  expect(tried).toBe(20);
  expect(lost).toEqual([]);
  expect(faults).toEqual([]);
  await close();
});

const TIMES = Number(process.env["GRAZEWELL_INTERRUPTIONS"] ?? 20);
/** A cut of the server costs its start. */
const SECONDS_EACH = 15;

/** A form with a note of its own, and the wet hand with a figure of its own. */
function surfacesOf(tank: string): readonly Surface[] {
  const form = (path: string, more: Surface["type"] = async () => {}): Surface => ({
    name: path,
    path,
    field: "#note",
    markOf: (i, chance) => `note ${i} of ${Math.floor(chance() * 1e6)}`,
    type: async (page, mark) => {
      await more(page, mark);
      await page.locator("#note").fill("");
      await page.locator("#note").pressSequentially(mark);
    },
    keep: (page) => page.locator("main form button.first").first().click(),
  });
  const wet = "[data-wet-panel=reading-calcium_mg_per_l]";
  return [
    form(to.newEntry(tank, "treatment"), async (page) => {
      await page.locator("#substance").fill("invented salt");
      await page.locator("input[name=step][value=started]").check();
    }),
    form(`${to.newEntry(tank, "growth")}?growth=film_rock`, async (page) => {
      await page.locator("input[name=score][value='2']").check();
    }),
    form(to.readingsOf(tank, "ph"), async (page) => {
      await page.locator("#text").fill("8.1");
    }),
    {
      name: "wet hand",
      path: `${to.wetHand(tank)}#reading-calcium_mg_per_l`,
      field: `${wet} input[name=text]`,
      markOf: (i, chance) => `${300 + i}.${1000 + Math.floor(chance() * 8999)}`,
      type: async (page, mark) => {
        await page.locator(`${wet} input[name=text]`).fill("");
        for (const key of mark) await page.locator(`${wet} [data-wet-key="${key}"]`).click();
      },
      keep: (page) => page.locator(`${wet} .wet-keep`).click(),
    },
  ];
}

test(
  `${TIMES} interruptions while logging: nothing lost, nothing twice`,
  async () => {
    const program = await startStoppable(makeCast);
    const context = await newContext({ viewport: { width: 360, height: 640 } });
    try {
      const { danger } = program.prepared;
      const surfaces = surfacesOf(danger);
      const { logged, lostWhileTyping } = await interruptLogging(
        context,
        program,
        surfaces,
        TIMES,
        20_261_127,
      );
      expect(logged).toHaveLength(TIMES);
      expect(lostWhileTyping).toEqual([]);
      await program.stop();
      const store = await openStore(program.place);
      const kept = await store.entries(danger, { limit: 5000 }).finally(() => store.close());
      const texts = kept.map(({ body }) => JSON.stringify([body["note"] ?? null, body["text"] ?? null]));
      const wrong = logged.flatMap((one) => {
        const times = texts.filter((text) => text.includes(one.mark)).length;
        return times === 1 ? [] : [{ ...one, times }];
      });
      const cuts = logged.map(({ cut, moment }) => `${cut} while ${moment}`);
      const counts = [...new Set(cuts)].map(
        (name) => `${name}: ${cuts.filter((one) => one === name).length}`,
      );
      console.log(counts.join("; "));
      console.log(
        `${logged.filter(({ foundInForm }) => foundInForm).length} found in the form and kept then`,
      );
      expect(wrong).toEqual([]);
    } finally {
      await context.close();
      await program.end();
    }
  },
  300_000 + TIMES * SECONDS_EACH * 1000,
);
