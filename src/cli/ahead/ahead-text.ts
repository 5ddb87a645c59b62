/** The weeks ahead for a person to read: a finding first, then the course, then chances, then what it rests on. */

import { findingOf } from "../../answers/ahead/finding.ts";
import type { AheadReport } from "../../answers/ahead/report.ts";
import { CAUTION, STATEMENT } from "../../answers/statement.ts";
import { counted } from "../../answers/words.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";
import { chancesText, kindsText } from "./chances-text.ts";
import { courseText } from "./course-text.ts";
import { oxygenText } from "./oxygen-text.ts";
import { type Page, pageOf } from "./page.ts";
import { twentyText } from "./twenty-text.ts";

export function aheadText(report: AheadReport, facts: TankFacts, io: Io): string {
  const page = pageOf(report, facts, io);
  const parts = [
    headingText(page),
    findingText(page),
    report.warnings.map((text) => page.say(text, "! ", "  ")).join("\n"),
    courseText(page),
    oxygenText(page),
    chancesText(page),
    kindsText(page),
    twentyText(page),
    restsOnText(page),
    [STATEMENT, CAUTION.sick].map((text) => page.say(text)).join("\n"),
  ];
  return parts.filter((part) => part !== "").join("\n\n");
}

function headingText({ report, facts, io, lastWeek, dateOf, say, outlooks: [asItIs] }: Page): string {
  const crew = report.withPlan
    ? "with the waves of its plan"
    : asItIs.course.kinds.length === 0
      ? "without a crew"
      : "with the animals that live there or are planned";
  const runs = `${asItIs.course.forecast.members} runs`;
  return say(
    `${io.bold(`Weeks ahead of ${facts.name}`)}: how it could go until ${dateOf(lastWeek)}, kept as today, ${crew}. ${runs}, told as so many of 20.`,
  );
}

function findingText({ report, outlooks: [asItIs, whatIf], say }: Page): string {
  if (whatIf === undefined) return say(findingOf(asItIs));
  return [
    say(`As it is: ${findingOf(asItIs)}`, "", "  "),
    say(`What if ${report.changes.join("; ")}: ${findingOf(whatIf)}`, "", "  "),
  ].join("\n");
}

function restsOnText({ report: { sharpen }, facts, io, say }: Page): string {
  const assumed = facts.assumed.length;
  const lines = [
    "Care goes on as told. Nobody feeds by hand, takes out the dead or pulls algae; who eats whom is not in the runs.",
    "The limits are values of the catalogue, some of them judgement: --json names each with its reason.",
    assumed === 0
      ? "Nothing was assumed that could be told."
      : `${counted(assumed, "fact")} ${assumed === 1 ? "was" : "were"} assumed, as nobody said: grazewell check FILE names ${assumed === 1 ? "it" : "them"}.`,
    ...(sharpen.length === 0 ? [] : [`To narrow it most: ${sharpen.map(({ ask }) => ask).join("; ")}.`]),
  ];
  return [
    say(io.bold("What it rests on, and what would sharpen it")),
    ...lines.map((text) => say(text, "  ", "  ")),
  ].join("\n");
}
