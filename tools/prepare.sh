#!/usr/bin/env bash
# Gets what the tests need on a fresh Debian machine: the packages, and glpsol, the other solver that the plans are
# checked against. Nothing that is there already is touched.
set -euo pipefail
cd "$(dirname "$0")/.."

sh tools/setup.sh

if ! command -v glpsol >/dev/null; then
  as_root=()
  [ "$(id -u)" = 0 ] || as_root=(sudo -n)
  echo "Installing glpk-utils (glpsol), the independent solver of the checks ..." >&2
  if ! { "${as_root[@]}" apt-get update -qq &&
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends glpk-utils; } </dev/null >/dev/null; then
    echo "glpk-utils could not be installed; on Debian: apt-get install glpk-utils (as root)." >&2
    exit 69
  fi
fi
