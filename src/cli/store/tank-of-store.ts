/** One kept tank of the store, loaded as the page loads it, for commands that work on its daybook. */
import { loadTank } from "../../server/load-tank.ts";
import type { LoadedTank } from "../../server/route.ts";
import type { Store } from "../../store/store.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { tankNamed } from "../tank-source.ts";
import { saying } from "./open.ts";

/** Opens the store, finds the tank by id or name, works, closes. @throws CliError */
export async function withTank<T>(
  where: string | undefined,
  tank: string | undefined,
  io: Io,
  work: (tank: LoadedTank, store: Store) => Promise<T>,
): Promise<T> {
  if (tank === undefined) {
    throw new CliError(EXIT.usage, ["--tank: name a tank of the store, by its id or name."]);
  }
  const { openStore } = await import("../../store/open.ts");
  return await saying(async () => {
    const store = await openStore(where, { use: "existing" });
    try {
      const row = await tankNamed(tank, store);
      const loaded = await loadTank(store, row.id, io.today);
      if (loaded === null) throw new CliError(EXIT.inputMissing, [`--tank "${tank}": it was taken away.`]);
      return await work(loaded, store);
    } finally {
      await store.close();
    }
  });
}
