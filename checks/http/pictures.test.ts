/**
 * Pictures over HTTP, by form and by API: kept without what they tell of place and camera, served as what they are and
 * nothing else, bounded, gone with their entry and back with it, named in a file that is taken out.
 */
import { beforeEach, describe, expect, test } from "vitest";
import { EXAMPLE } from "../../src/contract/http/examples.ts";
import { MOST_PICTURE_BYTES, MOST_PICTURES } from "../../src/contract/picture/limits.ts";
import { to } from "../../src/web/page.ts";
import { JPEG, jpegOfPhone, PNG, TELLTALES, WEBP } from "../kit/pictures.ts";
import { appUnderTest, ask, HOST, quickAnswers, type Under } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";

const { tank, loss, entry: growth } = EXAMPLE;
const API = `/api/v1/tanks/${tank}/entries/${loss}/pictures`;

let under: Under;
beforeEach(async () => {
  under = await appUnderTest(quickAnswers);
  await fillWithExamples(under.store);
});

interface Form {
  readonly image?: Uint8Array;
  readonly name?: string;
  readonly shows?: string;
}

/** As a browser without script sends it. */
async function send(path: string, { image, name = "IMG_1.jpg", shows = "" }: Form) {
  const line = "----picture";
  const file = image === undefined ? ["", Buffer.alloc(0)] : [name, Buffer.from(image)];
  const payload = Buffer.concat([
    Buffer.from(
      `--${line}\r\nContent-Disposition: form-data; name="picture"; filename="${file[0]}"\r\nContent-Type: text/html\r\n\r\n`,
    ),
    file[1] as Buffer,
    Buffer.from(
      `\r\n--${line}\r\nContent-Disposition: form-data; name="shows"\r\n\r\n${shows}\r\n--${line}--\r\n`,
    ),
  ]);
  const headers = { host: HOST, "content-type": `multipart/form-data; boundary=${line}` };
  return await under.app.inject({ method: "POST", url: path, headers, payload });
}
const add = (form: Form, entry: string = loss) => send(to.pictures(tank, entry), form);
const get = (path: string, headers = {}) => ask(under.app, "GET", path, { headers });
const post = (path: string, go: string) =>
  ask(under.app, "POST", path, {
    body: `go=${go}&version=1`,
    headers: { "content-type": "application/x-www-form-urlencoded" },
  });
const standing = async () =>
  (await under.store.pictures([loss])).filter(
    ({ takenAway, id }) => takenAway === null && id !== EXAMPLE.picture,
  );

describe("a picture sent by its form", () => {
  test("is kept stripped, told as kept, and served as what it is and nothing else", async () => {
    const sent = await add({ image: jpegOfPhone(JPEG, 6), shows: "  Both in the\topen bag " });
    expect([sent.statusCode, sent.headers.location]).toEqual([
      303,
      `${to.entry(tank, loss)}?picture=added#pictures`,
    ]);
    const [row] = await standing();
    expect(row).toMatchObject({
      type: "image/jpeg",
      widthPx: 16,
      heightPx: 24,
      shows: "Both in the open bag",
    });
    const page = await get(`${to.entry(tank, loss)}?picture=added`);
    expect(page.body).toContain("The picture is kept");
    expect(page.body).toContain('alt="Both in the open bag"');
    const served = await get(to.picture(tank, row?.id ?? ""));
    expect(served.statusCode).toBe(200);
    for (const word of TELLTALES) expect(served.rawPayload.includes(Buffer.from(word, "latin1"))).toBe(false);
    expect(served.headers).toMatchObject({
      "content-type": "image/jpeg",
      "x-content-type-options": "nosniff",
      "cache-control": "private, max-age=31536000, immutable",
      "content-security-policy": "default-src 'none'; sandbox; frame-ancestors 'none'",
      "cross-origin-resource-policy": "same-origin",
    });
    expect(served.headers["content-disposition"]).toMatch(/^inline; filename="picture-\w+\.jpg"$/);
    const again = await get(to.picture(tank, row?.id ?? ""), { "if-none-match": served.headers.etag });
    expect([again.statusCode, again.rawPayload.length]).toEqual([304, 0]);
  });

  test("sent twice it is one", async () => {
    await add({ image: WEBP });
    const second = await add({ image: WEBP });
    expect(second.headers.location).toContain("picture=again");
    expect(await standing()).toHaveLength(1);
  });

  test("none, another kind of file and too many words are told beside their fields, and nothing is kept", async () => {
    const none = await add({ shows: "typed already" });
    expect(none.statusCode).toBe(422);
    expect(none.body).toMatch(/<title>Error: /);
    expect(none.body).toContain("Picture: none was chosen. Take or choose one");
    expect(none.body).toContain('value="typed already"');
    const svg = await add({ image: Buffer.from("<svg onload=planted()>"), name: "<img src=x>.jpg" });
    expect(svg.body).toContain("Picture &quot;&lt;img src=x>.jpg&quot;: is text");
    const wordy = await add({ image: PNG, shows: "x".repeat(201) });
    expect(wordy.body).toContain("has 201 letters, up to 200 are taken");
    expect(await standing()).toEqual([]);
  });

  test("of 10 MiB is taken, one byte more is told, and a body beyond all bounds is refused", async () => {
    const long = (bytes: number) => Buffer.concat([JPEG, Buffer.alloc(bytes - JPEG.length)]);
    expect((await add({ image: long(MOST_PICTURE_BYTES) })).statusCode).toBe(303);
    const over = await add({ image: long(MOST_PICTURE_BYTES + 1) });
    expect(over.statusCode).toBe(422);
    expect(over.body).toContain("up to 10 MiB are taken");
    expect((await add({ image: long(25 * 1024 * 1024) })).statusCode).toBe(413);
  });

  test("beyond as many as an entry holds is refused; one taken away makes room", async () => {
    // One stands already.
    for (let n = 1; n < MOST_PICTURES; n += 1)
      expect((await add({ image: different(n) })).statusCode).toBe(303);
    const full = await add({ image: different(9) });
    expect(full.statusCode).toBe(422);
    expect(full.body).toContain(`this entry has ${MOST_PICTURES}, up to ${MOST_PICTURES} are taken`);
    await post(`${to.pictures(tank, loss)}/${EXAMPLE.picture}`, "take_away");
    expect((await add({ image: different(9) })).statusCode).toBe(303);
    const back = await post(`${to.pictures(tank, loss)}/${EXAMPLE.picture}`, "bring_back");
    expect(back.statusCode).toBe(422);
  });

  test("to an entry of another kind, of another tank, or of none is not found", async () => {
    for (const entry of [growth, "none"]) expect((await add({ image: PNG }, entry)).statusCode).toBe(404);
    const path = to.pictures(EXAMPLE.goneTank, loss);
    expect((await send(path, { image: PNG })).statusCode).toBe(404);
  });
});

