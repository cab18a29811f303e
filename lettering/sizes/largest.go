package sizes

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/seams"
)

// lying says which texts of a piece that is to be the largest lie inside at the
// height that was found.
type lying struct {
	found bool // the height has been found
	texts []string
}

// wide reports whether a text is held against the panel in its own shape and not to
// the width that the panel has over the whole band.
func (y *lying) wide(text string) bool { return !y.found || slices.Contains(y.texts, text) }

// widest returns the greatest width that the panel has at any level of a band, for a
// shape may be wider at one level than the panel is at another, and that which it
// has over the whole of it. Only a left chest keeps to the width that convention
// gives it.
func widest(l *layout, s *spot, top, foot float64) (wide, narrow float64) {
	if s.room.Panel == 0 {
		return 0, 0
	}
	wide, narrow = s.room.Panel, s.room.Panel
	for k := range levels + 1 {
		at := top + (foot-top)*float64(k)/levels
		wide = math.Max(wide, l.garment.RoomAt(s.placement, at, at).Panel)
	}
	if s.placement.Place == garment.LeftChest && s.room.Convention > 0 {
		wide, narrow = math.Min(wide, s.room.Convention), math.Min(narrow, s.room.Convention)
	}
	return wide, narrow
}

// growth is the search for the height of piece i on one size where the job asks
// for the largest that lies inside. All players of the size share it: it is the
// greatest height at which each of their texts, as designed and with its outlines,
// lies inside the panel where it stands, so the longest text decides. A text that
// does not lie inside at the least height waits for a decision, as a name does that
// is over: it pulls nobody down, and is eased from the height of the others.
type growth struct {
	*worker
	l        *layout
	i, above int // the piece, and the one that stands over it; -1 for none
	cloth    *seams.Cloth
	// reach is how far the outlines stand out from the shapes that are laid, mm: 0
	// where corners reach further than sides, and the outlines themselves are laid.
	reach float64
}

// levels is at how many levels of its band the width of a panel is taken.
const levels = 12

// edgeTolerance is how closely a piece's edge is followed, mm.
const edgeTolerance = 0.01

// grow gives piece i of a layout its largest height and puts it there. On a size for
// which the job or its run says a height, only what lies inside at that is found.
func (w *worker) grow(l *layout, i, above int) {
	s := &l.spots[i]
	g := growth{worker: w.still(), l: l, i: i, above: above, cloth: seams.On(l.garment, s.placement)}
	asked := w.plan.order.Pieces[i]
	if all := layers(asked); rounded(all) {
		g.reach = outline.Reach(all)
	}
	least, most := w.plan.spanOf(asked, l.garment)
	if shared := w.plan.levelled[most]; shared > 0 && asked.Place == garment.BackName {
		least, most = math.Min(least, shared), shared
	}
	if asked.HeightFor(l.garment.Size()).By != order.Largest {
		least, most = s.asked, s.asked
	}
	s.largest = &lying{}
	height, texts := g.find(least, most)
	g.put(height)
	s.largest.texts, s.largest.found = texts, true
}

// find returns the height and the texts that lie inside at it; none where none of
// them does at the least, which is then the height.
func (g *growth) find(least, most float64) (height float64, texts []string) {
	texts = g.wearable(least)
	if len(texts) == 0 {
		return least, nil
	}
	deciding := texts[:1]
	for range texts {
		height, _, err := g.cloth.Largest(least, most, g.reach, func(h float64) (geom.Region, error) { return g.shapes(deciding, h), nil })
		if err != nil {
			return least, nil
		}
		k := slices.IndexFunc(texts, func(text string) bool { return !g.inside(text, height) })
		if k < 0 || slices.Contains(deciding, texts[k]) {
			return height, texts
		}
		deciding = append(slices.Clone(deciding), texts[k])
	}
	return least, nil // not reached: every round adds a text
}

// wearable returns the texts that lie inside at a height, the widest first; those
// of the whole team for a size that nobody wears.
func (g *growth) wearable(height float64) []string {
	texts := g.plan.texts(g.i, g.l.garment.Size())
	if len(texts) == 0 {
		for _, size := range wornSizes(g.plan.order) {
			texts = append(texts, g.plan.texts(g.i, size)...)
		}
	}
	widths := map[string]float64{}
	texts = slices.DeleteFunc(texts, func(text string) bool {
		shape := g.shapes([]string{text}, height)
		widths[text] = shape.Bounds().Width()
		return !g.cloth.Lay(shape, g.reach).Inside
	})
	slices.SortStableFunc(texts, func(a, b string) int {
		return cmp.Compare(widths[b], widths[a])
	})
	return texts
}

func (g *growth) inside(text string, height float64) bool {
	return g.cloth.Lay(g.shapes([]string{text}, height), g.reach).Inside
}

