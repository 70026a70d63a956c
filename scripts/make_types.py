"""Write the types of the server's answers for the page's modules: src/backcut/web/static/floor/contract.d.ts."""

from __future__ import annotations

import inspect
from pathlib import Path
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import models_json_schema

from backcut.web import envelope, proof_data

FILE = Path(__file__).parents[1] / "src" / "backcut" / "web" / "static" / "floor" / "contract.d.ts"
PLAIN = {"string": "string", "integer": "number", "number": "number", "boolean": "boolean", "null": "null"}


def types() -> str:
    """Every model of the answers as a TypeScript interface, made from its JSON schema."""
    models = [
        model
        for module in (envelope, proof_data)
        for name, model in inspect.getmembers(module, inspect.isclass)
        if issubclass(model, BaseModel) and name.endswith("Data")
    ]
    _, schema = models_json_schema([(model, "serialization") for model in models])
    lines = ["// Made by scripts/make_types.py from the models of the server's answers.", ""]
    for name, one in sorted(schema["$defs"].items()):
        lines += [f"/** {' '.join(one.get('description', name).split())} */", f"export interface {name} {{"]
        lines += [f"  {key}: {_type(of)};" for key, of in one.get("properties", {}).items()]
        lines += ["}", ""]
    return "\n".join(lines)


def _type(of: dict[str, Any]) -> str:
    if "$ref" in of:
        return str(of["$ref"]).rsplit("/", 1)[-1]
    if "anyOf" in of:
        return " | ".join(_type(one) for one in of["anyOf"])
    if "enum" in of:
        return " | ".join(f'"{value}"' for value in of["enum"])
    if "prefixItems" in of:
        return f"[{', '.join(_type(one) for one in of['prefixItems'])}]"
    if of.get("type") == "array":
        return f"Array<{_type(of['items'])}>"
    if of.get("type") == "object":
        inner = of.get("additionalProperties", True)
        return f"Record<string, {'any' if inner is True else _type(inner)}>"
    return PLAIN[of["type"]]


if __name__ == "__main__":
    FILE.write_text(types(), encoding="utf-8")
