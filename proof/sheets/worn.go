package sheets

import (
	"cmp"
	"context"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// resized sizes other players than those of the roster by the order's own
// settings. Every length is decided by package sizes, as for the order itself.
func (d *document) resized(same string, players []order.Player, choices ...sizes.Choice) (*sizes.Sized, error) {
	o := *d.order
	o.Players = players
	o.Fit.Same = same
	return sizes.Resolve(context.Background(), &o, sizes.Options{Face: d.in.Face, Rules: d.in.Sized.Rules, NoWaysOut: true, Chosen: choices, Like: d.in.Sized})
}

// chosen sizes one player, as if alone in the team, with a way out chosen for a
// piece, exactly as it would be made. The numbers of the others on that size go
// along, because they decide the level of all numbers. It is false when the
// player cannot be sized so.
func (d *document) chosen(p order.Player, c sizes.Choice) (sizes.Player, bool) {
	players := []order.Player{p}
	for _, other := range d.order.Players {
		if other.SizeKnown && other.Size == p.Size && other.Number != "" {
			players = append(players, order.Player{Number: other.Number, Size: p.Size, SizeKnown: true, Row: other.Row})
		}
	}
	c.Player = 0
	sized, err := d.resized("none", players, c)
	if err != nil || len(sized.Players) == 0 {
		return sizes.Player{}, false
	}
	return sized.Players[0], true
}

// onEverySize returns one player as sized on each of the sizes: the player of
// the median name whose being there changes nothing for the others, where
// names share a height. ok is false when there is none; then each size has a
// player of its own.
func (d *document) onEverySize(counts []sizeCount) (wearers []sizes.Player, ok bool) {
	for _, sample := range d.sampleCandidates() {
		players := slices.Clone(d.order.Players)
		first := len(players)
		for _, c := range counts {
			p := sample
			p.Size, p.SizeKnown = c.size, true
			players = append(players, p)
		}
		sized, err := d.resized(d.order.Fit.Same, players)
		if err == nil && sameLooks(sized.Looks, d.in.Sized.Looks) && sameHeights(sized.Players[:first], d.in.Sized.Players) {
			return sized.Players[first:], true
		}
	}
	for _, c := range counts {
		i := slices.IndexFunc(d.in.Sized.Players, func(p sizes.Player) bool { return p.Garment != nil && p.Size == c.size })
		wearers = append(wearers, d.in.Sized.Players[i])
	}
	return wearers, false
}

// sampleCandidates returns the players whose name may stand for the team's: the
// one of median width, then shorter ones. Without names it is the player that
// page 1 shows.
func (d *document) sampleCandidates() []order.Player {
	type named struct {
		player order.Player
		wide   float64
	}
	var all []named
	for _, p := range d.in.Sized.Players {
		if name, ok := p.Piece(garment.BackName); ok && name.Name.Verdict != fit.Over && p.Number != "" {
			all = append(all, named{p.Player, name.InkWidth()})
		}
	}
	slices.SortStableFunc(all, func(a, b named) int { return cmp.Compare(a.wide, b.wide) })
	if len(all) == 0 {
		if p, ok := d.shown(); ok {
			return []order.Player{p.Player}
		}
		return nil
	}
	return []order.Player{all[len(all)/2].player, all[len(all)/4].player, all[0].player}
}

// sameHeights reports whether the pieces of players have the same heights in two
// sizings: one that is to be the largest that lies inside would be lower for a
// longer text in its size.
func sameHeights(a, b []sizes.Player) bool {
	const same = 1e-6
	return slices.EqualFunc(a, b, func(x, y sizes.Player) bool {
		return slices.EqualFunc(x.Pieces, y.Pieces, func(p, q sizes.Piece) bool {
			return p.Height()-q.Height() < same && q.Height()-p.Height() < same
		})
	})
}

// sameLooks reports whether names share the same heights in two sizings.
func sameLooks(a, b []sizes.Look) bool {
	const same = 1e-6
	return slices.EqualFunc(a, b, func(x, y sizes.Look) bool {
		return x.Size == y.Size && x.Asked-y.Asked < same && y.Asked-x.Asked < same && x.Height-y.Height < same && y.Height-x.Height < same
	})
}