// shapes returns the finished shapes of texts where they lie on the garment at a
// height; none where one of them is not as designed there.
func (g *growth) shapes(texts []string, height float64) geom.Region {
	if !g.put(height) {
		return nil
	}
	var out geom.Region
	for _, text := range texts {
		p, err := g.piece(g.l, g.i, text, height)
		if err != nil || p.NoRoom || p.Name != nil && p.Name.Verdict != fit.Full || p.Number != nil && p.Number.Verdict == numeral.Over {
			return nil // what is wrong with it is told when it is made
		}
		shape := p.Ink().Flatten(edgeTolerance)
		if g.reach == 0 {
			if drawn, err := p.Outlines(); err == nil && len(drawn) > 0 {
				shape = drawn[len(drawn)-1]
			}
		}
		onto := geom.Scale(1, -1).Then(geom.Rotate(p.Turn)).Then(geom.Translate(p.At.X, p.At.Y))
		out = append(out, shape.Transform(onto)...)
	}
	return out
}

// rounded reports outlines that have the same reach all round.
func rounded(all []outline.Layer) bool {
	return !slices.ContainsFunc(all, func(l outline.Layer) bool { return l.Join != outline.Round })
}

// put stands the piece where it stands at a height, under the piece above it with
// the usual gap. It reports whether there is room at all.
func (g *growth) put(height float64) bool {
	s := &g.l.spots[g.i]
	s.height, s.asked, s.eased = height, height, nil
	g.stand(g.l, g.i)
	if g.above < 0 || s.noRoom {
		return !s.noRoom
	}
	k := stack{worker: g.worker, l: g.l, above: g.above, i: g.i, upper: &g.l.spots[g.above], lower: s}
	if k.fixed = g.plan.order.Pieces[g.i].BelowFor(g.l.garment.Size()) != nil; k.fixed {
		return k.inside()
	}
	return k.at(k.usualTop())
}

// spanOf returns the least and the greatest height that the largest may be, mm.
// The greatest is the greatest that shops usually make (common practice, no
// source), that the rules demand where that is more, and at most what they allow;
// where there is none in the table, that of the panel. The least is the floor of a
// fitted height; text that the shop wrote itself may be as small as it must.
func (p *plan) spanOf(asked order.Piece, g *garment.Garment) (least, most float64) {
	panel := g.Panel(sideOf(g, asked.Place)).Bounds().Height()
	name := garment.LetterHeightFor(p.order.Sport, g.Size().Group).Usual
	switch {
	case isNumber(asked.Place):
		most = panel
		if span, err := p.numberSpan(asked.Place, g.Size().Group); err == nil && span.To > 0 {
			most = p.even(garment.Span{From: span.To, To: span.To}, halfInch, 5)
		}
		least = fit.DefaultLadder(math.Min(most, 8*halfInch)).Height
	case asked.Place == garment.BackName:
		most = p.even(garment.Span{From: name.To, To: name.To}, quarterInch, 5)
		least = fit.DefaultLadder(p.even(name, quarterInch, 5)).Height
		if floor := p.order.Fit.Height; floor != nil {
			least = floor.MM()
		}
	default:
		least, most = quarterInch, panel
	}
	demanded, _ := p.demanded(asked)
	most = math.Max(most, demanded)
	if allowed := p.allowed(asked); allowed > 0 {
		most = math.Min(most, allowed)
	}
	return math.Min(least, most), most
}

func sideOf(g *garment.Garment, place garment.Place) garment.Side {
	at, err := g.Place(place)
	if err != nil {
		return garment.Back // the layout has told that the cut lacks the place
	}
	return at.Side
}

// allowed returns the greatest bare height that the rule book allows for a piece,
// mm; 0 where it says nothing.
func (p *plan) allowed(asked order.Piece) float64 {
	if p.rules == nil {
		return 0
	}
	figures, border := []*rulebook.Figure{p.rules.Names.HeightMax, p.rules.Names.HeightExact}, 0.0
	if isNumber(asked.Place) {
		position := p.rules.Position(string(asked.Place))
		if position == nil {
			return 0
		}
		figures = []*rulebook.Figure{position.HeightMax, position.HeightExact}
		if position.HeightIncludesBorder.Yes() {
			border = 2 * outline.Reach(layers(asked))
		}
	}
	for _, f := range figures {
		if f != nil && !f.None() {
			return f.Length.MM() - border
		}
	}
	return 0
}

// level gives the back names of all sizes one largest height where the whole team
// shares one: the lowest of the sizes whose greatest is the same, so youth and
// adult sizes have one each.
func (w *worker) level(worn []garment.Size) error {
	p, i := w.plan, w.plan.index(garment.BackName)
	if i < 0 || p.order.Fit.Same != sameTeam {
		return nil
	}
	const tries = 4 // a lower name need not lie inside where a higher one does
	for range tries {
		lowest, uneven := map[float64]float64{}, false
		for _, size := range worn {
			s := &p.layouts[size].spots[i]
			if p.order.Pieces[i].HeightFor(size).By != order.Largest || len(s.largest.texts) == 0 {
				continue
			}
			_, most := p.spanOf(p.order.Pieces[i], p.layouts[size].garment)
			had := lowest[most]
			uneven = uneven || had > 0 && had != s.height
			if had == 0 || s.height < had {
				lowest[most] = s.height
			}
		}
		if !uneven {
			return nil
		}
		p.levelled = lowest
		w.quiet = nil // it has a copy of the plan
		for _, size := range worn {
			l, err := w.layout(size)
			if err != nil {
				return err
			}
			p.layouts[size] = l
		}
	}
	return nil
}
