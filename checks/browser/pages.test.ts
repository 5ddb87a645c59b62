/**
 * Every page in every state, wide and narrow, by light, in the dark and on paper: answers as it should, has its bones,
 * says nothing that no page may say, scrolls in one direction, can be hit, and leaves axe nothing to say or to wonder at.
 * `GRAZEWELL_SHOTS=folder` also takes the pictures, to be looked at.
 */
import { join } from "node:path";
import { afterAll, describe, expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { type Watched, watched } from "./kit/browser.ts";
import { faultsInEveryForm, WIDE } from "./kit/every-form.ts";
import { bonesFaults } from "./kit/geometry.ts";
import { openWhole } from "./kit/laid-out.ts";
import { paperFaults } from "./kit/paper.ts";
import { statesOf } from "./kit/states.ts";

const SHOTS = process.env["GRAZEWELL_SHOTS"];
const judged = new Set<string>();

/**
 * Tabs that stand free. One that has shown a page shows the next one too: the browser has its process, our service worker
 * and axe compiled by then, which together cost a quarter of the work. One that found a fault is closed.
 */
const free: Watched[] = [];
afterAll(async () => {
  // What a tab told after its last page was judged.
  expect(free.flatMap(({ faults }) => faults)).toEqual([]);
  await Promise.all(free.map(({ close }) => close()));
});

/** Wide. A panel of a page has a tab of its own: from another one of that page it would be gone to, not opened. */
async function freeTab(path: string): Promise<Watched> {
  const used = path.includes("#") ? undefined : free.pop();
  if (used === undefined) return await watched({ viewport: WIDE });
  await used.page.setViewportSize(WIDE);
  return used;
}

describe.concurrent("every page and state", () => {
  test.for(statesOf(inject("cast")))("$name", async (state, { expect }) => {
    const tab = await freeTab(state.path);
    const { page, faults } = tab;
    try {
      expect(await openWhole(page, state.path)).toBe(state.status);
      faults.push(...(await bonesFaults(page)), ...(await paperFaults(page)));
      const reopen = () => openWhole(page, state.path);
      const picture = async (form: string): Promise<void> => {
        if (SHOTS === undefined) return;
        await page.screenshot({ path: join(SHOTS, `${state.name}-${form}.png`), fullPage: true });
      };
      faults.push(...(await faultsInEveryForm(page, { reopen, judged, picture })));
      expect(faults).toEqual([]);
      free.push(tab);
    } catch (error) {
      await tab.close();
      throw error;
    }
  });
});

/** Data, calendar files, and parts that stand in other pages: workings.test.ts, what-if.test.ts and calendar/ open them. */
const NO_PAGE = /\/(charts|parts|what-if|pictures)(\/.|$)|\.ics$/;

test("the table of states has every page that there is an address of", () => {
  const paths = statesOf(inject("cast")).map(({ path }) => path);
  const addresses: readonly ((...words: never[]) => string)[] = Object.values(to);
  const missing = addresses
    .map((address) => address(...([ANY, ANY, ANY] as never[])).split("?")[0]!)
    .filter((path) => !NO_PAGE.test(path))
    .filter((path) => {
      const shape = new RegExp(`^${path.replaceAll(ANY, "[^/]+")}$`);
      return !paths.some((one) => shape.test(one.split("?")[0]!));
    });
  expect(missing).toEqual([]);
});

/** Stands for any word of an address. */
const ANY = "any";
