#!/usr/bin/env bash
# Sets everything up, builds Deadshore with its tests and runs them all.
# Usage: bash tests/run.sh [PRESET]   (release by default; debug, asan, tsan)
set -euo pipefail
cd "$(dirname "$0")/.."

preset=${1:-release}
bash io/setup.sh --tests
[[ $preset != tsan ]] || bash io/setup.sh --clang
cmake --preset "$preset" -DDEADSHORE_TESTS=ON "-DDEADSHORE_WARNINGS_AS_ERRORS=${CI:+ON}"
cmake --build --preset "$preset"
# Windows and the browser wait for programs of others, so they are looked at once more before they
# count as failed. All other tests run once.
ctest --preset "$preset" --label-regex screen --repeat until-pass:2
ctest --preset "$preset" --label-exclude screen
