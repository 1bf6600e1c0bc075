#!/usr/bin/env bash
# Builds the fuzzers with clang's sanitizers and runs each for a while from the sample jobs and tables.
# Usage: bash tests/fuzz/run.sh [SECONDS [NAME...]]   (60 each; read_job mesh_job read_tables)
# Finds are left in build/fuzz/finds: fix what they show and add them, made small, to tests/fuzz/corpus.
set -euo pipefail
cd "$(dirname "$0")/../.."

seconds=${1:-60}
names=("${@:2}")
[[ ${#names[@]} -gt 0 ]] || names=(read_job mesh_job read_tables)

cmake --preset fuzz >/dev/null
cmake --build --preset fuzz --target "${names[@]/#/fuzz_}"
cd build/fuzz
mkdir -p finds seeds_jobs seeds_tables
cp ../../tests/io/data/*.toml ../../io/examples/*.toml ../../tests/fuzz/corpus/* seeds_jobs
cp ../../io/data/*.toml seeds_tables

# Keys, table headers and values of the samples, as libFuzzer's dictionary.
grep -hoE '^\[?\[?[A-Za-z_."]+\]?\]?|"[^"\\]*"' seeds_jobs/*.toml seeds_tables/*.toml |
  LC_ALL=C sort -u | grep -avP '[^ -~]' | sed 's/["\\]/\\&/g; s/.*/"&"/' >words.dict

# libfontconfig and the like keep what they allocate; leaks are looked for by the tests.
export ASAN_OPTIONS=detect_leaks=0 UBSAN_OPTIONS=print_stacktrace=1 OMP_NUM_THREADS=1
for name in "${names[@]}"; do
  seeds=seeds_jobs
  [[ $name == read_tables ]] && seeds=seeds_tables
  mkdir -p "found_$name"
  echo "== $name"
  tests/fuzz/fuzz_"$name" -max_total_time="$seconds" -max_len=20000 -timeout=20 -rss_limit_mb=4000 \
    -dict=words.dict -artifact_prefix="finds/$name-" -print_final_stats=1 \
    "found_$name" "$seeds"
done
