/** The drawings themselves: named images, nothing that the content policy refuses, the same twenty counted. */
import { renderToString } from "preact-render-to-string";
import { expect, test } from "vitest";
import { TankId } from "../parts/tank-context.ts";
import { specimenPage } from "../specimen.tsx";
import { stepsJson } from "./steps.ts";

const html = renderToString(<TankId.Provider value="kitchen">{specimenPage().body}</TankId.Provider>);
const charts = html.match(/<figure class="chart"[\s\S]*?<\/figure>/g) ?? [];

test("every chart is one image named by its title and sentence, with table, file and steps", () => {
  expect(charts).toHaveLength(4);
  for (const chart of charts) {
    const id = /data-chart="([^"]+)"/.exec(chart)![1]!;
    expect(chart.match(/role="img"/g)).toHaveLength(1);
    expect(chart).toContain(`aria-labelledby="${id}-title ${id}-sentence"`);
    expect(chart).toContain(`id="${id}-title"`);
    expect(chart).toContain(`id="${id}-sentence"`);
    expect(chart).toContain("<caption>");
    expect(chart).toContain(`href="/tanks/kitchen/charts/${id}.csv"`);
    const steps = /data-chart-steps[^>]*>(.*?)<\/script>/.exec(chart)![1]!;
    const told = JSON.parse(steps) as { label: string; text: string }[];
    expect(told.length).toBeGreaterThan(0);
    // Each step has its mark in both drawings.
    for (const place of told.keys()) {
      expect(chart.match(new RegExp(`data-step-mark="${place}"`, "g"))).toHaveLength(2);
    }
  }
});

test("nothing is placed by a style attribute and no script stands in the page", () => {
  expect(html).not.toMatch(/\sstyle=/);
  expect(html.match(/<script(?![^>]*type="application\/json")/g)).toBeNull();
});

test("grains of a date add up to twenty, in both drawings", () => {
  const runs = charts.find((chart) => chart.includes('data-chart="no3"'))!;
  const counts = [...runs.matchAll(/data-grains="(\d+)"/g)].map(([, count]) => Number(count));
  expect(counts).toHaveLength(4);
  expect(counts[0]! + counts[1]!).toBe(20);
  expect(counts.slice(2)).toEqual(counts.slice(0, 2));
});

test("a step's words can't end the block they stand in", () => {
  const json = stepsJson([{ label: "</script><b>", text: "x" }]);
  expect(json).not.toContain("<");
  expect(JSON.parse(json)).toEqual([{ label: "</script><b>", text: "x" }]);
});
