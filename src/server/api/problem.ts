/** Problem details (RFC 9457), with what a person needs to mend it: where, what was typed, what is allowed. */
import type { FastifyReply } from "fastify";
import type { HttpFault } from "../../contract/http/shape.ts";
import type { Choice } from "../../contract/quantity/outcome.ts";

export interface Problem {
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly kind?: string;
  /** What to do about it. */
  readonly fix?: string;
  readonly errors?: readonly HttpFault[];
  readonly choices?: readonly Choice[];
  /** The other version, where one came first. */
  readonly current?: unknown;
  readonly retryAfterSeconds?: number;
}

export class ProblemError extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.detail);
    this.problem = problem;
  }
}

export function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  const { status, title, detail, kind, fix, errors, choices, current } = problem;
  return reply
    .code(status)
    .header("content-type", "application/problem+json")
    .send(
      JSON.stringify({ type: "about:blank", title, status, detail, kind, fix, errors, choices, current }),
    );
}
