#!/usr/bin/python3
"""Holds JSON instances to JSON Schemas with an outside reader.

Reads lines of {"schema": name, "instance": value} from the file named first;
the schemas lie beside it as NAME.schema.json. Prints a line for each: "ok", or
what is wrong. Ends with status 3 when the reader is not installed, and with 4
when a schema is itself not one.
"""
import json
import pathlib
import sys

try:
    import jsonschema
except ImportError:
    sys.exit(3)

listing = pathlib.Path(sys.argv[1])
validators = {}
for path in listing.parent.glob("*.schema.json"):
    schema = json.loads(path.read_text(encoding="utf-8"))
    try:
        jsonschema.Draft202012Validator.check_schema(schema)
    except jsonschema.SchemaError as error:
        print(f"{path.name}: {error.message}", file=sys.stderr)
        sys.exit(4)
    validators[path.name.removesuffix(".schema.json")] = jsonschema.Draft202012Validator(schema)

for line in listing.read_text(encoding="utf-8").splitlines():
    item = json.loads(line)
    errors = sorted(error.message for error in validators[item["schema"]].iter_errors(item["instance"]))
    print(errors[0].replace("\n", " ") if errors else "ok")
