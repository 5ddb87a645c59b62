/** Where nitrogen and phosphorus come from and go, in milligrams a day: a sentence for each turn, and all of it as rows. */
import { two } from "../../answers/trends/amounts.ts";
import { dateWords } from "../../answers/words.ts";
import type { ElementFlows, FlowsOutput } from "../../contract/output/trends.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Grains } from "../parts/grains.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";
import { capital } from "../parts/text.ts";
import { Sentence } from "./sentence.tsx";

export interface FlowsView {
  readonly head: TankHead;
  readonly flows: FlowsOutput;
}

export function flowsPage({ head, flows }: FlowsView): Page {
  const [first] = flows.elements;
  const title = first?.title ?? "Where nitrogen and phosphorus go";
  return {
    title: `Flows: ${title}`,
    tank: head,
    here: "trends",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">
          What comes in, what algae take, what leaves: {flows.days} days of today's care from{" "}
          {dateWords(flows.tank.as_of)}, twenty runs
          {flows.learned ? ", taught by the daybook" : ""}. A test shows what is left in the water, not what
          passes through it.
        </p>
        {flows.elements.map((element) => (
          <OneElement key={element.element} flow={element} />
        ))}
        <p>
          A way out that nobody has told of is counted as gas, or as bound.{" "}
          <a href={to.tank(head.id, "trends")}>All trends</a>
        </p>
      </>
    ),
  };
}

function OneElement({ flow }: { readonly flow: ElementFlows }) {
  const { element, name, sentences } = flow;
  const rows = [
    ...flow.in.map((way) => ({ ...way, part: "comes in" })),
    ...flow.out.map((way) => ({ ...way, part: "leaves" })),
    ...flow.stays.map((way) => ({ ...way, part: "stays" })),
  ];
  return (
    <section data-flows={element}>
      <h2>{capital(name)}</h2>
      {sentences.map((sentence, i) => (
        <p key={i}>
          <Sentence of={sentence} />
        </p>
      ))}
      <p>
        <Grains of20={flow.algae_most_of_20} yes="have algae take more than half" no="do not" />
      </p>
      <Table
        caption={`${capital(name)}, mg ${element} a day: what comes in is what leaves and what stays`}
        columns={[
          { name: "where" },
          { name: "middle", numeric: true },
          { name: "18 of 20 runs between", numeric: true },
        ]}
        rows={rows.map(({ part, label, mg_per_day: mg, figure }) => [
          `${capital(part)} ${label}`,
          <Quantity key={figure} figure={figure}>
            {two(mg.central)} mg
          </Quantity>,
          `${two(mg.low)} to ${two(mg.high)}`,
        ])}
      />
    </section>
  );
}
