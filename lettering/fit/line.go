package fit

import (
	"math"
	"slices"

	"yokeline/lettering/ink"
	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// line is a shaped text in one cut of a face, in font units, ready to be
// measured at any size.
type line struct {
	cut    *weight.Cut
	cap    float64 // cap height of the cut
	glyphs []placed
	spots  []spot // of the glyphs; names that are drawn later keep them, and only them
	under  *line  // the second of two lines, see stack

	gaps        int     // places where tracking is added
	reach       float64 // farthest that ink lies from its letter's middle, along x
	top, bottom float64 // of the ink
	// pace is the smallest advance of letter middles per place of tracking; the
	// letters keep their order while it is over -tracking.
	pace float64
}

// placed is a glyph with ink in the line.
type placed struct {
	ink      *ink.Glyph
	from, to float64 // ink along x
	mark     bool
}

// spot is where a glyph stands in its line.
type spot struct {
	id     uint32
	before uint32  // clusters before it, that is places of tracking
	x, y   float64 // origin; tracking not included
	mid    float64 // middle of the advance; a mark has its base's
}

// build fills the line from what the shaper returned. fat is what every letter
// of an emboldened cut adds to its advance; raised letters are drawn small.
func (l *line) build(shaped *typeface.Line, fat float64, raised []int, glyph func(uint32) (*ink.Glyph, error)) error {
	l.reach, l.top, l.bottom = 0, math.Inf(-1), math.Inf(1)
	pen, mid, moved, grown := 0.0, 0.0, 0.0, 0.0
	clusters := 0
	for i, g := range shaped.Glyphs {
		if i > 0 && g.Cluster != shaped.Glyphs[i-1].Cluster {
			clusters++
		}
		size, lift := 1.0, 0.0
		if slices.Contains(raised, g.Cluster) {
			size, lift = raisedScale, (1-raisedScale)*l.cap
			g.ID |= raisedBit
		}
		k, err := glyph(g.ID)
		if err != nil {
			return err
		}
		if !g.Mark { // a mark keeps its base's
			moved += grown
			if grown = fat; k.Empty() {
				grown = 0
			}
			mid = pen + moved + (size*g.Advance+grown)/2
		}
		if !k.Empty() {
			l.add(k, spot{id: g.ID, before: uint32(clusters), x: pen + moved + size*(g.X-pen), y: size*g.Y + lift, mid: mid}, g.Mark)
		}
		pen += g.Advance
		moved -= (1 - size) * g.Advance
	}
	l.gaps = clusters
	l.repace()
	return nil
}

func (l *line) add(k *ink.Glyph, p spot, mark bool) {
	g := placed{ink: k, from: p.x + k.Box.Min.X, to: p.x + k.Box.Max.X, mark: mark}
	l.reach = max(l.reach, math.Abs(g.from-p.mid), math.Abs(g.to-p.mid))
	l.top = max(l.top, p.y+k.Box.Max.Y)
	l.bottom = min(l.bottom, p.y+k.Box.Min.Y)
	l.glyphs, l.spots = append(l.glyphs, g), append(l.spots, p)
}

// repace finds the pace of the line.
func (l *line) repace() {
	l.pace = math.Inf(1)
	for i := 1; i < len(l.spots); i++ {
		p, last := &l.spots[i], &l.spots[i-1]
		switch step := p.mid - last.mid; {
		case p.before > last.before:
			l.pace = min(l.pace, step/float64(p.before-last.before))
		case step < 0:
			l.pace = math.Inf(-1)
		}
	}
}

// bare returns the ends of the ink of the straight line, mm, without outlines.
func (l *line) bare(s state) (from, to float64) {
	sx := s.height / l.cap * s.scale
	from, to = math.Inf(1), math.Inf(-1)
	for i := range l.glyphs {
		g := &l.glyphs[i]
		add := s.tracking * float64(l.spots[i].before)
		from = min(from, sx*g.from+add)
		to = max(to, sx*g.to+add)
	}
	return from, to
}
