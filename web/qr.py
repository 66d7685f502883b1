"""QR codes as SVG: made by a library, as paths alone."""

from __future__ import annotations

import io
from dataclasses import dataclass

import segno

LARGEST_VERSION = 25
"""117 modules a side: what a phone reads across a desk."""
BORDER_MODULES = 4
"""The quiet zone that the standard asks for (ISO/IEC 18004)."""


@dataclass(frozen=True, slots=True)
class Code:
    """A code as an SVG picture, what it holds, and its version: 17 + 4 x version modules a side."""

    svg: bytes
    holds: str
    version: int


def code_of(*addresses: str, about: str) -> Code:
    """The code of the first of these addresses that is short enough; the last is taken as it is.

    `about` is a sentence for those who cannot see it, in which {} becomes the address.
    """
    codes = ((address, segno.make_qr(address, error="L")) for address in addresses)
    address, code = next((a, c) for a, c in codes if int(c.version) <= LARGEST_VERSION or a == addresses[-1])
    out = io.BytesIO()
    code.save(
        out,
        kind="svg",
        border=BORDER_MODULES,
        xmldecl=False,
        svgns=True,
        omitsize=True,
        light="#fff",
        dark="#000",
        title=about.format(address),
    )
    return Code(out.getvalue(), address, int(code.version))
