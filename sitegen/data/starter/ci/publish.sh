#!/bin/sh
# Proofs this school and publishes it, on any CI and on your own machine:
#   sh ci/publish.sh proof    lists every fault, also as SARIF in ci/results/proof.sarif
#   sh ci/publish.sh          builds output/ anew; with any fault the old output stays
# What a build did stands in ci/results/ as well: closing.txt for people, build.json for programs.
#
# It brings what it needs: the program from ci/wheels/, its libraries as ci/libraries.txt pins them, and on Debian
# and Ubuntu the system's libraries that set the cards. Set SITEGEN to a command ('python3 -m sitegen') to use a
# program that is there already: then nothing is installed. PYTHON names the interpreter to begin with.
#
# Exit codes: 0 clean, 1 faults, 2 wrong use, 3 the machine lacks something.
set -eu
cd "$(dirname "$0")/.."
results=ci/results

ends() {
  code=$1
  shift
  printf '%s\n' "$@" >&2
  exit "$code"
}

# The one wheel in ci/wheels/. By its file and never by its bare name: anyone may have put another program of
# that name into a registry.
find_wheel() {
  set -- ci/wheels/sitegen-*.whl
  [ -f "$1" ] || ends 3 "There is no program in ci/wheels/. In sitegen's own folder:" \
    "  python3 -m pip wheel --no-deps --wheel-dir $(pwd)/ci/wheels ."
  [ $# -eq 1 ] || ends 2 "ci/wheels/ holds $# programs: keep the newest alone."
  wheel=$1
}

installs() {
  .venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps "$@"
}

ready_program() {
  find_wheel
  holds=.venv/.holds-$(cat "$wheel" ci/libraries.txt | cksum | tr -d ' ')
  if [ ! -f "$holds" ]; then
    python=${PYTHON:-python3}
    "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null ||
      ends 3 "Python 3.11 or later is needed; PYTHON may name it."
    "$python" -m venv --clear .venv || ends 3 "Python's venv is needed: apt-get install python3-venv"
    { installs --require-hashes -r ci/libraries.txt && installs --no-index "$wheel"; } ||
      ends 3 "The program could not be installed; above stands why."
    .venv/bin/python -m pip check >&2 ||
      ends 3 "ci/libraries.txt is not of this program: take the list that came with it, bin/lock/site.txt."
    : >"$holds"
  fi
  SITEGEN=.venv/bin/sitegen
}

# Pango sets the text of the cards. Where it cannot be brought, the program says what brings it.
ready_pango() {
  .venv/bin/python -c 'import weasyprint' >/dev/null 2>&1 && return
  command -v apt-get >/dev/null || return 0
  as_root=
  if [ "$(id -u)" != 0 ]; then
    sudo -n true 2>/dev/null || return 0
    as_root='sudo -n'
  fi
  {
    $as_root apt-get update -qq &&
      $as_root apt-get install -y -qq --no-install-recommends \
        libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 >/dev/null
  } || ends 3 "The system's libraries could not be installed; above stands why."
}

proof() {
  $SITEGEN proof --report sarif --to "$results/proof.sarif"
}

publish() {
  code=0
  $SITEGEN publish --record "$results/build.json" >"$results/closing.txt" || code=$?
  cat "$results/closing.txt"
  [ "$code" = 0 ] || rm "$results/closing.txt"
  return "$code"
}

what=${1:-publish}
case $what in
  proof | publish) ;;
  *) ends 2 "usage: sh ci/publish.sh [proof | publish]" ;;
esac
rm -rf "$results"
mkdir -p "$results"
if [ -z "${SITEGEN:-}" ]; then
  ready_program
  [ "$what" = proof ] || ready_pango
fi
"$what"
