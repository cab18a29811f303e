package rulebook

import (
	"slices"
	"strings"
)

// Line is one figure as a list of a book's figures shows it.
type Line struct {
	About   string // back number
	Figure  string // height at least
	Is      string // 8 in
	Rule    string
	Source  string
	How     How
	Seasons string // from 2026
	For     string // women
	Advice  bool
	Note    string
}

// Lines lists every figure of the book, all seasons, by subject: numbers,
// places, names, contrast, remarks.
func (b *Book) Lines() []Line {
	figures := make([]*Figure, len(b.Figures))
	for i := range b.Figures {
		figures[i] = &b.Figures[i]
	}
	return lines(figures)
}

// Lines lists the figures in force, in the order of Book.Lines.
func (r *Rules) Lines() []Line { return lines(r.Figures) }

func lines(figures []*Figure) []Line {
	sorted := slices.Clone(figures)
	slices.SortStableFunc(sorted, func(a, b *Figure) int {
		if d := subjectOrder(a) - subjectOrder(b); d != 0 {
			return d
		}
		return placeOrder(a.About, b.About)
	})
	out := make([]Line, len(sorted))
	for i, f := range sorted {
		out[i] = Line{
			About: f.About, Figure: f.Name, Is: f.Text(), Rule: f.Rule, Source: f.Source.String(), How: f.How,
			Seasons: f.Seasons(), For: strings.Join(f.For, ", "), Advice: f.Advice, Note: f.Note,
		}
	}
	return out
}

func subjectOrder(f *Figure) int {
	switch {
	case f.Name == "note":
		return 4
	case f.About == "numbers":
		return 0
	case f.About == "names":
		return 2
	case f.About == "contrast":
		return 3
	}
	return 1
}

// Change is a figure that is not the same in two seasons; nil on the side
// where there is none.
type Change struct {
	About, Figure string
	Was, Now      *Figure
}

// Changes compares the figures of two seasons, in the order of Lines.
func (b *Book) Changes(earlier, later string) ([]Change, error) {
	was, err := b.In(earlier)
	if err != nil {
		return nil, err
	}
	now, err := b.In(later)
	if err != nil {
		return nil, err
	}
	var out []Change
	for _, f := range lines(now.Figures) {
		a, z := find(was.Figures, f), find(now.Figures, f)
		if a != z {
			out = append(out, Change{f.About, f.Figure, a, z})
		}
	}
	for _, f := range lines(was.Figures) {
		if find(now.Figures, f) == nil {
			out = append(out, Change{f.About, f.Figure, find(was.Figures, f), nil})
		}
	}
	return out, nil
}

// find returns the figure that a line shows; remarks are told apart by what
// they say.
func find(figures []*Figure, l Line) *Figure {
	for _, f := range figures {
		if f.About == l.About && f.Name == l.Figure && (f.Name != "note" || f.Is == l.Is) {
			return f
		}
	}
	return nil
}
