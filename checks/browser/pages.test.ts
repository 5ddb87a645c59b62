/**
 * Every page in every state, wide and narrow, by light, in the dark and on paper: answers as it should, has its bones,
 * says nothing that no page may say, scrolls in one direction, can be hit, and leaves axe nothing to say or to wonder at.
 * `GRAZEWELL_SHOTS=folder` also takes the pictures, to be looked at.
 */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, describe, expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { axeFaults } from "./kit/axe.ts";
import { type Watched, watched } from "./kit/browser.ts";
import { borderFaults } from "./kit/contrast.ts";
import { bonesFaults, cutFaults, drawingFaults, sidewaysFaults, targetFaults } from "./kit/geometry.ts";
import { openWhole } from "./kit/laid-out.ts";
import { wordsOf } from "./kit/page-text.ts";
import { paperFaults } from "./kit/paper.ts";
import { rememberShown, shownSince } from "./kit/shown.ts";
import { type State, statesOf } from "./kit/states.ts";
import { wordFaults } from "./kit/text-lint.ts";

const SHOTS = process.env["GRAZEWELL_SHOTS"];
const WIDE = { width: 1280, height: 800 };
const NARROW = { width: 360, height: 640 };
/** 1280 px at 400 %. */
const MAGNIFIED = { width: 320, height: 256 };
/**
 * axe's rules read roles, names and structure, which are one for a page whatever its width and colours; all of them are
 * run once, with everything unfolded. These read colours, and these sizes and places (their checks in axe-core look at
 * rectangles, overflow or painted colours, the others' do not), so they are run again where those are others. What is
 * shown wide alone, or folded alone, is found out and judged by all rules there.
 */
const COLOURS = ["color-contrast", "link-in-text-block"];
const PLACES = ["target-size", "scrollable-region-focusable", "label-content-name-mismatch", "skip-link"];
const ALL_RULES = null;

/** Faults under a heading, so that a failure says where. */
const under = (heading: string, faults: readonly string[]) => faults.map((fault) => `${heading}: ${fault}`);

async function shot(page: Page, state: State, form: string): Promise<void> {
  if (SHOTS !== undefined)
    await page.screenshot({ path: join(SHOTS, `${state.name}-${form}.png`), fullPage: true });
}

/** As it stands at one width, by light and in the dark. */
async function faultsAt(
  page: Page,
  state: State,
  width: string,
  rules: readonly string[] | null,
): Promise<string[]> {
  const faults = [
    ...under(width, await sidewaysFaults(page)),
    ...under(width, await targetFaults(page)),
    ...under(width, await cutFaults(page)),
    ...under(width, await drawingFaults(page)),
    ...under(width, await borderFaults(page)),
    ...under(`${width} axe`, await axeFaults(page, rules)),
  ];
  await shot(page, state, `${width}-light`);
  await page.emulateMedia({ colorScheme: "dark" });
  faults.push(...under(`${width} dark axe`, await axeFaults(page, COLOURS)));
  faults.push(...under(`${width} dark`, await borderFaults(page)));
  await shot(page, state, `${width}-dark`);
  await page.emulateMedia({ colorScheme: "light" });
  return faults;
}

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
      await page.setViewportSize(NARROW);
      await rememberShown(page);
      await page.setViewportSize(WIDE);
      const wide = (await shownSince(page)).more > 0 ? ALL_RULES : [...COLOURS, ...PLACES];
      faults.push(...(await faultsAt(page, state, "1280", wide)));
      await page.setViewportSize(NARROW);
      faults.push(...(await faultsAt(page, state, "360", [...COLOURS, ...PLACES])));
      await page.setViewportSize(MAGNIFIED);
      faults.push(...under("320", await sidewaysFaults(page)));
      faults.push(
        ...wordFaults(await wordsOf(page)).map(({ rule, sentence }) => `words, ${rule}: ${sentence}`),
      );
      // With everything unfolded as well.
      await page.setViewportSize(NARROW);
      faults.push(
        ...under("360 unfolded", await sidewaysFaults(page)),
        ...under("360 unfolded axe", await axeFaults(page, ALL_RULES)),
      );
      if ((await shownSince(page)).fewer > 0) {
        await openWhole(page, state.path);
        faults.push(...under("360 folded axe", await axeFaults(page, ALL_RULES)));
      }
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
