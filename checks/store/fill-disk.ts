/** A program of its own that writes until the disk takes no more: started by faults.test.ts under a limit. */
import { openStore } from "../../src/store/open.ts";
import { StoreError } from "../../src/store/store.ts";
import { stamp } from "./grounds.ts";

const store = await openStore(process.argv[2]);
const write = (n: number) => store.keeperNamed(`${1_000 + n}${"x".repeat(20_000)}`, `k${n}`, stamp());
const reasonOf = (error: unknown) => (error instanceof StoreError ? error.reason : String(error));

for (let n = 0; n < 200; n++) {
  const reason = await write(n).then(() => null, reasonOf);
  if (reason === null) continue;
  const again = await write(n).then(() => "written", reasonOf);
  console.log(JSON.stringify({ acknowledged: n, reason, again }));
  break;
}
await store.close();
