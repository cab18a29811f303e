package sizes

import (
	"math"

	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/typeface"
)

// NumberFaces opens the faces of the catalogue that are tried for a number
// that does not fit, from wide to narrow as the bare ink of 88 at one number
// height is. Scripts, the stencil and faces whose weight must be chosen first
// are left out.
func NumberFaces() ([]*typeface.Face, error) {
	var out []*typeface.Face
	for _, id := range [...]string{
		"russo-one", "alfa-slab-one", "quantico", "roboto-slab", "graduate", "oswald", "barlow-condensed", "anton", "league-gothic",
	} {
		face, err := typeface.Embedded(id)
		if err != nil {
			return nil, err
		}
		out = append(out, face)
	}
	return out, nil
}

// stuck is the conflict of a number on one size, nil for none. The pointer in
// it can be nil and kept, too.
type stuck struct{ conflict *numeral.Conflict }

// conflict looks for what is the matter with a number on a size and for what
// would mend it. The result is shared and must not be changed.
func (w *worker) conflict(l *layout, i int, text string, limit, height float64) (*numeral.Conflict, error) {
	if !w.plan.numberWays {
		return nil, nil
	}
	k := key{i, text, l.garment.Size(), limit, height}
	found, err := kept(w.stuck, k, func() (stuck, error) {
		q := w.plan.raised(l, i, w.plan.quest(i, text, limit, height))
		c, err := w.sizer.Conflict(q)
		if err == nil && c != nil && !c.Simple() {
			if next, ok := w.nextSizeFor(l, i, text); ok {
				c.WaysOut = append(c.WaysOut, next)
			}
		}
		return stuck{c}, err
	})
	if err != nil {
		return nil, err
	}
	return found.conflict, nil
}

// quest is number i with what the rule book and the method demand of it.
func (p *plan) quest(i int, text string, limit, height float64) numeral.Quest {
	asked := p.order.Pieces[i]
	return numeral.Quest{
		Request: p.numberRequest(asked, text, limit, height),
		Keep:    p.demand(asked, len(text), height), Faces: p.others,
	}
}

// raised brings a number that was asked lower than the rule demands to the
// height demanded, in the room that its deeper band has from the same top.
func (p *plan) raised(l *layout, i int, q numeral.Quest) numeral.Quest {
	asked, at, r := p.order.Pieces[i], l.spots[i], q.Settled()
	if r.Height > q.Height && asked.Limit == nil && q.Limit > 0 {
		room := l.garment.Room(asked.Place, at.top, at.top+r.Height).Width
		r.Limit = math.Min(r.Limit, math.Max(room, leastRoom))
	}
	q.Request = r
	return q
}

// leastRoom stands for no room at all, mm: a limit of 0 would be none.
const leastRoom = 0.01

// nextSizeFor finds the nearest larger size of the same group on whose own
// layout the number fits and keeps the rule.
func (w *worker) nextSizeFor(l *layout, i int, text string) (numeral.WayOut, bool) {
	for size, ok := larger(l.garment.Size()); ok; size, ok = larger(size) {
		big, err := w.layoutOf(size)
		if err != nil {
			return numeral.WayOut{}, false
		}
		if at := big.spots[i]; at.limit <= 0 || at.short > 0 { // no room there; a limit of 0 would be none
			continue
		}
		q := w.plan.raised(big, i, w.plan.quest(i, text, big.spots[i].limit, big.spots[i].height))
		n, err := w.sizer.Number(q.Request)
		if err != nil {
			return numeral.WayOut{}, false
		}
		if keeps, _ := q.Keep.Keeps(n, q.Outlines); keeps && n.Verdict == numeral.Full {
			return numeral.WayOut{Kind: numeral.NextSize, Request: q.Request, Number: n, Size: size.String()}, true
		}
	}
	return numeral.WayOut{}, false
}

// Makeable is what a decoration method asks of a number where no rule book
// does: no outline narrower than it can make. One that the shop asked for
// itself may be as narrow as it is.
func Makeable(method string, outlines []outline.Layer) numeral.Demand {
	m, _ := order.LookupMethod(method)
	least := m.MinStroke
	for _, l := range outlines {
		least = math.Min(least, l.Width)
	}
	return numeral.Demand{EachOutline: numeral.Span{Least: least}}
}

// demand is what the rule book and the method ask of a number with so many
// digits. Advice and figures that are not known ask for nothing.
func (p *plan) demand(asked order.Piece, digits int, height float64) numeral.Demand {
	d := Makeable(p.order.Method, layers(asked))
	if p.rules == nil {
		return d
	}
	r := p.rules.Position(string(asked.Place))
	if r == nil {
		return d
	}
	d.HeightOutlined, d.StrokeOutlined = r.HeightIncludesBorder.Yes(), r.StrokeIncludesBorder.Yes()
	d.Height = numeral.Span{Least: demandedBy(r.HeightMin), Most: demandedBy(r.HeightMax)}
	if exact := nearestTo(r.HeightExact, height); exact > 0 {
		d.Height = numeral.Span{Least: exact, Most: exact}
	}
	d.Stroke = numeral.Span{Least: demandedBy(r.StrokeMin), Most: demandedBy(r.StrokeMax)}
	d.DigitWidth.Least = demandedBy(r.WidthMin)
	if digits < len(r.BlockMin) {
		d.Width.Least = demandedBy(r.BlockMin[digits])
	}
	gap := demandedBy(r.GapExact)
	d.Gap = numeral.Span{Least: gap, Most: gap}
	d.Outlines = numeral.Span{Least: demandedBy(r.BorderMin), Most: demandedBy(r.BorderMax)}
	d.EachOutline.Most = demandedBy(r.EachBorderMax)
	return d
}

// demandedBy returns the length that a figure demands in mm, 0 for none.
func demandedBy(f *rulebook.Figure) float64 {
	if f == nil || f.None() || f.Advice {
		return 0
	}
	return f.Length.MM()
}

// nearestTo returns the length nearest to mm of those that a figure allows.
func nearestTo(f *rulebook.Figure, mm float64) float64 {
	best := demandedBy(f)
	if best == 0 {
		return 0
	}
	for _, l := range f.Lengths {
		if math.Abs(l.MM()-mm) < math.Abs(best-mm) {
			best = l.MM()
		}
	}
	return best
}
