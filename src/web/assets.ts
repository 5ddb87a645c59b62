/** What the layout asks for, from what the build wrote: source path below src/web without extension, to address. */
import type { Assets } from "./layout.tsx";

export function assetsOf(addresses: Readonly<Record<string, string>>): Assets {
  const address = (name: string): string => {
    const found = addresses[name];
    if (found === undefined) throw new Error(`Cannot draw pages: the build has no ${name}`);
    return found;
  };
  return {
    css: address("style/main"),
    scripts: Object.fromEntries(
      Object.entries(addresses).flatMap(([name, at]) =>
        name.startsWith("client/") ? [[name.slice("client/".length), at]] : [],
      ),
    ),
    icon: address("offline/icon.svg"),
    touchIcon: address("offline/touch-icon.png"),
    manifest: address("offline/grazewell.webmanifest"),
  };
}
