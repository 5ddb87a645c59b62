/** Something wrong in a file of facts/: where, what, and the likely way out. */
export interface Problem {
  readonly file: string;
  readonly field: string;
  readonly wrong: string;
  readonly fix: string;
}

export function formatProblem({ file, field, wrong, fix }: Problem): string {
  return `${file}: ${field === "" ? "(whole file)" : field}: ${wrong}. ${fix}`;
}
