/** One operation of the API: what it takes and gives, once for the server, the documents and the tests. */
import type { z } from "zod";

export interface Example {
  readonly name: string;
  /** Of the address: those of the example store (checks/http). */
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | readonly string[]>>;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: unknown;
  readonly status: number;
}

export interface Operation {
  readonly id: string;
  readonly method: "GET" | "POST" | "PUT" | "DELETE";
  /** As OpenAPI writes it: `/tanks/{tank}`, below /api/v1. */
  readonly path: string;
  readonly summary: string;
  /** Counted among the changes of a client. */
  readonly changes: boolean;
  /** Its body may be as long as that of a form with a file. */
  readonly takes?: "file";
  readonly query?: z.ZodObject;
  readonly body?: z.ZodType;
  /** `version`: If-Match must name the version it is made from. `once`: Idempotency-Key may make it repeatable. */
  readonly asks?: "version" | "once";
  readonly replies: Readonly<Record<number, z.ZodType>>;
  readonly problems: readonly number[];
  readonly examples: readonly Example[];
}
