package bench

import (
	"math"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/proof/page"
)

// Capital heights of labels, mm: as set, the least that is read with ease, and the
// share of a room's depth that letters take.
const (
	labelCap   = 2.4
	easyCap    = 1.6
	labelShare = 0.6
)

// place is a text in a room; upright runs it up the page.
type place struct {
	text    string
	room    geom.Rect
	upright bool
}

// label sets the label in the first of these ways in which it is read with ease,
// or else in the one in which it is largest: under the piece, over it, up its left
// side, or its name under and the rest over it.
func (b *Bench) label(art layers.Art, l Label) geom.Path {
	rest := joined(l.Place, l.Size, l.Note)
	all := joined(l.Player, rest)
	if all == "" {
		return nil
	}
	under, over, left, right := art.Waste[0], art.Waste[1], art.Waste[2], art.Waste[3]
	ways := [][]place{
		{{all, under, false}}, {{all, over, false}}, {{all, left, true}}, {{all, right, true}},
	}
	if l.Player != "" && rest != "" {
		ways = append(ways, []place{{l.Player, under, false}, {rest, over, false}}, []place{{l.Player, left, true}, {rest, right, true}})
	}
	var best []place
	size := 0.0
	for _, way := range ways {
		if s := b.fits(way); s > size {
			best, size = way, s
		}
		if size >= easyCap {
			break
		}
	}
	var path geom.Path
	for _, p := range best {
		path = append(path, b.set(p, size)...)
	}
	return path
}

func joined(parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, " · ")
}

// fits returns the capital height, mm, at which every place of a way fits its
// room; 0 for none.
func (b *Bench) fits(way []place) float64 {
	size := labelCap
	for _, p := range way {
		if p.room.Empty() {
			return 0
		}
		long, deep := p.room.Width(), p.room.Height()
		if p.upright {
			long, deep = deep, long
		}
		wide := b.pen.Outlines(0, 0, b.style(1), p.text).Bounds().Width() // at 1 mm
		size = math.Min(size, math.Min(deep*labelShare, long/math.Max(wide, 1e-9)))
	}
	return size
}

// style has capitals of so many mm.
func (b *Bench) style(capHeight float64) page.Style {
	return style(capHeight / b.cap / page.MMPerPoint)
}

// set returns the outlines of a text in the middle of its room, y up.
func (b *Bench) set(p place, capHeight float64) geom.Path {
	m := geom.Scale(1, -1)
	path := b.pen.Outlines(0, 0, b.style(capHeight), p.text)
	box := path.Transform(m).Bounds()
	// The middle of the capitals, not of the ink, so that lines stand alike.
	m = m.Then(geom.Translate(-box.Center().X, -capHeight/2))
	if p.upright {
		m = m.Then(geom.Affine{B: 1, C: -1})
	}
	c := p.room.Center()
	return path.Transform(m.Then(geom.Translate(c.X, c.Y)))
}

// unsigned is the mark of art that nobody signed, in the strip under a corner.
func (b *Bench) unsigned(corner geom.Point, width float64) geom.Path {
	const word = "UNSIGNED"
	room := geom.Rect{Min: geom.Point{X: corner.X + 1, Y: corner.Y - strip}, Max: geom.Point{X: corner.X + width - 1, Y: corner.Y}}
	wide := b.pen.Outlines(0, 0, b.style(1), word).Bounds().Width()
	return b.set(place{word, room, false}, math.Min(stripLetter, room.Width()/wide))
}
