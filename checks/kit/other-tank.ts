/** Whatever tank a move names is there, has five of every kind, and says nothing of newcomers. */
import type { FindTank } from "../../src/contract/daybook/other-tank.ts";

export const anyTank: FindTank = (name) => ({
  kind: "one",
  tank: {
    ...{ id: "t2", name, notBefore: null, onRecord: () => 5 },
    knownAs: (id) => id,
    toldOn: () => null,
  },
  receiving: { said: () => [], gateNotMet: null },
});
