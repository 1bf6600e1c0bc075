#!/usr/bin/env bash
# Runs clang-tidy, with the rules in .clang-tidy, over every source of the program and the libraries.
# Usage: bash tests/tidy.sh [REGEX of paths]   ("solver/panel" for a folder; all by default)
set -euo pipefail
cd "$(dirname "$0")/.."

bash io/setup.sh
bash io/setup.sh --clang
# Precompiled headers are g++'s own.
cmake --preset release -B build/tidy -DDEADSHORE_TESTS=OFF -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON \
  -DCMAKE_EXPORT_COMPILE_COMMANDS=ON >/dev/null
run-clang-tidy -quiet -p build/tidy -extra-arg=-Wno-unknown-warning-option \
  "$PWD/(mesh|solver|viz|io)/.*${1:-}"