/** Another picture, of the same size. */
function different(n: number): Buffer {
  const bytes = Buffer.from(PNG);
  bytes[PNG.indexOf("IDAT") + 8] = n;
  return bytes;
}

describe("a picture that is kept", () => {
  const address = to.picture(tank, EXAMPLE.picture);

  test("goes with its entry, and comes back with it", async () => {
    expect((await get(address)).statusCode).toBe(200);
    const row = await under.store.entry(loss);
    if (row === null) throw new Error("no loss");
    const stamp = { at: "2026-06-15T12:00:00.000Z", by: "checks" };
    await under.store.correctEntry(loss, 1, { on: row.on, body: row.body, kept: false }, stamp);
    expect((await get(address)).statusCode).toBe(404);
    expect((await add({ image: WEBP })).statusCode).toBe(422);
    const page = await get(to.entry(tank, loss));
    expect(page.body).toContain("2 pictures went away with this entry, and will come back with it.");
    expect(page.body).not.toContain("<img");
    expect((await get(to.forSeller(tank, loss))).statusCode).toBe(404);
    await under.store.correctEntry(loss, 2, { on: row.on, body: row.body, kept: true }, stamp);
    expect((await get(address)).statusCode).toBe(200);
  });

  test("is not served where it was taken away, by another tank's address, or by one that is none", async () => {
    const paths = [
      to.picture(tank, EXAMPLE.gonePicture),
      to.picture(EXAMPLE.goneTank, EXAMPLE.picture),
      to.picture("none", EXAMPLE.picture),
      to.picture(tank, "none"),
    ];
    for (const path of paths) expect((await get(path)).statusCode, path).toBe(404);
  });

  test("stands on the page for the seller with the entry's hour, count and kind", async () => {
    const page = await get(to.forSeller(tank, loss));
    expect(page.statusCode).toBe(200);
    for (const words of ["trochus snail", "10 Jun 2026, 07:30", "dead", "SHA-256", address])
      expect(page.body).toContain(words);
    expect(page.body).not.toContain(EXAMPLE.gonePicture);
    expect((await get(to.forSeller(tank, growth))).statusCode).toBe(404);
  });

  test("is counted in the daybook's list, and named in a file that is taken out, which comes in again", async () => {
    expect((await get(to.tank(tank, "daybook"))).body).toContain('#pictures">1 picture<');
    const file = (await get(`${to.takeOut(tank)}/file?format=json`)).body;
    const read = JSON.parse(file);
    expect(read.pictures).toContain("a backup of the store holds them");
    const one = read.entries.find(({ entry }: { entry: string }) => entry === loss);
    const [row] = await under.store.pictures([loss]);
    expect(one.pictures).toEqual([
      { sha256: row?.sha256, type: "image/png", size_bytes: row?.sizeBytes, shows: "" },
    ]);
    const preview = await ask(under.app, "POST", `/api/v1/tanks/${tank}/bring-in/preview`, {
      body: { text: file },
    });
    expect(preview.json()).toMatchObject({ new: 0, faulty: 0 });
    expect(preview.json().said.join()).toContain("names 1 picture and holds none");
  });
});

describe("over the API", () => {
  const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString("base64");

  test("a picture of several MiB is added, and read back at its address", async () => {
    const image = Buffer.concat([jpegOfPhone(JPEG), Buffer.alloc(6 * 1024 * 1024)]);
    const answer = await ask(under.app, "POST", API, { body: { image_base64: base64(image) } });
    expect(answer.statusCode).toBe(201);
    const served = await get(answer.json().address);
    expect(served.rawPayload.length).toBe(answer.json().size_bytes);
    expect(served.rawPayload.length).toBeLessThan(1_000);
  });

  test("what is no Base64, and what can't be kept, is told with its place", async () => {
    for (const [text, words] of [
      ["data:image/png;base64,AAAA", /without spaces or a data: address/],
      [base64(PNG.subarray(0, 60)), /cut short/],
      ["", /is empty/],
    ] as const) {
      const answer = await ask(under.app, "POST", API, { body: { image_base64: text } });
      expect(answer.statusCode).toBe(422);
      expect(answer.json().errors[0]).toMatchObject({
        pointer: "/image_base64",
        detail: expect.stringMatching(words),
      });
    }
  });

  test("taken away it is listed as such and served no more", async () => {
    await ask(under.app, "DELETE", `${API}/${EXAMPLE.picture}`);
    const { pictures } = (await get(API)).json();
    expect(pictures.map(({ kept }: { kept: boolean }) => kept)).toEqual([false, false]);
    expect((await get(to.picture(tank, EXAMPLE.picture))).statusCode).toBe(404);
  });
});
