import { renderToString } from "preact-render-to-string";
import { describe, expect, test } from "vitest";
import { CRISIS_LISTS, wrongPage } from "./wrong.tsx";

const page = renderToString(<main>{wrongPage({ tank: null }).body}</main>);

describe("something is wrong", () => {
  test.each(CRISIS_LISTS)(
    "$see: at most seven lines, one action a line, says when to stop and whom to call",
    ({ lines }) => {
      expect(lines.length).toBeLessThanOrEqual(7);
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
      const [stop = "", call = ""] = lines.slice(-2);
      expect(stop).toMatch(/^Stop /);
      expect(call).toMatch(/^Call (?:an aquatic vet|a licensed electrician|an electrician|a doctor)/);
    },
  );

  test("people come before animals, and nothing goes into the wild", () => {
    expect(CRISIS_LISTS[0]?.see).toMatch(/hurt/);
    expect(page.indexOf("unplug what you will touch")).toBeLessThan(page.indexOf("<ul>"));
    expect(page).toContain("Never release animals or tank water into the wild");
  });

  test("lists that put hands into the water begin with the mains", () => {
    for (const { id, lines } of CRISIS_LISTS.filter((list) => ["gasping", "dead", "warm"].includes(list.id)))
      expect(lines[0], id).toMatch(/plug/i);
  });

  test("no word of ours that a stranger would have to learn, none that promises, and no script", () => {
    expect(page).not.toMatch(/larder|shel[fv]|wave|gate|mouths|bench|daybook|ration|almanac/i);
    expect(page).not.toMatch(/\b(?:oops|please|invalid|forbidden|perfect|safe|sorry|hurry)\b/i);
    expect(page).not.toMatch(/<script| on[a-z]+=/);
  });
});
