#!/usr/bin/env bash
# Gathers what the fuzzers begin with: made pictures and PDFs, and small samples where STONEPROOF_SAMPLES names them.
# Usage: seeds.sh BUILD DIR      gives DIR/jpeg, DIR/tiff, ... DIR/filter; nothing of it is committed.
set -euo pipefail
[ $# -eq 2 ] || { echo "usage: $0 BUILD DIR" >&2; exit 2; }
build=$1 out=$2
mkdir -p "$out"/{jpeg,tiff,png,gif,webp,heif,icc,pdf,content,filter}
# The writers of the libraries may leave memory behind.
ASAN_OPTIONS=detect_leaks=0 "$build/tests/fuzz/fuzz_seeds" "$out"

# A file's family by its first bytes.
family() {
  case $(head -c 12 "$1" | od -An -tx1 | tr -d ' \n') in
    ffd8ff*) echo jpeg ;; 49492a00*|49492b00*|4d4d002a*|4d4d002b*) echo tiff ;; 89504e470d0a1a0a*) echo png ;;
    47494638*) echo gif ;; 52494646????????57454250) echo webp ;; ????????66747970*) echo heif ;;
    255044462d*) echo pdf ;;
  esac
}
number=0
sample() { number=$((number + 1)); cp "$1" "$out/$2/sample-$number"; }
[ -n "${STONEPROOF_SAMPLES:-}" ] || exit 0
while IFS= read -r -d '' file; do
  of=$(family "$file")
  [ -z "$of" ] || sample "$file" "$of"
done < <(find "$STONEPROOF_SAMPLES" -type f -size -16k -size +0 -print0)
while IFS= read -r -d '' file; do sample "$file" icc; done < <(find "$STONEPROOF_SAMPLES" -type f -iname '*.ic[cm]' -size -64k -print0)
