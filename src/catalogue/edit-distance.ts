/**
 * Edits (one letter added, dropped, changed, or two neighbours swapped) that turn `a` into `b`.
 * Gives `most + 1` as soon as it is sure that more than `most` are needed.
 */
export function editDistance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, beforeLast[j - 2]! + 1);
      row.push(best);
    }
    if (Math.min(...row) > most) return most + 1;
    beforeLast = last;
    last = row;
  }
  return Math.min(last[b.length]!, most + 1);
}
