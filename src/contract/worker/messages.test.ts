import { describe, expect, test } from "vitest";
import { replyOfEngine, wordToEngine } from "./messages.ts";

const ask = {
  kind: "ask",
  id: 1,
  facts: { name: "Kitchen tank" },
  choice: { members: 20, seed: 1 },
  change: { feed: "+50 %", crew: ["+2 trochus-snail"] },
  parts: ["larder", "waves"],
};

test("an ask is taken as it is, with a change or without", () => {
  expect(wordToEngine(ask)).toBe(ask);
  expect(wordToEngine({ ...ask, change: null })).not.toBeNull();
});

test("an address starts the solver", () => {
  expect(wordToEngine({ kind: "start", solver: "/assets/highs.wasm", more: 1 })).toEqual({
    kind: "start",
    solver: "/assets/highs.wasm",
  });
});

test("learning and leaving off are taken as they are", () => {
  const learn = {
    kind: "learn",
    id: 2,
    facts: {},
    record: { observations: [], happenings: [], asOf: "2026-06-15" },
  };
  expect(wordToEngine(learn)).toBe(learn);
  expect(wordToEngine({ ...learn, record: { observations: [] } })).toBeNull();
  expect(wordToEngine({ kind: "stop", id: 2 })).toEqual({ kind: "stop", id: 2 });
  expect(wordToEngine({ kind: "stop", id: "2" })).toBeNull();
});

describe("not taken", () => {
  test.each([
    ["nothing", undefined],
    ["text", "ask"],
    ["a list", [ask]],
    ["an unknown word", { ...ask, kind: "tell" }],
    ["an ask without a number", { ...ask, id: "1" }],
    ["facts that are text", { ...ask, facts: "{}" }],
    ["no member", { ...ask, choice: { members: 0, seed: 1 } }],
    ["half a member", { ...ask, choice: { members: 1.5, seed: 1 } }],
    ["more members than are ever asked for", { ...ask, choice: { members: 1e6, seed: 1 } }],
    ["a change of something unknown", { ...ask, change: { pump: "off" } }],
    ["a crew that is one text", { ...ask, change: { crew: "+2 trochus-snail" } }],
    ["a part that there is none of", { ...ask, parts: ["larder", "score"] }],
    ["a solver that is a number", { kind: "start", solver: 1 }],
  ])("%s", (_, data) => {
    expect(wordToEngine(data)).toBeNull();
  });

  test.each([
    ["a reply without its number", { kind: "answers", answers: {} }],
    ["answers that are text", { kind: "answers", id: 1, answers: "{}" }],
    ["a refusal without lines", { kind: "refused", id: 1 }],
    ["something learned that is nothing", { kind: "learned", id: 1, seen: null }],
    ["a failure without a reason", { kind: "failed", id: 1 }],
    ["readiness without a solver", { kind: "ready", solver: {} }],
  ])("%s", (_, data) => {
    expect(replyOfEngine(data)).toBeNull();
  });
});

test("replies are taken as they are", () => {
  for (const reply of [
    { kind: "progress", id: 1, doing: "waves", share: 0.5 },
    { kind: "answers", id: 1, answers: {} },
    { kind: "learned", id: 1, seen: { taught: null } },
    { kind: "refused", id: 1, lines: ["--feed: ..."] },
    { kind: "failed", id: null, why: "not found" },
  ]) {
    expect(replyOfEngine(reply)).toBe(reply);
  }
});
