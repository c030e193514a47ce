"""The JSON Schema of the design file, generated from its types: editors complete and check with it."""

from __future__ import annotations

import json
from typing import Any

from anchorwatt.design.design import Design

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema() -> dict[str, Any]:
    """The JSON Schema of a design file."""
    generated = Design.model_json_schema(by_alias=True)
    return {"$schema": DIALECT, "title": "Anchorwatt design file", **_for_readers(generated)}


def schema_text() -> str:
    """The schema as it is shipped."""
    return json.dumps(schema(), indent=1, ensure_ascii=False, sort_keys=True) + "\n"


def _for_readers(node: Any) -> Any:
    """Say beside each key what may be written; leave out pydantic's titles, which repeat the key."""
    if isinstance(node, dict):
        kept = {
            key: _for_readers(value)
            for key, value in node.items()
            if not (key in ("title", "allowed") and isinstance(value, str))
        }
        if "allowed" in node and isinstance(node["allowed"], str):
            about = node.get("description", "")
            kept["description"] = f"{about} Write {node['allowed']}." if about else f"{node['allowed']}."
        return kept
    if isinstance(node, list):
        return [_for_readers(one) for one in node]
    return node
