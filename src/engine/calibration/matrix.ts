/** The little linear algebra that the smoother needs: products, a Cholesky factor, solving with it. Rows of numbers. */
export type Matrix = readonly Float64Array[];

export const zeros = (rows: number, columns: number): Float64Array[] =>
  Array.from({ length: rows }, () => new Float64Array(columns));

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}

export const meanOf = (row: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < row.length; i += 1) sum += row[i]!;
  return sum / row.length;
};

/** Each row less its mean. */
export const deviations = (rows: Matrix): Float64Array[] =>
  rows.map((row) => {
    const mean = meanOf(row);
    return row.map((value) => value - mean);
  });

/** Covariances of the rows of `a` with those of `b`, both deviations over the same members. */
export function covariances(a: Matrix, b: Matrix): Float64Array[] {
  const members = a[0]?.length ?? 1;
  return a.map((row) => Float64Array.from(b, (other) => dot(row, other) / (members - 1)));
}

/** Lower factor L of a symmetric positive matrix: L L' = it. @throws RangeError where it is not positive */
export function cholesky(matrix: Matrix): Float64Array[] {
  const n = matrix.length;
  const lower = zeros(n, n);
  for (let i = 0; i < n; i += 1) {
    const row = lower[i]!;
    for (let j = 0; j <= i; j += 1) {
      const other = lower[j]!;
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= row[k]! * other[k]!;
      if (i === j) {
        if (!(sum > 0)) throw new RangeError(`Cannot factor a matrix that is not positive: row ${i}`);
        row[j] = Math.sqrt(sum);
      } else row[j] = sum / other[j]!;
    }
  }
  return lower;
}

/** The x of L L' x = b. */
export function solve(lower: Matrix, b: Float64Array): Float64Array {
  const n = lower.length;
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i += 1) {
    const row = lower[i]!;
    let sum = x[i]!;
    for (let k = 0; k < i; k += 1) sum -= row[k]! * x[k]!;
    x[i] = sum / row[i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k += 1) sum -= lower[k]![i]! * x[k]!;
    x[i] = sum / lower[i]![i]!;
  }
  return x;
}

/** L times a vector. */
export const timesLower = (lower: Matrix, vector: Float64Array): Float64Array =>
  Float64Array.from(lower, (row, i) => {
    let sum = 0;
    for (let k = 0; k <= i; k += 1) sum += row[k]! * vector[k]!;
    return sum;
  });
