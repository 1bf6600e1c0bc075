#!/usr/bin/env bash
# Measures how many lines and branches of mesh/ and solver/ are run by their own tests and by those
# against published values. Usage: bash tests/coverage.sh   (the page is build/coverage/lines.html)
set -euo pipefail
cd "$(dirname "$0")/.."

bash io/setup.sh --tests
bash io/setup.sh --coverage
tests=(deadshore_mesh_tests deadshore_solver_tests deadshore_published_tests)
cmake --preset coverage >/dev/null
cmake --build --preset coverage --target "${tests[@]}"
find build/coverage -name '*.gcda' -delete
for program in "${tests[@]}"; do
  folder=${program#deadshore_}
  OMP_NUM_THREADS=1 "build/coverage/tests/${folder%_tests}/$program" --gtest_brief=1
done
gcovr --root . --object-directory build/coverage --filter 'mesh/' --filter 'solver/' \
  --exclude-throw-branches --html-details build/coverage/lines.html --print-summary --sort-percentage
