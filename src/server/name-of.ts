/** What a kept tank is called, also where its document can no longer be read. */
import { UNNAMED } from "../contract/tank-file/interpret.ts";
import type { TankRow } from "../store/store.ts";

export const nameOf = ({ facts }: Pick<TankRow, "facts">): string =>
  typeof facts["name"] === "string" ? facts["name"] : UNNAMED;
