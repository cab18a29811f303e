package findings

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/seams"
	"yokeline/lettering/sizes"
)

// Hit is a piece whose finished shape comes too near to a line of its garment.
type Hit struct {
	Player, Place, Size string
	Line                string  // left armhole seam
	Distance, Margin    float64 // mm; the distance is negative where the piece reaches over the line
	Usual               bool    // the margin is the usual one and not the job's own
	Ways                []Way   // each tried; empty where none of them helps
	Arched              bool
}

// Way is one way to bring a piece back inside its panel: what to do, and by how
// much in mm (a way with words only, such as a size, has 0).
type Way struct {
	Words string // lower it by
	MM    float64
}

// hitLeast is the least, mm, by which a margin must be missed to be reported:
// letters and seams are both drawn as chords.
const hitLeast = seams.Slack + gapTolerance + 0.01

// What is tried to bring a piece back inside.
const (
	limitTo              = "limit it to"
	lowerBy              = "lower it by"
	heightTo             = "make it"
	lowerStep, lowerMost = 3.0, 60.0 // mm
	smallest             = 0.4       // of its height
)

// fitter holds the pieces of an order against their garments.
type fitter struct {
	sized *sizes.Sized
	cloth map[clothKey]*seams.Cloth
	seen  map[pieceKey]*Hit
}

type clothKey struct {
	size         garment.Size
	place        garment.Place
	split, right bool
}

// pieceKey tells pieces that lie alike; lengths are hundredths of a mm.
type pieceKey struct {
	cloth                          clothKey
	text                           string
	height, width, turn, x, y, lay int
}

// hits holds every piece that fits its room against the lines of its garment.
func (s *Subject) hits(sized *sizes.Sized) {
	f := &fitter{sized: sized, cloth: map[clothKey]*seams.Cloth{}, seen: map[pieceKey]*Hit{}}
	for _, p := range sized.Players {
		if p.Garment == nil {
			continue
		}
		for _, piece := range p.Pieces {
			if piece.NoRoom || isOver(piece) {
				continue // reported as such
			}
			if h := f.hit(p, piece); h != nil {
				h := *h
				h.Player = p.Label()
				s.Hits = append(s.Hits, h)
			}
		}
	}
}

func (f *fitter) hit(p sizes.Player, piece sizes.Piece) *Hit {
	on := clothKey{p.Size, piece.Asked.Place, piece.Split != nil, piece.At.X < 0}
	hundredths := func(mm float64) int { return int(math.Round(mm * 100)) }
	key := pieceKey{cloth: on, text: piece.Text(), height: hundredths(piece.Height()), width: hundredths(piece.InkWidth()), x: hundredths(piece.At.X), y: hundredths(piece.At.Y)}
	if n := piece.Name; n != nil {
		key.turn, key.lay = hundredths(n.Radius), hundredths(n.Tracking)
	}
	if h, known := f.seen[key]; known {
		return h
	}
	f.seen[key] = f.measure(p, piece, on)
	return f.seen[key]
}

// measure holds one piece against its garment, nil for one that keeps clear.
func (f *fitter) measure(p sizes.Player, piece sizes.Piece, on clothKey) *Hit {
	cloth := f.on(on, p.Garment)
	if cloth == nil || cloth.Lay(boxOf(piece), 0).Inside {
		return nil // what lies in a box that keeps clear does so too
	}
	shape, reach, err := edge(piece)
	if err != nil {
		return nil // an outline that cannot be drawn is reported by the sheet that draws it
	}
	shape = turned(shape, piece)
	hits := slices.DeleteFunc(cloth.Lay(shape, reach).Hits(), func(c seams.Clearance) bool {
		return c.Short() <= hitLeast || piece.Short > 0 && c.Line.Kind == garment.HemLine // told of the stack
	})
	if len(hits) == 0 {
		return nil
	}
	worst := hits[0]
	out := &Hit{
		Place: string(piece.Asked.Place), Size: p.Size.String(), Line: worst.Line.Words(),
		Distance: worst.Distance, Margin: worst.Line.Margin, Usual: worst.Line.Margin == garment.DefaultMargins().Of(worst.Line.Kind),
		Arched: piece.Name != nil && piece.Name.Form() != fit.Straight.String(),
	}
	out.Ways = f.ways(p, piece, on, shape, reach)
	return out
}

// boxOf returns the finished box of a piece as it lies on its garment: far
// cheaper to hold against the lines than the shape in it.
func boxOf(p sizes.Piece) geom.Region {
	b := p.Box()
	w, h := b.Width/2, b.Height/2
	ring := geom.Region{{{X: -w, Y: -h}, {X: w, Y: -h}, {X: w, Y: h}, {X: -w, Y: h}}}
	return ring.Transform(geom.Rotate(b.Turn).Then(geom.Translate(b.Centre.X, b.Centre.Y)))
}

// on returns the cloth under a piece, nil where the cut lacks the place.
func (f *fitter) on(k clothKey, g *garment.Garment) *seams.Cloth {
	if c, known := f.cloth[k]; known {
		return c
	}
	place, err := g.Place(k.place)
	if err != nil {
		return nil
	}
	if k.right && k.place == garment.SleeveNumber {
		place = g.Moved(place, garment.AtWearersRight)
	}
	place.Split = place.Split && k.split
	f.cloth[k] = seams.On(g, place)
	return f.cloth[k]
}

