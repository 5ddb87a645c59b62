/** Every operation of the API, in the order the documents list them. */
import { z } from "zod";
import { aheadOutput } from "../output/ahead.ts";
import { animalsOutput } from "../output/animals.ts";
import { checkOutput } from "../output/check.ts";
import { larderOutput } from "../output/larder.ts";
import { wavesOutput } from "../output/waves.ts";
import { workingOutput } from "../output/working.ts";
import { answersQuery, answersRequest, tankAnswers } from "./answers.ts";
import { BRING_IN_OPERATIONS } from "./bring-in.ts";
import { CARE_OPERATIONS } from "./care-operations.ts";
import { about, parameterList, parameterView, sourceList, sourceView } from "./catalogue.ts";
import { ENTRY_OPERATIONS } from "./entry-operations.ts";
import { EXAMPLE, EXAMPLE_FACTS } from "./examples.ts";
import type { Operation } from "./operation.ts";
import { facts } from "./parts.ts";
import { PICTURE_OPERATIONS } from "./picture-operations.ts";
import {
  newReading,
  readingHistory,
  readingList,
  readingQuery,
  readingSaved,
  readingView,
} from "./readings.ts";
import { SUM_OPERATIONS } from "./sum-operations.ts";
import { newTank, tankChange, tankHistory, tankList, tankSaved, tankView } from "./tanks.ts";

const { tank, goneTank, reading, goneReading } = EXAMPLE;
const of = { tank };
const ofReading = { tank, reading };
/** Few runs: the examples are run in every check. */
const few = { members: "20" };
const from = (version: number) => ({ "if-match": `"${version}"` });

/** What is worked out for a kept tank: one operation a part. */
function answering(id: string, summary: string, reply: z.ZodType): Operation {
  return {
    id: `${id}OfTank`,
    method: "GET",
    path: `/tanks/{tank}/${id}`,
    summary,
    changes: false,
    query: answersQuery,
    replies: { 200: reply },
    problems: [400, 404, 422, 503],
    examples: [{ name: "few runs", params: of, query: few, status: 200 }],
  };
}

