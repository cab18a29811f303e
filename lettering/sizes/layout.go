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

// clearance is the least that is left between the outlines of an arched name
// and of the number under it, mm: common practice, no source.
const clearance = 6.0

// layout is where every piece of the job sits on one size of the garment. It
// depends on the heights asked for, never on one player's name, so that all
// players of a size have their numbers on one level.
type layout struct {
	garment *garment.Garment
	spots   []spot // one a piece of the job
}

type spot struct {
	placement garment.Placement
	height    float64 // asked for, mm
	top       float64 // cap line or digit top, mm below the high point of shoulder
	below     float64 // top, below the neck seam
	drop      float64 // of the middle baseline of an arch down, whose ends are the highest
	room      garment.Room
	limit     float64
}

func (w *worker) layout(size garment.Size) (*layout, error) {
	o := w.plan.order
	g, err := garment.New(o.Garment.Cut, size)
	if err != nil {
		return nil, err
	}
	l := &layout{garment: g, spots: make([]spot, len(o.Pieces))}
	for i, asked := range o.Pieces {
		s := &l.spots[i]
		if s.placement, err = g.Place(asked.Place); err != nil {
			return nil, err
		}
		if s.height, err = w.plan.heightOf(asked, size.Group); err != nil {
			return nil, err
		}
		if err := w.stand(l, i, size); err != nil {
			return nil, err
		}
	}
	return l, nil
}

// stand decides the vertical place of piece i and the room it has there.
func (w *worker) stand(l *layout, i int, size garment.Size) error {
	asked, s := w.plan.order.Pieces[i], &l.spots[i]
	collar := l.garment.Collar(s.placement.Side)
	s.top = s.placement.TopFor(s.height)
	if above := l.above(w.plan.order.Pieces, i); above >= 0 {
		under, err := w.under(l, above, i, size)
		if err != nil {
			return err
		}
		s.top = under
	}
	s.top = math.Max(s.top, s.placement.Least)
	if asked.Below != nil {
		s.top = collar + asked.Below.MM()
	}
	s.below = s.top - collar
	bottom := s.top + s.height
	s.room = l.garment.Room(asked.Place, s.top, bottom)
	s.limit = s.room.Width
	if asked.Limit != nil {
		s.limit = asked.Limit.MM()
	}
	if shape := shapeOf(asked.Shape); shape != fit.Straight {
		sag := sagOver(w.plan.radius(i, s.limit), s.limit)
		if shape == fit.RadialArchDown || shape == fit.VerticalArchDown {
			s.drop = sag
		}
		// The band of an arch is deeper than its letters: ask for the room again.
		s.room = l.garment.Room(asked.Place, s.top, bottom+sag)
		if asked.Limit == nil {
			s.limit = s.room.Width
		}
	}
	if formed(asked) {
		w.standFormed(l, s, asked)
	}
	if s.limit <= 0 {
		return fmt.Errorf("there is no room for the %s on a %s %s: %s", asked.Place, size, l.garment.Cut(), s.room.Why)
	}
	return nil
}

// standFormed makes room for a piece between edges, whose ends may stand higher
// or lower than its middle. The highest place stands where a cap line would.
func (w *worker) standFormed(l *layout, s *spot, asked order.Piece) {
	over, under := bulges(asked, s.height, s.limit, s.limit)
	s.drop = over
	s.room = l.garment.Room(asked.Place, s.top, s.top+s.height+over+under)
	if asked.Limit == nil {
		s.limit = s.room.Width
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

// under returns the top of a number that stands under the piece above it: the
// usual gap below the middle of the baseline, or more where the ends of an
// arch would come closer to the number's corners than the clearance.
func (w *worker) under(l *layout, above, i int, size garment.Size) (float64, error) {
	upper, asked := l.spots[above], w.plan.order.Pieces[above]
	baseline := upper.top + upper.drop + upper.height
	gap := upper.placement.GapAfter
	if asked.Tail != nil {
		t, err := w.withTail(l, above, asked.Text, upper.limit, upper.height)
		if err != nil {
			return 0, fmt.Errorf("%s: %w", asked.Place, err)
		}
		return baseline + math.Max(gap, -t.shape.Bounds().Min.Y+w.reaches(above, i)+clearance), nil
	}
	shape := shapeOf(asked.Shape)
	if !bowsDown(shape) && !formed(asked) {
		return baseline + gap, nil
	}
	widest, err := w.widestNumber(i, l.spots[i].height, size)
	if err != nil {
		return 0, err
	}
	ends := 0.0
	if under := math.Min(widest, upper.limit); formed(asked) {
		_, ends = bulges(asked, upper.height, upper.limit, under)
	} else {
		ends = sagOver(w.plan.radius(above, upper.limit), under)
	}
	return baseline + math.Max(gap, ends+w.reaches(above, i)+clearance), nil
}

// reaches returns how far the outlines of two pieces reach together, mm.
func (w *worker) reaches(a, b int) float64 {
	return outline.Reach(layers(w.plan.order.Pieces[a])) + outline.Reach(layers(w.plan.order.Pieces[b]))
}

// bowsDown reports an arch whose ends are its lowest places.
func bowsDown(shape fit.Shape) bool { return shape == fit.RadialArch || shape == fit.VerticalArch }

// widestNumber returns the width of the widest number that the size wears.
func (w *worker) widestNumber(i int, height float64, size garment.Size) (float64, error) {
	widest := 0.0
	for _, p := range w.plan.order.Players {
		if p.SizeKnown && p.Size == size && p.Number != "" {
			n, err := w.number(i, p.Number, 0, height)
			if err != nil {
				return 0, fmt.Errorf("%s, %s: %w", p.Label(), w.plan.order.Pieces[i].Place, err)
			}
			widest = math.Max(widest, n.InkWidth)
		}
	}
	return widest, nil
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
func (p *plan) heightOf(asked order.Piece, group garment.Group) (float64, error) {
	if asked.Height.By == order.ByLength {
		return asked.Height.Length.MM(), nil
	}
	demanded, what := p.demanded(asked)
	if asked.Height.By == order.ByRule {
		if demanded == 0 {
			return 0, fmt.Errorf("%s: the height is to follow the rule book, but %s; write a length or 'by size'", asked.Place, what)
		}
		return demanded, nil
	}
	usual, err := p.usual(asked.Place, group)
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
	heights, err := garment.NumberHeightsFor(p.order.Sport, group)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", place, err)
	}
	span := map[garment.Place]garment.Span{
		garment.BackNumber: heights.Back, garment.FrontNumber: heights.Front,
		garment.SleeveNumber: heights.Sleeve, garment.ShortsNumber: heights.Shorts,
	}[place]
	if span.To == 0 {
		return 0, fmt.Errorf("%s: there is no usual height in %s; write one, such as height: 4in", place, p.order.Sport)
	}
	return p.even(span, halfInch, 5), nil
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