// turned turns a shape on the garment as its piece is turned, about its origin.
func turned(r geom.Region, p sizes.Piece) geom.Region {
	if p.Turn == 0 {
		return r
	}
	return r.Transform(geom.Translate(-p.At.X, -p.At.Y).Then(geom.Rotate(p.Turn)).Then(geom.Translate(p.At.X, p.At.Y)))
}

// ways tries what would bring a piece back inside: the width that the panel gives
// in place of the job's own, lower on the garment, smaller, the next size.
func (f *fitter) ways(p sizes.Player, piece sizes.Piece, on clothKey, shape geom.Region, reach float64) []Way {
	cloth := f.cloth[on]
	var out []Way
	limited := piece.Asked.Limit != nil && piece.Asked.Limit.MM() > piece.Room.Width
	if limited {
		out = append(out, Way{limitTo, piece.Room.Width})
	}
	for d := lowerStep; d <= lowerMost && piece.Turn == 0; d += lowerStep {
		if cloth.Lay(shape.Transform(geom.Translate(0, d)), reach).Inside {
			out = append(out, Way{lowerBy, d})
			break
		}
	}
	if !limited { // a lower name with a wide limit grows wide again
		out = append(out, smaller(cloth, piece, shape, reach)...)
	}
	if next, ok := f.next(p.Size, on, shape, reach, p.Garment.Collar(piece.Side), piece.Side); ok {
		out = append(out, Way{"it lies inside on size " + next.String(), 0})
	}
	return out
}

// smaller returns the height at which a piece lies inside with its top where it
// is, none where that is far too small.
func smaller(cloth *seams.Cloth, piece sizes.Piece, shape geom.Region, reach float64) []Way {
	top := geom.Point{X: piece.At.X, Y: shape.Bounds().Min.Y}
	if piece.Turn != 0 {
		top = piece.At
	}
	full := piece.Height()
	height, _, err := cloth.Largest(smallest*full, full, reach, func(height float64) (geom.Region, error) {
		k := height / full
		return shape.Transform(geom.Translate(-top.X, -top.Y).Then(geom.Scale(k, k)).Then(geom.Translate(top.X, top.Y))), nil
	})
	if err != nil {
		return nil
	}
	return []Way{{heightTo, height}}
}

// next returns the next size up if the piece lies inside there, as far below the
// collar as on its own.
func (f *fitter) next(size garment.Size, on clothKey, shape geom.Region, reach, collar float64, side garment.Side) (garment.Size, bool) {
	letters := garment.Sizes(size.Group)
	i := slices.Index(letters, size.Letter)
	if i < 0 || i+1 == len(letters) || on.place == garment.SleeveNumber || on.place == garment.ShortsNumber {
		return size, false
	}
	size.Letter = letters[i+1]
	g, err := f.sized.Order.Garment.In(size)
	if err != nil {
		return size, false
	}
	on.size = size
	cloth := f.on(on, g)
	return size, cloth != nil && cloth.Lay(shape.Transform(geom.Translate(0, g.Collar(side)-collar)), reach).Inside
}

// seams reports pieces that come too near to a seam or another line of their
// garment: advice, and a violation where they reach over it.
func (c *checker) seams() {
	unit := c.subject.Units
	for _, h := range c.subject.Hits {
		r := Result{Finding: Finding{
			Severity: Advice, Player: h.Player, Place: h.Place, What: "clearance", By: length.Plain(h.Margin-h.Distance, unit, length.Up),
			Measured: breaking(math.Max(h.Distance, 0), h.Margin, unit, length.Down) + " from the " + h.Line + " on size " + h.Size,
			Required: "at least " + length.Plain(h.Margin, unit, length.Nearest), Source: "the job",
		}}
		if h.Usual {
			r.Source = "common practice, no source"
		}
		if h.Distance < -hitLeast {
			r.Severity = Violation
			r.Measured = length.Plain(-h.Distance, unit, length.Up) + " over the " + h.Line + " on size " + h.Size
		}
		r.mend = mendHit(h, unit)
		c.keep(r)
	}
}

func mendHit(h Hit, unit length.Unit) string {
	var ways []string
	for _, w := range h.Ways {
		switch w.Words {
		case limitTo:
			ways = append(ways, w.Words+" "+length.Plain(w.MM, unit, length.Down)+" or leave its limit out")
		case lowerBy:
			ways = append(ways, w.Words+" "+length.Plain(w.MM, unit, length.Up))
		case heightTo:
			ways = append(ways, w.Words+" "+length.Plain(w.MM, unit, length.Down)+" high")
		default:
			ways = append(ways, w.Words)
		}
	}
	if h.Arched {
		ways = append(ways, "try a straighter arch")
	}
	if len(ways) == 0 {
		ways = []string{"make it smaller, or put it elsewhere"}
	}
	return fmt.Sprintf("the %s of %s comes too near to the %s: %s", h.Place, who, h.Line, strings.Join(ways, "; or "))
}
