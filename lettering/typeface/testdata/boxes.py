"""Makes the three small test fonts. Run in this folder: python3 boxes.py (needs fontTools).

Their letters are plain boxes. boxes.otf has CFF outlines with local and global
subroutines, boxes-vf.ttf two axes, conditional alternates, kerning and a
composite, boxes-kern.ttf a kern table and no GPOS.
"""
from fontTools.feaLib.builder import addOpenTypeFeaturesFromString
from fontTools.fontBuilder import FontBuilder
from fontTools.misc.psCharStrings import T2CharString
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import newTable
from fontTools.ttLib.tables._k_e_r_n import KernTable_format_0
from fontTools.ttLib.tables import otTables
from fontTools.varLib import builder
from fontTools.varLib.featureVars import addFeatureVariations
from fontTools.ttLib.tables.TupleVariation import TupleVariation

NAMES = [".notdef", "space", "H", "x", "A", "V", "acutecomb", "Aacute", "H.heavy"]
NAMES += ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
CMAP = {0x20: "space", 0x48: "H", 0x78: "x", 0x41: "A", 0x56: "V", 0x301: "acutecomb", 0xC1: "Aacute"}
CMAP.update({0x30 + i: name for i, name in enumerate(NAMES[9:])})
TIME = 3_800_000_000  # fixed, so that the files come out the same


def size(name):
    """Width and height of the box that stands for a glyph."""
    if name in (".notdef", "space"):
        return 0, 0
    if name == "x":
        return 300, 500
    return 300 + 10 * NAMES.index(name), 700


def start(name, is_ttf):
    fb = FontBuilder(1000, isTTF=is_ttf)
    fb.setupGlyphOrder(NAMES)
    fb.setupCharacterMap(CMAP)
    return fb


def finish(fb, family):
    fb.setupHorizontalMetrics({n: (0 if n == "acutecomb" else size(n)[0] + 100, 50 if size(n)[0] else 0) for n in NAMES})
    fb.setupHorizontalHeader(ascent=800, descent=-200)
    fb.setupNameTable({"familyName": family, "styleName": "Regular", "fullName": family})
    fb.setupOS2()
    fb.setupPost()
    fb.font["head"].created = fb.font["head"].modified = TIME
    fb.font.recalcTimestamp = False


def true_type():
    glyphs = {}
    for n in NAMES:
        pen = TTGlyphPen(glyphs)
        w, h = size(n)
        if n == "Aacute":
            pen.addComponent("A", (1, 0, 0, 1, 0, 0))
            pen.addComponent("acutecomb", (1, 0, 0, 1, 0, 100))
        elif n == "x":
            pen.moveTo((50, 0))
            pen.qCurveTo((50, h), (50 + w, h))
            pen.lineTo((50 + w, 0))
            pen.closePath()
        elif w:
            pen.moveTo((50, 0))
            pen.lineTo((50, h))
            pen.lineTo((50 + w, h))
            pen.lineTo((50 + w, 0))
            pen.closePath()
        glyphs[n] = pen.glyph()
    return glyphs


FEATURES = """
languagesystem DFLT dflt; languagesystem latn dflt;
markClass acutecomb <anchor 100 700> @TOP;
feature kern { pos A V -80; pos V A -70; pos [H x] V -10; } kern;
feature mark { pos base [A V H] <anchor 200 700> mark @TOP; } mark;
feature mkmk { pos mark acutecomb <anchor 100 900> mark @TOP; } mkmk;
feature curs { pos cursive V <anchor 50 0> <anchor 300 0>; } curs;
feature liga { sub A V by H; } liga;
feature dlig { sub H H by H.heavy; } dlig;
feature ss01 { sub x from [A V]; } ss01;
feature ss02 { sub Aacute by A acutecomb; } ss02;
feature ss03 { sub A' V' x by V; sub H' H' by V; rsub [A V]' x by H; } ss03;
feature ss04 { pos A' 20 V' H; pos [A V x]' -5 [zero one]' 7 two; pos H <10 0 20 0>; } ss04;
lookup NUDGE { pos zero 5; pos one 6; } NUDGE;
lookup SWAP { sub two by three; } SWAP;
feature ss05 { pos zero' lookup NUDGE one; pos one' lookup NUDGE; } ss05;
feature ss06 { sub two' lookup SWAP two; sub two' lookup SWAP three; } ss06;
feature ss07 { pos ligature H.heavy <anchor 100 700> mark @TOP ligComponent <anchor 300 700> mark @TOP; } ss07;
table GDEF { GlyphClassDef [A V H x], [H.heavy], [acutecomb], ; LigatureCaretByPos H.heavy 200; Attach H 1; } GDEF;
"""

