package platen

import (
	"math"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// Piece is the finished box of one piece, or of all that is pressed at once, as
// it lies on the garment: outlines included.
type Piece struct {
	Side          garment.Side
	Centre        geom.Point // of the box, on the garment
	Width, Height float64    // of the box, along and across the lettering, mm
	Turn          float64    // radians by which the piece is turned clockwise on the page
}

// corners returns the corners of the box on the garment.
func (p Piece) corners() []geom.Point {
	turn := geom.Rotate(p.Turn).Then(geom.Translate(p.Centre.X, p.Centre.Y))
	var out []geom.Point
	for _, c := range [...]geom.Point{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}} {
		out = append(out, turn.Apply(geom.Point{X: c.X * p.Width / 2, Y: c.Y * p.Height / 2}))
	}
	return out
}

// Stack returns the upright box round pieces of one side that are pressed at
// once.
func Stack(pieces []Piece) Piece {
	box := geom.EmptyRect()
	out := Piece{}
	for _, p := range pieces {
		out.Side = p.Side
		for _, c := range p.corners() {
			box = box.Include(c)
		}
	}
	out.Centre, out.Width, out.Height = box.Center(), box.Width(), box.Height()
	return out
}

// Fit says how a piece is pressed.
type Fit struct {
	// NeedWidth and NeedHeight are the piece with its edge all round, mm.
	NeedWidth, NeedHeight float64
	Presses               int     // 1, 2, or 0 where not even two presses of the largest platen do
	Platen                Platen  // as the shop wrote it; zero for no press
	Across                float64 // of the platen along the lettering, mm: its height where Turned
	Turned                bool    // the platen lies with its second side along the lettering
	// Overlap is the strip that both of two presses cover, mm; Beside says that the
	// presses lie side by side along the lettering, else one above the other.
	Overlap float64
	Beside  bool
	Under   []Under // of the garment, under the platen; nearest to the piece first
}

// Choose returns the smallest platen that takes a piece with the edge clear on
// every side, either way round, in one press; where none does, the smallest that
// takes it in two presses with an overlap. The platen is centred on the piece and
// lies along its lettering. g may be nil, Under is then empty.
func Choose(g *garment.Garment, piece Piece, platens []Platen) Fit {
	f := Fit{NeedWidth: piece.Width + 2*Edge, NeedHeight: piece.Height + 2*Edge}
	list := sorted(platens)
	if !f.once(list) && !f.twice(list, piece) {
		return f
	}
	if g != nil {
		across, down := f.bed()
		f.Under = under(g, piece, across, down)
	}
	return f
}

// tight forgives the noise of floating point, mm.
const tight = 1e-9

// ways calls try with the sides of a platen as they lie both ways round until it
// is content. The platen lies as the shop wrote it where both ways do.
func (f *Fit) ways(p Platen, try func(across, down float64) bool) bool {
	w, h := p.Width.MM(), p.Height.MM()
	f.Platen = p
	if f.Across, f.Turned = w, false; try(w, h) {
		return true
	}
	f.Across, f.Turned = h, true
	return try(h, w)
}

func (f *Fit) once(list []Platen) bool {
	for _, p := range list {
		if f.ways(p, func(across, down float64) bool {
			return f.NeedWidth <= across+tight && f.NeedHeight <= down+tight
		}) {
			f.Presses = 1
			return true
		}
	}
	*f = Fit{NeedWidth: f.NeedWidth, NeedHeight: f.NeedHeight}
	return false
}

// twice takes the smallest platen that covers the piece in two presses. Within
// each, the piece keeps its edge at the outer sides, and the rim that the other
// press covers is not counted.
func (f *Fit) twice(list []Platen, piece Piece) bool {
	for _, p := range list {
		if f.ways(p, func(across, down float64) bool {
			beside, above := 2*(across-2*Edge)-piece.Width, 2*(down-2*Edge)-piece.Height
			switch {
			case f.NeedHeight <= down+tight && beside >= LeastOverlap-tight:
				f.Overlap, f.Beside = beside, true
			case f.NeedWidth <= across+tight && above >= LeastOverlap-tight:
				f.Overlap, f.Beside = above, false
			default:
				return false
			}
			return true
		}) {
			f.Presses = 2
			return true
		}
	}
	*f = Fit{NeedWidth: f.NeedWidth, NeedHeight: f.NeedHeight}
	return false
}

// bed returns the area that is pressed, round the middle of the piece: the
// platen, or the union of two presses.
func (f *Fit) bed() (across, down float64) {
	across, down = f.Across, f.Platen.Width.MM()+f.Platen.Height.MM()-f.Across
	if f.Presses == 2 {
		if f.Beside {
			return math.Max(across, f.NeedWidth), down
		}
		return across, math.Max(down, f.NeedHeight)
	}
	return across, down
}
