#!/usr/bin/env bash
# Plans the scans of the demo album, makes it, its booklet and its postcards, writes the letters to its contributors and
# proofs all three, on a fresh Debian 12: bash demo/run.sh
set -euo pipefail
cd "$(dirname "$0")/.."

bash .ci/packages.sh build
cmake -G Ninja -S . -B build-demo -DCMAKE_BUILD_TYPE=Release -DSTONEPROOF_TESTS=OFF
cmake --build build-demo --target stoneproof make_demo

# The plan comes before any scan exists: in a folder without pictures.
mkdir -p build-demo/unscanned build-demo/book
cp demo/book.xml build-demo/unscanned
build-demo/reports/terminal/stoneproof plan build-demo/unscanned/book.xml --press demo/press.xml \
  --out build-demo/book/book.plan.pdf --csv build-demo/book/book.plan.csv

build-demo/demo/make_demo demo/book.xml build-demo/book
cp demo/booklet.xml build-demo/book

build-demo/reports/terminal/stoneproof letters build-demo/book/book.xml --press demo/press.xml \
  --csv build-demo/book/book.rescans.csv

# All have planted faults, so the proof holds them back: exit status 1 is the right one here.
# held FILE OPTION...
held() {
  local status=0
  build-demo/reports/terminal/stoneproof proof "build-demo/book/$1" --press demo/press.xml "${@:2}" || status=$?
  if [ "$status" -ne 1 ]; then
    echo "demo: expected $1 to be held (exit status 1), got $status" >&2
    exit 1
  fi
}
for name in book booklet; do
  held "$name.xml" --marks "build-demo/book/$name.xfdf" --cover-marks "build-demo/book/$name.cover.xfdf"
done
# The postcards come as the finished PDF alone.
held postcards.pdf --binding saddle --pictures build-demo/book/pictures --annotate build-demo/book/postcards.noted.pdf

cat <<END

The proofs to look at: build-demo/book/book.proof.pdf, booklet.proof.pdf and, of a finished PDF, postcards.proof.pdf
The scanning plan:     build-demo/book/book.plan.pdf, its table book.plan.csv
The letters:           build-demo/book/book.letters, one for each contributor, and as a table book.rescans.csv
The marks to lay on the finished PDFs: build-demo/book/book.xfdf and book.cover.xfdf, and the booklet's
The finished PDF:      build-demo/book/postcards.pdf, and the same with the findings as notes, postcards.noted.pdf
The records behind:    build-demo/book/book.record.json, booklet.record.json and postcards.record.json
What was planted:      demo/planted.md
END
