package typeface

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype/tables"
	hinting "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"yokeline/lettering/geom"
)

// understood checks that the parser took in the tables it was given: it drops
// a whole layout table in silence when one lookup is not to its liking, and
// names would then be set without kerning.
func (s *source) understood(file *fontFile, found checked) error {
	const remedy = "names would be spaced wrongly; use another version of the font"
	if n := len(s.font.GPOS.Lookups); n != found.gpos {
		return fmt.Errorf("its table \"GPOS\" (kerning) has %d lookups, of which %d were understood; %s", found.gpos, n, remedy)
	}
	if n := len(s.font.GSUB.Lookups); n != found.gsub {
		return fmt.Errorf("its table \"GSUB\" (alternates) has %d lookups, of which %d were understood; %s", found.gsub, n, remedy)
	}
	gdef := file.tables["GDEF"]
	if len(gdef) >= 12 && gdef[4]|gdef[5] != 0 && s.font.GDEF.GlyphClassDef == nil {
		return fmt.Errorf("its table \"GDEF\" (kinds of glyphs) was not understood; %s", remedy)
	}
	if err := mend(&s.font.GSUB.Layout); err != nil {
		return err
	}
	return mend(&s.font.GPOS.Layout)
}

// needed are the characters without which a face is of no use here.
const needed = "H0123456789"

// equipped checks that the face maps what is needed.
func (s *source) equipped() error {
	for _, r := range needed {
		if _, ok := s.nominal(r); !ok {
			return fmt.Errorf("it has no %q; names and numbers need H and all ten digits, so use another font", r)
		}
	}
	return nil
}

// mend works round a fault of the shaper (go-text v0.3.3, getFeatureLookupsWithVar): once
// a variable font's conditional alternates are in force, every feature that
// has no alternate loses its lookups, where it should keep them (OpenType
// 1.9.1, "FeatureVariations table"). Accents and language forms then go
// wrong. Each feature is therefore named as its own alternate.
func mend(layout *font.Layout) error {
	const most = 1 << 14
	if n := len(layout.FeatureVariations) * len(layout.Features); n > most {
		return fmt.Errorf("its conditional alternates unfold to %d, more than %d; use a static version of the font", n, most)
	}
	for i := range layout.FeatureVariations {
		subs := &layout.FeatureVariations[i].Substitutions.Substitutions
		named := make([]bool, len(layout.Features))
		for _, s := range *subs {
			if int(s.FeatureIndex) < len(named) {
				named[s.FeatureIndex] = true
			}
		}
		for k, feature := range layout.Features {
			if !named[k] {
				*subs = append(*subs, tables.FeatureTableSubstitutionRecord{FeatureIndex: uint16(k), AlternateFeature: feature.Feature})
			}
		}
	}
	return nil
}

// Bounds of a believable cap height, as shares of the em. Latin faces lie
// between 0.55 and 0.9.
const (
	minCap = 0.25
	maxCap = 1.5
)

// admit checks that the face can be lettered with: capitals that can be
// measured, all ten digits, axes that move the drawing, and a line that the
// shaper sets.
func (s *source) admit() error {
	f := s.root
	if share := f.capTop / s.upem; share < minCap || share > maxCap {
		return fmt.Errorf("its H is %.2f em high, where %.2f to %.2f is believable; use another font", share, minCap, maxCap)
	}
	for _, r := range needed {
		id, _ := s.nominal(r)
		switch d := f.glyph(id); {
		case d.err != nil:
			return fmt.Errorf("its %q cannot be drawn: %w; %s", r, d.err, another)
		case d.box.Empty() || d.box.Width() == 0 || d.box.Height() == 0:
			return fmt.Errorf("its %q has no ink; use another font", r)
		}
	}
	if _, err := f.NewShaper().Shape("HH0123456789", ""); err != nil {
		return err
	}
	return s.moves()
}

