package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// ruleTable is the table of rules under work.
type ruleTable struct {
	*document
	grid     parts.Grid
	groups   []ruleGroup
	columns  [5]float64 // left edges, mm on the page
	sourceIn float64    // of the source after the rule's number
	pad, gap float64    // of a row around its lines, and under a group
}

// The table of rules, mm.
const (
	rulesBookDown  = 3.0 // content top to the line that names the book
	rulesHeadsDown = 8.6
	rulesHeadHigh  = 10.3 // content top to the first group
	ruleGroupHigh  = 7.0
	ruleGroupGap   = 3.0
	rulePad        = 3.3
	tightGap       = 2.0 // both, where they save a page
	tightPad       = 2.7
	keptWithNotes  = 3 // rows that the notes at the end never stand without
	ruleLine       = 3.85
	ruleSmallLine  = 3.54 // of the small type
	ruleBase       = 4.7  // row's top to its first baseline
	ruleColumnGap  = 3.0
	ruleLabel      = 5.2 // after the mark
	sourceLeast    = 10.0
	sourceMost     = 17.0
	memoryLeft     = 4.2 // of the bar from the rule's number
)

func (d *document) newRuleTable() *ruleTable {
	g := parts.NewGrid(d.in.Paper.sheet().Portrait())
	t := &ruleTable{document: d, grid: g, groups: d.ruleGroups(), pad: rulePad, gap: ruleGroupGap}
	t.columns = [5]float64{g.Left, g.X(3) - 1.5, g.X(6) - 7, g.X(8) - 6.5, g.X(10) - 7}
	t.sourceIn = sourceLeast
	for _, group := range t.groups {
		for _, r := range group.rows {
			wide := d.book.Width(parts.TableText().Bold().Style, r.rule) + 2
			t.sourceIn = math.Min(sourceMost, math.Max(t.sourceIn, wide))
		}
	}
	return t
}

// strips lists the groups with their rows, and the notes at the end.
func (t *ruleTable) strips() []strip {
	head := &strip{high: rulesHeadHigh, draw: func(f *frame, y float64) { f.ruleHeads(t, y) }}
	var out []strip
	for _, g := range t.groups {
		if len(g.rows) == 0 {
			continue
		}
		out = append(out, strip{high: ruleGroupHigh, keep: true, head: head, draw: func(f *frame, y float64) { f.ruleGroupTitle(g, y) }})
		for i, r := range g.rows {
			s := t.row(r)
			s.head = head
			if i == len(g.rows)-1 {
				s.high += t.gap
			}
			out = append(out, s)
		}
	}
	for i := max(0, len(out)-keptWithNotes); i < len(out); i++ {
		out[i].keep = true
	}
	return append(out, t.notes(len(out) == 0, head))
}

func (f *frame) ruleHeads(t *ruleTable, y float64) {
	f.fitSpans(f.Left, y+rulesBookDown, f.Live(), f.checkedAgainst())
	for i, text := range [...]string{"Result", "What", "Measured", "Required", "Rule and source"} {
		f.say(t.columns[i], y+rulesHeadsDown, parts.Note(), text)
	}
	f.Line(f.Left, y+rulesHeadHigh, f.Right, y+rulesHeadHigh, parts.Ink, page.Line{Weight: parts.Outline})
}

// fitSpans sets a line, all of it smaller where it would be too wide.
func (f *frame) fitSpans(x, y, width float64, spans []page.Span) {
	for {
		wide := 0.0
		for _, s := range spans {
			wide += f.Width(s.Style, s.Text)
		}
		if wide <= width || spans[0].Style.Size <= parts.Label().Size {
			break
		}
		for i := range spans {
			spans[i].Style.Size -= 0.1
		}
	}
	f.Spans(x, y, page.Start, spans...)
}

func (f *frame) ruleGroupTitle(g ruleGroup, y float64) {
	f.Line(f.Left, y, f.Right, y, parts.Ink, page.Line{Weight: parts.Outline})
	f.say(f.Left, y+4.6, parts.GroupTitle(), g.title)
	f.say(f.Right, y+4.6, parts.Sentence().In(parts.Slate).To(page.End), strconv.Itoa(g.checks()))
}

// setRow is a row broken into lines.
type setRow struct {
	ruleRow
	what, small, measured, required, rule, memory, source, remedy []string
	pad                                                           float64
}

// row sets a row and measures it.
func (t *ruleTable) row(r ruleRow) strip {
	s := setRow{ruleRow: r, pad: t.pad}
	small := parts.Caption().Style
	wide := func(i int) float64 { return t.columns[i+1] - t.columns[i] - ruleColumnGap }
	wrap := func(style page.Style, width float64, text string) []string {
		if text == "" {
			return nil
		}
		return t.book.Wrap(style, width, text)
	}
	s.what = wrap(parts.TableText().Bold().Style, wide(1), r.what)
	s.small = append(wrap(small, wide(1), r.where), wrap(small, wide(1), r.who)...)
	measured := parts.TableText()
	if r.result == parts.Broken {
		measured = measured.Bold()
	}
	s.measured = wrap(measured.Style, wide(2), r.measured)
	required := wide(3)
	if r.memory {
		required += ruleColumnGap - memoryLeft - 0.8 // the bar stands before the rule
	}
	s.required = wrap(parts.TableText().Style, required, r.required)
	s.rule = wrap(parts.TableText().Bold().Style, t.sourceIn-1.5, r.rule)
	source := t.grid.Right - t.columns[4] - t.sourceIn
	if r.memory {
		s.memory = wrap(parts.Caption().Bold().Style, source, parts.MemoryWords)
	}
	s.source = wrap(small, source, heldDate(r.source))
	if r.source == "" {
		s.source = wrap(small, source, t.ownSource(r))
	}
	s.remedy = wrap(small, t.columns[4]-t.columns[1]-ruleColumnGap-memoryLeft, r.remedy)
	return strip{high: s.high(), draw: func(f *frame, y float64) { f.drawRow(t, s, y) }}
}

