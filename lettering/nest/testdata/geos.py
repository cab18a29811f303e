"""Measures layouts with Shapely (GEOS), for geos_test.go.

Reads a JSON list of sheets from standard input: width, height, and pieces as
rings, outer rings anticlockwise and holes clockwise. Writes for each sheet the
least distance between two pieces, the least distance of a piece from the edge of
the sheet (negative outside it), the area that the pieces cover together, and how
many pairs of pieces lie in each other: one inside the hull of the other.
"""
import json
import sys

from shapely.geometry import Polygon, box
from shapely.ops import unary_union
from shapely.validation import make_valid


def region(rings):
    outer, holes = [], []
    for ring in rings:
        p = Polygon(ring)
        (outer if p.exterior.is_ccw else holes).append(make_valid(p))
    return unary_union(outer).difference(unary_union(holes))


def main():
    told = []
    for sheet in json.load(sys.stdin):
        pieces = [region(rings) for rings in sheet["pieces"]]
        least, nested = 1e9, 0
        for i, a in enumerate(pieces):
            hull = a.convex_hull
            for b in pieces[:i]:
                least = min(least, a.distance(b))
                nested += hull.intersection(b.convex_hull).area > 1
        paper = box(0, 0, sheet["width"], sheet["height"])
        inside = all(paper.contains(p) for p in pieces)
        margin = min(p.distance(paper.exterior) for p in pieces) if inside else -1
        told.append({"distance": least, "margin": margin, "ink": unary_union(pieces).area, "nested": nested})
    json.dump(told, sys.stdout)


main()