// moves checks that at least one axis changes the drawing or the advance of H
// or 0. If none does, the variations were not understood. (One alone may: a
// width axis for Arabic leaves Latin as it is.)
func (s *source) moves() error {
	for _, a := range s.axes {
		low, err := s.root.Instance(map[string]float64{a.Tag: a.Min})
		if err != nil {
			return err
		}
		high, err := s.root.Instance(map[string]float64{a.Tag: a.Max})
		if err != nil {
			return err
		}
		for _, r := range "H0" {
			id, _ := s.nominal(r)
			if !slices.Equal(low.Outline(id), high.Outline(id)) || low.Advance(id) != high.Advance(id) {
				return nil
			}
		}
	}
	if len(s.axes) == 0 {
		return nil
	}
	return fmt.Errorf("its axes (%s) change nothing, so its variations were not understood; use a static version of the font", s.describe())
}

// compare reads the file a second time, with an independent parser, and
// refuses it when the two disagree on the em, the number of glyphs, or the
// advance and box of H and 0 at the default setting.
func (s *source) compare(file *fontFile) error {
	const remedy = "it is read in two ways, so its measures cannot be trusted; use another version of the font"
	second, err := sfnt.Parse(file.pack(measuring))
	if err != nil {
		return fmt.Errorf("a second parser refuses it (%w); %s", err, another)
	}
	var buf sfnt.Buffer
	if s.name == "" {
		s.name = ownName(second, &buf, s.id)
	}
	if upem, n := float64(second.UnitsPerEm()), second.NumGlyphs(); upem != s.upem || n != s.glyphs {
		return fmt.Errorf("%g units per em and %d glyphs by one parser, %g and %d by another; %s", s.upem, s.glyphs, upem, n, remedy)
	}
	scale := fixed.I(int(s.upem))
	for _, r := range "H0" {
		id, _ := s.nominal(r)
		other, err := second.GlyphIndex(&buf, r)
		if err != nil || uint32(other) != id {
			return fmt.Errorf("%q is glyph %d by one parser, %d by another; %s", r, id, other, remedy)
		}
		advance, err := second.GlyphAdvance(&buf, other, scale, hinting.HintingNone)
		if err != nil {
			return fmt.Errorf("a second parser finds no advance of %q (%w); %s", r, err, another)
		}
		if a := s.root.Advance(id); a != float64(advance)/64 {
			return fmt.Errorf("%q is %g wide by one parser, %g by another; %s", r, a, float64(advance)/64, remedy)
		}
		segments, err := second.LoadGlyph(&buf, other, scale, nil)
		if err != nil {
			return fmt.Errorf("a second parser cannot draw %q (%w); %s", r, err, another)
		}
		if a, b := s.root.Bounds(id), boundsOf(segments); apart(a, b) > max(2, s.upem/500) {
			return fmt.Errorf("the box of %q is %v by one parser, %v by another; %s", r, a, b, remedy)
		}
	}
	return nil
}

// apart returns the largest distance between two sides. Honest readings
// differ by up to one unit: the second parser rounds implied points to whole
// units, and does not shift an outline to its side bearing.
func apart(a, b geom.Rect) float64 {
	d := math.Max(math.Abs(a.Min.X-b.Min.X), math.Abs(a.Min.Y-b.Min.Y))
	return math.Max(d, math.Max(math.Abs(a.Max.X-b.Max.X), math.Abs(a.Max.Y-b.Max.Y)))
}

// boundsOf converts a drawing of the second parser, y down in 1/64 units.
func boundsOf(segments sfnt.Segments) geom.Rect {
	at := func(p fixed.Point26_6) geom.Point { return geom.Point{X: float64(p.X) / 64, Y: -float64(p.Y) / 64} }
	var path geom.Path
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			path.MoveTo(at(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			path.LineTo(at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			path.QuadTo(at(s.Args[0]), at(s.Args[1]))
		case sfnt.SegmentOpCubeTo:
			path.CubeTo(at(s.Args[0]), at(s.Args[1]), at(s.Args[2]))
		}
	}
	return path.Bounds()
}

// ownName returns the full name in the file's name table, or the fallback.
func ownName(f *sfnt.Font, buf *sfnt.Buffer, fallback string) string {
	if name, err := f.Name(buf, sfnt.NameIDFull); err == nil && name != "" {
		return name
	}
	return fallback
}
