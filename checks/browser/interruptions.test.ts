/** What was typed is there on return, however the tab was lost (U6). 200 times by hand: tools/interruptions.ts. */
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { addressOf, watched } from "./kit/browser.ts";
import { interruptTyping } from "./kit/interruptions.ts";

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
