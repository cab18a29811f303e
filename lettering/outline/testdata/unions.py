"""Writes unions.json: random polygon sets with the areas that GEOS finds.

Run: python3 unions.py > unions.json  (Debian python3-shapely)

Part of yokeline and under its licence. The union by the non-zero rule is not a
GEOS operation on invalid polygons, so the lines are noded, made into faces, and
each face is kept when the winding number of a point inside is not zero.
"""

import json
import random

import shapely
from shapely.geometry import LineString, Polygon
from shapely.geos import geos_version_string
from shapely.ops import polygonize, unary_union


def winding(rings, x, y):
    total = 0
    for ring in rings:
        for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1]):
            side = (bx - ax) * (y - ay) - (x - ax) * (by - ay)
            if ay <= y < by and side > 0:
                total += 1
            elif by <= y < ay and side < 0:
                total -= 1
    return total


def union(rings):
    lines = [LineString([a, b]) for r in rings for a, b in zip(r, r[1:] + r[:1]) if a != b]
    kept = []
    for face in polygonize(unary_union(lines)):
        p = face.representative_point()
        if winding(rings, p.x, p.y) != 0:
            kept.append(face)
    return unary_union(kept) if kept else Polygon()


def main():
    rng = random.Random(20260101)
    cases = []
    for i in range(200):
        size = (8, 20, 200, 4000)[i % 4]
        rings = [
            [(rng.randint(0, size), rng.randint(0, size)) for _ in range(rng.randint(3, 14))]
            for _ in range(rng.randint(1, 4))
        ]
        area = union(rings)
        d = size / rng.choice((10, 20, 40))
        cases.append(
            {
                "size": size,
                "rings": [[c for p in r for c in p] for r in rings],
                "area": round(area.area, 6),
                "d": d,
                "grown": round(area.buffer(d, resolution=200).area, 6),
                "shrunk": round(area.buffer(-d, resolution=200).area, 6),
            }
        )
    source = "shapely %s on GEOS %s" % (shapely.__version__, geos_version_string)
    print('{"source": %s,\n"cases": [' % json.dumps(source))
    print(",\n".join(json.dumps(c, separators=(",", ":")) for c in cases))
    print("]}")


main()
