"""Words on a chart, not measured: where they go is known, and how wide they are is for the reader's browser.

This module loads the plotting library; it is loaded only where there is a chart to draw.
"""

from __future__ import annotations

from typing import Any

from matplotlib.text import Text


class Words(Text):
    """One line of text with its baseline at its place, without a box, a turn or effects."""

    def draw(self, renderer: Any) -> None:
        """Write it; the library's own way measures every letter first."""
        x, y = self.get_transform().transform(self.get_unitless_position())
        _width, height = renderer.get_canvas_width_height()
        pen = renderer.new_gc()
        pen.set_foreground(self.get_color())
        renderer.draw_text(pen, x, height - y, self.get_text(), self.get_fontproperties(), 0, mtext=self)
        pen.restore()
        self.stale = False
