"""The drawing floor: sheets of a diagram, laid out here and rendered by Graphviz.

`canvas` collects lines, boxes, circles and lettering at fixed places, `dot_source` writes them as
DOT with every position pinned, `engine` has Graphviz turn that into SVG, PNG or PDF. `symbols`,
`sheet` and `marks` draw the furniture that the ladder and the connection sheet share.
"""
