/** Every migration, in order: forward only, a new one at the end. */
import { keeper } from "./0001-keeper.ts";
import { tank } from "./0002-tank.ts";
import { entry } from "./0003-entry.ts";
import { reply } from "./0004-reply.ts";
import { setting } from "./0005-setting.ts";
import { act } from "./0006-act.ts";
import { lists } from "./0007-lists.ts";
import { calendar } from "./0008-calendar.ts";
import { picture } from "./0009-picture.ts";
import type { Migration } from "./migration.ts";

export const MIGRATIONS: readonly Migration[] = [
  keeper,
  tank,
  entry,
  reply,
  setting,
  act,
  lists,
  calendar,
  picture,
];
