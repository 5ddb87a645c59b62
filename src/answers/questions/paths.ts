/** Entries of a tank file by their place, such as `floor.depth_mm`: looked up, set, taken out. Copies, never changes. */
import { type TankFile, tankFileSchema } from "../../contract/tank-file/schema.ts";

type Node = Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export function entryAt(file: TankFile, path: string): unknown {
  return path.split(".").reduce<unknown>((node, name) => (isNode(node) ? node[name] : undefined), file);
}

/** `undefined` takes an entry out, and a group that is then empty with it. */
export function withEntries(file: TankFile, changes: readonly (readonly [string, unknown])[]): TankFile {
  const changed = changes.reduce<Node>((node, [path, value]) => set(node, path.split("."), value), file);
  return inOrder(changed) as TankFile;
}

function set(node: Node, [name = "", ...rest]: readonly string[], value: unknown): Node {
  const below = node[name];
  const next = rest.length === 0 ? value : set(isNode(below) ? below : {}, rest, value);
  const emptied = rest.length > 0 && isNode(next) && Object.keys(next).length === 0;
  if (next !== undefined && !emptied) return { ...node, [name]: next };
  const { [name]: _, ...left } = node;
  return left;
}

const ORDER = Object.keys(tankFileSchema.shape);

/** Entries in the order of the form, so that the same answers make the same document in whatever order they came. */
function inOrder(file: Node): Node {
  const place = (name: string) => ORDER.indexOf(name);
  return Object.fromEntries(Object.entries(file).sort(([a], [b]) => place(a) - place(b)));
}
