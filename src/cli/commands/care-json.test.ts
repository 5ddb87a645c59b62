/** Care as data: what the commands print with --json keeps to the published schemas, and every number told has its working. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Command } from "commander";
import { expect, test } from "vitest";
import { z } from "zod";
import { keptIo } from "../../../checks/kit/io.ts";
import type { Io } from "../io.ts";

const FILE = "examples/first-reef.yaml";

async function data(name: string, ...words: string[]): Promise<unknown> {
  const { io, printed } = keptIo();
  await (await commandOf(name, io)).exitOverride().parseAsync([...words, "--json"], { from: "user" });
  return JSON.parse(printed.join("\n"));
}

async function commandOf(name: string, io: Io): Promise<Command> {
  const loaded = (await import(join(import.meta.dirname, `${name}.ts`))) as {
    readonly command: (io: Io) => Command;
  };
  return loaded.command(io);
}

const schemaOf = (file: string) =>
  z.fromJSONSchema(
    JSON.parse(
      readFileSync(join(import.meta.dirname, "../../../docs/schemas", `${file}.schema.json`), "utf8"),
    ),
  );

/** Ids of numbers told anywhere in it, and of the workings that it brings. */
function figuresIn(value: unknown): { readonly told: Set<string>; readonly brought: Set<string> } {
  const told = new Set<string>();
  const walk = (one: unknown): void => {
    if (typeof one !== "object" || one === null) return;
    const { text, figure } = one as { readonly text?: unknown; readonly figure?: unknown };
    if (typeof text === "string" && typeof figure === "string") told.add(figure);
    for (const [key, inner] of Object.entries(one)) if (key !== "figures") walk(inner);
  };
  walk(value);
  const { figures } = value as { readonly figures: readonly { readonly id: string }[] };
  return { told, brought: new Set(figures.map(({ id }) => id)) };
}

test.each([
  ["feeding", "feeding", [FILE]],
  ["feeding", "holiday", [FILE, "--from", "18 Jun 2026", "--to", "2026-06-28"]],
  ["wrong", "wrong-list", ["ammonia", FILE]],
  [
    "arrivals",
    "arrivals",
    ["examples/copper-110.yaml", "--fallow", "--group", "corals", "--from", "1 Jul 2026"],
  ],
])("%s --json is as %s.schema.json says, every number with its working", async (name, schema, words) => {
  const printed = await data(name, ...words);
  expect(schemaOf(schema).safeParse(printed).error?.issues ?? []).toEqual([]);
  const { told, brought } = figuresIn(printed);
  expect(told.size).toBeGreaterThan(0);
  for (const id of told) expect([...brought]).toContain(id);
});

test("lists of what to do first, all of them and one, without a tank", async () => {
  const all = await data("wrong");
  expect(schemaOf("wrong").safeParse(all).error?.issues ?? []).toEqual([]);
  const one = await data("wrong", "person");
  expect(schemaOf("wrong-list").safeParse(one).error?.issues ?? []).toEqual([]);
  expect(one).toMatchObject({ tank: null, numbers: null, figures: [] });
  const { lists } = all as { readonly lists: readonly unknown[] };
  expect(lists).toContainEqual((one as { readonly list: unknown }).list);
});

/** They answer nothing of a tank: they run the page, move files, or look after the store. */
const WITHOUT = ["serve", "bring-in", "take-out", "backup", "restore", "check-store", "move-store"];

test("every command that answers has --json", async () => {
  const names = readdirSync(import.meta.dirname)
    .filter((file) => file.endsWith(".ts") && !file.endsWith(".test.ts"))
    .map((file) => file.replace(/\.ts$/, ""));
  const { io } = keptIo();
  for (const name of names.filter((one) => !WITHOUT.includes(one))) {
    const command = await commandOf(name, io);
    const all = [command, ...command.commands];
    const has = all.some(({ options }) => options.some(({ long }) => long === "--json"));
    expect(has, name).toBe(true);
  }
});
