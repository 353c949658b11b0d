"""An SVG file as resvg, an independent renderer, draws it: how dark each dot is, measured in millimetres.

A line's place is the middle of its darkness, which is far finer than a dot: at 16 dots a mm and 256 shades a line two
dots wide is placed to a few thousandths of a mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO

import numpy as np
import numpy.typing as npt
import resvg_py
from PIL import Image

__all__ = ["Picture", "picture"]

DOTS = 16  # a mm


@dataclass(frozen=True)
class Picture:
    """Darkness from 0 to 1, rows from the top; the height is the file's, of which a part of a dot may be cut off."""

    dark: npt.NDArray[np.float64]
    height: float

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm."""
        rows, columns = self.dark.shape
        return columns / DOTS, rows / DOTS

    @property
    def dots(self) -> npt.NDArray[np.float64]:
        """x and y (up from the lower edge) of every dot that is more than a little dark, mm."""
        rows, columns = np.nonzero(self.dark > 0.2)
        return np.column_stack(((columns + 0.5) / DOTS, self.height - (rows + 0.5) / DOTS))

    def middle(self, about: complex, reach: float) -> complex | None:
        """The middle of the ink within ``reach`` mm of a place (y up from the lower edge), if there is any."""
        x, y, dark = self._disc(about, reach)
        total = float(dark.sum())
        if total <= 0:
            return None
        return complex(float((x * dark).sum()), float((y * dark).sum())) / total

    def _disc(self, about: complex, reach: float) -> tuple[npt.NDArray[np.float64], ...]:
        left, top = (max(int((at - reach) * DOTS) - 1, 0) for at in (about.real, self.height - about.imag))
        wide = int(2 * reach * DOTS) + 4
        cut = self.dark[top : top + wide, left : left + wide]
        x = (np.arange(cut.shape[1]) + left + 0.5) / DOTS
        y = self.height - (np.arange(cut.shape[0]) + top + 0.5) / DOTS
        xs, ys = np.meshgrid(x, y)
        inside = np.hypot(xs - about.real, ys - about.imag) <= reach
        return xs, ys, np.where(inside, cut, 0.0)


def picture(text: str, height: float) -> Picture:
    """The file, ``height`` mm high as it says, drawn on white at its own size."""
    drawn = resvg_py.svg_to_bytes(svg_string=text, background="#ffffff", dpi=DOTS * 25.4)
    grey = np.asarray(Image.open(BytesIO(drawn)).convert("L"), dtype=np.float64)
    return Picture(1 - grey / 255, height)
