# Makes the machine ready: read by bin/site and bin/test, never run by itself.
# Exit codes are those of `sitegen`: 3 where the machine lacks something.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$root"
# Some machines forbid Python to keep what it has compiled: then every process compiles all that it imports.
unset PYTHONDONTWRITEBYTECODE
venv="$root/.venv"
SECONDS=0
last_mark=0

# took WHAT: how long the part took that has just ended.
took() {
  printf '%-44s %4d s\n' "$1" "$((SECONDS - last_mark))"
  last_mark=$SECONDS
}

lacks() {
  printf '\n%s\n' "$@" >&2
  exit 3
}

# may_install: whether Debian's packages can be installed from here without a question.
may_install() {
  command -v apt-get >/dev/null && { [ "$(id -u)" = 0 ] || sudo -n true 2>/dev/null; }
}

# debian PACKAGE...: installs Debian packages.
debian() {
  local as_root=()
  [ "$(id -u)" = 0 ] || as_root=(sudo -n)
  "${as_root[@]}" apt-get update -qq >/dev/null
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq --no-install-recommends "$@" >/dev/null
}

find_python() {
  local name
  for name in python3 python3.14 python3.13 python3.12 python3.11; do
    if command -v "$name" >/dev/null &&
      "$name" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
      echo "$name"
      return
    fi
  done
  lacks "Python 3.11 or later is needed." \
    "  Debian, Ubuntu: sudo apt-get install python3 python3-venv" \
    "  Fedora:         sudo dnf install python3" \
    "  macOS:          brew install python"
}

# ready_python LOCK: a virtual environment with just what the lock file pins, and sitegen itself.
ready_python() {
  local lock="$1" python stamp
  stamp="$venv/.holds-$(cat "$lock" pyproject.toml | cksum | tr -d ' ')"
  if [ -f "$stamp" ] && "$venv/bin/python" -c 'import sitegen' 2>/dev/null; then
    took "Python packages (kept from last time)"
    return
  fi
  python=$(find_python)
  if ! "$python" -c 'import ensurepip, venv' 2>/dev/null; then
    may_install || lacks "Python's venv module is needed: sudo apt-get install python3-venv"
    debian python3-venv
  fi
  [ -x "$venv/bin/python" ] || "$python" -m venv "$venv"
  # Most of what comes along is never imported: Python compiles the rest when it first needs it.
  "$venv/bin/python" -m pip install --quiet --disable-pip-version-check --no-compile --no-deps \
    --require-hashes -r "$lock"
  "$venv/bin/python" -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
  touch "$stamp"
  took "Python packages"
}

# ready_pango: the system libraries with which WeasyPrint sets type.
ready_pango() {
  if "$venv/bin/python" -c 'import weasyprint' >/dev/null 2>&1; then
    took "Libraries for the printed cards (found)"
    return
  fi
  if may_install; then
    debian libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0
  fi
  "$venv/bin/python" -c 'import weasyprint' >/dev/null 2>&1 || lacks \
    "WeasyPrint, which sets the printed cards, needs Pango. Install it, then run this again:" \
    "  Debian, Ubuntu: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0" \
    "  Fedora:         sudo dnf install pango" \
    "  macOS:          brew install pango"
  took "Libraries for the printed cards"
}
