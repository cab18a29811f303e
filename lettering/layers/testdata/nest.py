"""Holds nested shapes against each other with Shapely (GEOS), for geos_test.go.

Reads a JSON list of pairs {inner, outer} from standard input, each a list of rings
whose holes run clockwise, and writes for each pair whether the inner lies inside
the outer, the distance between their edges, how much of the inner lies nearer to
the outer's edge than the step, and the area of each.
"""
import json
import sys

from shapely.geometry import Polygon
from shapely.ops import unary_union


def signed(ring):
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1])) / 2


def region(rings):
    solid = unary_union([Polygon(r) for r in rings if signed(r) > 0])
    # Islands lie in holes, so holes are taken out smallest container first.
    islands = []
    holes = [Polygon(r) for r in rings if signed(r) < 0]
    for r in rings:
        p = Polygon(r)
        if signed(r) > 0 and any(h.contains(p) for h in holes):
            islands.append(p)
    out = solid.difference(unary_union(holes)) if holes else solid
    for p in islands:
        out = out.union(p.difference(unary_union([h for h in holes if p.contains(h)])))
    return out


answers = []
for pair in json.load(sys.stdin):
    inner, outer = region(pair["inner"]), region(pair["outer"])
    room = outer.buffer(-(pair["step"] - 0.01), 32) if pair["step"] else outer
    answers.append({
        "Inside": inner.within(outer),
        "Apart": inner.boundary.distance(outer.boundary),
        "Stray": inner.difference(room).area,
        "Inner": inner.area, "Outer": outer.area,
    })
json.dump(answers, sys.stdout)
