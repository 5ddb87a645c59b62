/** Files that are on the disk when a function returns, and the folder that knows their names. */
import { closeSync, fsyncSync, openSync, writeSync } from "node:fs";

export interface Writing {
  readonly write: (text: string) => void;
  readonly close: () => void;
}

const BUFFER = 1 << 20;

/** A new file; what is written is on the disk after `close`. */
export function writing(file: string): Writing {
  const descriptor = openSync(file, "wx", 0o600);
  let kept = "";
  const flush = () => {
    const bytes = Buffer.from(kept);
    for (let at = 0; at < bytes.length; ) at += writeSync(descriptor, bytes, at);
    kept = "";
  };
  return {
    write(text) {
      kept += text;
      if (kept.length > BUFFER) flush();
    },
    close() {
      try {
        flush();
        fsyncSync(descriptor);
      } finally {
        closeSync(descriptor);
      }
    },
  };
}

export function syncFolder(folder: string): void {
  const descriptor = openSync(folder, "r");
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
