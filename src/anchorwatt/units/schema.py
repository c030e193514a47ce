"""The JSON Schema of models with quantities, made small and readable for an editor."""

from __future__ import annotations

from typing import Any

# Keywords of our own, in the schema that pydantic makes; `gathered` takes them out.
KIND = "quantity"
ALLOWED = "allowed"


def text_schema(kind: str, pattern: str, example: str, allowed: str) -> dict[str, Any]:
    """Describe a text of some kind: its pattern, an example and, in words, what is allowed."""
    return {
        "type": "string",
        "pattern": pattern,
        "patternErrorMessage": f"Write {allowed}",
        "examples": [example],
        KIND: kind,
        ALLOWED: allowed,
    }


def gathered(schema: dict[str, Any]) -> dict[str, Any]:
    """Tidy a model's JSON Schema: each kind of quantity defined once, what is allowed told in descriptions.

    Parameters
    ----------
    schema : as `model_json_schema()` of a model with these fields gives it

    Returns
    -------
    A schema that allows the same texts.
    """
    kinds: dict[str, Any] = {}
    whole = _gather(schema, kinds)
    if kinds:
        whole["$defs"] = {**whole.get("$defs", {}), **dict(sorted(kinds.items()))}
    return dict(whole)


def _gather(node: Any, kinds: dict[str, Any]) -> Any:
    if isinstance(node, list):
        return [_gather(item, kinds) for item in node]
    if not isinstance(node, dict):
        return node
    if not (node.get("type") == "string" and KIND in node and ALLOWED in node):
        return {key: _gather(value, kinds) for key, value in node.items()}
    kind = node[KIND].replace(" ", "-")
    kinds[kind] = {key: node[key] for key in ("type", "pattern", "patternErrorMessage", "examples")}
    kept = {key: value for key, value in node.items() if key not in (*kinds[kind], KIND, ALLOWED, "description")}
    allowed_words = node[ALLOWED][0].upper() + node[ALLOWED][1:]
    description = " ".join(part for part in (node.get("description", ""), f"{allowed_words}.") if part)
    return {"$ref": f"#/$defs/{kind}", "description": description, **kept}