fb = start("boxes-kern", True)
fb.setupGlyf(true_type())
finish(fb, "Boxes Kern")
kern = fb.font["kern"] = newTable("kern")
kern.version = 0
sub = KernTable_format_0()
sub.version, sub.coverage, sub.tupleIndex, sub.apple = 0, 1, None, False
sub.kernTable = {("A", "V"): -80, ("V", "A"): -70}
kern.kernTables = [sub]
fb.save("boxes-kern.ttf")

fb = start("boxes-vf", True)
fb.setupGlyf(true_type())
finish(fb, "Boxes Variable")
fb.setupFvar([("wght", 100, 400, 900, "Weight"), ("wdth", 50, 100, 125, "Width")], [])
variations = {}
for n in NAMES:
    points = 2 if n == "Aacute" else 4 if size(n)[0] else 0
    if points != 4:
        continue
    wide = [(0, 0), (0, 0), (60, 0), (60, 0), (0, 0), (60, 0), (0, 0), (0, 0)]
    variations[n] = [
        TupleVariation({"wdth": (0, 1, 1)}, wide),
        TupleVariation({"wdth": (-1, -1, 0)}, [(-2 * x, y) for x, y in wide]),
        TupleVariation({"wght": (0, 1, 1)}, [(0, 0), None, (30, 0), None, (0, 0), (30, 0), (0, 0), (0, 0)]),
    ]
fb.setupGvar(variations)
addOpenTypeFeaturesFromString(fb.font, FEATURES)
fb.font["HVAR"] = newTable("HVAR")
hvar = fb.font["HVAR"].table = otTables.HVAR()
regions = builder.buildVarRegionList([{"wdth": (0, 1, 1)}, {"wdth": (-1, -1, 0)}, {"wght": (0, 1, 1)}], ["wght", "wdth"])
rows = [[0, 0, 0], [60, -120, 30]]
hvar.Version = 0x00010000
hvar.VarStore = builder.buildVarStore(regions, [builder.buildVarData([0, 1, 2], rows, optimize=False)])
hvar.AdvWidthMap = builder.buildVarIdxMap([1 if n in variations else 0 for n in NAMES], NAMES)
hvar.LsbMap = hvar.RsbMap = None
addFeatureVariations(fb.font, [([{"wght": (0.5, 1.0)}], {"H": "H.heavy"})])
fb.save("boxes-vf.ttf")

fb = start("boxes", False)
charstrings = {}
for n in NAMES:
    w, h = size(n)
    program = [w + 100]
    if w:
        # local subroutine 0 draws the sides by way of global subroutine 0
        program += [0, 20, "hstem", 50, 30, "vstemhm", "hintmask", b"\xc0", 50, 0, "rmoveto", h, w, -h, -107, "callsubr"]
    charstrings[n] = T2CharString(program=program + ["endchar"])
fb.setupCFF("Boxes", {"FullName": "Boxes"}, charstrings, {})
top = fb.font["CFF "].cff.topDictIndex[0]
from fontTools.cffLib import GlobalSubrsIndex, SubrsIndex

side = T2CharString(program=["vlineto", "return"])
local = T2CharString(program=[-107, "callgsubr", "return"])
fb.font["CFF "].cff.GlobalSubrs.append(side)
top.Private.Subrs = SubrsIndex()
top.Private.Subrs.append(local)
for cs in charstrings.values():
    cs.private, cs.globalSubrs = top.Private, fb.font["CFF "].cff.GlobalSubrs
finish(fb, "Boxes")
addOpenTypeFeaturesFromString(fb.font, FEATURES)
fb.save("boxes.otf")
