"""against_schema.py SCHEMA FILE... prints each TOML file that the JSON schema does not accept, and why."""
import json
import sys
import tomllib

import jsonschema

with open(sys.argv[1], encoding="utf-8") as file:
    schema = json.load(file)
jsonschema.Draft7Validator.check_schema(schema)
validator = jsonschema.Draft7Validator(schema)
for name in sys.argv[2:]:
    with open(name, "rb") as file:
        document = tomllib.load(file)
    error = jsonschema.exceptions.best_match(validator.iter_errors(document))
    if error is not None:
        # Its own json_path is written in one way by some releases of the library and in another by others.
        place = "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in error.absolute_path)
        print(f"{name.rsplit('/', 1)[-1]}: ${place}")
