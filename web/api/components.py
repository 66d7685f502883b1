"""The named types of the API's description, generated from the schemas that hold its border."""

from __future__ import annotations

from typing import Any

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin
from marshmallow import Schema, fields

from planner.schemas.athlete_schema import AthleteSchema
from planner.schemas.athlete_shape import AthleteAnswerShape
from planner.schemas.fields import Choice, Inside, OneKey, Strict
from planner.schemas.holding_schema import HoldingRequestSchema, HoldingShape
from planner.schemas.load_schema import WeekAnswerShape, WeekRequestSchema
from planner.schemas.request_schema import LinkRequestSchema, ShorthandRequestSchema, TimelineRequestSchema
from planner.schemas.session_schema import SessionRequestSchema, SessionShape
from planner.schemas.timeline_shape import TimelineShape
from planner.schemas.wall_schema import WallKeyRequestSchema, WallRequestSchema
from web.api.answer_shapes import (
    BuiltinPlanShape,
    HealthShape,
    LibraryShape,
    LinkedPlanShape,
    LinkShape,
    PlanListingShape,
    ProblemDocumentShape,
    ShorthandAnswerShape,
    TechniqueLibraryShape,
    WallMadeShape,
    WallShape,
)
from web.api.export_request import ExportRequestSchema

SPOKEN_OF: tuple[type[Strict], ...] = (
    TimelineRequestSchema,
    ExportRequestSchema,
    ShorthandRequestSchema,
    AthleteSchema,
    AthleteAnswerShape,
    TimelineShape,
    SessionRequestSchema,
    SessionShape,
    HoldingRequestSchema,
    HoldingShape,
    WeekRequestSchema,
    WeekAnswerShape,
    PlanListingShape,
    LibraryShape,
    BuiltinPlanShape,
    TechniqueLibraryShape,
    ShorthandAnswerShape,
    LinkRequestSchema,
    LinkShape,
    LinkedPlanShape,
    WallRequestSchema,
    WallKeyRequestSchema,
    WallMadeShape,
    WallShape,
    ProblemDocumentShape,
    HealthShape,
)
"""Every schema stands in one of these."""


def component_name(schema: type[Schema]) -> str:
    """PlanSchema is Plan to the API's users, TimelineShape is Timeline."""
    return schema.__name__.removesuffix("Schema").removesuffix("Shape")


def reference(schema: type[Schema]) -> dict[str, Any]:
    """A JSON Schema that points to a named type."""
    return {"$ref": f"#/components/schemas/{component_name(schema)}"}


def describe_types(title: str, version: str, description: str) -> APISpec:
    """A description that holds all named types and no path yet."""
    plugin = MarshmallowPlugin(schema_name_resolver=lambda schema: component_name(_class_of(schema)))
    spec = APISpec(
        title=title,
        version=version,
        openapi_version="3.1.1",
        info={"description": description},
        plugins=[plugin],
    )
    converter: Any = plugin.converter  # published without types
    for attribute_function in (_object_inside, _choice, _tuple):
        converter.add_attribute_function(attribute_function)
    for schema in SPOKEN_OF:
        converter.resolve_nested_schema(schema)
    for schema in list(_schemas_in(SPOKEN_OF)):
        _finish(spec.components.schemas[component_name(schema)], schema)
    return spec


def _class_of(schema: Any) -> type[Schema]:
    return schema if isinstance(schema, type) else type(schema)


def _object_inside(self: Any, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    return dict(self.resolve_nested_schema(field.kind)) if isinstance(field, Inside) else {}


def _choice(self: Any, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    if not isinstance(field, Choice):
        return {}
    if field.component not in self.spec.components.schemas:
        component: dict[str, Any] = {}
        self.spec.components.schemas[field.component] = component
        component["oneOf"] = [self.resolve_nested_schema(kind) for kind in field.kinds()]
    return {"$ref": f"#/components/schemas/{field.component}"}


def _tuple(self: Any, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    """What apispec leaves out: the kinds of the items of a list of fixed length."""
    return {"prefixItems": field.metadata["prefixItems"]} if "prefixItems" in field.metadata else {}


def _finish(component: dict[str, Any], schema: type[Strict]) -> None:
    """Add the sentence that the code has, and say "exactly one key" as a choice of one-key objects."""
    component["description"] = " ".join((schema.__doc__ or "").split())
    if issubclass(schema, OneKey):
        component["oneOf"] = [
            {"type": "object", "properties": {name: kind}, "required": [name], "additionalProperties": False}
            for name, kind in component.pop("properties").items()
        ]
        del component["type"], component["additionalProperties"]


def _schemas_in(schemas: tuple[type[Strict], ...]) -> set[type[Strict]]:
    """These schemas and all that stand in them."""
    found: set[type[Strict]] = set()
    waiting = list(schemas)
    while waiting:
        schema = waiting.pop()
        if schema not in found:
            found.add(schema)
            waiting += (kind for field in schema().fields.values() for kind in _kinds_of(field))
    return found


def _kinds_of(field: fields.Field[Any]) -> tuple[type[Strict], ...]:
    match field:
        case fields.List():
            return _kinds_of(field.inner)
        case Inside():
            return (field.kind,)
        case Choice():
            return field.kinds()
        case _:
            return ()
