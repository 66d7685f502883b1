"""Reading QR codes with a reader that has nothing to do with what drew them (ZXing, through zxing-cpp)."""

from __future__ import annotations

import io
import re
from xml.etree import ElementTree

import numpy
import zxingcpp
from PIL import Image, ImageDraw

SVG = "{http://www.w3.org/2000/svg}"
_STEP = re.compile(r"([Mmh])\s*([-\d.]+)(?:[ ,]([-\d.]+))?")


def read_picture(picture: bytes) -> str:
    """What the one code in a PNG picture says."""
    with Image.open(io.BytesIO(picture)) as image:
        found = zxingcpp.read_barcodes(numpy.asarray(image.convert("L")))
    assert len(found) == 1, f"{len(found)} codes were found"
    return str(found[0].text)


def read_svg(svg: bytes, pixels_a_module: int = 3) -> str:
    """What a code drawn as horizontal strokes says."""
    root = ElementTree.fromstring(svg)
    side = int(float(root.attrib["viewBox"].split()[2]))
    image = Image.new("L", (side * pixels_a_module,) * 2, 255)
    pen = ImageDraw.Draw(image)
    (path,) = (node for node in root.iter(f"{SVG}path") if "stroke" in node.attrib)
    x = y = 0.0
    for kind, first, second in _STEP.findall(path.attrib["d"]):
        if kind == "h":
            corners = (x, y - 0.5, x + float(first), y + 0.5)
            left, top, right, bottom = (round(value * pixels_a_module) for value in corners)
            pen.rectangle((left, top, right - 1, bottom - 1), fill=0)
            x += float(first)
        else:
            from_x, from_y = (0.0, 0.0) if kind == "M" else (x, y)
            x, y = from_x + float(first), from_y + float(second or 0)
    out = io.BytesIO()
    image.save(out, "PNG")
    return read_picture(out.getvalue())