export const OPERATIONS: readonly Operation[] = [
  {
    id: "about",
    method: "GET",
    path: "/",
    summary: "Which program answers",
    changes: false,
    replies: { 200: about },
    problems: [],
    examples: [{ name: "asked", status: 200 }],
  },
  {
    id: "listTanks",
    method: "GET",
    path: "/tanks",
    summary: "Kept tanks, by keeper",
    changes: false,
    query: z.strictObject({ keeper: z.string().max(200).optional().describe("only those of this name") }),
    replies: { 200: tankList },
    problems: [400],
    examples: [
      { name: "all", status: 200 },
      { name: "of one keeper", query: { keeper: "Ada (invented)" }, status: 200 },
    ],
  },
  {
    id: "addTank",
    method: "POST",
    path: "/tanks",
    summary: "Add a tank",
    changes: true,
    body: newTank,
    asks: "once",
    replies: { 201: tankSaved },
    problems: [400, 409, 422, 429],
    examples: [
      {
        name: "a tank of which only the volume is known",
        headers: { "idempotency-key": "example-add-tank" },
        body: {
          keeper: "Ada (invented)",
          facts: { grazewell_tank: 1, name: "Study (invented)", water_l: "30 US gal" },
        },
        status: 201,
      },
      {
        name: "gallons of an unknown kind are asked about",
        body: { keeper: "Ada (invented)", facts: { grazewell_tank: 1, water_l: "30 gal" } },
        status: 422,
      },
    ],
  },
  {
    id: "tank",
    method: "GET",
    path: "/tanks/{tank}",
    summary: "One tank",
    changes: false,
    replies: { 200: tankView },
    problems: [404],
    examples: [
      { name: "kept", params: of, status: 200 },
      { name: "not there", params: { tank: "no-such-tank" }, status: 404 },
    ],
  },
  {
    id: "changeTank",
    method: "PUT",
    path: "/tanks/{tank}",
    summary: "Put other facts in the place of a tank's",
    changes: true,
    body: tankChange,
    asks: "version",
    replies: { 200: tankSaved },
    problems: [400, 404, 412, 422, 428, 429],
    examples: [
      {
        name: "another volume",
        params: of,
        headers: from(1),
        body: { facts: { ...EXAMPLE_FACTS, water_l: "180 L" } },
        status: 200,
      },
      {
        name: "made from an older version",
        params: of,
        headers: from(9),
        body: { facts: EXAMPLE_FACTS },
        status: 412,
      },
    ],
  },
  {
    id: "takeTankAway",
    method: "DELETE",
    path: "/tanks/{tank}",
    summary: "Take a tank away; it can be brought back",
    changes: true,
    query: z.strictObject({ name: z.string().max(500).describe("the tank's name as it is shown") }),
    asks: "version",
    replies: { 200: tankView },
    problems: [400, 404, 412, 422, 428, 429],
    examples: [
      {
        name: "another name than the tank's",
        params: of,
        query: { name: "Kitchen" },
        headers: from(2),
        status: 422,
      },
      {
        name: "taken away",
        params: of,
        query: { name: "Kitchen (invented)" },
        headers: from(2),
        status: 200,
      },
    ],
  },
  {
    id: "bringTankBack",
    method: "POST",
    path: "/tanks/{tank}/bring-back",
    summary: "Bring back a tank that was taken away",
    changes: true,
    asks: "version",
    replies: { 200: tankView },
    problems: [400, 404, 412, 428, 429],
    examples: [{ name: "back again", params: of, headers: from(3), status: 200 }],
  },
  {
    id: "tankHistory",
    method: "GET",
    path: "/tanks/{tank}/history",
    summary: "Every version of a tank's facts, also of one taken away",
    changes: false,
    replies: { 200: tankHistory },
    problems: [404],
    examples: [{ name: "of a tank taken away", params: { tank: goneTank }, status: 200 }],
  },
  {
    id: "listReadings",
    method: "GET",
    path: "/tanks/{tank}/readings",
    summary: "A tank's readings, the latest first",
    changes: false,
    query: readingQuery,
    replies: { 200: readingList },
    problems: [400, 404],
    examples: [
      { name: "all", params: of, status: 200 },
      {
        name: "of one month, one at a time",
        params: of,
        query: { from: "2026-06-01", to: "2026-06-30", limit: "1" },
        status: 200,
      },
    ],
  },
  {
    id: "addReading",
    method: "POST",
    path: "/tanks/{tank}/readings",
    summary: "Keep a reading",
    changes: true,
    body: newReading,
    asks: "once",
    replies: { 201: readingSaved },
    problems: [400, 404, 409, 422, 429],
    examples: [
      {
        name: "a number",
        params: of,
        headers: { "idempotency-key": "example-add-reading" },
        body: {
          quantity: "no3_mg_per_l",
          value: 10,
          unit: "mg/L as NO3",
          kit_step: 2,
          observed: "2026-06-14",
        },
        status: 201,
      },
      {
        name: "text with its own unit",
        params: of,
        body: { quantity: "no3_mg_per_l", text: "5 NO3-N" },
        status: 201,
      },
      { name: "beyond all water", params: of, body: { quantity: "ph", value: 81 }, status: 422 },
      { name: "text where a number is due", params: of, body: { quantity: "ph", value: "8.1" }, status: 400 },
    ],
  },
  {
    id: "reading",
    method: "GET",
    path: "/tanks/{tank}/readings/{reading}",
    summary: "One reading",
    changes: false,
    replies: { 200: readingView },
    problems: [404],
    examples: [{ name: "kept", params: ofReading, status: 200 }],
  },
  {
    id: "correctReading",
    method: "PUT",
    path: "/tanks/{tank}/readings/{reading}",
    summary: "Correct a reading; the earlier one stays in its history",
    changes: true,
    body: newReading,
    asks: "version",
    replies: { 200: readingSaved },
    problems: [400, 404, 412, 422, 428, 429],
    examples: [
      {
        name: "corrected",
        params: ofReading,
        headers: from(1),
        body: { quantity: "no3_mg_per_l", value: 12, observed: "2026-06-10" },
        status: 200,
      },
      {
        name: "changed elsewhere since",
        params: ofReading,
        headers: from(1),
        body: { quantity: "no3_mg_per_l", value: 20, observed: "2026-06-10" },
        status: 412,
      },
    ],
  },
  {
    id: "takeReadingAway",
    method: "DELETE",
    path: "/tanks/{tank}/readings/{reading}",
    summary: "Take a reading away; it can be brought back",
    changes: true,
    asks: "version",
    replies: { 200: readingView },
    problems: [400, 404, 412, 428, 429],
    examples: [{ name: "taken away", params: ofReading, headers: from(2), status: 200 }],
  },
  {
    id: "bringReadingBack",
    method: "POST",
    path: "/tanks/{tank}/readings/{reading}/bring-back",
    summary: "Bring back a reading that was taken away",
    changes: true,
    asks: "version",
    replies: { 200: readingView },
    problems: [400, 404, 412, 428, 429],
    examples: [{ name: "back again", params: { tank, reading: goneReading }, headers: from(2), status: 200 }],
  },
  {
    id: "readingHistory",
    method: "GET",
    path: "/tanks/{tank}/readings/{reading}/history",
    summary: "Every version of a reading",
    changes: false,
    replies: { 200: readingHistory },
    problems: [404],
    examples: [{ name: "of one corrected", params: ofReading, status: 200 }],
  },
  ...ENTRY_OPERATIONS,
  ...PICTURE_OPERATIONS,
  answering("larder", "Food the tank makes, and who eats it", larderOutput),
  answering("waves", "The plan: who comes when, how many, on what condition", wavesOutput),
  answering("ahead", "Weeks ahead, twenty ways it could go", aheadOutput),
  answering("animals", "The catalogue, each animal with how it fits this tank", animalsOutput),
  {
    ...answering("working", "Every figure that can be asked about", workingOutput),
    id: "workingsOfTank",
  },
  {
    ...answering("working", "How a figure came about", workingOutput),
    id: "workingOfTank",
    path: "/tanks/{tank}/working/{figure}",
    examples: [
      {
        name: "supply of a shelf",
        params: { tank, figure: "larder.film_glass.supply" },
        query: few,
        status: 200,
      },
      {
        name: "no such figure",
        params: { tank, figure: "larder.film_glas.supply" },
        query: few,
        status: 404,
      },
    ],
  },
  {
    id: "check",
    method: "POST",
    path: "/check",
    summary: "How a tank file is read, what is assumed, what is to mend; nothing is kept",
    changes: false,
    body: facts,
    replies: { 200: checkOutput },
    problems: [400],
    examples: [
      { name: "a file that can be used", body: EXAMPLE_FACTS, status: 200 },
      { name: "a file to mend", body: { grazewell_tank: 1, water_l: "30 gal" }, status: 200 },
    ],
  },
  {
    id: "answers",
    method: "POST",
    path: "/answers",
    summary: "Everything the engine says of a tank that is not kept, with a what-if where one is asked",
    changes: false,
    body: answersRequest,
    replies: { 200: tankAnswers },
    problems: [400, 422, 503],
    examples: [
      {
        name: "half as much food again",
        body: { document: EXAMPLE_FACTS, choice: { members: 20 }, change: { feed: "+50 %" } },
        status: 200,
      },
      {
        name: "a change that can't be read",
        body: { document: EXAMPLE_FACTS, choice: { members: 20 }, change: { feed: "plenty" } },
        status: 422,
      },
    ],
  },
  {
    id: "animals",
    method: "GET",
    path: "/animals",
    summary: "The catalogue of animals",
    changes: false,
    replies: { 200: animalsOutput },
    problems: [],
    examples: [{ name: "all", status: 200 }],
  },
  {
    id: "animal",
    method: "GET",
    path: "/animals/{animal}",
    summary: "One animal",
    changes: false,
    replies: { 200: animalsOutput },
    problems: [404],
    examples: [{ name: "by its id", params: { animal: "trochus-snail" }, status: 200 }],
  },
  {
    id: "parameters",
    method: "GET",
    path: "/parameters",
    summary: "Every number of the science, with its range",
    changes: false,
    replies: { 200: parameterList },
    problems: [],
    examples: [{ name: "all", status: 200 }],
  },
  {
    id: "parameter",
    method: "GET",
    path: "/parameters/{parameter}",
    summary: "One number of the science",
    changes: false,
    replies: { 200: parameterView },
    problems: [404],
    examples: [{ name: "a symbol of the model", params: { parameter: "kapFilm" }, status: 200 }],
  },
  {
    id: "sources",
    method: "GET",
    path: "/sources",
    summary: "The works that facts rest on",
    changes: false,
    replies: { 200: sourceList },
    problems: [],
    examples: [{ name: "all", status: 200 }],
  },
  {
    id: "source",
    method: "GET",
    path: "/sources/{source}",
    summary: "One work",
    changes: false,
    replies: { 200: sourceView },
    problems: [404],
    examples: [{ name: "not there", params: { source: "no-such-work" }, status: 404 }],
  },
  ...CARE_OPERATIONS,
  ...SUM_OPERATIONS,
  ...BRING_IN_OPERATIONS,
];
