/** Who is not in the plan: wishes first, then the refused with their reason, then those that fit and are not needed. */

import { counted, withDates, wrap } from "../../answers/words.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import type { Refused, Spare } from "../../engine/stocking/plan-shape.ts";
import type { Io } from "../io.ts";

export function wishText({ wishes, refused, spare }: Plan, io: Io): string {
  if (wishes.length === 0) return "";
  const lines = wishes.map(({ animal, status, costs }) => {
    const text =
      status === "refused"
        ? `${animal.commonName}: ${whyNot(animal.id, refused, spare)}`
        : `${animal.commonName}: in the plan; ${
            costs.length === 0
              ? "it costs the others nothing"
              : `it takes the place of ${costs.map(({ animal: other, fewer }) => counted(fewer, other.commonName)).join(", ")}`
          }.`;
    return wrap(text, io.width, "  ", "    ");
  });
  return [io.bold("Your wishes"), ...lines].join("\n");
}

function whyNot(id: string, refused: readonly Refused[], spare: readonly Spare[]): string {
  const no = refused.find(({ animal }) => animal.id === id);
  if (no !== undefined) return verdict(no);
  const why = spare.find(({ animal }) => animal.id === id)?.why;
  return why === undefined ? "not in this plan." : `not in this plan; ${withDates(why)}.`;
}

export function refusedText({ refused }: Plan, io: Io, full: boolean): string {
  const asked = ({ animal }: Refused) => animal.role === "crew" && animal.keeperLevel === "first-tank";
  const shown = (full ? [...refused] : refused.filter(asked)).sort(
    (a, b) => rank(a.animal.role) - rank(b.animal.role) || a.reasons.length - b.reasons.length,
  );
  if (refused.length === 0) return "";
  const lines = shown.map((row) => wrap(`${row.animal.commonName}: ${verdict(row)}`, io.width, "  ", "    "));
  const more = refused.length - shown.length;
  if (more > 0)
    lines.push(
      wrap(
        `${shown.length === 0 ? "" : "... and "}${more}${shown.length === 0 ? "" : " more"}: --all, or grazewell animals ID FILE`,
        io.width,
        "  ",
        "    ",
      ),
    );
  return [io.bold("Not for this tank, or not yet"), ...lines].join("\n");
}

const rank = (role: string): number =>
  ["crew", "crew_with_caution", "compatibility_only", "hitchhiker"].indexOf(role);

/** "not yet, once the tank has a lid or net. It climbs or jumps out of an open tank." */
function verdict({ status, reasons }: Refused): string {
  const first = reasons[0]!;
  const until = reasons.flatMap((reason) => (reason.until === null ? [] : [reason.until]))[0];
  const never = first.code === "role" ? "not crew" : "never in this tank";
  const word = status === "never" ? never : `not yet${until === undefined ? "" : `, ${until}`}`;
  return withDates(`${word}. ${first.text}`);
}

export function spareText({ spare }: Plan, io: Io): string {
  if (spare.length === 0) return "";
  return [
    io.bold("Fit, but not needed"),
    ...spare.map(({ animal, why }) =>
      wrap(`${animal.commonName}: ${withDates(why)}.`, io.width, "  ", "    "),
    ),
  ].join("\n");
}
