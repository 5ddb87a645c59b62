#!/usr/bin/env bash
# Gets what the tests need on a fresh Debian machine: the packages, and programs that the checks look at the work with.
# Nothing that is there already is touched.
set -euo pipefail
cd "$(dirname "$0")/.."

sh tools/setup.sh

listed=no # the package lists, once a run
as_root=()
[ "$(id -u)" = 0 ] || as_root=(sudo -n)

# Installs Debian package $2, which brings the program $1, unless that is there; $3 says what it is for.
need() {
  command -v "$1" >/dev/null && return 0
  echo "Installing $2 ($1): $3 ..." >&2
  if ! { { [ "$listed" = yes ] || "${as_root[@]}" apt-get update -qq; } &&
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive UCF_FORCE_CONFFOLD=1 apt-get install -y -qq --no-install-recommends "$2"; } </dev/null >/dev/null; then
    echo "$2 could not be installed; on Debian: apt-get install $2 (as root)." >&2
    exit 69
  fi
  listed=yes
}

need glpsol glpk-utils "the independent solver that plans are checked against"
# Chromium without its window: the same pages in half the time. Where it is not to be had, Chromium.
browser="the browser that pages are tried in"
(need chromium-headless-shell chromium-headless-shell "$browser") || need chromium chromium "$browser"
need pdftotext poppler-utils "reads the printed sheet"

# PostgreSQL's programs lie outside the path. Its package would make and start a server at once; told beforehand, it does
# not: the checks start their own, in a temporary folder.
if ! ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1; then
  own=/etc/postgresql-common/createcluster.conf
  [ -e "$own" ] || "${as_root[@]}" sh -c "mkdir -p ${own%/*} && echo 'create_main_cluster = false' >$own" || true
  need initdb postgresql "the store's other database"
fi
