package sizes

import (
	"context"
	"fmt"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/source"
)

// Same reports whether a roster says the same of two players in everything that
// decides what is made.
func Same(a, b order.Player) bool {
	return a.Name == b.Name && a.Lines == b.Lines && a.FullName == b.FullName && a.Number == b.Number &&
		a.Size == b.Size && a.SizeKnown == b.SizeKnown && a.Role == b.Role
}

// matched finds each player in an order that was signed: the index there, -1
// for one who is new. Each signed player is found once.
func matched(players []order.Player, s *Sized) []int {
	out := make([]int, len(players))
	taken := make([]bool, len(s.Players))
	for i, p := range players {
		out[i] = -1
		for k := range s.Players {
			if !taken[k] && Same(p, s.Order.Players[k]) {
				out[i], taken[k] = k, true
				break
			}
		}
	}
	return out
}

// planOnto is newPlan for an order that adds to one that was signed: circles,
// letter heights that names share and the level of numbers are those that the
// signed players have, whoever joined. Sizes that nobody wore are laid out
// afresh.
func planOnto(ctx context.Context, o *order.Order, options Options) (*plan, []Look, source.Faults, error) {
	base := *options.Signed.Order
	p, faults := newPlan(&base, options)
	if len(faults) > 0 {
		return nil, nil, faults, nil
	}
	before := &Sized{}
	if err := p.share(ctx, before); err != nil {
		return nil, nil, nil, err
	}
	all := *o
	all.Pieces = base.Pieces // with the heights of a size run that was planned then
	p.order = &all
	w := p.newWorker()
	for _, size := range wornSizes(&all) {
		if p.layouts[size] != nil {
			continue
		}
		l, err := w.layout(size)
		if err != nil {
			return nil, nil, source.Faults{{Message: err.Error()}}, nil
		}
		p.layouts[size] = l
	}
	if p.common != nil {
		p.reached = make([]alone, len(all.Players))
		i := p.index(garment.BackName)
		for k := range p.reached {
			p.reached[k] = w.reach(i, all.Players[k])
		}
	}
	return p, before.Looks, nil, nil
}

// resolveOnto sizes an order that adds players to one that was signed.
func resolveOnto(ctx context.Context, o *order.Order, options Options) (*Sized, error) {
	p, looks, faults, err := planOnto(ctx, o, options)
	if err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	from := matched(o.Players, options.Signed)
	sized := &Sized{Order: p.order, Rules: options.Rules, Players: make([]Player, len(o.Players)), Looks: looks, digests: p.digests(), waysOut: p.waysOut, tails: p.tails}
	for i := range sized.Looks {
		sized.Looks[i].Player = -1 // it names a row of the signed roster
	}
	if err := p.each(ctx, len(o.Players), func(w *worker, i int) {
		if k := from[i]; k >= 0 {
			signed := options.Signed.Players[k]
			sized.Players[i] = Player{Player: o.Players[i], Garment: signed.Garment, Pieces: signed.Pieces, Signed: true}
			return
		}
		sized.Players[i] = w.player(i)
		w.unmatched(&sized.Players[i], i)
	}, options.Progress); err != nil {
		return nil, err
	}
	if faults := p.collect(sized); len(faults) > 0 {
		return nil, faults
	}
	return sized, nil
}

// unmatched marks a back name that does not come out at the height that the
// signed names share.
func (w *worker) unmatched(p *Player, k int) {
	if w.plan.common == nil {
		return
	}
	by := w.plan.reached[k]
	common, shared := w.plan.common[by.key]
	for i := range p.Pieces {
		if n := p.Pieces[i].Name; n != nil && shared && p.Pieces[i].Asked.Place == garment.BackName && n.LetterHeight < common-sameHeight {
			p.Pieces[i].Unmatched = common
		}
	}
}

// Added returns the order with only those who were added to a signed one, after
// one signed player to compare them with (of the size that most of them wear, if
// there is one), and where each stands in the whole order. Its fingerprint is
// that of no proof: what is signed is the whole order.
func (s *Sized) Added() (*Sized, []int) {
	var rows []int
	for i, p := range s.Players {
		if !p.Signed {
			rows = append(rows, i)
		}
	}
	if k := s.model(rows); k >= 0 {
		rows = append([]int{k}, rows...)
	}
	out, o := *s, *s.Order
	out.Order, out.Players, o.Players = &o, nil, nil
	for _, i := range rows {
		out.Players = append(out.Players, s.Players[i])
		o.Players = append(o.Players, s.Order.Players[i])
	}
	return &out, rows
}

// model is the signed player that the added ones are compared with, -1 when
// nobody is signed.
func (s *Sized) model(added []int) int {
	count := map[garment.Size]int{}
	for _, i := range added {
		count[s.Players[i].Size]++
	}
	best := -1
	for i, p := range s.Players {
		if p.Signed && (best < 0 || count[p.Size] > count[s.Players[best].Size]) {
			best = i
		}
	}
	return best
}

// SameJob reports whether two orders ask for the same: in everything but the
// players, so that what was signed of the one holds for the other.
func SameJob(a, b *order.Order) bool {
	return FactText(jobFacts(a)) == FactText(jobFacts(b))
}

func jobFacts(o *order.Order) []Fact {
	bare := *o
	bare.Players = nil
	facts := (&Sized{Order: &bare}).Facts()
	fit := fmt.Sprintf("%v %v %s %s %s %s %s", o.Fit.Tracking, o.Fit.Width, o.Fit.Same, o.Fit.Arc, o.Rules, o.Season, o.Category)
	floor := ""
	if o.Fit.Height != nil {
		floor = o.Fit.Height.String()
	}
	return append(facts, Fact{Player: -1, What: "fit", Value: fit + " " + floor})
}

// Joined counts the players who came since an order was signed, and those who
// left. Who is not the same in everything counts as both.
func Joined(o, signed *order.Order) (came, left int) {
	from := matched(o.Players, &Sized{Order: signed, Players: make([]Player, len(signed.Players))})
	for _, k := range from {
		if k < 0 {
			came++
		}
	}
	return came, len(signed.Players) - (len(from) - came)
}