// heldDate keeps what a source ends with in brackets, its date, on one line.
func heldDate(source string) string {
	if i := strings.LastIndex(source, "("); i >= 0 && len(source)-i <= 20 {
		return source[:i] + strings.ReplaceAll(source[i:], " ", "\u00a0")
	}
	return source
}

// ownSource says where a row comes from that no rule book speaks of.
func (t *ruleTable) ownSource(r ruleRow) string {
	switch {
	case r.unfit:
		return "waits for your choice, " + pageMark
	case r.ask:
		return "write it on " + signMark
	case r.lowered:
		return "other ways: " + pageMark
	}
	return "noticed in the order"
}

// pageMark stands for the page of the choices and signMark for that of the
// sign-off, known only when drawing.
const (
	pageMark = "page 00"
	signMark = "page 000"
)

// body is the height of the lines before the source, remedy apart.
func (s setRow) body() float64 {
	return max(
		ruleLine*float64(len(s.what))+ruleSmallLine*float64(len(s.small)),
		ruleLine*float64(len(s.measured)), ruleLine*float64(len(s.required)), ruleLine,
	)
}

func (s setRow) high() float64 {
	return s.pad + max(
		s.body()+ruleSmallLine*float64(len(s.remedy)),
		ruleLine*float64(len(s.rule)), ruleSmallLine*float64(len(s.memory)+len(s.source)),
	)
}

func (f *frame) drawRow(t *ruleTable, s setRow, y float64) {
	f.Line(f.Left, y, f.Right, y, parts.Rule, page.Line{Weight: parts.Hair})
	base := y + ruleBase - (rulePad-s.pad)/2
	small := parts.Caption().In(parts.Slate)
	parts.ResultMark(f.Pen, f.Left+1.8, base-1.05, parts.ResultRadius, s.result, s.result.Colour())
	label := parts.Value().In(s.result.Colour())
	bold := parts.TableText()
	if s.result == parts.Broken {
		bold = bold.Bold()
	} else {
		label.Weight = page.Regular
	}
	f.say(f.Left+ruleLabel, base, label, s.label)
	at := f.lines(t.columns[1], base, ruleLine, parts.TableText().Bold(), s.what)
	f.lines(t.columns[1], at-0.3, ruleSmallLine, small, s.small)
	f.lines(t.columns[2], base, ruleLine, bold, s.measured)
	f.lines(t.columns[3], base, ruleLine, parts.TableText(), s.required)
	f.lines(t.columns[4], base, ruleLine, parts.TableText().Bold(), s.rule)
	if len(s.memory) > 0 {
		parts.MemoryBar(f.Pen, t.columns[4]-memoryLeft, y+0.6, s.high()-1.2)
	}
	at = f.lines(t.columns[4]+t.sourceIn, base, ruleSmallLine, parts.Caption().Bold(), s.memory)
	source := slices.Clone(s.source)
	for i := range source {
		source[i] = strings.ReplaceAll(source[i], signMark, f.firstOf(signOffSection))
		source[i] = strings.ReplaceAll(source[i], pageMark, f.firstOf(decideSection, signOffSection))
	}
	f.lines(t.columns[4]+t.sourceIn, at, ruleSmallLine, small, source)
	f.lines(t.columns[1], base+s.body(), ruleSmallLine, parts.Caption(), s.remedy)
}

// firstOf names the page of the first of the sections that the proof has.
func (f *frame) firstOf(sections ...section) string {
	for _, s := range sections {
		if n := f.pageOf(s); n > 0 {
			return fmt.Sprintf("page %d", n)
		}
	}
	return "this proof"
}

// lines sets lines one under the other and returns the next baseline.
func (f *frame) lines(x, y, step float64, t parts.Type, lines []string) float64 {
	for _, line := range lines {
		f.say(x, y, t, line)
		y += step
	}
	return y
}

// notes are the notes of reading, never split. That on memory is left out where
// no book was used.
func (t *ruleTable) notes(alone bool, head *strip) strip {
	said := []string{
		"A figure that must reach a minimum is rounded down here, one that must stay under a maximum is rounded up.",
		"Advice never stops an order. A broken rule can still be signed for, but only knowingly: you choose it.",
	}
	if t.in.Sized.Rules != nil {
		said = append([]string{"A hatched bar marks a figure from memory: nobody read it in a book for this proof. Look it up before you rely on it."}, said...)
	}
	const down, title, text, bottom = 1.0, 5.0, 4.4, 2.0
	width := (t.grid.Live() - 8) / 3
	most := 0
	for _, s := range said {
		most = max(most, len(t.book.Wrap(parts.Caption().Style, width, s)))
	}
	out := strip{high: down + title + text + parts.Caption().Leading*page.MMPerPoint*float64(most-1) + bottom}
	if alone {
		out.head = head
	}
	out.draw = func(f *frame, y float64) {
		f.rule(y + down)
		f.say(f.Left, y+down+title, parts.Value(), "How to read this page")
		for i, s := range said {
			f.paragraph(f.Left+float64(i)*(width+4), y+down+title+text, width, parts.Caption(), s)
		}
	}
	return out
}
