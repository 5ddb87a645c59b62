#!/usr/bin/env bash
# From a fresh clone to proof: gets what the tests need, then runs every check and every test.
# The last line is "N passed, N failed".
set -euo pipefail
cd "$(dirname "$0")/.."

bash tools/prepare.sh
exec npm run --silent check
