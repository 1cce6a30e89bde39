"""The ladder sheet: how the diagram works, rung by rung.

Data flow: `branches` lists what stands between two nets, `series_parallel` turns the part of it
between two rails into a tree of series and parallel, `plan` decides which rails there are and what
hangs between them, and `layout` gives every branch of a tree its cell. `section`, `ignition`,
`links` and `lead_list` draw a piece of the sheet each, of `rails`, `block` and `element`; `sheet`
puts the pieces together and `marking` marks the findings.
"""

from __future__ import annotations

from wirecheck.drawing.ladder.sheet import ladder_sheet

__all__ = ["ladder_sheet"]
