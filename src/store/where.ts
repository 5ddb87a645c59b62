/** Where the store is: said, else DATABASE_URL, else a file among the user's own data. */
import { homedir } from "node:os";
import { join } from "node:path";

export type Place =
  | { readonly kind: "sqlite"; readonly file: string }
  | { readonly kind: "postgres"; readonly url: string };

type Environment = Readonly<Record<string, string | undefined>>;

export function placeOf(where: string | undefined, env: Environment = process.env): Place {
  const said = where ?? given(env["DATABASE_URL"]);
  if (said === undefined) {
    const data = given(env["XDG_DATA_HOME"]) ?? join(homedir(), ".local/share");
    return { kind: "sqlite", file: join(data, "grazewell", "grazewell.db") };
  }
  return /^postgres(ql)?:\/\//.test(said) ? { kind: "postgres", url: said } : { kind: "sqlite", file: said };
}

/** As messages name it: an address may carry a password. */
export const nameOf = (place: Place): string => (place.kind === "sqlite" ? place.file : "on PostgreSQL");

/** Now, as part of the name of a place beside a store; a schema of capitals would have to be quoted. */
export const clock = (): string => new Date().toISOString().replaceAll(/[-:.]/g, "").toLowerCase();

const given = (text: string | undefined): string | undefined => (text === "" ? undefined : text);
