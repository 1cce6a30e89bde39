"""The connection sheet: what runs where, as the devices are seen.

Parts stand in columns in the order of the flow, supply left, burner right; leads run straight up
and down in the streets between the columns and across a column only between its parts, so that
none crosses a part.

Data flow: `blocks` lists what is placed and which leads land where. `columns` cuts it into columns,
`edges` and `faces` say where each lead leaves, `passages` by which gap it crosses a column, and
`placing` changes places until leads are short and seldom cross. `stubs` measures what is lettered
beside the terminals, `levels` settles heights, `streets` the tracks, `routing` gives everything its
place. A `scene` holds all that; `lead_lines`, `device_boxes` and `sheet` draw it.
"""

from __future__ import annotations

from wirecheck.drawing.connections.sheet import connection_sheet

__all__ = ["connection_sheet"]
