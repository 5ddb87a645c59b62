/**
 * Random integer programmes of stocking's form (docs: sizing), so that solvers can be held against each other
 * before and beside the real planner: heads, presence, intakes at pessimistic and central supply, coverage and
 * redundancy with priced shortfalls. Numbers are invented but of the catalogue's size, in mg C a day.
 */
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { type LinearModel, ModelBuilder } from "../../src/engine/stocking/linear-model.ts";

export interface Size {
  readonly kinds: number;
  readonly shelves: number;
  /** Most heads of one kind. */
  readonly cap: number;
  /** Binaries that say whether a kind is bought: group minimum, price a kind, redundancy. */
  readonly presence: boolean;
}

/** Heads are named `n0`, `n1` and so on, presence `y0`, `y1`; the same seed and size give the same programme. */
export function stockingForm(seed: number, { kinds, shelves, cap, presence }: Size): LinearModel {
  const generator = xoroshiro128plus(seed);
  // Two decimals, so that a text format carries every number exactly.
  const between = (low: number, high: number) =>
    Math.round(100 * (low + (high - low) * ((generator.next() >>> 0) / 2 ** 32))) / 100;
  const chance = (probability: number) => between(0, 1) < probability;
  const build = new ModelBuilder();
  const supply = Array.from({ length: shelves }, () => {
    const central = between(1, 40);
    return { central, pessimistic: Math.round(100 * central * between(0.3, 0.8)) / 100 };
  });
  const eaters: { kind: number; share: number }[][] = supply.map(() => []);

  for (let kind = 0; kind < kinds; kind++) {
    const need = between(0.1, 4);
    const most = Math.round(100 * need * between(1.5, 3)) / 100;
    const heads = Math.max(1, Math.round(cap * between(0.2, 1)));
    const early = chance(0.03) ? 1 : 0;
    build.column(`n${kind}`, {
      integer: true,
      lower: early,
      upper: heads,
      cost: 0.35 + 0.25 * between(1, 12),
    });
    const diet = supply.map((_, shelf) => shelf).filter(() => chance(3 / shelves));
    if (diet.length === 0) diet.push(kind % shelves);
    const weights = diet.map(() => between(0.1, 1));
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    diet.forEach((shelf, at) => {
      const share = Math.round((100 * weights[at]!) / all) / 100;
      eaters[shelf]!.push({ kind, share });
      for (const [x, limit] of [
        ["xP", need],
        ["xC", most],
      ] as const) {
        build.column(`${x}${kind}_${shelf}`);
        build.row(
          `diet_${x}${kind}_${shelf}`,
          [
            [`${x}${kind}_${shelf}`, 1],
            [`n${kind}`, -limit * Math.min(1, 1.4 * share)],
          ],
          { upper: 0 },
        );
      }
    });
    build.row(
      `alive${kind}`,
      [...diet.map((shelf) => [`xP${kind}_${shelf}`, 1] as const), [`n${kind}`, -need]],
      { lower: 0 },
    );
    build.row(
      `appetite${kind}`,
      [...diet.map((shelf) => [`xC${kind}_${shelf}`, 1] as const), [`n${kind}`, -most]],
      { upper: 0 },
    );
    if (presence) {
      const group = Math.min(heads, chance(0.4) ? 3 : 1);
      build.column(`y${kind}`, { integer: true, upper: 1, cost: 1 });
      build.row(
        `bought${kind}`,
        [
          [`n${kind}`, 1],
          [`y${kind}`, -heads],
        ],
        { upper: 0 },
      );
      build.row(
        `group${kind}`,
        [
          [`n${kind}`, 1],
          [`y${kind}`, -group],
        ],
        { lower: 0 },
      );
    }
  }

  supply.forEach(({ central, pessimistic }, shelf) => {
    const at = (x: string) => eaters[shelf]!.map(({ kind }) => [`${x}${kind}_${shelf}`, 1] as const);
    build.row(`low${shelf}`, at("xP"), { upper: pessimistic });
    build.row(`mid${shelf}`, at("xC"), { upper: central });
    build.column(`u${shelf}`, { cost: between(0.6, 1.5) });
    build.row(`coverage${shelf}`, [...at("xC"), [`u${shelf}`, 1]], { lower: Math.round(90 * central) / 100 });
    if (presence && central > 3) {
      const strong = eaters[shelf]!.filter(({ share }) => share >= 0.15);
      build.column(`r${shelf}`, { cost: 4 });
      build.row(
        `redundancy${shelf}`,
        [...strong.map(({ kind }) => [`y${kind}`, 1] as const), [`r${shelf}`, 1]],
        { lower: 2 },
      );
    }
  });
  if (presence) {
    // Kinds that must not live together.
    for (let pair = 0; pair < kinds / 2; pair++) {
      const one = Math.floor(between(0, kinds - 0.01));
      const other = Math.floor(between(0, kinds - 0.01));
      if (one !== other)
        build.row(
          `apart${pair}`,
          [
            [`y${one}`, 1],
            [`y${other}`, 1],
          ],
          { upper: 1 },
        );
    }
  }
  return build.build();
}
