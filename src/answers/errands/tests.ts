/** Tests to take, and therefore to have: what gates ask for and what would narrow the plan. */
import type { AheadOutput } from "../../contract/output/ahead.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { dateWords } from "../words.ts";

export interface TestErrand {
  readonly name: string;
  /** Without a full stop. */
  readonly why: string;
}

/** Test → words by which a gate or a doubt asks for it. */
const TESTS: readonly (readonly [name: string, asks: RegExp])[] = [
  ["ammonia test", /\bammonia\b/],
  ["nitrite test", /\bnitrite\b/],
  ["nitrate test", /\bnitrate\b/],
  ["phosphate test", /\bphosphate\b/],
  ["copper test", /\bcopper\b.*\btest|\btest.*\bcopper\b/i],
  ["thermometer", /\bthermometer\b/],
];

export function testsOf(waves: WavesOutput, ahead: AheadOutput): TestErrand[] {
  const gates = waves.waves.flatMap(({ number, from, only_if }) =>
    only_if.map((text) => ({
      text,
      why: `wave ${number} asks for it (${dateWords(from)}): only if ${text}`,
    })),
  );
  const doubts = [
    ...waves.would_change.map(({ ask }) => ({ text: ask, why: `it would change the plan most: ${ask}` })),
    ...ahead.as_it_is.chances.flatMap(({ missing }) =>
      missing === null
        ? []
        : [{ text: missing, why: "without it the weeks ahead are those of a typical tank" }],
    ),
  ];
  return TESTS.flatMap(([name, asks]) => {
    const first = [...gates, ...doubts].find(({ text }) => asks.test(text));
    return first === undefined ? [] : [{ name, why: first.why }];
  });
}
