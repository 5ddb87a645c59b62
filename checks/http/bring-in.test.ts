/** Files at the page's door, sent as a browser sends them, without script: sections K and M of the catalogue of inputs. */
import { connect } from "node:net";
import type { FastifyInstance } from "fastify";
import { describe, expect, test } from "vitest";
import { EXAMPLE } from "../../src/contract/http/examples.ts";
import type { Store } from "../../src/store/store.ts";
import { appUnderTest, HOST } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";

const TANK = `/tanks/${EXAMPLE.tank}`;
const BRING_IN = `${TANK}/bring-in`;
const BOUNDARY = "----checks";

async function kitchen() {
  const under = await appUnderTest({ of: () => new Promise(() => {}), ready: () => null });
  await fillWithExamples(under.store);
  return under;
}

const multipart = (name: string, bytes: Buffer | string): Buffer =>
  Buffer.concat([
    Buffer.from(`--${BOUNDARY}\r\nContent-Disposition: form-data; name="pasted"\r\n\r\n\r\n`),
    Buffer.from(
      `--${BOUNDARY}\r\nContent-Disposition: form-data; name="file"; filename="${name}"\r\nContent-Type: text/csv\r\n\r\n`,
    ),
    Buffer.from(bytes),
    Buffer.from(`\r\n--${BOUNDARY}--\r\n`),
  ]);

const send = (app: FastifyInstance, bytes: Buffer | string, name = "sheet.csv") =>
  app.inject({
    method: "POST",
    url: BRING_IN,
    headers: { host: HOST, "content-type": `multipart/form-data; boundary=${BOUNDARY}` },
    payload: multipart(name, bytes),
  });
const get = (app: FastifyInstance, url: string) =>
  app.inject({ method: "GET", url, headers: { host: HOST } });
const post = (app: FastifyInstance, url: string, form: Readonly<Record<string, string>>) =>
  app.inject({
    method: "POST",
    url,
    headers: { host: HOST, "content-type": "application/x-www-form-urlencoded" },
    payload: new URLSearchParams(form).toString(),
  });

/** Sent and looked at: the preview's address and its words. */
async function looked(app: FastifyInstance, bytes: Buffer | string) {
  const sent = await send(app, bytes);
  expect(sent.statusCode).toBe(303);
  const address = String(sent.headers.location);
  return { address, html: (await get(app, address)).body };
}
const added = async (app: FastifyInstance, bytes: string, form: Readonly<Record<string, string>> = {}) => {
  const { address } = await looked(app, bytes);
  const done = await post(app, address, { ...form, go: "add" });
  expect(done.statusCode).toBe(303);
  return { address, to: String(done.headers.location) };
};
const nitrates = async (store: Store, withRemoved = false) => {
  const rows = await store.entries(EXAMPLE.tank, { kind: "reading", limit: 1000, withRemoved });
  return rows.map(({ on, body }) => `${on} ${String(body["text"])}`).sort();
};
/** Beside the one of the examples. */
const actsMade = async (store: Store) =>
  (await store.acts(EXAMPLE.tank, "bring_in", 9)).filter(({ id }) => id !== EXAMPLE.act);
const HERE = "2026-06-10 10 mg/L as NO3";

