"""Records outlines.tsv. Run in this folder: python3 outlines.py > outlines.tsv (needs fontTools)."""
import re
import fontTools
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

FONTS = "../../../fonts/"
PLACES = {
    "league-gothic": ["wdth=75", "wdth=85", "wdth=93.7"],
    "saira": ["wght=800,wdth=62", "wght=900,wdth=125", "wght=437.5,wdth=50"],
    "archivo": ["wght=800,wdth=70", "wght=100,wdth=125", "wght=900,wdth=62"],
}
CHARACTERS = "HOQRS8027gaéß&ÅŁ’"
EXTRA = {"saira": ["Q.BRACKET.64"]}  # what the shaper draws for Q in heavy weights

print("# outline areas (as drawn: TrueType outer contours are clockwise, so negative) and exact boxes, in font units")
print("# measured with fontTools %s: AreaPen and BoundsPen on TTFont.getGlyphSet(location)" % fontTools.version)
print("# face\taxes\tglyph\tname\tarea\txmin\tymin\txmax\tymax")
catalogue = open(FONTS + "catalogue.go", encoding="utf-8").read()
for face, file in re.findall(r'ID:\s*"([^"]+)".*?File:\s*"([^"]+)"', catalogue, re.S):
    font = TTFont(FONTS + file)
    cmap = font.getBestCmap()
    names = [cmap[ord(c)] for c in CHARACTERS if ord(c) in cmap] + EXTRA.get(face, [])
    for place in ["-"] + PLACES.get(face, []):
        location = {k: float(v) for k, v in (p.split("=") for p in place.split(","))} if place != "-" else {}
        glyphs = font.getGlyphSet(location=location) if location else font.getGlyphSet()
        for name in names:
            area, box = AreaPen(glyphs), BoundsPen(glyphs)
            glyphs[name].draw(area)
            glyphs[name].draw(box)
            print(face, place, font.getGlyphID(name), name, *("%.4f" % v for v in (area.value, *box.bounds)), sep="\t")
