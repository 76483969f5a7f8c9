#!/usr/bin/env bash
# Draws the pictures of the README from the documents of the demo: bash demo/readme_pictures.sh, after demo/run.sh.
# Needs poppler-utils and imagemagick, which tests/run.sh installs.
set -euo pipefail
cd "$(dirname "$0")/.."
book=build-demo/book

# picture NAME FILE PAGE WIDTH: one page, so many pixels wide, in few colours, so that it weighs little
picture() {
  pdftoppm -png -r 120 -f "$3" -l "$3" -singlefile "$2" "build-demo/$1"
  convert "build-demo/$1.png" -resize "$4x" -bordercolor '#bbbbbb' -border 1 -dither None -colors 128 -strip \
    "png8:demo/readme/$1.png"
}

# The sheet of the proof that shows a page of the book: found by its heading, since findings may move it.
sheet_of() {
  local count page
  count=$(pdfinfo "$book/book.proof.pdf" | sed -n 's/^Pages: *//p')
  for ((page = 1; page <= count; page++)); do
    if [ "$(pdftotext -f "$page" -l "$page" "$book/book.proof.pdf" - | head -1)" = "$1" ]; then
      echo "$page"
      return
    fi
  done
  echo "readme_pictures: no sheet begins with “$1”" >&2
  return 1
}

mkdir -p demo/readme
picture proof-first "$book/book.proof.pdf" 1 1000
picture proof-page "$book/book.proof.pdf" "$(sheet_of 'Page 15')" 1000
picture letter "$(ls "$book"/book.letters/*.pdf | head -1)" 1 640
