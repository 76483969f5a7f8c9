#!/usr/bin/env bash
# How surely crops are found among many pictures: tables for the photographs that bounds are set on, for those that
# they are scored on, and for fresh ones; of the pictures of another set nothing is to be found in either.
# Usage: crops.sh BUILD PHOTOGRAPHS MORE OTHER     as photographs.sh, more_photographs.sh and other_photographs.sh fill
# them. Lines that begin with # name single pictures.
set -euo pipefail
build=$1 photos=$2 more=$3 other=$4
crops() { "$build/tests/bench/bench_crops" "$more/scratch.jpg" "$@"; }
echo "== tune";  crops "$photos/tune" "$more/tune" "-$photos/score" "-$more/score"
echo "== score"; crops "$photos/score" "$more/score" "-$photos/tune" "-$more/tune"
echo "== fresh"; crops "$other/score" "$other/tune" "-$photos/score" "-$more/score"
