/** A file's bytes to what it holds, at every door: nothing is guessed, everything that is asked or wrong is told at once. */

import type { Steps } from "../steps.ts";
import type { Answers } from "./asked.ts";
import { decode } from "./decode.ts";
import { looksLikeJson, readJsonFile } from "./json-file.ts";
import type { BringInContext, FileRead } from "./read.ts";
import { readTableFile } from "./table-file.ts";

export function* readFile(bytes: Uint8Array, answers: Answers, context: BringInContext): Steps<FileRead> {
  const decoded = decode(bytes, answers);
  if (decoded.kind === "refused") return decoded;
  if (decoded.kind === "asked") {
    return { kind: "asked", questions: decoded.questions, said: [], columns: [] };
  }
  const { text, encoding } = decoded.value;
  yield;
  const read = yield* looksLikeJson(text)
    ? readJsonFile(text, answers, context)
    : readTableFile(text, answers, context);
  if (read.kind === "refused") return read;
  return { ...read, said: [encoding, ...read.said] };
}
