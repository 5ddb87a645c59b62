/** Standard input, whole, from a pipe however slow. */
import { readSync } from "node:fs";

const PIECE_BYTES = 65_536;
const PAUSE_MS = 5;

/**
 * Reads to the end, or until `mostBytes` are passed: what is longer is refused by its reader, not read.
 * Waits by itself where the pipe is non-blocking, which Node makes it as soon as anything looks at `process.stdin`.
 */
export function readStandardInput(mostBytes: number): Buffer {
  const pieces: Buffer[] = [];
  const piece = Buffer.alloc(PIECE_BYTES);
  for (let total = 0; total <= mostBytes; ) {
    const length = readPiece(piece);
    if (length === 0) break;
    pieces.push(Buffer.from(piece.subarray(0, length)));
    total += length;
  }
  return Buffer.concat(pieces);
}

function readPiece(piece: Buffer): number {
  for (;;) {
    try {
      return readSync(0, piece);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS);
    }
  }
}
