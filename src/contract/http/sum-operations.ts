/** Water sums over the API: which there are and what each asks for; one worked out, with a tank's readings or without. */
import { z } from "zod";
import { sumOutput, sumsOutput } from "../output/sum.ts";
import { EXAMPLE } from "./examples.ts";
import type { Operation } from "./operation.ts";

export const sumRequest = z.strictObject({
  given: z
    .record(z.string(), z.string().max(20_000))
    .describe(
      "texts by field, as a keeper types them: numbers with their unit; a unit may stand apart under field.unit",
    ),
  tank: z
    .string()
    .max(200)
    .optional()
    .describe("a kept tank: fields that are left out are filled from what it knows"),
});

export const SUM_OPERATIONS: readonly Operation[] = [
  {
    id: "listSums",
    method: "GET",
    path: "/sums",
    summary: "Water sums, each with the fields that it asks for",
    changes: false,
    replies: { 200: sumsOutput },
    problems: [],
    examples: [{ name: "all", status: 200 }],
  },
  {
    id: "workOutSum",
    method: "POST",
    path: "/sums/{sum}",
    summary: "A water sum worked out, every number with its working; nothing is kept",
    changes: false,
    body: sumRequest,
    replies: { 200: sumOutput },
    problems: [400, 404, 422],
    examples: [
      {
        name: "oxygen of seawater",
        params: { sum: "oxygen" },
        body: { given: { salinity: "35 psu", temperature: "77 F" } },
        status: 200,
      },
      {
        name: "filled from a tank",
        params: { sum: "oxygen" },
        body: { given: { salinity: "35 psu", temperature: "25 C" }, tank: EXAMPLE.tank },
        status: 200,
      },
      {
        name: "a number that could be two things",
        params: { sum: "oxygen" },
        body: { given: { salinity: "35", temperature: "25 C" } },
        status: 422,
      },
      { name: "no such sum", params: { sum: "moonlight" }, body: { given: {} }, status: 404 },
    ],
  },
];
