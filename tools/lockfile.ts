/** What package-lock.json says of the packages this program is made of. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

export interface LockedPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly integrity: string | undefined;
  readonly resolved: string | undefined;
  readonly hasInstallScript: boolean;
  /** True when it is part of what a keeper runs, not only of what builds and tests it. */
  readonly production: boolean;
}

type Entry = Partial<
  Record<"version" | "license" | "integrity" | "resolved", string> &
    Record<"dev" | "devOptional" | "hasInstallScript", boolean>
>;

export function lockedPackages(): LockedPackage[] {
  const text = readFileSync(join(import.meta.dirname, "../package-lock.json"), "utf8");
  const { packages } = JSON.parse(text) as { packages: Record<string, Entry> };
  return Object.entries(packages).flatMap(([path, entry]) =>
    path === ""
      ? []
      : [
          {
            name: path.replace(/^.*node_modules\//, ""),
            version: entry.version ?? "",
            licence: entry.license ?? "none stated",
            integrity: entry.integrity,
            resolved: entry.resolved,
            hasInstallScript: entry.hasInstallScript === true,
            production: entry.dev !== true,
          },
        ],
  );
}
