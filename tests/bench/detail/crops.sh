#!/usr/bin/env bash
# How surely crops are found among many pictures: tables for the photographs that bounds are set on and for those
# that they are scored on; of the other half nothing is to be found in either. Usage: crops.sh BUILD PHOTOGRAPHS MORE
# as for copies.sh. Lines that begin with # name single pictures.
set -euo pipefail
build=$1 photos=$2 more=$3
run() { "$build/tests/bench/bench_crops" "$more/scratch.jpg" "$photos/$1" "$more/$1" "-$photos/$2" "-$more/$2"; }
echo "== tune"; run tune score
echo "== score"; run score tune
