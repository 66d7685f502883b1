"""What all tests share: properties are judged by what they find, never by how long a busy machine took."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")
