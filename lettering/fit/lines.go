package fit

import (
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/typeface"
)

// A text with a line break is set in two lines: both at one letter height, one
// width and one tracking, so that they look alike, and each centred under the
// other. The ladder gives the two what the wider of them needs.
//
// The second baseline lies Name.Leading under the first. On a radial arch the
// two baselines are concentric; on a vertical arch, where stems stay upright,
// the second is the first moved down.
const lineBreak = "\n"

// Distances between two lines, shares of the letter height: common practice,
// no source.
const (
	// lineGap is left between the feet of the capitals of the upper line and
	// the heads of those of the lower one.
	lineGap = 0.30
	// inkGap is the least that is left between what hangs down from the upper
	// line, what stands up from the lower one (descenders, accents) and the
	// outlines of both.
	inkGap = 0.15
)

// checkLines refuses a text in more lines than two.
func (r *Request) checkLines() error {
	if n := strings.Count(r.Text, lineBreak) + 1; n > 2 {
		return fmt.Errorf("%q has %d lines; a name is set in one or two", r.Text, n)
	}
	return nil
}

// stack shapes a text with a line break; the upper line carries the lower.
func (f *Fitter) stack(upper, lower *Request, face *typeface.Face) (*line, error) {
	under, err := f.line(lower, face)
	if err != nil {
		return nil, err
	}
	over, err := f.line(upper, face)
	if err != nil {
		return nil, err
	}
	both := *over
	both.under = under
	return &both, nil
}

// split parts the request at its line break.
func (r *Request) split() (upper, lower Request, ok bool) {
	head, tail, ok := strings.Cut(r.Text, lineBreak)
	if !ok {
		return *r, Request{}, false
	}
	upper, lower = *r, *r
	upper.Text, lower.Text = head, tail
	upper.Raised, lower.Raised = nil, nil
	start := len([]rune(head)) + 1
	for _, i := range r.Raised {
		if i < start {
			upper.Raised = append(upper.Raised, i)
		} else {
			lower.Raised = append(lower.Raised, i-start)
		}
	}
	return upper, lower, true
}

// leading returns the distance from the baseline of l to that of the line
// under it, mm.
func (b *stand) leading(l *line, s state) float64 {
	sy := s.height / l.cap
	ink := sy*(l.under.top-l.bottom) + 2*b.reach
	return math.Max((1+lineGap)*s.height, ink+math.Max(inkGap*s.height, b.keep))
}

// lower returns what the line under l stands on.
func (b *stand) lower(l *line, s state) stand {
	c := *b
	switch {
	case b.shape == RadialArch:
		c.radius -= b.leading(l, s)
	case b.shape == RadialArchDown:
		c.radius += b.leading(l, s)
	}
	return c
}

// spanLines is span for two lines. Both are measured from x = 0, under which
// the circle's centre lies.
func (b *stand) spanLines(l *line, s state) (from, to float64) {
	upper := *l
	upper.under = nil
	from, to = b.span(&upper, s)
	lower := b.lower(l, s)
	left, right := lower.span(l.under, s)
	return min(from, left), max(to, right)
}

// widest returns the width of the bare ink of the straight line, of two lines
// that of the wider one, mm.
func (l *line) widest(s state) float64 {
	from, to := l.bare(s)
	if l.under == nil {
		return to - from
	}
	left, right := l.under.bare(s)
	return max(to-from, right-left)
}

// carrying returns the radius at which the line as it stands, or the one of two
// lines that turns further, turns by 75 degrees to a side.
func (b *stand) carrying(l *line, s state) float64 {
	from, to := l.bare(s)
	radius := (to - from) / 2 / steepest * (1 + 1e-9)
	if b.shape.radial() {
		radius -= b.turning(s.height) - b.radius
	}
	if l.under != nil {
		lower := b.lower(l, s)
		radius = max(radius, lower.carrying(l.under, s)+b.radius-lower.radius)
	}
	return radius
}

// linePairs lists all pairs of one letter of the upper and one of the lower
// line, of which the first stands at index start.
func linePairs(to []neighbours, glyphs []set, start int) []neighbours {
	for i := range start {
		for k := start; k < len(glyphs); k++ {
			to = append(to, neighbours{i, k, apart(&glyphs[i], &glyphs[k])})
		}
	}
	return to
}