describe("a file is looked at before anything is added", () => {
  test("what is new, added as one act, undone as one", async () => {
    const { app, store } = await kitchen();
    const file = "date,nitrate\n2026-06-01,12\n2026-06-02,13\n2026-06-10,10";
    const { address, html } = await looked(app, file);
    expect(html).toContain("3 rows: 2 new entries, 1 already here. Nothing was added yet.");
    expect(await nitrates(store)).toEqual([HERE]);
    const done = await post(app, address, { go: "add" });
    expect(await nitrates(store)).toEqual(["2026-06-01 12 mg/L as NO3", "2026-06-02 13 mg/L as NO3", HERE]);
    // A double tap: the same end, and no more rows.
    expect((await post(app, address, { go: "add" })).headers.location).toBe(done.headers.location);
    expect(await nitrates(store)).toHaveLength(3);
    const [act] = await store.acts(EXAMPLE.tank, "bring_in", 9);
    expect((await get(app, String(done.headers.location))).body).toContain(
      "2 entries added. 1 were here already.",
    );
    const undone = await post(app, `${BRING_IN}/acts/${act?.id}`, {});
    expect(undone.headers.location).toContain("undone=");
    expect(await nitrates(store)).toEqual([HERE]);
  });

  test("I-129, I-144, I-147: what can't be taken is told on the page, and nothing is held", async () => {
    const { app, store } = await kitchen();
    const says = async (bytes: Buffer | string, words: string) => {
      const sent = await send(app, bytes);
      expect(sent.statusCode).toBe(422);
      expect(sent.body).toContain(words);
    };
    await says("", "The file is empty");
    await says(
      Buffer.alloc(10 * 1024 * 1024 + 10_000_001, "1"),
      "Files up to 10 MiB; this one has 19.5 MiB. Split it by year",
    );
    await says(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]), "This is a picture, not a table");
    await says('date,nitrate\n2026-06-01,"10', "Line 2: a quote opens and never closes");
    expect((await send(app, Buffer.alloc(25 * 1024 * 1024, "1"))).statusCode).toBe(413);
    expect(await actsMade(store)).toEqual([]);
  });

  test("I-130: a header alone; I-135: the same file twice", async () => {
    const { app, store } = await kitchen();
    expect((await looked(app, "date,nitrate")).html).toContain("The file holds no rows: nothing to add.");
    const { html } = await looked(app, "date,nitrate\n2026-06-10,10");
    expect(html).toContain("1 row: 0 new entries, 1 already here.");
    expect(html).not.toContain('value="add"');
    const { to } = await added(app, "date,nitrate\n2026-06-10,10");
    expect((await get(app, to)).body).toContain("Nothing to add");
    expect(await nitrates(store)).toEqual([HERE]);
  });

  test("I-107, I-134, I-142: questions for the whole file, each answered by a field of the form", async () => {
    const { app, store } = await kitchen();
    const bytes = Buffer.concat([
      Buffer.from("date,NO3 (mg/l),note\n03/04/2026,10,"),
      Buffer.from([0x5a, 0x6f, 0xeb]),
    ]);
    const { address, html } = await looked(app, bytes);
    expect(html).toContain("Shown as &#39;Zoë&#39;. Right?".replaceAll("&#39;", "'"));
    const encoding = { encoding: "windows-1252" };
    const asked = (await post(app, address, encoding)).body;
    expect(asked).toContain("3 April 2026 or 4 March 2026? One answer for the whole file");
    expect(asked).toContain("map it to Nitrate, mg/L as NO3?");
    // What was said before goes along with the form.
    expect(asked).toContain('type="hidden" name="encoding" value="windows-1252"');
    const answers = { ...encoding, dates: "dmy", "column.2": "reading:no3_mg_per_l:mg/L as NO3" };
    expect((await post(app, address, answers)).body).toContain("1 row: 1 new entry.");
    await post(app, address, { ...answers, go: "add" });
    expect(await nitrates(store)).toContain("2026-04-03 10 mg/L as NO3");
    // The column's name is remembered.
    expect((await looked(app, "date,NO3 (mg/l)\n2026-06-04,11")).html).toContain("1 row: 1 new entry.");
  });

  test("I-137: at odds with the daybook: mine, the file's, both; undecided stays as it is", async () => {
    const file = "date,nitrate\n2026-06-10,15\n2026-06-01,12";
    const other = "2026-06-10 15 mg/L as NO3";
    const first = "2026-06-01 12 mg/L as NO3";
    const ends = { "": [first, HERE], mine: [first, HERE], file: [first, other], both: [first, HERE, other] };
    for (const [clash, rows] of Object.entries(ends)) {
      const { app, store } = await kitchen();
      const { html } = await looked(app, file);
      expect(html).toContain("1 new entry, 1 at odds with the daybook");
      await added(app, file, clash === "" ? {} : { clash });
      expect(await nitrates(store)).toEqual(rows);
    }
  });

  test("at odds in what no sentence tells, such as the kit's step: the field stands behind both", async () => {
    const { app } = await kitchen();
    const taken = (await get(app, `${TANK}/take-out/file?format=csv`)).body;
    const file = taken.replace("10 mg/L as NO3,,", "10 mg/L as NO3,5,");
    expect(file).not.toBe(taken);
    const { address, html } = await looked(app, file);
    expect(html).toContain("Nitrate 10 mg/L as NO3. Smallest step of the kit: not said.");
    expect(html).toContain("Nitrate 10 mg/L as NO3. Smallest step of the kit: 5.");
    expect((await post(app, address, { clash: "file" })).body).toContain("Change the 1 now");
  });

  test("I-138: deleted here before: left out, or brought back; undoing that takes it away again", async () => {
    const { app, store } = await kitchen();
    const file = "date,nitrate\n2026-06-10,11";
    expect((await looked(app, file)).html).toContain("You deleted this on");
    const { to } = await added(app, file);
    expect(to).toContain("nothing=1");
    await added(app, file, { deleted: "bring_back" });
    expect(await nitrates(store)).toEqual([HERE, "2026-06-10 11 mg/L as NO3"]);
    const [act] = await store.acts(EXAMPLE.tank, "bring_in", 1);
    await post(app, `${BRING_IN}/acts/${act?.id}`, {});
    expect(await nitrates(store)).toEqual([HERE]);
    expect((await looked(app, file)).html).toContain("1 deleted here before");
  });

  test("I-139, I-141: rows to mend are set aside, mended here, or left out", async () => {
    const { app, store } = await kitchen();
    const file = "date,nitrate\n2026-06-01,12\n2026-06-02,trace\n2026-06-03,10,5";
    const { address, html } = await looked(app, file);
    expect(html).toContain("3 rows: 1 new entry, 2 rows to mend.");
    expect(html).toContain("Add the 1 now, without the 2 that are open");
    expect(html).toContain("Line 4 has 3 fields, the header 2; an unquoted decimal comma?");
    const mended = { "cell.3.2": "<2", "row.4": "leave_out" };
    expect((await post(app, address, mended)).body).toContain("3 rows: 2 new entries, 1 row left out.");
    await post(app, address, { ...mended, go: "add" });
    expect(await nitrates(store)).toEqual([
      "2026-06-01 12 mg/L as NO3",
      "2026-06-02 &lt;2 mg/L as NO3".replace("&lt;", "<"),
      HERE,
    ]);
  });

  test("pasted text counts as a file; none of it: nothing; a file that is not held any more is asked for again", async () => {
    const { app, store } = await kitchen();
    const sent = await post(app, BRING_IN, { pasted: "date;nitrate\n01.06.2026;10,5" });
    const address = String(sent.headers.location);
    expect((await get(app, address)).body).toMatch(
      /semicolon between the columns; dates day first; decimal comma/,
    );
    expect((await post(app, address, { go: "none" })).headers.location).toBe(BRING_IN);
    const gone = await get(app, address);
    expect([gone.statusCode, gone.body.includes("Choose the file again")]).toEqual([404, true]);
    expect((await post(app, BRING_IN, { pasted: " " })).statusCode).toBe(422);
    expect(await nitrates(store)).toEqual([HERE]);
  });

  test("I-146: a connection cut at 60 % of the file: nothing is stored, and the next one is taken", async () => {
    const { app, store } = await kitchen();
    const address = await app.listen({ host: "127.0.0.1", port: 0 });
    const { port } = new URL(address);
    const body = multipart("sheet.csv", `date,nitrate\n${"2026-06-01,12\n".repeat(5_000)}`);
    await new Promise<void>((done, fail) => {
      const socket = connect(Number(port), "127.0.0.1");
      socket.on("error", fail);
      socket.on("close", () => done());
      const head = `POST ${BRING_IN} HTTP/1.1\r\nhost: 127.0.0.1:${port}\r\ncontent-type: multipart/form-data; boundary=${BOUNDARY}\r\ncontent-length: ${body.length}\r\n\r\n`;
      socket.write(head);
      socket.write(body.subarray(0, Math.floor(body.length * 0.6)), () =>
        setTimeout(() => socket.destroy(), 50),
      );
    });
    expect(await actsMade(store)).toEqual([]);
    expect(await nitrates(store)).toEqual([HERE]);
    expect((await looked(app, "date,nitrate\n2026-06-01,12")).html).toContain("1 new entry");
  });
});

