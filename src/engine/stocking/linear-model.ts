/**
 * An integer programme as plain data, and what a solver answers. Knows no animal and no tank.
 * The solver is an argument of stocking: any that proves an optimum will do.
 */

export interface Column {
  readonly name: string;
  readonly lower: number;
  /** May be Infinity. */
  readonly upper: number;
  readonly cost: number;
  readonly integer: boolean;
}

export interface Row {
  readonly name: string;
  /** May be -Infinity. */
  readonly lower: number;
  /** May be Infinity. */
  readonly upper: number;
  /** Column index and coefficient. */
  readonly entries: readonly (readonly [column: number, coefficient: number])[];
}

/** Always minimised. */
export interface LinearModel {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

export type Solution =
  | {
      readonly status: "optimal";
      readonly objective: number;
      readonly values: Float64Array;
    }
  | {
      /** Stopped by its time limit with a plan in hand; `gap` is how far from the proven bound, relative. */
      readonly status: "incumbent";
      readonly objective: number;
      readonly values: Float64Array;
      readonly gap: number;
    }
  | { readonly status: "infeasible" }
  | { readonly status: "failed"; readonly why: string };

/** Solves to proven optimality where it can. */
export type Solve = (model: LinearModel) => Solution;

/** Builds a model by name, so that the rows of a programme read like its sentences. */
export class ModelBuilder {
  private readonly columns: Column[] = [];
  private readonly rows: Row[] = [];
  private readonly index = new Map<string, number>();

  column(
    name: string,
    given: { lower?: number; upper?: number; cost?: number; integer?: boolean } = {},
  ): void {
    if (this.index.has(name)) throw new RangeError(`Cannot build the model: column ${name} is there already`);
    this.index.set(name, this.columns.length);
    const { lower = 0, upper = Number.POSITIVE_INFINITY, cost = 0, integer = false } = given;
    this.columns.push({ name, lower, upper, cost, integer });
  }

  has(name: string): boolean {
    return this.index.has(name);
  }

  /** `lower <= sum of terms <= upper`; terms on one column add up. */
  row(
    name: string,
    terms: readonly (readonly [column: string, coefficient: number])[],
    bounds: { lower?: number; upper?: number },
  ): void {
    const sums = new Map<number, number>();
    for (const [column, coefficient] of terms) {
      const at = this.index.get(column);
      if (at === undefined) throw new RangeError(`Cannot build row ${name}: there is no column ${column}`);
      sums.set(at, (sums.get(at) ?? 0) + coefficient);
    }
    this.rows.push({
      name,
      lower: bounds.lower ?? Number.NEGATIVE_INFINITY,
      upper: bounds.upper ?? Number.POSITIVE_INFINITY,
      entries: [...sums].filter(([, coefficient]) => coefficient !== 0),
    });
  }

  build(): LinearModel {
    return { columns: this.columns, rows: this.rows };
  }

  /** Value of a column in a solution. */
  valueOf(values: Float64Array, name: string): number {
    const at = this.index.get(name);
    if (at === undefined) throw new RangeError(`Cannot read the solution: there is no column ${name}`);
    return values[at]!;
  }
}
