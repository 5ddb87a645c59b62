import { renderToString } from "preact-render-to-string";
import { expect, test } from "vitest";
import { Choices } from "./choices.tsx";
import { ErrorSummary } from "./error-summary.tsx";
import { Field } from "./field.tsx";
import { Grains } from "./grains.tsx";
import { Quantity } from "./quantity.tsx";
import { Table } from "./table.tsx";
import { TankId } from "./tank-context.ts";
import { URGENCIES, Urgency } from "./urgency.tsx";

test("a quantity is a link to its working; without a tank it is refused rather than a dead end", () => {
  const quantity = <Quantity figure="larder.film_glass.supply">3</Quantity>;
  expect(renderToString(<TankId.Provider value="t1">{quantity}</TankId.Provider>)).toBe(
    '<a class="quantity" data-figure="larder.film_glass.supply" href="/tanks/t1/working/larder.film_glass.supply">3</a>',
  );
  expect(() => renderToString(quantity)).toThrow("larder.film_glass.supply: its working belongs to a tank");
});

test("each urgency has a word and a shape of its own", () => {
  const drawn = URGENCIES.map((level) => renderToString(<Urgency level={level} />));
  const shapes = drawn.map((html) => /<svg[^>]*>(.*)<\/svg>/.exec(html)![1]);
  const words = drawn.map((html) => /<span>([^<]+)<\/span>/.exec(html)![1]);
  expect(new Set(shapes).size).toBe(4);
  expect(words).toEqual(["Today", "This week", "Next visit", "Can't tell yet"]);
});

test("grains say word and number, and both sides add up to twenty", () => {
  const html = renderToString(<Grains of20={14} yes="stay under" no="go above" />);
  expect(html).toContain('aria-label="14 of 20 runs stay under, 6 go above"');
  expect(html).toContain("usually, 14 of 20");
  expect(html).toContain('data-grains-yes="14" data-grains-no="6"');
});

test("a field keeps what was typed and binds its error and hint to the input", () => {
  const html = renderToString(
    <Field
      name="salinity"
      label="Salinity"
      hint="psu or gravity"
      value="1,025"
      keypad="decimal"
      error={{ text: "1,025 was typed.", fixes: [{ label: "Read as 1.025", name: "fix", value: "1.025" }] }}
    />,
  );
  const input = /<input[^>]*>/.exec(html)![0];
  expect(input).toContain('type="text"');
  expect(input).toContain('inputmode="decimal"');
  expect(input).toContain('value="1,025"');
  expect(input).toContain('aria-invalid="true"');
  for (const id of /aria-describedby="([^"]+)"/.exec(input)![1]!.split(" "))
    expect(html).toContain(`id="${id}"`);
  expect(html).toContain('<button type="submit" class="fix" name="fix" value="1.025">Read as 1.025</button>');
});

test("an error summary leads to the fields; the first answer of a question is where it leads", () => {
  const summary = renderToString(<ErrorSummary errors={[{ field: "floor", text: "Floor: choose one" }]} />);
  const question = renderToString(
    <Choices
      name="floor"
      legend="Floor"
      options={[{ value: "sand", label: "Sand", checked: false }]}
      notSure={{ value: "unsure", checked: true, means: "then sand is taken" }}
    />,
  );
  expect(summary).toContain('href="#floor"');
  expect(question).toContain('id="floor"');
  expect(question.match(/name="floor"/g)).toHaveLength(2);
  expect(renderToString(<ErrorSummary errors={[]} />)).toBe("");
});

test("a table's cells name their column, so that a row can be read as words", () => {
  const html = renderToString(
    <Table
      caption="c"
      columns={[{ name: "shelf" }, { name: "grown", numeric: true }]}
      rows={[["film", "3"]]}
    />,
  );
  expect(html).toContain('<td role="cell" class="numeric" data-column="grown">3</td>');
  expect(html).toContain('<th role="rowheader" scope="row">film</th>');
});
