#!/bin/sh
# Checks everything, then writes the whole site to output/. Stops at the first command that fails.
set -eu
cd "$(dirname "$0")/.."
sitegen proof
sitegen publish
