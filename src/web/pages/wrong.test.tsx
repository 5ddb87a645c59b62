import { renderToString } from "preact-render-to-string";
import { describe, expect, test } from "vitest";
import { CRISIS_IDS } from "../../answers/wrong/list-ids.ts";
import { CRISIS_LISTS, LONGEST_LINE, MOST_LINES } from "../../answers/wrong/lists.ts";
import { to } from "../page.ts";
import { wrongListPage, wrongPage } from "./wrong.tsx";

const kitchen = { id: "t1", name: "Kitchen" };
const drawn = (tank: typeof kitchen | null) => renderToString(<main>{wrongPage({ tank }).body}</main>);
const list = (id: (typeof CRISIS_IDS)[number], tank: typeof kitchen | null = null) =>
  renderToString(<main>{wrongListPage({ list: id, tank, hasNumbers: true }).body}</main>);
const all = [drawn(null), ...CRISIS_IDS.map((id) => list(id))].join("\n");

describe("something is wrong", () => {
  test.each(CRISIS_IDS)("%s: at most seven short lines, when to stop and whom to call last", (id) => {
    const { lines } = CRISIS_LISTS[id];
    expect(MOST_LINES).toBe(7);
    expect(lines.length).toBeLessThanOrEqual(MOST_LINES);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(LONGEST_LINE);
    const [stop = "", call = ""] = lines.slice(-2);
    expect(stop).toMatch(/^Stop (?:when|if|at|waiting if) /);
    expect(call).toMatch(/^Call (?:an aquatic vet|a licensed electrician|a doctor|the poison line)/);
    // Each line is drawn, in this order.
    const html = list(id);
    expect([...html.matchAll(/<li>([^<]*)<\/li>/g)].map(([, text]) => text)).toEqual(
      lines.map((line) => line.replaceAll("&", "&amp;")),
    );
  });

  test("the entry leads to each list, people first, and hands the tank on", () => {
    const doors = [...drawn(kitchen).matchAll(/href="(\/something-is-wrong\/[^"]*)"/g)].map(([, to]) => to);
    expect([...doors].sort()).toEqual(CRISIS_IDS.map((id) => to.wrongList(id, "t1")).sort());
    expect(doors.slice(0, 3)).toEqual(["person", "ill", "sting"].map((id) => to.wrongList(id, "t1")));
    // An old link to a part of this page lands on its door.
    for (const id of CRISIS_IDS) expect(drawn(null)).toContain(`id="${id}"`);
  });

  test("hands off the water come before the first door; nothing goes into the wild", () => {
    const page = drawn(null);
    expect(page.indexOf("unplug what you will touch")).toBeLessThan(page.indexOf("<ul>"));
    for (const html of [page, ...CRISIS_IDS.map((id) => list(id))])
      expect(html).toContain("Never release animals or tank water into the wild");
  });

  test("lists that put hands into the water ask for the plug first", () => {
    for (const id of CRISIS_IDS) {
      const { lines } = CRISIS_LISTS[id];
      const reach = lines.findIndex((line) =>
        /take out|take it out|change a (?:quarter|fifth)|siphon|clear its inlet/i.test(line),
      );
      if (reach < 0) continue;
      const before = lines.slice(0, reach + 1).join(" ");
      expect(before, id).toMatch(/plug|power off|fuse box|hands out|gloves/i);
    }
    for (const id of ["gasping", "dead", "warm", "pumps", "overflow", "top-off", "salinity"] as const)
      expect(CRISIS_LISTS[id].lines.slice(0, 2).join(" "), id).toMatch(/plug/i);
  });

  test("numbers of a tank stand behind a list, and without a tank it says where they are", () => {
    expect(list("ammonia", kitchen)).toContain(`href="${to.wrongNumbers("t1", "ammonia")}"`);
    expect(list("ammonia")).toContain("Numbers for your own tank stand behind this list");
  });

  test("no word of ours that a stranger would have to learn, none that promises, and no script", () => {
    expect(all).not.toMatch(/larder|shel[fv]|\bwaves?\b|gate|mouths|bench|daybook|ration|almanac/i);
    expect(all).not.toMatch(/\b(?:oops|please|invalid|forbidden|perfect|safe|sorry|hurry)\b/i);
    expect(all).not.toMatch(/<script| on[a-z]+=/);
  });
});
