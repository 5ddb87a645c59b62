/**
 * A picture of what died, as a keeper adds it: with a phone's large one and with the network cut, and without script. What
 * is shown is the picture the right way up, and nothing of where and with what it was taken is served.
 */
import { expect, inject, test } from "vitest";
import { to } from "../../src/web/page.ts";
import { jpegOfPhone, TELLTALES, WEBP } from "../kit/pictures.ts";
import { addressOf, open, watched } from "./kit/browser.ts";

const cast = inject("cast");
const entry = to.entry(cast.counted, cast.pictured);

async function served(address: string): Promise<Buffer> {
  const bytes = Buffer.from(await (await fetch(addressOf(address))).arrayBuffer());
  for (const word of TELLTALES) expect(bytes.includes(Buffer.from(word, "latin1")), word).toBe(false);
  return bytes;
}

test("without script a picture is chosen, kept and seen", async () => {
  const { page, faults, close } = await watched({
    javaScriptEnabled: false,
    viewport: { width: 360, height: 640 },
  });
  await page.goto(addressOf(entry));
  const sizes = await page
    .locator("#picture, .picture-form button.first")
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
  for (const height of sizes) expect(height).toBeGreaterThanOrEqual(48);
  await page.locator("#picture").setInputFiles({ name: "IMG_1.webp", mimeType: "image/webp", buffer: WEBP });
  await page.locator("#shows").fill("Three empty shells");
  await page.getByRole("button", { name: "Keep the picture" }).click();
  expect(page.url()).toMatch(/\?picture=(added|again)#pictures$/);
  const picture = page.getByRole("img", { name: "Three empty shells" });
  expect(await served((await picture.getAttribute("src")) ?? "")).toEqual(WEBP);
  expect(faults).toEqual([]);
  await close();
});

test("a phone's large picture is drawn smaller and upright; with the network cut it is said that it waits, and it does", async () => {
  const { page, context, close } = await watched({ viewport: { width: 360, height: 640 } });
  await open(page, entry);
  const drawn = await page.evaluate(async () => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [2_400, 1_200];
    canvas.getContext("2d")?.fillRect(300, 300, 900, 300);
    return canvas.toDataURL("image/jpeg").split(",")[1] ?? "";
  });
  const buffer = jpegOfPhone(Buffer.from(drawn, "base64"), 6);
  await page.locator("#picture").setInputFiles({ name: "IMG_2.jpg", mimeType: "image/jpeg", buffer });
  await page.locator("#shows").fill("A shell on its side");
  await context.setOffline(true);
  const keep = page.getByRole("button", { name: "Keep the picture" });
  await keep.click();
  await page.getByText("Not kept yet: Grazewell can't be reached. The entry itself is kept.").waitFor();
  expect(await page.locator("#picture").evaluate((one) => (one as HTMLInputElement).files?.length)).toBe(1);
  await context.setOffline(false);
  await keep.click();
  await page.waitForURL(/picture=(added|again)/);
  const picture = page.getByRole("img", { name: "A shell on its side" });
  await picture.waitFor();
  expect([await picture.getAttribute("width"), await picture.getAttribute("height")]).toEqual([
    "1000",
    "2000",
  ]);
  const bytes = await served((await picture.getAttribute("src")) ?? "");
  expect(bytes.length).toBeLessThan(buffer.length);
  await close();
});
