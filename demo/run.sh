#!/usr/bin/env bash
# Plans the scans of the demo album, makes it and its booklet, writes the letters to its contributors and proofs both,
# on a fresh Debian 12: bash demo/run.sh
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

# Both have planted faults, so the proof holds them back: exit status 1 is the right one here.
for name in book booklet; do
  status=0
  build-demo/reports/terminal/stoneproof proof "build-demo/book/$name.xml" --press demo/press.xml \
    --marks "build-demo/book/$name.xfdf" --cover-marks "build-demo/book/$name.cover.xfdf" || status=$?
  if [ "$status" -ne 1 ]; then
    echo "demo: expected $name.xml to be held (exit status 1), got $status" >&2
    exit 1
  fi
done

cat <<END

The proofs to look at: build-demo/book/book.proof.pdf and booklet.proof.pdf
The scanning plan:     build-demo/book/book.plan.pdf, its table book.plan.csv
The letters:           build-demo/book/book.letters, one for each contributor, and as a table book.rescans.csv
The marks to lay on the finished PDFs: build-demo/book/book.xfdf and book.cover.xfdf, and the booklet's
The records behind:    build-demo/book/book.record.json and booklet.record.json
What was planted:      demo/planted.md
END