describe("I-165: an import undone after some of its rows were edited", () => {
  const file = "date,nitrate\n2026-06-01,12\n2026-06-02,13\n2026-06-03,14\n2026-06-04,15";

  async function edited() {
    const under = await kitchen();
    const { store, app } = under;
    await added(app, file);
    const stamp = { at: "2026-06-15T12:00:00.000Z", by: "Ada" };
    for (const row of await store.entries(EXAMPLE.tank, {
      from: "2026-06-01",
      to: "2026-06-03",
      kind: "reading",
      limit: 9,
    })) {
      await store.correctEntry(
        row.id,
        row.version,
        { on: row.on, body: { ...row.body, note: "seen again" }, kept: true },
        stamp,
      );
    }
    const [act] = await store.acts(EXAMPLE.tank, "bring_in", 1);
    return { ...under, address: `${BRING_IN}/acts/${act?.id}` };
  }

  test("it asks; kept, they stay; undone, they go", async () => {
    for (const [answer, left] of [
      ["keep", 3],
      ["undo", 0],
    ] as const) {
      const { app, store, address } = await edited();
      const asked = await post(app, address, {});
      expect(asked.body).toContain("3 entries were changed since. Keep those?");
      expect(await nitrates(store)).toHaveLength(5);
      await post(app, address, { answer });
      expect(await nitrates(store)).toHaveLength(1 + left);
      // Once undone it is undone.
      await post(app, address, { answer: "undo" });
      expect(await nitrates(store)).toHaveLength(1 + left);
    }
  });

  test("an act of another tank is not found here", async () => {
    const { app, address } = await edited();
    const elsewhere = address.replace(EXAMPLE.tank, "00000000-0000-4000-8000-00000000ffff");
    expect((await post(app, elsewhere, {})).statusCode).toBe(404);
    expect((await post(app, `${BRING_IN}/acts/none`, {})).statusCode).toBe(404);
  });
});

