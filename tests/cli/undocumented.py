"""Keys of a document that its schema does not name."""


def undocumented(schema, value, skip=(), rule=None, path="$"):
    """Paths of such keys; those in `skip`, and rules that say "As in ...", have a schema of their own."""
    if path in skip:
        return
    rule = schema if rule is None else rule
    while "$ref" in rule:
        rule = schema["$defs"][rule["$ref"].rsplit("/", 1)[1]]
    if rule.get("description", "").startswith("As in "):
        return
    for option in rule.get("oneOf", []):
        if value.get("shape") == option["properties"]["shape"]["const"]:
            rule = option
    if isinstance(rule.get("additionalProperties"), dict):
        return  # a map of names: the validator judges its values
    if isinstance(value, dict):
        for key, item in value.items():
            if key not in rule.get("properties", {}):
                yield f"{path}.{key}"
            else:
                yield from undocumented(schema, item, skip, rule["properties"][key], f"{path}.{key}")
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from undocumented(schema, item, skip, rule["items"], f"{path}[{index}]")
