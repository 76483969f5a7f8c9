# Every sentence of a proof comes out of its PDF again, in reading order: what the record says of each finding stands
# whole in what pdftotext gives, in the order of the sheet and in that of the content, where the messages of the table come
# by grade, then by page.
# Usage: check_sentences.py PROOF.pdf RECORD.json
import itertools
import json
import re
import subprocess
import sys

proof, record = sys.argv[1:]


def squeezed(sentence):
    return re.sub(r"\s+", "", sentence)


def words(*options):
    run = subprocess.run(["pdftotext", *options, proof, "-"], capture_output=True, text=True, check=True)
    return squeezed(run.stdout)


findings = json.load(open(record))["findings"]
assert len(findings) > 3, "too few findings to tell"


def place(finding):
    page = finding["page"]
    return ("hold", "query", "note").index(finding["grade"]), float("inf") if page is None else page


for text in words(), words("-raw"):
    for finding in findings:
        for key in ("message", "remedy"):
            if squeezed(finding[key]) not in text:
                sys.exit(f"{proof}: the {key} of {finding['rule']} does not come out whole: {finding[key]}")
text, end = words("-raw"), 0
for _, group in itertools.groupby(sorted(findings, key=place), key=place):
    places = {finding["message"]: text.find(squeezed(finding["message"]), end) for finding in group}
    for message, at in places.items():
        if at < 0:
            sys.exit(f"{proof}: a message stands out of order: {message}")
    end = max(places.values())
