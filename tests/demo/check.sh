#!/usr/bin/env bash
# Plans the scans of the demo album before its pictures are there; makes it, proofs it, its booklet and its postcards and
# writes its letters, all twice. Checks that all three are held, that each contributor gets a letter in their language, that every rule finds its planted fault in one of them, that the PDFs are sound, that the postcards are left as they were, that records, marks and
# the table of the letters are valid and agree with each other, and that both runs give the same bytes.
# Usage: check.sh MAKE_DEMO STONEPROOF BOOK.XML PRESS.XML; booklet.xml lies beside BOOK.XML
set -euo pipefail
make_demo=$1 stoneproof=$2 book=$3 press=$4
source=$(cd "$(dirname "$0")/../.." && pwd)
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

cp "$book" "$folder"
"$stoneproof" plan "$folder/$(basename "$book")" --press "$press" --out "$folder/plan.pdf" --csv "$folder/plan.csv" > "$folder/summary"
qpdf --check "$folder/plan.pdf" > "$folder/qpdf"
[ "$(grep -c ',to-scan,' "$folder/plan.csv")" -gt 60 ] || { echo "the plan of the album has too few scans"; exit 1; }

"$make_demo" "$book" "$folder"
cp "$(dirname "$book")/booklet.xml" "$folder"
for name in book booklet; do
  for round in first second; do
    status=0
    "$stoneproof" proof "$folder/$name.xml" --press "$press" --out "$folder/$name.$round.pdf" --record "$folder/$name.$round.json" \
      --marks "$folder/$name.$round.xfdf" --cover-marks "$folder/$name.cover.$round.xfdf" > "$folder/summary" || status=$?
    [ "$status" -eq 1 ] || { echo "expected the $name to be held (exit status 1), got $status"; cat "$folder/summary"; exit 1; }
  done
  cmp "$folder/$name.first.pdf" "$folder/$name.second.pdf"
  cmp "$folder/$name.first.json" "$folder/$name.second.json"
  cmp "$folder/$name.first.xfdf" "$folder/$name.second.xfdf"
  cmp "$folder/$name.cover.first.xfdf" "$folder/$name.cover.second.xfdf"
  xmllint --nonet --noout --schema "$source/schema/marks.xsd" "$folder/$name.first.xfdf" "$folder/$name.cover.first.xfdf" 2> "$folder/xmllint" || { cat "$folder/xmllint"; exit 1; }
  /usr/bin/python3 "$source/tests/reports/terminal/check_marks.py" "$folder/$name.xml" "$folder/$name.first.json" "$folder/$name.first.xfdf" "$folder/$name.cover.first.xfdf"
  qpdf --check "$folder/$name.first.pdf" > "$folder/qpdf"
  /usr/bin/python3 "$source/tests/demo/check_sentences.py" "$folder/$name.first.pdf" "$folder/$name.first.json"
done

# The postcards come as their finished PDF. A stream that breaks off is planted in it, and stays in the noted copy: qpdf
# warns of that, exit status 3, and must warn of nothing else.
"$make_demo" "$book" "$folder/again" postcards
cmp "$folder/again/postcards.pdf" "$folder/postcards.pdf"
for round in first second; do
  status=0
  "$stoneproof" proof "$folder/postcards.pdf" --press "$press" --binding saddle --pictures "$folder/pictures" --out "$folder/postcards.$round.pdf" \
    --record "$folder/postcards.$round.json" --annotate "$folder/postcards.noted.$round.pdf" > "$folder/summary" || status=$?
  [ "$status" -eq 1 ] || { echo "expected the postcards to be held (exit status 1), got $status"; cat "$folder/summary"; exit 1; }
done
cmp "$folder/again/postcards.pdf" "$folder/postcards.pdf"
cmp "$folder/postcards.first.pdf" "$folder/postcards.second.pdf"
cmp "$folder/postcards.first.json" "$folder/postcards.second.json"
cmp "$folder/postcards.noted.first.pdf" "$folder/postcards.noted.second.pdf"
qpdf --check "$folder/postcards.first.pdf" > "$folder/qpdf"
status=0
qpdf --check "$folder/postcards.noted.first.pdf" > "$folder/qpdf" 2> "$folder/warnings" || status=$?
if [ "$status" -ne 3 ] || grep '^WARNING' "$folder/warnings" | grep -vq 'input stream is complete but output may still be valid'; then
  echo "the noted copy of the postcards is not sound"; cat "$folder/qpdf" "$folder/warnings"; exit 1
fi
/usr/bin/python3 "$source/tests/demo/check_sentences.py" "$folder/postcards.first.pdf" "$folder/postcards.first.json"
/usr/bin/python3 "$source/tests/reports/record/validate.py" "$source/schema/record.schema.json" "$folder"/{book,booklet,postcards}.first.json

for round in first second; do
  "$stoneproof" letters "$folder/book.xml" --press "$press" --dir "$folder/letters $round" --csv "$folder/rescans.$round.csv" > "$folder/summary"
done
cmp "$folder/rescans.first.csv" "$folder/rescans.second.csv"
/usr/bin/python3 "$source/tests/reports/terminal/check_rescans.py" "$folder/rescans.first.csv" "$folder/book.first.json"
grep -q '^3 letters written' "$folder/summary" || { echo "expected a letter to each of three contributors"; cat "$folder/summary"; exit 1; }
diff -r "$folder/letters first" "$folder/letters second"
for letter in "$folder/letters first"/*.pdf; do qpdf --check "$letter" > "$folder/qpdf"; done
pdftotext "$folder/letters first/Żaneta Wróblak-Śliwińska.letter.pdf" - | tr '\n' ' ' > "$folder/words"
grep -q 'Schicken Sie uns dieses Bild' "$folder/words" || { echo "the German letter does not ask for the missing picture"; exit 1; }
pdftotext "$folder/letters first/Maud Ellerby-Finch.letter.pdf" - | tr '\n' ' ' > "$folder/words"
grep -q 'clean the glass of your scanner' "$folder/words" || { echo "the English letter does not speak of the dirty glass"; exit 1; }
grep -q 'Look for a better copy' "$folder/words" || { echo "the English letter does not speak of the lost original"; exit 1; }

"$stoneproof" explain | awk '$2 ~ /^(hold|query|note)$/ {print $1}' | sort > "$folder/rules"
/usr/bin/python3 -c '
import json, sys
records = [json.load(open(name)) for name in sys.argv[1:]]
for rule in sorted({finding["rule"] for record in records for finding in record["findings"]}): print(rule)
' "$folder"/{book,booklet,postcards}.first.json > "$folder/found"
[ -s "$folder/rules" ]
diff "$folder/rules" "$folder/found" || { echo "left: a rule that finds nothing in the demo"; exit 1; }
