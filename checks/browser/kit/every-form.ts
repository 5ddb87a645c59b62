/**
 * An open page in all the forms that people meet it in: wide and narrow, by light and in the dark, folded and unfolded,
 * magnified. What depends on a form is looked at in that form, everything else once.
 */
import type { Page } from "playwright-core";
import { axeFaults } from "./axe.ts";
import { borderFaults } from "./contrast.ts";
import { cutFaults, drawingFaults, sidewaysFaults, targetFaults } from "./geometry.ts";
import { wordsOf } from "./page-text.ts";
import { rememberShown, shownSince } from "./shown.ts";
import { wordFaults } from "./text-lint.ts";

export const WIDE = { width: 1280, height: 800 };
const NARROW = { width: 360, height: 640 };
/** 1280 px at 400 %. */
const MAGNIFIED = { width: 320, height: 256 };
/**
 * axe's rules read roles, names and structure, which are one for a page whatever its width and colours; all of them are
 * run once, narrow, with everything unfolded. These read colours, so they are run again in the dark; no style sheet gives
 * a wide page colours of its own (src/web/style/style.test.ts). Those read sizes and places (their checks in axe-core look
 * at rectangles and overflow, the others' do not), so they are run again wide and folded. What is shown wide alone, or
 * folded alone, is found out and judged by all rules there, light and dark.
 */
const COLOURS = ["color-contrast", "link-in-text-block"];
const PLACES = ["target-size", "scrollable-region-focusable", "label-content-name-mismatch", "skip-link"];

export interface FormsAsked {
  /** As it was first, folded. */
  readonly reopen: () => Promise<unknown>;
  /** Shapes of what is shown wide alone that were judged: the head of the page is the same on all of them. */
  readonly judged: Set<string>;
  readonly picture: (form: string) => Promise<void>;
}

/** Everything wrong with it, in lines that begin with the form. It is left narrow. */
export async function faultsInEveryForm(page: Page, asked: FormsAsked): Promise<string[]> {
  const faults: string[] = [];
  await page.setViewportSize(NARROW);
  await rememberShown(page);
  await page.setViewportSize(WIDE);
  const unjudged = (await shownSince(page)).shapes.filter((shape) => !asked.judged.has(shape));
  for (const shape of unjudged) asked.judged.add(shape);
  if (unjudged.length > 0) faults.push(...(await byAllRules(page, "1280")));
  faults.push(...(await faultsAt(page, "1280", asked)));
  await page.setViewportSize(NARROW);
  faults.push(...(await faultsAt(page, "360", asked)));
  await page.setViewportSize(MAGNIFIED);
  faults.push(...under("320", await sidewaysFaults(page)));
  const words = await wordsOf(page);
  faults.push(...wordFaults(words).map(({ rule, sentence }) => `words, ${rule}: ${sentence}`));
  // Reading the words has unfolded it.
  await page.setViewportSize(NARROW);
  faults.push(...under("360 unfolded", await sidewaysFaults(page)));
  faults.push(...(await byAllRules(page, "360 unfolded")));
  if ((await shownSince(page)).fewer > 0) {
    await asked.reopen();
    faults.push(...(await byAllRules(page, "360 folded")));
  }
  return faults;
}

/** Faults under a heading, so that a failure says where. */
const under = (heading: string, faults: readonly string[]) => faults.map((fault) => `${heading}: ${fault}`);

/** All rules of axe, and in the dark those that read colours. */
async function byAllRules(page: Page, form: string): Promise<string[]> {
  const light = await axeFaults(page);
  const dark = await inTheDark(page, () => axeFaults(page, COLOURS));
  return [...under(`${form} axe`, light), ...under(`${form} dark axe`, dark)];
}

/** Sizes and places at one width, and borders by light and in the dark. */
async function faultsAt(page: Page, width: string, { picture }: FormsAsked): Promise<string[]> {
  const faults = [
    ...under(width, await sidewaysFaults(page)),
    ...under(width, await targetFaults(page)),
    ...under(width, await cutFaults(page)),
    ...under(width, await drawingFaults(page)),
    ...under(width, await borderFaults(page)),
    ...under(`${width} axe`, await axeFaults(page, PLACES)),
  ];
  await picture(`${width}-light`);
  const dark = await inTheDark(page, async () => {
    const found = await borderFaults(page);
    await picture(`${width}-dark`);
    return found;
  });
  return [...faults, ...under(`${width} dark`, dark)];
}

async function inTheDark<T>(page: Page, look: () => Promise<T>): Promise<T> {
  await page.emulateMedia({ colorScheme: "dark" });
  const found = await look();
  await page.emulateMedia({ colorScheme: "light" });
  return found;
}