describe("taking entries out", () => {
  test("each format, of all days or some; brought in again it brings nothing", async () => {
    const { app } = await kitchen();
    for (const format of ["csv", "json", "readings"]) {
      const file = await get(app, `${TANK}/take-out/file?format=${format}`);
      expect(file.statusCode).toBe(200);
      expect(String(file.headers["content-disposition"])).toMatch(
        /attachment; filename="Kitchen-invented-.*2026-06-15\.(csv|json)"/,
      );
      expect(file.body).toContain("10");
      expect((await looked(app, file.body)).html).toMatch(/\d rows?: 0 new entries, \d already here\./);
    }
    expect((await get(app, `${TANK}/take-out/file?format=readings`)).body).toContain(
      "date,Nitrate (mg/L as NO3)\r\n2026-06-10,10\r\n",
    );
    const none = await get(app, `${TANK}/take-out/file?from=2026-06-11&to=2026-06-12`);
    expect(none.body).not.toContain("reading");
    const wrong = await get(app, `${TANK}/take-out/file?from=31/02/2026`);
    expect([wrong.statusCode, wrong.body.includes("February 2026 has 28 days")]).toEqual([422, true]);
    expect((await get(app, `${TANK}/take-out`)).body).toMatch(/The daybook holds \d entr/);
  });
});
