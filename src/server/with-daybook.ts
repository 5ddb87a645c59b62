/**
 * A tank's answers with its daybook, as the one reader finds them. Where an entry and the answers can't stand together
 * any more (sand dwellers on a floor that is said to be bare since), the answers' own part stands, and that is said.
 */
import { findAnimal } from "../catalogue/index.ts";
import { applyDaybook } from "../contract/daybook/apply/apply.ts";
import type { Since } from "../contract/daybook/apply/scene.ts";
import type { DaybookEntry } from "../contract/daybook/kinds.ts";
import type { Notice } from "../contract/tank-file/finding.ts";
import type { TankFileResult } from "../contract/tank-file/read.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";

export interface WithDaybook {
  readonly document: TankFile;
  readonly result: TankFileResult;
}

type Read = (document: TankFile) => TankFileResult;

/** `read`: the one reader, with the day it reads on. */
export function withDaybook(
  document: TankFile,
  entries: readonly DaybookEntry[],
  scene: { readonly today: string; readonly since: Since },
  read: Read,
): WithDaybook {
  const applied = applyDaybook(document, entries, { ...scene, findAnimal });
  const notes = applied.notes.map(note);
  let file = applied.document;
  let result = read(file);
  while (!result.ok) {
    const back = parts(file, document);
    if (back.length === 0) return { document: file, result };
    const named = back.filter(
      (part) => result.ok || result.findings.some(({ path }) => rootOf(path) === part),
    );
    const given = named.length > 0 ? named : [back[0] as Part];
    const why = result.findings[0]?.message.text ?? "";
    notes.push(note(`The daybook and the answers do not agree, and the answers stand: ${why}`));
    file = { ...file, ...pick(document, given) };
    for (const part of given) if (document[part] === undefined) delete file[part];
    result = read(file);
  }
  return { document: file, result: { ...result, notices: [...result.notices, ...notes] } };
}

type Part = keyof TankFile;

/** Parts that the daybook has changed; animals first, as most that can disagree hangs on them. */
function parts(file: TankFile, document: TankFile): Part[] {
  const all = [...new Set([...Object.keys(file), ...Object.keys(document)])] as Part[];
  const changed = all.filter((part) => file[part] !== document[part]);
  return changed.toSorted((a, b) => Number(!isAnimals(a)) - Number(!isAnimals(b)));
}

const isAnimals = (part: Part): boolean => part === "animals_present" || part === "fish";

const rootOf = (path: string): string => /^\w+/.exec(path)?.[0] ?? "";

const pick = (document: TankFile, names: readonly Part[]): Partial<TankFile> =>
  Object.fromEntries(names.flatMap((name) => (document[name] === undefined ? [] : [[name, document[name]]])));

const note = (text: string): Notice => ({
  path: "daybook",
  label: "Daybook",
  line: null,
  kind: "ECHO",
  text,
});
