/** The store for a command: opened, and what the store says of itself turned into words and an exit code. */
import { type Store, StoreError } from "../store/store.ts";
import { CliError, EXIT, type Io } from "./io.ts";

const CODES: Readonly<Record<StoreError["reason"], number>> = {
  newer: EXIT.badData,
  foreign: EXIT.badData,
  damaged: EXIT.badData,
  refused: EXIT.ourBug,
  busy: EXIT.tryAgain,
  unreachable: EXIT.unreachable,
  cannot_write: EXIT.cannotWrite,
};

/** @throws CliError */
export async function openKeptStore(where: string | undefined, io: Io): Promise<Store> {
  const { openStore } = await import("../store/open.ts");
  try {
    return await openStore(where, {
      onMigrated: ({ applied, copy }) => {
        if (copy !== null)
          io.talk(`The store was brought up to date (${applied.join(", ")}); a copy from before: ${copy}`);
      },
    });
  } catch (error) {
    throw error instanceof StoreError ? told(error) : error;
  }
}

export const told = (error: StoreError): CliError =>
  new CliError(CODES[error.reason], [error.message, error.fix]);
