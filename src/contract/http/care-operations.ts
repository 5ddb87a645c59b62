/** Water and care over the API: start-up, arrivals, feeding, leaving home, weeks, almanac, and what to do when something is wrong. */
import { z } from "zod";
import { almanacOutput } from "../output/almanac.ts";
import { arrivalsOutput } from "../output/arrivals.ts";
import { feedingOutput, holidayOutput } from "../output/feeding.ts";
import { startUpOutput } from "../output/start-up.ts";
import { weeksOutput } from "../output/weeks.ts";
import { wrongListOutput, wrongOutput } from "../output/wrong.ts";
import { answersQuery } from "./answers.ts";
import { EXAMPLE } from "./examples.ts";
import type { Operation } from "./operation.ts";
import { MOST_CHANGE_LETTERS } from "./sizes.ts";

const of = { tank: EXAMPLE.tank };
const few = { members: "20" };
const nobody = { tank: "no-such-tank" };
const text = z.string().max(MOST_CHANGE_LETTERS);

const runsQuery = answersQuery.pick({ members: true, seed: true });

export const arrivalsQuery = z.strictObject({
  group: z.enum(["fish", "corals", "invertebrates"]).optional().describe("whose plan; fish where left out"),
  from: z.iso.date().optional().describe("first day of the plan; today where left out"),
  fallow: z.literal("yes").optional().describe("work out who goes hungry with no fish and no feed"),
});

export const holidayQuery = z.strictObject({
  from: text.describe("the day of leaving, as a keeper writes it: 2026-07-01, 1 Jul"),
  to: text.describe("the day of coming back"),
  every: text.optional().describe("the sitter feeds on every so many days: 1, 2 or 3; 2 where left out"),
});

export const CARE_OPERATIONS: readonly Operation[] = [
  {
    id: "startUpOfTank",
    method: "GET",
    path: "/tanks/{tank}/start-up",
    summary: "Where in its nitrogen cycle a tank stands, and when that ends",
    changes: false,
    replies: { 200: startUpOutput },
    problems: [404, 422, 503],
    examples: [
      { name: "by its tests", params: of, status: 200 },
      { name: "no such tank", params: nobody, status: 404 },
    ],
  },
  {
    id: "arrivalsOfTank",
    method: "GET",
    path: "/tanks/{tank}/arrivals",
    summary: "What to look at before paying, who is kept apart, a quarantine plan, medicines, a fallow time",
    changes: false,
    query: arrivalsQuery,
    replies: { 200: arrivalsOutput },
    problems: [400, 404, 422, 503],
    examples: [
      {
        name: "a plan for corals",
        params: of,
        query: { group: "corals", from: "2026-06-20" },
        status: 200,
      },
      { name: "no such group", params: of, query: { group: "coral" }, status: 400 },
    ],
  },
  {
    id: "feedingOfTank",
    method: "GET",
    path: "/tanks/{tank}/feeding",
    summary: "What a day's feed brings and where it goes, what fish need, what portions hold, fasting days",
    changes: false,
    replies: { 200: feedingOutput },
    problems: [404, 422],
    examples: [{ name: "as fed now", params: of, status: 200 }],
  },
  {
    id: "holidayOfTank",
    method: "GET",
    path: "/tanks/{tank}/holiday",
    summary:
      "Leaving home: three ways of feeding over twenty runs, what to pack, what to do before and after",
    changes: false,
    query: holidayQuery,
    replies: { 200: holidayOutput },
    problems: [400, 404, 422, 503],
    examples: [
      { name: "ten days", params: of, query: { from: "2026-06-18", to: "28 Jun 2026" }, status: 200 },
      {
        name: "back before leaving",
        params: of,
        query: { from: "2026-06-18", to: "2026-06-17" },
        status: 422,
      },
    ],
  },
  {
    id: "weeksOfTank",
    method: "GET",
    path: "/tanks/{tank}/weeks",
    summary: "Weeks 1 to 26: expect, test, do, don't, buy",
    changes: false,
    query: runsQuery,
    replies: { 200: weeksOutput },
    problems: [400, 404, 422, 503],
    examples: [{ name: "few runs", params: of, query: few, status: 200 }],
  },
  {
    id: "almanacOfTank",
    method: "GET",
    path: "/tanks/{tank}/almanac",
    summary: "Dated care: what is due when, and what would change it",
    changes: false,
    query: runsQuery,
    replies: { 200: almanacOutput },
    problems: [400, 404, 422, 503],
    examples: [{ name: "few runs", params: of, query: few, status: 200 }],
  },
  {
    id: "wrongLists",
    method: "GET",
    path: "/wrong",
    summary: "Something is wrong: every list of what to do first, people first",
    changes: false,
    replies: { 200: wrongOutput },
    problems: [],
    examples: [{ name: "all", status: 200 }],
  },
  {
    id: "wrongList",
    method: "GET",
    path: "/wrong/{list}",
    summary: "One list; it is the same for every tank",
    changes: false,
    replies: { 200: wrongListOutput },
    problems: [404],
    examples: [
      { name: "by its name", params: { list: "power-cut" }, status: 200 },
      { name: "not there", params: { list: "moonlight" }, status: 404 },
    ],
  },
  {
    id: "wrongListOfTank",
    method: "GET",
    path: "/tanks/{tank}/wrong/{list}",
    summary: "The same with the numbers of one tank behind it",
    changes: false,
    query: runsQuery,
    replies: { 200: wrongListOutput },
    problems: [400, 404, 422, 503],
    examples: [
      { name: "of facts alone", params: { ...of, list: "ammonia" }, status: 200 },
      { name: "with hours of oxygen", params: { ...of, list: "pumps" }, query: few, status: 200 },
      { name: "no numbers stand behind it", params: { ...of, list: "person" }, status: 200 },
      { name: "no such list", params: { ...of, list: "moonlight" }, status: 404 },
    ],
  },
];
