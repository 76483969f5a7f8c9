# Validates records: validate.py SCHEMA RECORD... Prints what is wrong; the exit status is the number of records refused.
import json
import sys

from jsonschema import Draft202012Validator


def wrong(text):
    raise ValueError(text + " is no JSON")


with open(sys.argv[1], encoding="utf-8") as file:
    schema = json.load(file)
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
refused = 0
for name in sys.argv[2:]:
    with open(name, encoding="utf-8") as file:
        record = json.load(file, parse_constant=wrong)
    faults = [f"{name}: {fault.json_path}: {fault.message[:200]}" for fault in validator.iter_errors(record)]
    print("\n".join(faults))
    refused += bool(faults)
sys.exit(refused)
