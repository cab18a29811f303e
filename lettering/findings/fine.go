package findings

import (
	"cmp"
	"fmt"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/makeable"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
)

// Fine is the smallest detail of one kind among all pieces at a place, with
// their outlines, that is finer than the decoration method can be trusted with.
type Fine struct {
	Place              string
	What               makeable.What
	Measured, Required float64 // mm
	Where              string  // RN in HERNANDEZ
	Layer              string  // of the piece: the outline, outline 2; "" for the letters
	Pieces             int     // how many different pieces fall short
}

// mostFine is how many different pieces are measured: it takes a few
// milliseconds each. See candidates for which they are.
const mostFine = 500

// chords is how far, mm, a detail may seem to fall short because curves are
// drawn as chords: two outlines that face each other, each outside its true
// place by up to the tolerance, and the flattened ink in them. A gap of a
// number that was set to the method's smallest would be reported otherwise.
const chords = 2.5 * outline.Tolerance

// fine measures the different pieces of the order that fit, and puts into the
// subject the details that fall short, how many pieces were not measured, and
// the basis of the limits. A piece that does not fit is not made as it is.
func (s *Subject) fine(sized *sizes.Sized) {
	method, ok := order.LookupMethod(sized.Order.Method)
	if !ok {
		return
	}
	s.FineBasis = method.Basis
	limits := makeable.Limits{Stroke: method.MinStroke, Gap: method.MinGap, Counter: method.MinGap, Letter: method.MinLetter}
	all := different(sized)
	chosen := candidates(all)
	s.Unmeasured = len(all) - len(chosen)
	for _, piece := range chosen {
		found, measured := shortfalls(piece, limits)
		if !measured {
			s.Unmeasured++
		}
		for _, f := range found {
			s.addFine(f)
		}
	}
	slices.SortStableFunc(s.Fine, func(a, b Fine) int {
		return cmp.Or(cmp.Compare(a.Place, b.Place), cmp.Compare(a.What, b.What))
	})
}

// different returns the pieces that fit, each text, place and size once, in the
// order of the roster.
func different(s *sizes.Sized) []sizes.Piece {
	var out []sizes.Piece
	type key struct {
		place, text         string
		height, width, turn int // hundredths of a mm
	}
	hundredths := func(mm float64) int { return int(mm*100 + 0.5) }
	seen := map[key]bool{}
	for _, p := range s.Players {
		for _, piece := range p.Pieces {
			k := key{place: string(piece.Asked.Place), text: piece.Text(), height: hundredths(piece.Height()), width: hundredths(piece.InkWidth())}
			if n := piece.Name; n != nil {
				k.turn = hundredths(n.Radius)
			}
			if !seen[k] && !isOver(piece) {
				seen[k] = true
				out = append(out, piece)
			}
		}
	}
	return out
}

func isOver(p sizes.Piece) bool {
	if p.Name != nil {
		return p.Name.Verdict == fit.Over
	}
	return p.Number.Verdict == "over"
}

// candidates returns the pieces to measure: all of them, or where they are too
// many, from every place by turns those with the closest letters, which are
// the lowest and narrowest too; of numbers the lowest.
func candidates(all []sizes.Piece) []sizes.Piece {
	if len(all) <= mostFine {
		return all
	}
	tight := func(p sizes.Piece) float64 {
		if p.Name != nil && p.Name.SmallestGap >= 0 {
			return p.Name.SmallestGap
		}
		return p.Height()
	}
	ranked := slices.Clone(all)
	slices.SortStableFunc(ranked, func(a, b sizes.Piece) int { return cmp.Compare(tight(a), tight(b)) })
	type turn struct{ round, index int }
	rounds := map[string]int{}
	var turns []turn
	for i, p := range ranked {
		place := string(p.Asked.Place)
		turns = append(turns, turn{rounds[place], i})
		rounds[place]++
	}
	slices.SortStableFunc(turns, func(a, b turn) int { return cmp.Compare(a.round, b.round) })
	out := make([]sizes.Piece, mostFine)
	for i := range out {
		out[i] = ranked[turns[i].index]
	}
	return out
}

// addFine keeps, for each place and kind of detail, the finest.
func (s *Subject) addFine(f Fine) {
	for i := range s.Fine {
		old := &s.Fine[i]
		if old.Place != f.Place || old.What != f.What {
			continue
		}
		f.Pieces += old.Pieces
		if f.Measured >= old.Measured {
			old.Pieces = f.Pieces
			return
		}
		*old = f
		return
	}
	s.Fine = append(s.Fine, f)
}

// shortfalls measures every layer of a piece, the letters, each outline and
// what is laid on a tail, and returns the finest detail of each kind that falls
// short. It reports false when a layer could not be measured.
func shortfalls(p sizes.Piece, limits makeable.Limits) (out []Fine, measured bool) {
	ink, err := outline.Union(p.Ink().Flatten(outline.Tolerance))
	if err != nil {
		return nil, false
	}
	outlines, err := p.Outlines()
	if err != nil {
		return nil, false
	}
	base := makeable.Options{Letters: lettersOf(p, ink), UpTo: max(limits.Stroke, limits.Gap)}
	measured = true
	measure := func(layer geom.Region, o makeable.Options, words string) {
		report, err := makeable.Measure(layer, o)
		if err != nil {
			measured = false
			return
		}
		for _, short := range makeable.Check(report, limits) {
			if short.Required-short.Measured > chords {
				out = finest(out, fineOf(p, short, words))
			}
		}
	}
	letters := base
	letters.LetterHeight = p.Height()
	measure(ink, letters, "")
	base.Bare = ink
	for i, layer := range outlines {
		words := "the outline"
		if len(outlines) > 1 {
			words = fmt.Sprintf("outline %d", i+1)
		}
		measure(layer, base, words)
	}
	if len(p.Laid) > 0 {
		measure(p.Laid, makeable.Options{UpTo: base.UpTo}, "the text on the tail")
	}
	return out, measured
}

// finest keeps the smaller of two details of one kind.
func finest(all []Fine, f Fine) []Fine {
	for i := range all {
		if all[i].What == f.What {
			if f.Measured < all[i].Measured {
				all[i] = f
			}
			return all
		}
	}
	return append(all, f)
}

func fineOf(p sizes.Piece, s makeable.Shortfall, layer string) Fine {
	return Fine{
		Place: string(p.Asked.Place), What: s.What, Measured: s.Measured, Required: s.Required,
		Where: spotWords(s.Spot, p.Text()), Layer: layer, Pieces: 1,
	}
}
