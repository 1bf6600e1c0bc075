#!/usr/bin/env bash
# Runs clang-tidy, with the rules in .clang-tidy, over every source of the program and the libraries:
# about half an hour on two cores. CI looks at mesh/ and solver/, a third of that.
# Usage: bash tests/tidy.sh [REGEX of paths]   ("solver/panel/" for a folder; all by default)
set -euo pipefail
cd "$(dirname "$0")/.."

bash io/setup.sh
bash io/setup.sh --clang
# Precompiled headers are g++'s own.
cmake --preset release -B build/tidy -DDEADSHORE_TESTS=OFF -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON \
  -DCMAKE_EXPORT_COMPILE_COMMANDS=ON >/dev/null
run-clang-tidy -quiet -p build/tidy -extra-arg=-Wno-unknown-warning-option \
  "^$PWD/${1:-(mesh|solver|viz|io)/}" >build/tidy/found.txt ||
  { grep -vE '^clang-tidy|^[0-9]+ warnings' build/tidy/found.txt; exit 1; }
echo "clang-tidy: clean"
