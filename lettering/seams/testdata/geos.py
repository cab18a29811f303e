"""Holds pieces against panels with Shapely (GEOS), for geos_test.go.

Reads one JSON object from standard input: grounds (the cloth as a ring, lines
with points and margin) and pieces (index of a ground, rings). Builds each panel
its own way, as the cloth without the buffer of every line, and writes for each
ground how far the panel it is told strays from it and the slices at the heights
asked for, and for each piece whether the panel contains it, whether the cloth
does, and its distance to every line.
"""
import json
import sys

from shapely.geometry import LineString, MultiPolygon, Point, Polygon
from shapely.ops import unary_union
from shapely.prepared import prep

QUARTER = 40  # chords in a quarter circle of a buffer: within 0.01 mm of a 40 mm one


def line(points):
    return LineString(points) if len(points) > 1 else Point(points[0])


def panel_of(cloth, lines, margins):
    free = cloth.difference(unary_union([l.buffer(m, QUARTER) for l, m in zip(lines, margins)]))
    parts = list(free.geoms) if free.geom_type == "MultiPolygon" else [free]
    return max(parts, key=lambda p: p.area)


def slices(panel, heights):
    x0, _, x1, _ = panel.bounds
    out = []
    for y in heights:
        cut = panel.intersection(LineString([(x0 - 1, y), (x1 + 1, y)]))
        parts = [g for g in getattr(cut, "geoms", [cut]) if g.geom_type == "LineString" and not g.is_empty]
        out.append([[min(p.coords)[0], max(p.coords)[0]] for p in parts])
    return out


def main():
    job = json.load(sys.stdin)
    grounds, told, built = [], [], {}
    for g in job["grounds"]:
        key = json.dumps([g["cloth"], g["lines"]])  # places share panels
        if key not in built:
            cloth = Polygon(g["cloth"])
            lines = [line(l["points"]) for l in g["lines"]]
            panel = panel_of(cloth, lines, [l["margin"] for l in g["lines"]])
            stray = panel.hausdorff_distance(Polygon(g["panel"]))
            built[key] = (prep(cloth), prep(panel), lines), {"stray": stray, "slices": slices(panel, g["heights"])}
        ground, facts = built[key]
        grounds.append(ground)
        told.append(facts)
    held = []
    for p in job["pieces"]:
        cloth, panel, lines = grounds[p["ground"]]
        shape = MultiPolygon([Polygon(r) for r in p["rings"]])
        held.append({
            "panel": panel.contains(shape),
            "cloth": cloth.contains(shape),
            "distances": [shape.distance(l) for l in lines],
        })
    sys.stdout.write(json.dumps({"grounds": told, "pieces": held}))


main()
