#!/usr/bin/env bash
# Makes the demo album and proofs it, on a fresh Debian 12: bash demo/run.sh
set -euo pipefail
cd "$(dirname "$0")/.."

bash .ci/packages.sh build
cmake -G Ninja -S . -B build-demo -DCMAKE_BUILD_TYPE=Release -DSTONEPROOF_TESTS=OFF
cmake --build build-demo --target stoneproof make_demo

build-demo/demo/make_demo demo/book.xml build-demo/book

# The album has planted faults, so the proof holds it back: exit status 1 is the right one here.
status=0
build-demo/reports/terminal/stoneproof proof build-demo/book/book.xml --press demo/press.xml || status=$?
if [ "$status" -ne 1 ]; then
  echo "demo: expected the album to be held (exit status 1), got $status" >&2
  exit 1
fi

cat <<END

The proof to look at:  build-demo/book/book.proof.pdf
The record behind it:  build-demo/book/book.record.json
What was planted:      demo/planted.md
END
