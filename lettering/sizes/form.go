package sizes

import (
	"math"

	"yokeline/lettering/edges"
	"yokeline/lettering/fit"
	"yokeline/lettering/order"
)

// edgesOf returns the edges that a piece's letters are drawn between, and how
// they lean; the zero shape for a name on a line or an arch. The order has
// refused forms without a rise.
func edgesOf(asked order.Piece) edges.Shape {
	var out edges.Shape
	if form, err := edges.Parse(asked.Shape); err == nil && shapeOf(asked.Shape) == fit.Straight && asked.Rise != nil {
		if shape, err := form.ByRise(asked.Rise.MM()); err == nil {
			out = shape
		}
	}
	out.Shear = asked.Lean * math.Pi / 180
	return out
}

// formed reports whether the letters are drawn between edges that are not both
// level.
func formed(asked order.Piece) bool {
	s := edgesOf(asked)
	s.Shear = 0
	return s != edges.Shape{}
}

// bulges returns how far a piece between edges stands over its flat cap
// line and under its flat baseline, over the middle width of it, mm.
func bulges(asked order.Piece, height, limit, width float64) (above, below float64) {
	s := edgesOf(asked)
	s.Shear = 0
	band, err := s.Band(height, limit)
	if err != nil {
		return 0, 0 // the fit says what is wrong, naming the player
	}
	for _, x := range [...]float64{-width / 2, 0, width / 2} {
		above, below = math.Max(above, band.Top(x)-height), math.Max(below, -band.Bottom(x))
	}
	return above, below
}

// settle puts the piece's own settings into the request. Stroke and Embolden
// belong to the height asked; a name that is matched to a lower one takes its
// share of them.
func settle(r *fit.Request, asked order.Piece, gap, share float64) {
	r.Edges, r.Optical = edgesOf(asked), asked.Optical
	if asked.KeepGap {
		r.KeepGap = gap
	}
	if asked.Embolden != nil {
		r.Embolden = asked.Embolden.MM() * share
	}
	if asked.Stroke != nil {
		r.Stroke = asked.Stroke.MM() * share
	}
}
