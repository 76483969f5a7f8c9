#!/usr/bin/env bash
# How surely near copies and the scanner's bed are found: tables for the photographs that bounds are set on and
# for those that they are scored on. Usage: copies.sh BUILD PHOTOGRAPHS MORE     PHOTOGRAPHS as photographs.sh fills it, MORE
# as more_photographs.sh does. Lines that begin with # name single pictures.
set -euo pipefail
build=$1 photos=$2 more=$3
for half in tune score; do
  echo "== $half"
  "$build/tests/bench/bench_copies" "$more/scratch.jpg" "$photos/$half" "$more/$half"
done
