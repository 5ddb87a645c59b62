/** The command line's streams without a terminal: what it prints and says is kept for the test to look at. */
import type { Io } from "../../src/cli/io.ts";

export interface KeptIo {
  readonly io: Io;
  /** Data, as it would stand on standard output. */
  readonly printed: string[];
  /** Words to the person. */
  readonly said: string[];
}

export function keptIo(): KeptIo {
  const printed: string[] = [];
  const said: string[] = [];
  const same = (text: string) => text;
  const io: Io = {
    out: (text) => printed.push(text),
    talk: (text) => said.push(text),
    progress: () => {},
    bold: same,
    dim: same,
    width: 80,
    canAsk: false,
    today: "2026-06-15",
  };
  return { io, printed, said };
}
