import { renderToString } from "preact-render-to-string";
import { describe, expect, test } from "vitest";
import { MORE } from "../../answers/questions/fields.ts";
import { valuesOf } from "../../answers/questions/prefill.ts";
import { QUESTIONS } from "../../answers/questions/questions.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { newTankPage } from "./new-tank.tsx";
import { type QuestionView, questionPage } from "./question.tsx";
import { singleFormPage } from "./single-form.tsx";

const head = { id: "kitchen", name: "Kitchen", keeper: "Ada", demonstration: false };
const file = { grazewell_tank: 1 as const, water_l: "55 US gal" };
const NUMBERS = QUESTIONS.map((_, i) => i + 1);

const view = (number: number, change: Partial<QuestionView> = {}): QuestionView => ({
  head,
  number,
  version: 3,
  values: valuesOf(number, file),
  doubts: [],
  echo: null,
  clash: null,
  answers: null,
  spareLines: 3,
  units: shownIn(undefined),
  ...change,
});
const html = (number: number, change: Partial<QuestionView> = {}): string =>
  renderToString(<main>{questionPage(view(number, change)).body}</main>);

describe("a question's page", () => {
  test.each(NUMBERS)("%d says why, states what is taken for 'not sure', and can be skipped", (number) => {
    const question = QUESTIONS[number - 1]!;
    const page = html(number).replaceAll("&#39;", "'").replaceAll("&quot;", '"');
    expect(page).toContain(question.why);
    expect(page).toContain(question.notSure);
    expect(page).toContain('value="not_sure"');
    expect(page).toMatch(/<a class="action" href="[^"]+">Skip<\/a>/);
  });

  test.each(NUMBERS)("%d: the return key keeps the answer, whatever other buttons stand there", (number) => {
    const doubts = [{ field: "water", text: "?", choices: [{ label: "1200 L", text: "1200 L" }] }];
    const buttons = [...html(number, { doubts }).matchAll(/<button [^>]*>/g)].map(([tag]) => tag);
    expect(buttons[0]).toContain('name="go" value="keep"');
  });

  test.each(NUMBERS)("%d: one field takes the focus, none where an error summary does", (number) => {
    expect(html(number).match(/ autofocus/g)).toHaveLength(1);
    const doubts = [{ field: "water", text: "?", choices: [] }];
    expect(html(number, { doubts })).not.toContain(" autofocus");
  });

  test("what was typed stays, right or wrong, and each reading on offer is a button that sends its text", () => {
    const page = html(1, {
      values: { water: "1,200", water_unit: "imp gal", sides: "90x45" },
      doubts: [
        { field: "water", text: "could be 1200 or 1.2", choices: [{ label: "1200 L", text: "1200 L" }] },
      ],
    });
    expect(page).toContain('value="1,200"');
    expect(page).toContain('value="90x45"');
    expect(page).toMatch(/<option value="imp gal" selected/);
    expect(page).toMatch(/name="fix\.water" value="1200 L"[^>]*>Read as 1200 L/);
    expect(page.match(/could be 1200 or 1\.2/g)).toHaveLength(2);
  });

  test("an error comes first in the title", () => {
    expect(questionPage(view(1, { doubts: [{ field: "water", text: "?", choices: [] }] })).title).toMatch(
      /^Error: /,
    );
  });
});

test("no field is of a kind whose wheel or arrows change it unseen, and none has its unit in a placeholder", () => {
  const values = Object.assign({}, ...[...NUMBERS, MORE].map((number) => valuesOf(number, file)));
  const pages = [
    ...NUMBERS.map((number) => html(number)),
    renderToString(
      <main>
        {singleFormPage({ head, version: 1, values, doubts: [], clash: null, spareLines: 3 }).body}
      </main>,
    ),
    renderToString(<main>{newTankPage({ values: {}, doubts: [], once: "k" }).body}</main>),
  ];
  for (const page of pages) {
    expect(page).not.toContain('type="number"');
    expect(page).not.toContain("placeholder=");
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size, "ids are each there once").toBe(ids.length);
  }
});
