package layers

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
)

// shape is one level of a piece as it is seen: filled, what lies on it included.
type shape struct {
	name   string
	colour order.Colour
	region geom.Region
	step   float64 // that it stands out from the shape above it, mm; 0 for the topmost
}

// fineness is how many times larger than 1:1 shapes are while they are worked on.
// What is drawn on a proof is good to outline.Tolerance; what is cut is held to a
// 16th of it, and mitred tips, which hang on the direction of very short edges, to
// the size that was told. A power of two, so that scaling is exact.
const fineness = 16

// Tolerance is how far, in mm, the straight edges of the art may lie off the
// curves of the letters, and those of outlines off true circles.
const Tolerance = outline.Tolerance / fineness

// builder holds the art under work, its shapes fineness times as large.
type builder struct {
	settings Settings
	engine   outline.Engine
	art      Art
}

// make fills the art: layers, then marks and margin, and mirrors it at last.
func (b *builder) make(piece sizes.Piece) error {
	shapes, err := b.shapes(piece)
	if err != nil {
		return err
	}
	shapes = b.merge(shapes)
	if err := b.build(shapes); err != nil {
		return err
	}
	b.art = b.art.mapped(geom.Scale(1.0/fineness, 1.0/fineness))
	for i, l := range b.art.Layers {
		b.art.Layers[i].Region = thinned(l.Region, thinness)
	}
	b.finish()
	if b.art.Mirrored {
		b.art = b.art.Mirror()
		b.art.Mirrored = true
	}
	return nil
}

// shapes returns the levels of the piece from the top down: text laid on a tail,
// letters, outlines. Each lies inside the next.
func (b *builder) shapes(piece sizes.Piece) ([]shape, error) {
	large := geom.Scale(fineness, fineness)
	asked := make([]outline.Layer, len(piece.Asked.Outlines))
	for i, o := range piece.Asked.Outlines {
		asked[i] = outline.Layer{Width: o.Width.MM() * fineness, Join: o.Join}
	}
	letters, err := b.engine.Union(outline.Flatten(piece.Ink().Transform(large), asked))
	if err != nil {
		return nil, err
	}
	if len(letters) == 0 {
		return nil, errors.New("it has no ink; give it a text")
	}
	rest, err := b.engine.Layers(letters, asked)
	if err != nil {
		return nil, err
	}
	var out []shape
	if len(piece.Laid) > 0 {
		laid, err := b.engine.Union(piece.Laid.Transform(large))
		if err != nil {
			return nil, err
		}
		out = append(out, shape{"text on the tail", piece.Asked.Tail.Colour, laid, 0})
	}
	word := "letters"
	if piece.Number != nil {
		word = "digits"
	}
	out = append(out, shape{word, piece.Asked.Colour, letters, 0})
	for i, o := range piece.Asked.Outlines {
		if i > 0 && o.Join != asked[i-1].Join {
			// A mitred tip may reach past a round outline about it.
			if rest[i], err = b.engine.Union(slices.Concat(rest[i], rest[i-1])); err != nil {
				return nil, err
			}
		}
		out = append(out, shape{fmt.Sprintf("outline %d", i+1), o.Colour, rest[i], o.Width.MM()})
	}
	return out, nil
}

// merge makes neighbours of one colour one shape: nobody cuts or prints a colour
// on itself.
func (b *builder) merge(shapes []shape) []shape {
	out := shapes[:1]
	for _, s := range shapes[1:] {
		above := &out[len(out)-1]
		if above.colour.Hex != s.colour.Hex {
			out = append(out, s)
			continue
		}
		b.note("%s and %s are of one colour and made as one", above.name, s.name)
		above.name, above.region = above.name+" and "+s.name, s.region
		above.step += s.step
	}
	return out
}

func (b *builder) note(format string, args ...any) {
	b.art.Notes = append(b.art.Notes, fmt.Sprintf(format, args...))
}

func (b *builder) add(l Layer) { b.art.Layers = append(b.art.Layers, l) }

// offset grows or shrinks by d mm with round joins. Shrinking to nothing gives none.
func (b *builder) offset(r geom.Region, d float64) (geom.Region, error) {
	if d == 0 || len(r) == 0 {
		return r, nil
	}
	return b.engine.Offset(r, d*fineness, outline.Round)
}

// closed rounds the inner corners of a region to a radius and closes what is
// narrower than twice that; all else stays where it is. Whatever surrounds the
// region by the radius or more is not moved by it.
func (b *builder) closed(r geom.Region, radius float64) (geom.Region, error) {
	grown, err := b.offset(r, radius)
	if err != nil {
		return nil, err
	}
	return b.offset(grown, -radius)
}

// eased is closed for a shape that is cut, and tells when parts of it grow
// together.
func (b *builder) eased(s shape, radius float64) (geom.Region, error) {
	out, err := b.closed(s.region, radius)
	if len(out) < len(s.region) {
		b.note("%s: openings narrower than %g mm are closed", s.name, 2*radius)
	}
	return out, err
}

// opened rounds the outer corners of a region to a radius and leaves out what is
// narrower than twice that.
func (b *builder) opened(r geom.Region, radius float64) (geom.Region, error) {
	shrunk, err := b.offset(r, -radius)
	if err != nil {
		return nil, err
	}
	return b.offset(shrunk, radius)
}

// minus returns the part of a that is not in b.
func (b *builder) minus(a, other geom.Region) (geom.Region, error) {
	if len(other) == 0 {
		return a, nil
	}
	return b.hollow(1, a, other)
}

// common returns what lies in a and in c.
func (b *builder) common(a, c geom.Region) (geom.Region, error) {
	return b.hollow(2, slices.Concat(a, c), nil)
}

// hollow returns where nothing is left of n large sheets once out is cut from
// them and in laid on: with one sheet, what is in out and not in in; with two,
// where out lies twice. The union of everything else is settled, and the holes in
// it are the answer, so it is exact whatever touches whatever.
func (b *builder) hollow(n int, out, in geom.Region) (geom.Region, error) {
	frame := out.Bounds().Union(in.Bounds()).Grow(10)
	sheet := geom.Ring{frame.Min, {X: frame.Max.X, Y: frame.Min.Y}, frame.Max, {X: frame.Min.X, Y: frame.Max.Y}}
	rings := slices.Clone(in)
	for range n {
		rings = append(rings, sheet)
	}
	for _, ring := range out {
		rings = append(rings, backwards(ring))
	}
	settled, err := b.engine.Union(rings)
	if err != nil {
		return nil, err
	}
	var holes geom.Region
	for _, ring := range settled {
		if ring.Area() > frame.Width()*frame.Height()*0.999 && (geom.Region{ring}).Bounds().Width() > frame.Width()-1 {
			continue // the sheet's own edge
		}
		holes = append(holes, backwards(ring))
	}
	return holes, nil
}

// spot is the name of a colour as an ink or a film. A colour that is called as
// one of the names with a meaning of their own gets its figures after it.
func (b *builder) spot(c order.Colour) string {
	switch {
	case c.Name == "":
		return c.Hex
	case slices.ContainsFunc([]string{AllPlates, "None", b.settings.CutName, string(StitchLine)}, func(taken string) bool {
		return strings.EqualFold(taken, c.Name)
	}):
		return c.Name + " " + c.Hex
	}
	return c.Name
}
