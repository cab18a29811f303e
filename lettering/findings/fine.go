package findings

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"yokeline/lettering/geom"
	"yokeline/lettering/makeable"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
)

// Fine is the smallest detail of one kind among all pieces at a place, with
// their outlines, that is finer than the decoration method can be trusted with.
type Fine struct {
	Place, What        string
	Measured, Required float64 // mm
	Where              string  // RN of HERNANDEZ
	Player             string  // whose piece it is
	Pieces             int     // how many different pieces fall short
	last               string  // the piece that was counted last
	Basis              string  // of the required figure
}

// mostFine is how many different pieces are measured: it takes a few
// milliseconds each, and the finest detail of 400 names is that of 10,000.
const mostFine = 400

// fine measures the different pieces of the order and returns the details that
// fall short, how many pieces were not measured, and the basis of the limits.
func fine(s *sizes.Sized) (out []Fine, skipped int, basis string) {
	method, ok := order.LookupMethod(s.Order.Method)
	if !ok {
		return nil, 0, ""
	}
	limits := makeable.Limits{Stroke: method.MinStroke, Gap: method.MinGap, Counter: method.MinGap, Letter: method.MinLetter}
	seen := map[string]bool{}
	for _, p := range s.Players {
		for _, piece := range p.Pieces {
			key := fmt.Sprintf("%s %q %.2f %.2f", piece.Asked.Place, piece.Text(), piece.Height(), piece.InkWidth())
			if seen[key] {
				continue
			}
			if len(seen) >= mostFine {
				skipped++
				continue
			}
			seen[key] = true
			for _, short := range shortfalls(piece, limits) {
				out = worse(out, piece, p.Label(), short, method.Basis)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Fine) int { return cmp.Compare(a.Place, b.Place) })
	return out, skipped, method.Basis
}

// worse keeps, for each place and kind of detail, the finest.
func worse(all []Fine, p sizes.Piece, player string, s makeable.Shortfall, basis string) []Fine {
	f := Fine{Place: string(p.Asked.Place), What: s.What.String(), Measured: s.Measured, Required: s.Required, Where: spotWords(s.Spot, p.Text()), Player: player, Pieces: 1, Basis: basis, last: p.Text()}
	for i := range all {
		if all[i].Place != f.Place || all[i].What != f.What {
			continue
		}
		if f.Pieces = all[i].Pieces; all[i].last != f.last {
			f.Pieces++
		}
		all[i].last = f.last
		if f.Measured >= all[i].Measured {
			all[i].Pieces = f.Pieces
			return all
		}
		all[i] = f
		return all
	}
	return append(all, f)
}

// spotWords says where a detail is: R of HERNANDEZ, or RN of HERNANDEZ.
func spotWords(s makeable.Spot, text string) string {
	text = strings.ReplaceAll(text, "\n", " ")
	letters := s.Letter
	if s.Other != "" && s.OtherIndex != s.Index {
		letters += s.Other
	}
	if letters == "" || letters == text {
		return text
	}
	return letters + " of " + text
}

// shortfalls measures every layer of a piece, the letters and each outline. A
// layer that cannot be measured is passed over: nothing is claimed of it.
func shortfalls(p sizes.Piece, limits makeable.Limits) []makeable.Shortfall {
	ink, err := outline.Union(p.Ink().Flatten(outline.Tolerance))
	if err != nil {
		return nil
	}
	layers, err := p.Outlines()
	if err != nil {
		return nil
	}
	letters := lettersOf(ink, p.Text())
	upTo := math.Max(limits.Stroke, limits.Gap)
	var out []makeable.Shortfall
	for i, layer := range append([]geom.Region{ink}, layers...) {
		options := makeable.Options{Letters: letters, UpTo: upTo}
		if i == 0 {
			options.LetterHeight = p.Height()
		} else {
			options.Bare = ink
		}
		report, err := makeable.Measure(layer, options)
		if err != nil {
			continue
		}
		out = append(out, makeable.Check(report, limits)...)
	}
	return out
}

// lettersOf names the separate shapes of the ink from left to right, where
// there are as many as letters; a dot or an accent goes with the letter under
// it. Letters that join leave the shapes without names.
func lettersOf(ink geom.Region, text string) []makeable.Letter {
	var shapes []geom.Region
	for _, ring := range ink {
		if ring.Area() > 0 {
			shapes = append(shapes, geom.Region{ring})
		}
	}
	slices.SortFunc(shapes, func(a, b geom.Region) int { return cmp.Compare(a.Bounds().Min.X, b.Bounds().Min.X) })
	var stacked []geom.Region
	for _, s := range shapes {
		if n := len(stacked); n > 0 && over(stacked[n-1].Bounds(), s.Bounds()) {
			stacked[n-1] = append(stacked[n-1], s...)
			continue
		}
		stacked = append(stacked, s)
	}
	var names []string
	for _, r := range text {
		if !unicode.IsSpace(r) && !unicode.Is(unicode.M, r) {
			names = append(names, string(r))
		}
	}
	if len(names) != len(stacked) {
		return nil
	}
	out := make([]makeable.Letter, len(names))
	for i, name := range names {
		out[i] = makeable.Letter{Text: name, Index: i, Ink: stacked[i]}
	}
	return out
}

// over reports whether the narrower of two boxes lies mostly over or under the
// other.
func over(a, b geom.Rect) bool {
	shared := math.Min(a.Max.X, b.Max.X) - math.Max(a.Min.X, b.Min.X)
	return shared > 0.6*math.Min(a.Width(), b.Width())
}

// details reports what is finer than the method holds. It is advice: the
// supplier's data sheet and a test piece decide.
func (c *checker) details() {
	for _, f := range c.subject.Fine {
		measured := fmt.Sprintf("%.2f mm at %s", math.Floor(f.Measured*100+1e-9)/100, f.Where)
		switch {
		case f.Pieces == 2:
			measured += ", and one more piece"
		case f.Pieces > 2:
			measured += fmt.Sprintf(", and %d more pieces", f.Pieces-1)
		}
		c.keep(Result{
			Finding: Finding{
				Severity: Advice, Place: f.Place, What: f.What, Measured: measured,
				Required: fmt.Sprintf("at least %g mm", f.Required), By: fmt.Sprintf("%.2f mm", math.Ceil((f.Required-f.Measured)*100-1e-9)/100), Source: f.Basis,
			},
			Bench: true, Of: f.Pieces,
			mend: "cut a test piece of " + f.Where + " first, or make the " + f.Place + " larger or heavier",
		})
	}
	if c.subject.FineBasis != "" && len(c.subject.Fine) == 0 {
		c.keep(Result{Bench: true, Finding: Finding{Severity: InOrder, What: "finest details", Measured: "all larger", Required: "what the method holds", Source: c.subject.FineBasis}})
	}
	if c.subject.Unmeasured > 0 {
		c.keep(Result{
			Bench: true,
			Finding: Finding{Severity: Unknown, What: "finest details", Measured: fmt.Sprintf("%d further pieces were not measured", c.subject.Unmeasured),
				Required: "what the method holds", Source: c.subject.FineBasis},
			mend: "check those players in an order of their own",
		})
	}
}
