/** Requests that may come twice, and versions that came first. */
import type { Desk, Json } from "../../store/store.ts";
import type { Call, Result } from "./call.ts";
import { type Problem, ProblemError } from "./problem.ts";

interface Kept extends Json {
  readonly body: unknown;
  readonly version: number | null;
  readonly location: string | null;
}

/** Does `work` as one write; with a key, once, and a repeat gets the first answer. @throws ProblemError */
export async function onceOnly(call: Call, work: (desk: Desk) => Promise<Result>): Promise<Result> {
  const { once, context } = call;
  if (once === null) return context.store.together(work);
  const stamp = { at: context.now, by: "API" };
  const ended = await context.store.once(once.key, once.fingerprint, stamp, async (desk) => {
    const { status, body, version = null, location = null } = await work(desk);
    return { status, body: { body, version, location } satisfies Kept };
  });
  if (ended.kind === "other_request") {
    throw new ProblemError({
      status: 409,
      title: "Another request of that key",
      kind: "CONFLICT",
      detail:
        "Idempotency-Key: this key came with another request before. Give each request a key of its own.",
    });
  }
  const { body, version, location } = ended.reply.body as Kept;
  return {
    status: ended.reply.status,
    body,
    ...(version === null ? {} : { version }),
    ...(location === null ? {} : { location }),
  };
}

/** The answer that the request's key got before; null where it has none, or was never used. */
export async function answeredBefore(call: Call): Promise<Result | null> {
  if (call.once === null) return null;
  try {
    return await onceOnly(call, () => Promise.reject(new NotYet()));
  } catch (error) {
    if (error instanceof NotYet) return null;
    throw error;
  }
}
class NotYet extends Error {}

export const conflict = (detail: string, current: unknown, choices?: Problem["choices"]): ProblemError =>
  new ProblemError({
    status: 412,
    title: "Changed elsewhere since",
    kind: "STALE",
    detail,
    current,
    ...(choices === undefined ? {} : { choices }),
  });
