package sizes

import (
	"fmt"
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/rulebook"
)

// Clearance is the least that is left between the finished shapes of a name and
// of the number under it, mm: common practice, no source.
const Clearance = 6.0

// layout is where every piece of the job sits on one size of the garment. It
// holds for the size and not for one player, so that all players of a size have
// their numbers on one level: that which the lowest of their names leaves free.
type layout struct {
	garment *garment.Garment
	spots   []spot // one a piece of the job
}

type spot struct {
	placement garment.Placement
	height    float64 // to size at, mm
	asked     float64 // asked for, mm; over height where the stack takes some of it
	top       float64 // cap line or digit top, mm below the high point of shoulder
	below     float64 // top, below the neck seam
	drop      float64 // of the middle baseline of an arch down, whose ends are the highest
	room      garment.Room
	limit     float64
	opening   float64  // half of what a piece parted at a placket leaves free, mm; 0 for a whole one
	noRoom    bool     // nothing of the panel is left at this place
	largest   *lying   // of a piece that is to be the largest; nil for others
	narrow    float64  // with largest: width of the room that texts are eased to that do not lie inside, mm
	eased     []string // what a stack gave up here to lie inside the panel, in the order taken
	short     float64  // mm that the stack lacks at its bottom; 0 for one inside the panel
	tooNear   float64  // mm that lack to the clearance under the name above, where the job fixed the distance
}

func (w *worker) layout(size garment.Size) (*layout, error) {
	o := w.plan.order
	g, err := o.Garment.In(size)
	if err != nil {
		return nil, err
	}
	l := &layout{garment: g, spots: make([]spot, len(o.Pieces))}
	for i, asked := range o.Pieces {
		s := &l.spots[i]
		if s.placement, err = g.Place(asked.Place); err != nil {
			return nil, err
		}
		s.placement = g.Moved(s.placement, handOf(asked.At))
		if s.height, err = w.plan.heightOf(asked, size); err != nil {
			return nil, err
		}
		s.asked = s.height
		if asked.Height.By == order.Largest {
			s.largest = &lying{}
		}
		w.stand(l, i)
		above := l.above(o.Pieces, i)
		if s.largest != nil {
			w.grow(l, i, above)
		}
		if above >= 0 {
			w.stack(l, above, i)
		}
	}
	return l, nil
}

// handOf reads the job's word for where a piece stands sideways.
func handOf(at string) garment.Hand {
	return map[string]garment.Hand{
		order.AtCentre: garment.AtCentre, order.AtLeft: garment.AtWearersLeft, order.AtRight: garment.AtWearersRight,
	}[at]
}

// stand puts piece i where it stands by itself and finds its room there. Where
// there is none the piece is reported, and everything else is still made.
func (w *worker) stand(l *layout, i int) {
	asked, s := w.plan.order.Pieces[i], &l.spots[i]
	over, under := w.ends(l, i)
	s.top = s.placement.TopFor(s.height + over + under)
	if s.placement.Anchor != garment.ByTop {
		s.top += over // these keep the whole piece inside, outlines too
	}
	s.top = math.Max(s.top, s.leastTop(over))
	if below := asked.BelowFor(l.garment.Size()); below != nil {
		s.top = l.garment.Collar(s.placement.Side) + below.MM()
	}
	w.measureRoom(l, i)
}

// ends are how far a piece reaches above its top and under its foot, mm: with its
// outlines, and where digits or their mitred corners stand out, with those.
func (w *worker) ends(l *layout, i int) (over, under float64) {
	asked := w.plan.order.Pieces[i]
	if isNumber(asked.Place) {
		b := w.box(l, i)
		return b.over, b.under
	}
	reach := outline.Reach(layers(asked))
	return reach, reach
}

// leastTop is the highest top at which the outlines still keep clear of the seam
// that the placement must stay below.
func (s *spot) leastTop(over float64) float64 {
	if s.placement.Least == 0 {
		return math.Inf(-1)
	}
	return s.placement.Least + over
}

// measureRoom finds the room of piece i over the band that it takes up, outlines
// included.
func (w *worker) measureRoom(l *layout, i int) {
	asked, s := w.plan.order.Pieces[i], &l.spots[i]
	s.below = s.top - l.garment.Collar(s.placement.Side)
	s.drop, s.noRoom = 0, false
	w.widen(l, s, i, 0)
	if shape := shapeOf(asked.Shape); shape != fit.Straight {
		sag := sagOver(w.plan.radius(i, s.limit), s.limit)
		if shape == fit.RadialArchDown || shape == fit.VerticalArchDown {
			s.drop = sag
		}
		// The band of an arch is deeper than its letters: ask for the room again.
		w.widen(l, s, i, sag)
	}
	if formed(asked) {
		// The ends may stand higher or lower than the middle. The highest place
		// stands where a cap line would.
		over, under := bulges(asked, s.height, s.limit, s.limit)
		s.drop = over
		w.widen(l, s, i, over+under)
	}
	s.opening = 0
	if s.placement.Split && !asked.Unsplit && asked.Tail == nil {
		reach := outline.Reach(layers(asked))
		s.opening = l.garment.Opening(s.placement, s.top-reach, s.top+s.height+s.drop+reach)
	}
	s.noRoom = s.limit <= 2*s.opening
}

