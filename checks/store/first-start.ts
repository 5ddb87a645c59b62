/** A program of its own that opens a store, perhaps the first to do so, and writes once: started by open.test.ts. */
import { openStore } from "../../src/store/open.ts";
import { stamp } from "./grounds.ts";

const [where, schema = "", name = ""] = process.argv.slice(2);
const store = await openStore(where, schema === "" ? {} : { schema });
await store.keeperNamed(name, name, stamp());
await store.close();
console.log("opened");
