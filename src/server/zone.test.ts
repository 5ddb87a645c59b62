/** A tank's zone: told and kept, never taken unread, and the day of its pages is the day there. */
import { expect, test } from "vitest";
import { appUnderTest, ask, HOST, TODAY } from "../../checks/http/kit/app.ts";
import { loadTank } from "./load-tank.ts";

const quiet = { ready: () => null, of: () => Promise.reject(new Error("not asked for here")) };
/** Noon UTC: the next day on the Line Islands, the same in London. */
const NOW = `${TODAY}T12:00:00.000Z`;

async function oneTank() {
  const under = await appUnderTest(quiet);
  const stamp = { at: NOW, by: "Tester" };
  const keeper = await under.store.keeperNamed("Tester", "keeper-tester", stamp);
  const facts = { grazewell_tank: 1, name: "Kitchen", water_l: "200 L" };
  await under.store.addTank({ id: "tank-1", keeperId: keeper.id, demonstration: false, facts }, stamp);
  const send = (zone: string, version: number) =>
    under.app.inject({
      method: "POST",
      url: "/tanks/tank-1/units",
      headers: { host: HOST, origin: `http://${HOST}`, "content-type": "application/x-www-form-urlencoded" },
      payload: new URLSearchParams({
        version: String(version),
        volume: "L",
        decimal: "point",
        dates: "ask",
        zone,
      }).toString(),
    });
  return { ...under, send };
}

test("a zone that nobody knows is asked about, with the value and an example", async () => {
  const { send, store } = await oneTank();
  for (const zone of ["Mars/Base", "+01:00"]) {
    const refused = await send(zone, 1);
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain(
      `Time zone &quot;${zone}&quot;: not one we know. Enter one such as Europe/London`,
    );
  }
  expect((await store.tank("tank-1"))?.version).toBe(1);
});

test("a zone that is kept sets the day; none leaves this machine's", async () => {
  const { send, store, app } = await oneTank();
  expect((await loadTank(store, "tank-1", TODAY, NOW))?.today).toBe(TODAY);
  expect((await send("Pacific/Kiritimati", 1)).statusCode).toBe(303);
  expect(await loadTank(store, "tank-1", TODAY, NOW)).toMatchObject({
    zone: "Pacific/Kiritimati",
    today: "2026-06-16",
  });
  expect((await ask(app, "GET", "/tanks/tank-1/units")).body).toContain("Pacific/Kiritimati");
  expect((await send("", 2)).statusCode).toBe(303);
  expect(await loadTank(store, "tank-1", TODAY, NOW)).toMatchObject({ zone: null, today: TODAY });
});
