package findings

import (
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
)

// wants says which of the dearer measures a book asks for.
type wants struct {
	gap, collar, down, digits, level, clear bool
}

func wantsOf(r *rulebook.Rules) wants {
	if r == nil {
		return wants{}
	}
	out := wants{gap: figureOf(r.Names.GapMin), level: r.Names.EndsLevel.Yes(), clear: r.Names.EndsClear.Yes()}
	for _, p := range r.Positions {
		out.collar = out.collar || figureOf(p.BelowCollarMax)
		out.down = out.down || p.Centred.Says("down", "both") || figureOf(p.UpperHalf)
		out.digits = out.digits || figureOf(p.WidthMin)
	}
	return out
}

// figureOf reports a figure that something can be held against.
func figureOf(f *rulebook.Figure) bool { return f != nil && !f.None() }

// gapTolerance is how far the flattened ink may stray when a gap is measured, mm.
const gapTolerance = 0.02

// onGarment brings a piece's own coordinates to those of the garment.
func onGarment(p sizes.Piece, r geom.Region) geom.Region {
	return r.Transform(geom.Scale(1, -1)).Transform(geom.Translate(p.At.X, p.At.Y))
}

// edge returns the bare ink where it lies and how far the finished edge is from
// it all round; or, where corners are not round and reach further than sides,
// the finished shape itself and 0.
func edge(p sizes.Piece) (geom.Region, float64, error) {
	for _, o := range p.Asked.Outlines {
		if o.Join != outline.Round {
			layers, err := p.Outlines()
			if err != nil {
				return nil, 0, err
			}
			return onGarment(p, layers[len(layers)-1]), 0, nil
		}
	}
	return onGarment(p, p.Ink().Flatten(gapTolerance)), p.Reach(), nil
}

// finishedGap returns the smallest distance between the finished edges of two
// pieces on one side of a garment, 0 where they touch, NaN where an outline
// cannot be drawn.
func finishedGap(a, b sizes.Piece) float64 {
	one, reach, err := edge(a)
	other, otherReach, otherErr := edge(b)
	if err != nil || otherErr != nil {
		return math.NaN()
	}
	return math.Max(0, apart(one, other)-reach-otherReach)
}

// besideNumber measures how a name stands to the number on its side.
func besideNumber(m *Measured, name sizes.Piece, p sizes.Player, w wants) {
	number, ok := p.Piece(garment.BackNumber)
	if !ok {
		m.NumberGap, m.EndsClear = math.Inf(1), math.Inf(1)
		return
	}
	m.Side = "above"
	if name.Top > number.Top {
		m.Side = "below"
	}
	if w.gap {
		m.NumberGap = finishedGap(name, number)
	}
	if w.clear {
		m.EndsClear = endsClear(name, number, m.Side)
	}
}

// tops measures the top of what is drawn against the neck seam: of the bare ink
// (round digits stand a little over flat ones, the middle of an arch over its
// ends) and of the finished edge.
func tops(m *Measured, p sizes.Piece) {
	ink := p.Ink()
	top := ink.Bounds().Max.Y
	m.BelowCollar = p.BelowCollar + (p.At.Y - top - p.Top)
	m.TopReach = m.border()
	for _, o := range p.Asked.Outlines {
		if o.Join == outline.Round {
			continue
		}
		m.TopReach = math.NaN()
		if layers, err := p.Outlines(); err == nil {
			m.TopReach = layers[len(layers)-1].Bounds().Max.Y - top
		}
		return
	}
}

// down measures how far the middle of a piece is under the middle between neck
// seam and hem, and its foot under that between the shoulder and the hem.
func down(m *Measured, piece sizes.Piece, p sizes.Player) {
	if p.Garment == nil || !onBody(piece.Asked.Place) {
		return
	}
	middle := (p.Garment.Collar(piece.Side) + p.Garment.Hem()) / 2
	box := piece.Ink().Bounds()
	m.DownOffset = piece.At.Y - box.Center().Y - middle
	m.HalfFoot = piece.At.Y - box.Min.Y + piece.Reach() - p.Garment.Hem()/2
}

// narrowestDigit returns the width of the narrowest digit's bare ink, NaN where
// the ink does not come out as one shape a digit.
func narrowestDigit(p sizes.Piece) float64 {
	ink, err := p.Number.Settled()
	if err != nil {
		return math.NaN()
	}
	digits, least := 0, math.Inf(1)
	for _, ring := range ink {
		if ring.Area() > 0 {
			digits++
			least = math.Min(least, geom.Region{ring}.Bounds().Width())
		}
	}
	if digits != len(p.Number.Text) {
		return math.NaN()
	}
	return least
}

// endsClear returns how far the level on which the end letters of a name stand
// is clear of the finished edge of the number beside it, mm.
func endsClear(name, number sizes.Piece, side string) float64 {
	first, last := ends(name.Name)
	box := number.Ink().Bounds()
	if side == "below" {
		return name.At.Y - math.Max(first, last) - (number.At.Y - box.Min.Y + number.Reach())
	}
	return number.At.Y - box.Max.Y - number.Reach() - (name.At.Y - math.Min(first, last))
}

// tilt returns by how much the line that the letters stand on is higher at the
// outer end of the last letter than at that of the first, mm; NaN for two lines
// on an arch, of which each has its own.
func tilt(n *fit.Name) float64 {
	first, last := ends(n)
	return last - first
}

// ends returns how high the line that the letters stand on is at the outer ends
// of the first and the last letter, mm; NaN where it is not known, as for two
// lines on an arch, of which each has its own.
func ends(n *fit.Name) (first, last float64) {
	half := n.BareInkWidth / 2
	if n.Form() != n.Shape.String() {
		chord := n.Limit
		if chord <= 0 {
			chord = n.BareInkWidth
		}
		band, err := n.Edges.Band(n.LetterHeight, chord)
		if err != nil {
			return math.NaN(), math.NaN()
		}
		return band.Bottom(-half), band.Bottom(half)
	}
	if n.Shape == fit.Straight {
		return 0, 0
	}
	if n.Leading != 0 || n.Radius <= 0 {
		return math.NaN(), math.NaN()
	}
	level := func(x float64) float64 {
		rise := geom.Sagitta(n.Radius, math.Min(2*math.Abs(x-n.Apex), 2*n.Radius))
		if n.Shape == fit.RadialArchDown || n.Shape == fit.VerticalArchDown {
			return rise
		}
		return -rise
	}
	return level(-half), level(half)
}
