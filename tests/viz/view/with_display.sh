#!/usr/bin/env bash
# Runs a program on a virtual display of its own; exits with 77 (skipped) where there is no Xvfb.
# The server picks its number itself: `xvfb-run -a` can give two tests the same one. -noreset: else it
# refuses who comes while it starts anew after its last client has left. -r: no key repeats itself
# where a busy machine lets it down late.
set -euo pipefail
command -v Xvfb >/dev/null || exit 77
scratch=$(mktemp -d)
server=
trap '[[ -z $server ]] || kill "$server" 2>/dev/null || true; rm -rf "$scratch"' EXIT
mkfifo "$scratch/number"
Xvfb -displayfd 6 -screen 0 1280x1024x24 -nolisten tcp -noreset -r 6>"$scratch/number" 2>"$scratch/errors" &
server=$!
if ! read -r -t 60 number <"$scratch/number"; then
  cat "$scratch/errors" >&2
  exit 1
fi
status=0
DISPLAY=:$number "$@" || status=$?
exit "$status"
