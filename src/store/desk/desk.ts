import type { Db } from "../database.ts";
import type { Desk } from "../store.ts";
import { acts } from "./acts.ts";
import { calendar } from "./calendar.ts";
import { entries } from "./entries.ts";
import { keepersAndSettings } from "./keepers.ts";
import { pictures } from "./pictures.ts";
import { tanks } from "./tanks.ts";

/** The desk over a connection: inside a transaction, all of it belongs to that. */
export const deskOn = (db: Db): Desk => ({
  ...keepersAndSettings(db),
  ...tanks(db),
  ...entries(db),
  ...acts(db),
  ...calendar(db),
  ...pictures(db),
});
