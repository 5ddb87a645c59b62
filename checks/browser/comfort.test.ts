/**
 * What readers set for themselves: text at 200 %, spacing of WCAG 1.4.12, no motion, forced colours. A page of each
 * kind; 400 % is in pages.test.ts, as 320 px.
 */
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { axeFaults } from "./kit/axe.ts";
import { type Watched, watched } from "./kit/browser.ts";
import { doubledText, motions, smallestText, spaceText } from "./kit/comfort.ts";
import { cutFaults, sidewaysFaults } from "./kit/geometry.ts";
import { openWhole } from "./kit/laid-out.ts";
import { statesOf } from "./kit/states.ts";

const KINDS =
  /^(start|new|guide-entry|wrong|sources|demo-(bench|larder|waves|ahead|animals|readings|what-if|errands|sheet|question-3|form|working|reading|history|units))$/;
const STATES = statesOf(inject("cast")).filter(({ name }) => KINDS.test(name));

let seen: Watched;
beforeAll(async () => {
  seen = await watched();
});
afterAll(() => seen.close());

describe.each(STATES)("$name", ({ path }) => {
  test("text at 200 % grows, is not cut and needs no sideways scroll; nor does wide spacing", async () => {
    await openWhole(seen.page, path);
    const before = await smallestText(seen.page);
    const asBefore = await doubledText(seen.page);
    try {
      await openWhole(seen.page, path);
      const after = await smallestText(seen.page);
      expect(after.px, `"${after.words}"`).toBeGreaterThanOrEqual(2 * before.px - 0.5);
      expect([...(await sidewaysFaults(seen.page)), ...(await cutFaults(seen.page))]).toEqual([]);
    } finally {
      await asBefore();
    }
    await openWhole(seen.page, path);
    await seen.page.setViewportSize({ width: 360, height: 640 });
    await spaceText(seen.page);
    expect([...(await sidewaysFaults(seen.page)), ...(await cutFaults(seen.page))]).toEqual([]);
    await seen.page.setViewportSize({ width: 1280, height: 800 });
  });

  test("nothing moves for those who asked for that; forced colours leave enough contrast", async () => {
    await seen.page.emulateMedia({ reducedMotion: "reduce", forcedColors: "active" });
    await openWhole(seen.page, path);
    expect(await motions(seen.page)).toEqual([]);
    expect(await axeFaults(seen.page, ["color-contrast"])).toEqual([]);
    await seen.page.emulateMedia({ reducedMotion: null, forcedColors: null });
  });
});
