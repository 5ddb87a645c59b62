/** What the engine says: of a kept tank, part by part, and of a tank file that is sent along. */
import type { z } from "zod";
import { reportOf } from "../../answers/check/report.ts";
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { ENGINE_VERSION } from "../../answers/version.ts";
import type { WhatIfFlags } from "../../answers/what-if.ts";
import { workingOf } from "../../answers/working.ts";
import type { AnswersQuery, answersRequest } from "../../contract/http/answers.ts";
import type { WorkingOutput } from "../../contract/output/working.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { readDocument } from "../load-tank.ts";
import type { AnswerChoice } from "../route.ts";
import { type Call, type Handler, mend, notFound } from "./call.ts";
import { faultOf } from "./tanks.ts";

type Asked = Omit<AnswersQuery, "members" | "seed">;

export const larderOfTank: Handler = async (call) => ({ status: 200, body: (await answersTo(call)).larder });
export const wavesOfTank: Handler = async (call) => ({ status: 200, body: (await answersTo(call)).waves });
export const aheadOfTank: Handler = async (call) => ({ status: 200, body: (await answersTo(call)).ahead });
export const animalsOfTank: Handler = async (call) => ({
  status: 200,
  body: (await answersTo(call)).animals,
});

export const workingsOfTank: Handler = async (call) => {
  const { workings } = await answersTo(call);
  const figures = Object.values(workings).map(({ id, label }) => ({ id, label }));
  return { status: 200, body: workingJson(null, figures) };
};

export const workingOfTank: Handler = async (call) => {
  const figure = workingOf(await answersTo(call), call.params["figure"] ?? "");
  if (figure === null) throw notFound();
  return { status: 200, body: workingJson(figure, []) };
};

const workingJson = (figure: WorkingOutput["figure"], figures: WorkingOutput["figures"]): WorkingOutput => ({
  ...{ schema: "grazewell.working/1", engine: ENGINE_VERSION },
  ...{ figure, figures },
});

export const check: Handler = async ({ body, context }) => ({
  status: 200,
  body: reportOf("body", readDocument(body as TankFile, context.today)),
});

export const answers: Handler = async ({ body, context }) => {
  const { document, choice = {}, change = {} } = body as z.infer<typeof answersRequest>;
  const read = readDocument(document as TankFile, context.today);
  if (!read.ok)
    throw mend(
      422,
      read.findings.map((finding) => faultOf(finding, "/document")),
    );
  // Flows are a page's; the reply is of the parts that its schema names.
  const { flows: _, ...told } = await context.answers.of(read.facts, choiceOf(choice), flagsOf(change));
  return { status: 200, body: told };
};

async function answersTo({ params, query, context }: Call): Promise<TankAnswers> {
  const loaded = await context.loadTank(params["tank"] ?? "");
  if (loaded === null) throw notFound();
  const { members, seed, ...change } = query as AnswersQuery;
  return context.answers.of(loaded.facts, choiceOf({ members, seed }), flagsOf(change), loaded.record);
}

export const choiceOf = ({
  members,
  seed,
}: {
  readonly members?: number | undefined;
  readonly seed?: number | undefined;
}): AnswerChoice => ({
  members: members ?? DEFAULT_ENSEMBLE.members,
  seed: seed ?? DEFAULT_ENSEMBLE.seed,
});

/** Undefined where nothing is changed. */
function flagsOf({ feed, light, crew = [], water_change, dead = [] }: Asked): WhatIfFlags | undefined {
  const flags: WhatIfFlags = {
    ...(feed === undefined ? {} : { feed }),
    ...(light === undefined ? {} : { light }),
    ...(crew.length === 0 ? {} : { crew }),
    ...(water_change === undefined ? {} : { waterChange: water_change }),
    ...(dead.length === 0 ? {} : { dead }),
  };
  return Object.keys(flags).length === 0 ? undefined : flags;
}
