"""The base of all models of the project file."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, ConfigDict, model_validator


class Model(BaseModel):
    """Base of all models: frozen, and unknown keys are errors."""

    model_config = ConfigDict(defer_build=True, extra="forbid", frozen=True, validate_default=False)

    @model_validator(mode="before")
    @classmethod
    def _without_empty_keys(cls, data: Any) -> Any:
        """A known key with nothing behind it counts as left out."""
        if not isinstance(data, dict):
            return data
        return {key: value for key, value in data.items() if value is not None or key not in cls.model_fields}
