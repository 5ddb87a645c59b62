/** The nearest of some names to a mistyped one, or null when none is near. */
export function nearest(typed: string, names: readonly string[]): string | null {
  const wanted = typed.toLowerCase().replace(/[\s-]+/g, "_");
  let best: { name: string; steps: number } | null = null;
  for (const name of names) {
    const steps = edits(wanted.slice(0, 60), name.toLowerCase());
    if (best === null || steps < best.steps) best = { name, steps };
  }
  if (best !== null && best.steps <= Math.max(2, Math.floor(best.name.length / 3))) return best.name;
  // A name without its unit, or with another: water, temp_f.
  const stem = wanted.split("_")[0] ?? "";
  return stem.length < 3 ? null : (names.find((name) => name.toLowerCase().startsWith(stem)) ?? null);
}

function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
