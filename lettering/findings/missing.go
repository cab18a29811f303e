package findings

import (
	"slices"
	"strings"

	"yokeline/lettering/rulebook"
)

// missing reports, once a kind, the figures that the book would need for this
// order and does not have. What is not there is not allowed by that.
func (c *checker) missing() {
	type kind struct {
		what    string
		figures func(*rulebook.Position) []*rulebook.Figure
	}
	for _, k := range []kind{
		{"number height", func(p *rulebook.Position) []*rulebook.Figure {
			return []*rulebook.Figure{p.HeightMin, p.HeightMax, p.HeightExact, p.HeightAbout}
		}},
		{"number stroke", func(p *rulebook.Position) []*rulebook.Figure {
			return []*rulebook.Figure{p.StrokeMin, p.StrokeMax, p.StrokeAbout}
		}},
		{"number border", func(p *rulebook.Position) []*rulebook.Figure {
			return []*rulebook.Figure{p.BorderMin, p.BorderMax, p.EachBorderMax, p.BorderCountMax}
		}},
	} {
		var absent, none []string
		for _, place := range c.numbered() {
			p := c.rules.Position(place)
			if p == nil {
				absent = append(absent, place)
				continue
			}
			switch figures := k.figures(p); {
			case slices.ContainsFunc(figures, (*rulebook.Figure).None):
				none = append(none, place)
			case !slices.ContainsFunc(figures, func(f *rulebook.Figure) bool { return f != nil }):
				absent = append(absent, place)
			}
		}
		c.lacking(none, k.what, "the book gives no figure")
		c.lacking(absent, k.what, "no figure known to us")
	}
	c.missingOthers()
}

func (c *checker) missingOthers() {
	n, k := &c.rules.Names, &c.rules.Contrast
	named := slices.ContainsFunc(c.subject.Players, func(w Wearer) bool { return len(playerNames(w)) > 0 })
	if named && n.HeightMin == nil && n.HeightMax == nil && n.HeightExact == nil && n.ShortHeight == nil {
		c.unknown("", "letter height of names", "no figure known to us", "")
	}
	if named && n.HeightMin.None() {
		c.unknown("", "letter height of names", "the book gives no figure", "")
	}
	if len(c.numbered()) > 0 && k.Body == nil && k.RatioMin == nil {
		c.unknown("", "colour of the number", "nothing known to us", "look up what this body says about the colours of a number")
	}
}

func (c *checker) lacking(places []string, what, required string) {
	if len(places) > 0 {
		c.unknown(strings.Join(places, ", "), what, required, "look up the "+what+" in the current book")
	}
}

// numbered returns the places that the order puts numbers on.
func (c *checker) numbered() []string {
	return slices.DeleteFunc(places(c.rules, c.subject), func(place string) bool {
		return !slices.ContainsFunc(c.subject.Players, func(w Wearer) bool {
			m, ok := w.piece(place)
			return ok && m.Kind == KindNumber
		})
	})
}
