// Package sizerun decides in how many heights one piece is made over the sizes
// of an order. Every height is another sheet, screen or cutting file, so a shop
// makes few of them; every step that is saved costs height on the sizes that
// could have worn taller art. The package finds the best grouping of sizes for
// a number of steps and tells what each plan costs.
package sizerun

import (
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/garment"
)

// Entry is what one size allows.
type Entry struct {
	Size   garment.Size
	Pieces int     // to make in this size
	Fits   float64 // greatest height that fits every player of the size, no more than was asked, mm
}

// Step is one height and the sizes that get it.
type Step struct {
	Height float64 // mm
	Sizes  []garment.Size
	Pieces int // made at this height
}

// Kind is a way to group sizes.
type Kind uint8

// The plans, from the fewest steps to the most.
const (
	OneSize    Kind = iota // one height for all
	YouthAdult             // one for youth, one for women and adult
	ThreeSteps             // the best three heights
	EverySize              // each size its own
)

// String returns the plan in the words that a job uses.
func (k Kind) String() string {
	return [...]string{"one size", "youth and adult", "three steps", "every size"}[k&3]
}

// Kinds returns every plan, from the fewest steps to the most.
func Kinds() []Kind { return []Kind{OneSize, YouthAdult, ThreeSteps, EverySize} }

// ParseKind reads the words that String writes.
func ParseKind(words string) (Kind, error) {
	for _, k := range Kinds() {
		if k.String() == words {
			return k, nil
		}
	}
	return 0, fmt.Errorf("%q is not a plan: use one size, youth and adult, three steps or every size", words)
}

// Plan is one way to make a piece over all sizes.
type Plan struct {
	Kind  Kind
	Steps []Step // in the order of sizes; no two have one height
	// Loss is the greatest share of height that a size gives up against what
	// would fit it, and LossAt the first size that gives it up.
	Loss   float64
	LossAt garment.Size
	// Mean is the share given up by the mean piece.
	Mean float64
	// Short are the sizes that come out lower than the least height of the rules
	// although they could reach it.
	Short []garment.Size
}

// Height returns the height that a size gets; ok is false for a size that the
// plan does not have.
func (p Plan) Height(size garment.Size) (mm float64, ok bool) {
	for _, s := range p.Steps {
		if slices.Contains(s.Sizes, size) {
			return s.Height, true
		}
	}
	return 0, false
}

// Plans returns every plan for the sizes. Entries need not be sorted and each
// size may stand once; those that nothing fits (Fits not over 0) or that have no
// pieces are left out, for a size that waits for a decision must not pull the
// others down. least is the smallest height that the rules allow, in mm, 0 for
// none. There are no plans where no entry is left.
func Plans(entries []Entry, least float64) []Plan {
	sorted := sound(entries)
	if len(sorted) == 0 {
		return nil
	}
	var out []Plan
	for _, k := range Kinds() {
		out = append(out, newPlan(k, grouped(k, sorted), least))
	}
	return out
}

// sound returns the entries that count, in the order of sizes.
func sound(entries []Entry) []Entry {
	kept := slices.DeleteFunc(slices.Clone(entries), func(e Entry) bool {
		return e.Pieces <= 0 || !(e.Fits > 0) || math.IsInf(e.Fits, 1)
	})
	slices.SortStableFunc(kept, func(a, b Entry) int { return a.Size.Compare(b.Size) })
	return kept
}

func grouped(k Kind, sorted []Entry) [][]Entry {
	switch k {
	case OneSize:
		return [][]Entry{sorted}
	case YouthAdult:
		cut := slices.IndexFunc(sorted, func(e Entry) bool { return e.Size.Group != garment.Youth })
		if cut <= 0 {
			return [][]Entry{sorted}
		}
		return [][]Entry{sorted[:cut], sorted[cut:]}
	case ThreeSteps:
		return Group(sorted, 3)
	}
	return Group(sorted, len(sorted))
}

// lowest returns the height that all of a group can have.
func lowest(group []Entry) float64 {
	h := math.Inf(1)
	for _, e := range group {
		h = math.Min(h, e.Fits)
	}
	return h
}

// newPlan tells what a grouping costs. Groups of one height are one step.
func newPlan(k Kind, groups [][]Entry, least float64) Plan {
	p := Plan{Kind: k}
	pieces, given := 0, 0.0
	for _, group := range groups {
		h := lowest(group)
		at := slices.IndexFunc(p.Steps, func(s Step) bool { return math.Abs(s.Height-h) < sameHeight })
		if at < 0 {
			at = len(p.Steps)
			p.Steps = append(p.Steps, Step{Height: h})
		}
		step := &p.Steps[at]
		for _, e := range group {
			loss := 1 - h/e.Fits
			if p.LossAt == (garment.Size{}) || loss > p.Loss {
				p.Loss, p.LossAt = loss, e.Size
			}
			if h < least-sameHeight && e.Fits >= least-sameHeight {
				p.Short = append(p.Short, e.Size)
			}
			step.Sizes = append(step.Sizes, e.Size)
			step.Pieces += e.Pieces
			pieces += e.Pieces
			given += loss * float64(e.Pieces)
		}
	}
	p.Mean = given / float64(pieces)
	return p
}

// sameHeight is how near two heights are that one sheet serves, mm.
const sameHeight = 1e-6

// Best returns the index of the plan with the fewest steps whose greatest loss
// is within the tolerance, a share such as 0.10, and which keeps no size under
// the rules' least height that could reach it. Of plans with as many steps the
// one that loses least is taken. Where no plan is within the tolerance it is the
// one that loses least; -1 without plans.
func Best(plans []Plan, tolerance float64) int {
	best := -1
	for i := range plans {
		if best < 0 || better(&plans[i], &plans[best], tolerance) {
			best = i
		}
	}
	return best
}

func better(a, b *Plan, tolerance float64) bool {
	within := func(p *Plan) bool { return p.Loss <= tolerance+1e-12 }
	switch {
	case (len(a.Short) == 0) != (len(b.Short) == 0):
		return len(a.Short) == 0
	case within(a) != within(b):
		return within(a)
	case within(a) && len(a.Steps) != len(b.Steps):
		return len(a.Steps) < len(b.Steps)
	case a.Loss != b.Loss:
		return a.Loss < b.Loss
	}
	return a.Mean < b.Mean
}
