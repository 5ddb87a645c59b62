/** Runs readers over a file's entries and gathers what they say, each with its place. */
import { type Amount, isKept, type Kept, type Outcome } from "../quantity/outcome.ts";
import { NO_PREFERENCES, type Preferences } from "../quantity/preferences.ts";
import { type Finding, labelOf, type Notice, type Path, pathText } from "./finding.ts";
import type { Told } from "./stated.ts";

export interface EntryContext {
  readonly preferences: Preferences;
  readonly today: string;
  readonly lineOf: (path: Path) => number | null;
}

export class Entries {
  readonly findings: Finding[] = [];
  readonly notices: Notice[] = [];
  readonly context: EntryContext;

  constructor(context: EntryContext) {
    this.context = context;
  }

  /** Reads one entry; undefined where it is absent, or was not kept and is now a finding. */
  read<T>(
    path: Path,
    value: string | number | undefined,
    reader: (text: string, context: { preferences: Preferences; label: string }) => Outcome<T>,
  ): T | undefined {
    return this.kept(path, value, reader)?.value;
  }

  kept<T>(
    path: Path,
    value: string | number | undefined,
    reader: (text: string, context: { preferences: Preferences; label: string }) => Outcome<T>,
  ): Kept<T> | undefined {
    if (value === undefined) return undefined;
    // A number of the file's own syntax has a decimal point whatever the keeper's locale.
    const { preferences } = this.context;
    const own = typeof value === "number" ? { ...preferences, locale: NO_PREFERENCES.locale } : preferences;
    const outcome = reader(String(value), { preferences: own, label: labelOf(path) });
    return this.take(path, outcome);
  }

  /** Files an outcome under its place. */
  take<T>(path: Path, outcome: Outcome<T>): Kept<T> | undefined {
    const place = { path: pathText(path), label: labelOf(path), line: this.context.lineOf(path) };
    if (isKept(outcome)) {
      if (outcome.message !== null) this.notices.push({ ...place, ...outcome.message });
      return outcome;
    }
    this.findings.push({
      ...place,
      typed: outcome.original.text,
      message: outcome.message,
      choices: outcome.choices,
    });
    return undefined;
  }

  /** An amount and the words it came in. */
  told(
    path: Path,
    value: string | number | undefined,
    reader: (text: string, context: { preferences: Preferences; label: string }) => Outcome<Amount>,
  ): Told | undefined {
    const outcome = this.kept(path, value, reader);
    if (outcome === undefined) return undefined;
    const { low, central, high, unit } = outcome.value;
    const typed = typeof value === "number" ? `${value} ${unit}`.trim() : outcome.original.text.trim();
    return { low, central, high, how: `typed as ${typed}` };
  }
}
