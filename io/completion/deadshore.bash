# Completion of deadshore for bash; installed to share/bash-completion/completions/deadshore.

# The tables of a job file, as `deadshore keys` takes them.
_deadshore_tables() {
  "$1" keys 2>/dev/null | sed -n 's/^\[\[*\([A-Za-z_.]*\).*/\1/p' | sed 's/\.NAME//g'
  echo top
}

# Files that end in .toml, and folders on the way to them.
_deadshore_toml() {
  local file
  while IFS= read -r file; do COMPREPLY+=("$file"); done \
    < <(compgen -f -X '!*.toml' -- "$1"; compgen -d -- "$1")
  compopt -o filenames 2>/dev/null
}

_deadshore_options() {
  case $1 in
    view) echo '--stage --analysis --field --magnify --pick --picture --help -h' ;;
    run) echo '--out -o --timings --strict --help -h' ;;
    new) echo '--force --help -h' ;;
    sections | timber | props | ground | materials | uses) echo '--tables --help -h' ;;
    check | stages | keys | schema) echo '--help -h' ;;
    *) echo '--help -h --version' ;;
  esac
}

_deadshore() {
  local commands='new run check stages view keys schema sections timber props ground materials uses'
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command="" file
  ((COMP_CWORD > 1)) && command=${COMP_WORDS[1]}
  COMPREPLY=()

  if [[ $command == run && ($before == -o || $before == --out) ]]; then
    while IFS= read -r file; do COMPREPLY+=("$file"); done < <(compgen -d -- "$word")
    compopt -o filenames 2>/dev/null
    return
  fi
  if [[ $before == --tables ]]; then
    _deadshore_toml "$word"
    return
  fi
  if [[ $word == -* ]]; then
    COMPREPLY=($(compgen -W "$(_deadshore_options "$command")" -- "$word"))
    return
  fi
  case $command in
    '') COMPREPLY=($(compgen -W "$commands" -- "$word")) ;;
    run | check | stages | new) _deadshore_toml "$word" ;;
    view)
      while IFS= read -r file; do COMPREPLY+=("$file"); done < <(compgen -d -- "$word")
      compopt -o filenames 2>/dev/null
      ;;
    keys) COMPREPLY=($(compgen -W "$(_deadshore_tables "${COMP_WORDS[0]}")" -- "$word")) ;;
  esac
}

complete -F _deadshore deadshore
