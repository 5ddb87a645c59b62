/**
 * Whether given supplies can meet given needs: a transportation problem, solved exactly as a greatest flow (Dinic's
 * algorithm over real numbers). Written apart from the planner, so that the two can be held against each other.
 */

export interface Eater {
  /** Food it must get in all, mg C a day. */
  readonly need: number;
  /** Most it can take from each supply, by index; 0 where it does not eat. */
  readonly most: readonly number[];
}

interface Edge {
  readonly to: number;
  left: number;
  readonly back: number;
}

/** Flow below this is no flow: rounding of sums of mg C. */
const NOTHING = 1e-11;

/** Most that all eaters together can get, and what each gets, mg C a day. */
export function greatestFeed(
  supplies: readonly number[],
  eaters: readonly Eater[],
): { readonly fed: number; readonly each: readonly number[] } {
  const source = 0;
  const shelf = (j: number) => 1 + j;
  const eater = (i: number) => 1 + supplies.length + i;
  const sink = 1 + supplies.length + eaters.length;
  const graph: Edge[][] = Array.from({ length: sink + 1 }, () => []);
  const join = (from: number, to: number, most: number): void => {
    graph[from]!.push({ to, left: most, back: graph[to]!.length });
    graph[to]!.push({ to: from, left: 0, back: graph[from]!.length - 1 });
  };
  supplies.forEach((amount, j) => {
    join(source, shelf(j), amount);
  });
  eaters.forEach(({ need, most }, i) => {
    most.forEach((limit, j) => {
      if (limit > 0) join(shelf(j), eater(i), limit);
    });
    join(eater(i), sink, need);
  });
  let fed = 0;
  for (;;) {
    const level = levels(graph, source);
    if (level[sink] === -1) break;
    const tried = new Int32Array(graph.length);
    for (;;) {
      const pushed = push(graph, level, tried, source, sink, Number.POSITIVE_INFINITY);
      if (pushed <= NOTHING) break;
      fed += pushed;
    }
  }
  const each = eaters.map(({ need }, i) => need - graph[eater(i)]!.find(({ to }) => to === sink)!.left);
  return { fed, each };
}

/** Steps from the source along edges with room; -1 where there is no way. */
function levels(graph: readonly Edge[][], source: number): Int32Array {
  const level = new Int32Array(graph.length).fill(-1);
  level[source] = 0;
  const queue = [source];
  for (const at of queue) {
    for (const { to, left } of graph[at]!) {
      if (left > NOTHING && level[to] === -1) {
        level[to] = level[at]! + 1;
        queue.push(to);
      }
    }
  }
  return level;
}

function push(
  graph: readonly Edge[][],
  level: Int32Array,
  tried: Int32Array,
  at: number,
  sink: number,
  most: number,
): number {
  if (at === sink) return most;
  const edges = graph[at]!;
  for (; tried[at]! < edges.length; tried[at] = tried[at]! + 1) {
    const edge = edges[tried[at]!]!;
    if (edge.left <= NOTHING || level[edge.to] !== level[at]! + 1) continue;
    const pushed = push(graph, level, tried, edge.to, sink, Math.min(most, edge.left));
    if (pushed > NOTHING) {
      edge.left -= pushed;
      graph[edge.to]![edge.back]!.left += pushed;
      return pushed;
    }
  }
  return 0;
}
