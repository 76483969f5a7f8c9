#!/usr/bin/env bash
# Makes the demo album, proofs it twice, and checks that it is held, that every rule finds its planted fault, that the PDF is
# sound, and that both runs give the same bytes. Usage: check.sh MAKE_DEMO STONEPROOF BOOK.XML PRESS.XML
set -euo pipefail
make_demo=$1 stoneproof=$2 book=$3 press=$4
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

"$make_demo" "$book" "$folder"
for round in first second; do
  status=0
  "$stoneproof" proof "$folder/book.xml" --press "$press" --out "$folder/$round.pdf" --record "$folder/$round.json" > "$folder/summary" || status=$?
  [ "$status" -eq 1 ] || { echo "expected the album to be held (exit status 1), got $status"; cat "$folder/summary"; exit 1; }
done
cmp "$folder/first.pdf" "$folder/second.pdf"
cmp "$folder/first.json" "$folder/second.json"
qpdf --check "$folder/first.pdf" > "$folder/qpdf"

"$stoneproof" explain | awk '$2 ~ /^(hold|query|note)$/ {print $1}' | sort > "$folder/rules"
/usr/bin/python3 -c '
import json, sys
for rule in sorted({finding["rule"] for finding in json.load(open(sys.argv[1]))["findings"]}): print(rule)
' "$folder/first.json" > "$folder/found"
[ -s "$folder/rules" ]
diff "$folder/rules" "$folder/found" || { echo "left: a rule that finds nothing in the demo album"; exit 1; }
