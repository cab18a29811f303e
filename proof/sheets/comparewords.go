package sheets

import (
	"strings"

	"yokeline/lettering/changes"
	"yokeline/lettering/spelling"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// changeWords sets the first columns of a band.
type changeWords struct {
	*comparison
	f     *frame // nil to measure only
	width float64
}

// lines sets lines from x off the margin and returns the last baseline.
func (w changeWords) lines(x, y float64, t parts.Type, lines []string) float64 {
	if w.f != nil {
		w.f.lines(w.grid.Left+x, y, compareStep, t, lines)
	}
	return y + compareStep*float64(len(lines)-1)
}

// who sets the player's number and name and returns the last baseline.
func (w changeWords) who(b changeBand, y float64) float64 {
	p := b.on[1]
	if p == nil {
		p = b.on[0]
	}
	number, t := p.Number, parts.Heading()
	if number == "" {
		number, t = "no number", parts.Caption().In(parts.Slate)
	}
	name := spelling.OneLine(w.asCut(*p))
	if name == "" {
		name = p.Label()
	}
	y += bandName
	w.lines(0, y, t, []string{number})
	x := w.book.Width(t.Style, number) + nameGap
	title := w.shrunk(parts.GroupTitle(), nameLeast, w.width-x, name)
	return w.lines(x, y, title, w.book.Wrap(title.Style, w.width-x, name))
}

// line sets what changed: its label, then the old value and the new one, on one
// line where both fit.
func (w changeWords) line(l changes.Line, y float64) float64 {
	y = w.lines(0, y+changeLabel, parts.Label(), w.book.Wrap(parts.Label().Style, w.width, l.Subject()))
	old, now := parts.Caption().In(parts.Slate), parts.Value()
	is := l.Is
	if is == "" {
		is = "none"
	}
	const arrow = "→ "
	if l.Was == "" {
		return w.lines(0, y+changeValue, now, w.book.Wrap(now.Style, w.width, is))
	}
	spans := []page.Span{old.Span(l.Was + "  " + arrow + " "), now.Span(is)}
	wide := w.book.Width(old.Style, spans[0].Text) + w.book.Width(now.Style, is)
	if wide <= w.width && !strings.Contains(l.Was+is, "\n") {
		if y += changeValue; w.f != nil {
			w.f.Spans(w.grid.Left, y, page.Start, spans...)
		}
		return y
	}
	y = w.lines(0, y+changeValue, old, w.book.Wrap(old.Style, w.width, l.Was))
	indent := w.book.Width(old.Style, arrow)
	w.lines(0, y+compareStep, old, []string{strings.TrimSpace(arrow)})
	return w.lines(indent, y+compareStep, now, w.book.Wrap(now.Style, w.width-indent, is))
}
