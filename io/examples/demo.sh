#!/usr/bin/env bash
# Sets everything up, builds Deadshore and runs it on the demo: an invented wall, from the whole wall
# to the last prop out.
# Usage: bash io/examples/demo.sh [JOB.toml]
set -euo pipefail
cd "$(dirname "$0")/../.."

job=${1:-io/examples/kitchen_wall.toml}
bash io/setup.sh
cmake --preset release -DDEADSHORE_TESTS=OFF "-DDEADSHORE_WARNINGS_AS_ERRORS=${CI:+ON}"
cmake --build --preset release --target deadshore
build/release/io/deadshore run "$job" --timings
