/** Problem details (RFC 9457), with what a person needs to mend it: where, what was typed, what is allowed. */
import type { FastifyReply } from "fastify";
import type { Choice } from "../../contract/quantity/outcome.ts";

export interface ProblemAt {
  /** JSON pointer (RFC 6901) into what was sent. */
  readonly pointer: string;
  readonly kind: string;
  readonly detail: string;
  readonly typed?: string | null;
  /** What may stand there. */
  readonly allowed?: readonly string[];
  readonly choices?: readonly Choice[];
}

export interface Problem {
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly kind?: string;
  /** What to do about it. */
  readonly fix?: string;
  readonly errors?: readonly ProblemAt[];
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
  const { status, title, detail, kind, fix, errors, current } = problem;
  return reply
    .code(status)
    .header("content-type", "application/problem+json")
    .send(JSON.stringify({ type: "about:blank", title, status, detail, kind, fix, errors, current }));
}
