#!/usr/bin/env bash
# How surely printed screens are found, and how seldom where there are none: tables for the photographs that bounds are set on and
# for those that they are scored on. Usage: screens.sh BUILD PHOTOGRAPHS MORE     PHOTOGRAPHS as photographs.sh fills it, MORE
# as more_photographs.sh does. Lines that begin with # name single pictures.
set -euo pipefail
build=$1 photos=$2 more=$3
for half in tune score; do
  echo "== $half"
  "$build/tests/bench/bench_screens" "$photos/$half" "$more/$half" "$more/scratch.jpg"
done