// widen takes the room of a band that is deeper than the letters. The spot is that
// of piece i, or a copy of it that has been moved.
func (w *worker) widen(l *layout, s *spot, i int, deeper float64) {
	asked := w.plan.order.Pieces[i]
	over, under := w.ends(l, i)
	top, foot := s.top-over, s.top+s.height+deeper+under
	s.room = l.garment.RoomAt(s.placement, top, foot)
	if s.largest != nil {
		s.room.Width, s.narrow = widest(l, s, top, foot)
	}
	s.limit = s.room.Width
	if asked.Limit != nil {
		s.limit = asked.Limit.MM()
	}
}

// above returns the index of the piece that stands over piece i, -1 for none:
// a back number stands under the back name, a front number under the front
// name.
func (l *layout) above(pieces []order.Piece, i int) int {
	over := map[garment.Place]garment.Place{
		garment.BackNumber:  garment.BackName,
		garment.FrontNumber: garment.FrontName,
	}
	for k := range i {
		if pieces[k].Place == over[pieces[i].Place] {
			return k
		}
	}
	return -1
}

// reaches returns how far the outlines of two pieces reach together, mm.
func (w *worker) reaches(a, b int) float64 {
	return outline.Reach(layers(w.plan.order.Pieces[a])) + outline.Reach(layers(w.plan.order.Pieces[b]))
}

// sagOver returns how far an arc of the radius falls over the chord; a chord
// wider than the circle falls by the radius.
func sagOver(radius, chord float64) float64 {
	if math.IsInf(radius, 1) {
		return 0
	}
	return geom.Sagitta(radius, math.Min(chord, 2*radius))
}

// heightOf returns the height asked for in mm: as written, by the sport's
// usual height for the group (never under what the rule book demands), or as
// the rule book demands.
func (p *plan) heightOf(asked order.Piece, size garment.Size) (float64, error) {
	height := asked.HeightFor(size)
	if height.By == order.ByLength {
		return height.Length.MM(), nil
	}
	if height.By == order.Largest {
		g, err := p.order.Garment.In(size)
		if err != nil {
			return 0, err
		}
		_, most := p.spanOf(asked, g)
		return most, nil // until it has grown to what lies inside
	}
	demanded, what := p.demanded(asked)
	if height.By == order.ByRule {
		if demanded == 0 {
			return 0, fmt.Errorf("%s: the height is to follow the rule book, but %s; write a length or 'by size'", asked.Place, what)
		}
		return demanded, nil
	}
	usual, err := p.usual(asked.Place, size.Group)
	if err != nil {
		return 0, err
	}
	return math.Max(usual, demanded), nil
}

// usual returns the height that shops give a piece when nothing else is said:
// the middle of the garment table's range, brought to a figure that people use
// in the unit of the job. Common practice, no source.
func (p *plan) usual(place garment.Place, group garment.Group) (float64, error) {
	if !isNumber(place) {
		return p.even(garment.LetterHeightFor(p.order.Sport, group).Usual, quarterInch, 5), nil
	}
	span, err := p.numberSpan(place, group)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", place, err)
	}
	if span.To == 0 {
		return 0, fmt.Errorf("%s: there is no usual height in %s; write one, such as height: 4in", place, p.order.Sport)
	}
	return p.even(span, halfInch, 5), nil
}

// numberSpan is the garment table's span of heights of a number; zero where the
// sport has none at the place.
func (p *plan) numberSpan(place garment.Place, group garment.Group) (garment.Span, error) {
	heights, err := garment.NumberHeightsFor(p.order.Sport, group)
	return map[garment.Place]garment.Span{
		garment.BackNumber: heights.Back, garment.FrontNumber: heights.Front,
		garment.SleeveNumber: heights.Sleeve, garment.ShortsNumber: heights.Shorts,
	}[place], err
}

// Steps that heights are given in, mm.
const (
	quarterInch = 25.4 / 4
	halfInch    = 25.4 / 2
)

// even returns the middle of a span as a multiple of the unit's own step.
func (p *plan) even(span garment.Span, inches, metric float64) float64 {
	step := metric
	if p.order.Units == length.Inch {
		step = inches
	}
	return math.Round((span.From+span.To)/2/step) * step
}

// demanded returns the smallest bare height that the rule book allows for the
// piece, 0 with the reason where it says nothing.
func (p *plan) demanded(asked order.Piece) (mm float64, why string) {
	if p.rules == nil {
		return 0, "the job names no rule book"
	}
	var least, exact *rulebook.Figure
	border := 0.0
	if isNumber(asked.Place) {
		position := p.rules.Position(string(asked.Place))
		if position == nil {
			return 0, p.rules.ID + " says nothing about it"
		}
		least, exact = position.HeightMin, position.HeightExact
		if position.HeightIncludesBorder.Yes() {
			border = 2 * outline.Reach(layers(asked))
		}
	} else {
		least, exact = p.rules.Names.HeightMin, p.rules.Names.HeightExact
	}
	for _, figure := range []*rulebook.Figure{exact, least} {
		if figure != nil && !figure.None() {
			return figure.Length.MM() - border, ""
		}
	}
	return 0, p.rules.ID + " gives no figure for it"
}
