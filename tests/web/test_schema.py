"""The document of the interface says what the server does: every answer is of the form it promises, whatever is sent.

Checked with Schemathesis, which draws requests, good and bad, from the OpenAPI document itself.
"""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
)
from tests.web.floors import PORT, Visitor, client

_FOLDER = tempfile.TemporaryDirectory()
_ASKS = client(Path(_FOLDER.name))
_FLOOR = Visitor(_ASKS)
SCHEMA = schemathesis.openapi.from_asgi("/api/openapi.json", _ASKS.app, headers={"host": f"127.0.0.1:{PORT}"})


def document() -> dict[str, Any]:
    told: dict[str, Any] = _ASKS.get("/api/openapi.json").json()
    return told


def operations() -> list[tuple[str, str, dict[str, Any]]]:
    return [
        (path, method, operation)
        for path, methods in document()["paths"].items()
        for method, operation in methods.items()
    ]


def test_every_operation_says_what_it_does_and_how_it_refuses() -> None:
    for path, method, operation in operations():
        assert operation["description"].endswith("."), (path, method)
        for code, answer in operation["responses"].items():
            if code.startswith("4") and path.startswith("/api"):
                assert answer["content"]["application/json"]["schema"]["$ref"].endswith("/Refused"), (path, code)


def test_every_answer_of_the_interface_is_the_one_envelope() -> None:
    models = document()["components"]["schemas"]
    for path, method, operation in operations():
        if path.startswith("/api"):
            name = operation["responses"]["200"]["content"]["application/json"]["schema"]["$ref"].rsplit("/", 1)[-1]
            assert set(models[name]["properties"]) == {"ok", "said", "data"}, (path, method)


def test_every_model_of_the_document_is_named_and_says_what_it_is() -> None:
    models = document()["components"]["schemas"]
    asked = [
        operation["requestBody"]["content"]["application/json"]["schema"]
        for path, _, operation in operations()
        if path.startswith("/api") and "requestBody" in operation
    ]
    assert asked
    for schema in asked:
        assert schema["$ref"].rsplit("/", 1)[-1] in models
    for name, model in models.items():
        assert model["description"].strip().endswith("."), name
        for key, field in model.get("properties", {}).items():
            assert {"type", "$ref", "anyOf", "const", "discriminator"} & set(field), (name, key)


@SCHEMA.parametrize()
@settings(
    max_examples=25,
    deadline=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=list(HealthCheck),
)
def test_whatever_is_sent_the_answer_is_what_the_document_says(case: schemathesis.Case[Any]) -> None:
    if "ident" in case.path_parameters and len(str(case.path_parameters["ident"])) % 2:
        case.path_parameters["ident"] = _FLOOR.floor["id"]  # a floor that is really open, half of the time
    answer = case.call(headers={"host": f"127.0.0.1:{PORT}"})
    checks = [
        not_a_server_error,
        status_code_conformance,
        content_type_conformance,
        response_schema_conformance,
    ]
    case.validate_response(answer, checks=checks)


@pytest.mark.parametrize("path", ["/docs", "/redoc", "/api/docs"])
def test_nothing_is_served_that_would_fetch_from_elsewhere(path: str) -> None:
    assert _ASKS.get(path).status_code == 404
