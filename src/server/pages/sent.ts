/** What a form sent, as the readers take it: texts by name, with a chosen fix in the place of what was typed. */
import type { Values } from "../../answers/questions/prefill.ts";
import { FIX } from "../../web/pages/form-fields.tsx";

export function sentValues(form: URLSearchParams | null): Values {
  const sent: Record<string, string> = {};
  for (const [name, value] of form ?? []) if (!name.startsWith(FIX)) sent[name] = value;
  for (const [name, value] of form ?? []) if (name.startsWith(FIX)) sent[name.slice(FIX.length)] = value;
  return sent;
}

/** Version that a form was made from; 0 where it says none. */
export function versionOf(sent: Values): number {
  const text = sent["version"] ?? "";
  return /^\d{1,9}$/.test(text) ? Number(text) : 0;
}
