package garment

import (
	"yokeline/lettering/garment/internal/curve"
	"yokeline/lettering/geom"
)

// Taken is where on the drawing a measure is taken: its path is exactly as long
// as the measure.
type Taken struct {
	Measure string // as Figure names it: chest half
	Side    Side
	Run     Run
	Path    geom.Path // one open contour
}

// Run is the way a measure runs.
type Run uint8

// The ways: straight across, straight down from a level, along a seam or a fold.
const (
	Across Run = iota
	Down
	Along
)

// Taken returns where each measure is taken, in the order of the figures. What
// runs along a seam is that of the viewer's right.
func (g *Garment) Taken() []Taken {
	var where map[string]spot
	switch s := g.shape.(type) {
	case *frame:
		where = s.spots()
	case *shorts:
		where = s.spots()
	}
	var out []Taken
	for _, figure := range g.figures {
		if at, ok := where[figure.Measure]; ok {
			out = append(out, Taken{figure.Measure, at.side, at.run, at.line.Path(false)})
		}
	}
	return out
}

// spot is the line of a measure.
type spot struct {
	side Side
	run  Run
	line chain
}

func acrossAt(s Side, x1, x2, y float64) spot {
	return spot{s, Across, curve.Line(pt{X: x1, Y: y}, pt{X: x2, Y: y})}
}

func downAt(s Side, x, y1, y2 float64) spot {
	return spot{s, Down, curve.Line(pt{X: x, Y: y1}, pt{X: x, Y: y2})}
}

func (f *frame) spots() map[string]spot {
	half := f.ShoulderWidth / 2
	out := map[string]spot{
		"chest half":      acrossAt(Front, -f.arm.X, f.arm.X, f.arm.Y),
		"body length":     downAt(Front, -f.hps.X, 0, f.BodyLength),
		"shoulder width":  acrossAt(Front, -half, half, f.tip.Y),
		"neck width":      acrossAt(Back, -f.hps.X, f.hps.X, 0),
		"neck drop front": downAt(Front, 0, 0, f.NeckDropFront),
		"neck drop back":  downAt(Back, 0, 0, f.NeckDropBack),
		"armhole depth":   downAt(Front, -f.arm.X, 0, f.arm.Y),
		"shoulder drop":   downAt(Front, -f.tip.X, 0, f.tip.Y),
		"strap width":     acrossAt(Front, f.hps.X, half, f.tip.Y),
		"racer width":     acrossAt(Back, -f.RacerWidth/2, f.RacerWidth/2, f.racerAt()),
		"placket length":  downAt(Front, 0, f.NeckDropFront, f.placketFoot()),
		"yoke depth":      downAt(Back, 0, 0, f.YokeDepth),
	}
	if f.style.sleeve.kind != sleeveless {
		out["sleeve length"] = spot{Front, Along, f.sleeve.fold}
	}
	return out
}

// spots of shorts. A waistband lies relaxed, so its width is that between its
// upper corners.
func (s *shorts) spots() map[string]spot {
	hip := hipLevel * s.FrontRise
	return map[string]spot{
		"waist half": acrossAt(Front, -s.waist.X, s.waist.X, s.waist.Y),
		"hip half":   acrossAt(Front, -s.HipHalf/2, s.HipHalf/2, hip),
		"front rise": downAt(Front, 0, 0, s.crotch.Y),
		"back rise":  downAt(Back, 0, s.crotch.Y-s.BackRise, s.crotch.Y),
		"outseam":    {Front, Along, curve.Join(s.bandSide, s.legSide)},
		"inseam":     {Front, Along, s.leg.Reverse()},
		"leg half":   {Back, Along, curve.Line(s.inner, s.outer)},
		"band":       downAt(Front, 0, 0, s.Band),
	}
}
