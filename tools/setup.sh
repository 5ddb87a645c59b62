#!/bin/sh
# Installs the packages and builds dist/, each only if it is missing or out of date; --build builds in any case.
# Talks on standard error alone, so that a command's data stay clean.
set -eu

cd "$(dirname "$0")/.."
. tools/fresh.sh

say() { printf '%s\n' "$*" >&2; }

major() { "$1" -p 'process.versions.node.split(".")[0]'; }

# Runs a command with its output kept aside; shown only if it fails.
quietly() {
  log=$(mktemp)
  if "$@" >"$log" 2>&1; then
    rm -f "$log"
  else
    cat "$log" >&2
    rm -f "$log"
    return 1
  fi
}

install_packages() {
  if ! command -v node >/dev/null || ! command -v npm >/dev/null; then
    say "Grazewell needs Node 20 or newer, with npm. On Debian: apt-get install nodejs npm; then start it again."
    return 1
  fi
  if [ "$(major node)" -lt 20 ]; then
    say "Grazewell needs Node 20 or newer; this machine has $(node -v)."
    return 1
  fi
  say "Grazewell: installing its packages (0.4 GB on disk, mostly its runtime; usually under a minute) ..."
  # Development packages too, whatever NODE_ENV says: the compiler is one.
  if ! quietly npm ci --include=dev --include=optional --no-audit --no-fund --loglevel=error; then
    say "The packages could not be installed; npm's own words are above. It needs the network this once."
    return 1
  fi
}

# Builds beside dist/ and then changes places, so that a failed or interrupted build leaves the old one as it was.
# Joined by && because `set -e` does not hold inside a condition.
build() {
  next=node_modules/.cache/dist.$$
  trap 'rm -rf "$next" "$next.old"' EXIT
  trap 'exit 130' INT TERM
  mkdir -p src/catalogue/generated "$next" &&
    touch "$next/.built" && # dated before the first source is read: what changes meanwhile is built next time
    node tools/facts/build.ts &&
    node tools/bundle.ts "$next" &&
    { [ ! -d dist ] || mv dist "$next.old"; } &&
    mv "$next" dist
}

# One at a time: two first starts at once would install over each other. Held until this shell ends.
if command -v flock >/dev/null; then
  exec 9<tools/setup.sh
  flock -n 9 || { say "Grazewell: another start is installing or building; waiting for it ..." && flock 9; }
fi

installed . || install_packages
PATH=$PWD/node_modules/.bin:$PATH
if [ "$(major node)" -lt 24 ]; then
  say "Grazewell brings its own Node 24 on Linux (x64, arm64) alone; here, install Node 24 or newer yourself."
  exit 1
fi
if [ "${1-}" = --build ]; then
  build
elif ! built .; then
  say "Grazewell: building (a few seconds) ..."
  if ! quietly build; then
    say "The build failed; what it said is above. If you changed no file, this is a fault in Grazewell."
    exit 1
  fi
fi
