package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// kind says what a question is about: name, number, or rule.
func (q *question) kind() string {
	switch {
	case q.clash:
		return kindClash
	case q.piece == nil:
		return kindRule
	case q.piece.Number != nil:
		return kindNumber
	}
	return kindName
}

// What a question is about.
const (
	kindName   = "name"
	kindNumber = "number"
	kindClash  = "clash"
	kindRule   = "rule"
)

// questionWords are the lines that stand under the head of a question: what is
// so, and what happens without an answer.
func (d *document) questionWords(q *question) (is, without string) {
	if q.piece == nil {
		return q.says, q.without
	}
	size := withArticle(d.sizeLabel(d.in.Sized.Players[q.player].Size))
	limit := q.piece.Room.Width
	if q.piece.Name != nil {
		limit = q.piece.Name.Limit
	} else if q.piece.Number.Limit > 0 {
		limit = q.piece.Number.Limit
	}
	room := fmt.Sprintf("The room on %s is %s.", size, d.length(limit))
	if limit <= 0 {
		room = fmt.Sprintf("There is no room for it on %s.", size)
	}
	if q.piece.Name != nil {
		is = fmt.Sprintf("%s. %s", plural(findings.Letters(q.piece.Text()), "letter"), room)
	} else {
		is = sentenceCase(string(q.piece.Asked.Place)) + ". " + room
	}
	if q.over > 0 || q.piece.Number != nil || q.piece.Name.Verdict == fit.Over {
		return is, "It cannot be made until you choose."
	}
	return is, "It fits as drawn: choose only if you mind the lower letters."
}

// The question at the left of its tiles, mm.
const (
	questionNumber = 3.4
	questionName   = 5.6
	questionStep   = 4.4
	questionMark   = 5.2
	questionText   = 5.2
)

// drawQuestion prints who it is about and what is asked.
func (f *frame) drawQuestion(r decideRow, x, y float64) {
	q, wide := r.question, f.Span(tileColumns)
	y += questionNumber
	f.questionHead(r, x, y)
	y += questionName
	name, lines := f.questionName(q)
	y = f.lines(x, y, questionStep, name, lines) - questionStep
	y += questionMark
	if v, ok := f.questionVerdict(q); ok {
		parts.VerdictLine(f.Pen, x, y, v.mark, v.rest)
	} else {
		parts.ResultMark(f.Pen, x+parts.ResultRadius, y-1, parts.ResultRadius, parts.Broken, parts.Decide)
		f.say(x+2*parts.ResultRadius+1.7, y, parts.Caption().Bold().In(parts.Decide), q.verdict)
	}
	is, without := f.questionWords(q)
	y = f.paragraph(x, y+questionText, wide, parts.Caption(), is)
	f.paragraph(x, y, wide, parts.Caption().In(parts.Slate), without)
}

// questionHead prints the player's number and size, and which choice this is.
func (f *frame) questionHead(r decideRow, x, y float64) {
	const gap = 2.2
	q, wide := r.question, f.Span(tileColumns)
	choice, size, grey := fmt.Sprintf("choice %d", r.index+1), "", wayType().In(parts.Slate)
	if q.piece != nil {
		size = "size " + f.sizeLabel(f.in.Sized.Players[q.player].Size)
	}
	room := wide - f.Width(parts.Label().Style, choice) - f.Width(grey.Style, size) - 2*gap
	if q.number != "" {
		t, _ := parts.Shrunk(f.Pen, parts.BigNumber(), parts.Label().Size, room, q.number)
		x += f.say(x, y, t, q.number) + gap
		wide -= f.Width(t.Style, q.number) + gap
	}
	if size != "" {
		f.say(x, y, grey, size)
	}
	f.say(x+wide, y, parts.Label().To(page.End), choice)
}

// questionName sets who a question is about: smaller first, then broken.
func (d *document) questionName(q *question) (parts.Type, []string) {
	wide := parts.NewGrid(d.in.Paper.sheet().Landscape()).Span(tileColumns)
	t := d.shrunk(parts.RowNumber(), nameLeast, wide, q.who)
	return t, d.book.Wrap(t.Style, wide, q.who)
}

// questionHigh is the height of the question's own words.
func (d *document) questionHigh(q *question) float64 {
	wide := parts.NewGrid(d.in.Paper.sheet().Landscape()).Span(tileColumns)
	_, lines := d.questionName(q)
	is, without := d.questionWords(q)
	n := len(d.book.Wrap(parts.Caption().Style, wide, is))
	if without != "" {
		n += len(d.book.Wrap(parts.Caption().Style, wide, without))
	}
	return questionNumber + questionName + questionStep*float64(len(lines)-1) + questionMark + questionText + parts.Caption().Leading*page.MMPerPoint*float64(n-1) + 1
}

// questionVerdict says how the piece came out; false for a question about a
// rule.
func (d *document) questionVerdict(q *question) (verdictText, bool) {
	switch {
	case q.piece == nil:
		return verdictText{}, false
	case q.over > 0:
		return verdictText{parts.Over, d.overWords(*q.piece), true}, true
	case q.piece.Name == nil || q.piece.Name.Verdict == fit.Over:
		return verdictText{parts.Over, "", true}, true
	}
	return verdictText{markOf(q.piece.Name.Verdict), d.heightOf(*q.piece) + " high", true}, true
}

// wayWords say in figures what a way out of a name comes to, and what follows
// from it.
func (d *document) wayWords(q *question, w *fit.WayOut) (figure, more string) {
	high := d.rounded(w.Height, length.Down) + " high"
	if w.Name != nil && w.Name.Verdict < fit.Reduced {
		high = d.length(w.Height) + " high"
	}
	p := *q.piece
	switch w.Kind {
	case fit.LowerLetters:
		return high, "below our floor of " + d.floor(p)
	case fit.NarrowerLetters:
		return fmt.Sprintf("%s, %.0f %% wide", high, 100*w.WidthFloor), fmt.Sprintf("our floor is %.0f %%", 100*d.order.Fit.Width)
	case fit.FlatterArch, fit.RounderArch:
		return high + d.arcWords(w), "another arch than the team’s"
	case fit.NarrowerFace:
		return high, d.faceName(w.FaceID) + ", this name only"
	case fit.MoreRoom:
		return fmt.Sprintf("%s, room %s", high, d.rounded(w.Limit, length.Up)), d.spare(p.Room, w.Limit)
	case fit.TwoLines:
		return high + ", both lines", d.loweredNumber(q, w)
	case fit.AnInitial:
		if w.Name != nil && w.Name.Verdict == fit.Eased {
			return high, "letters set closer or narrower"
		}
		return high, "this name only"
	case fit.NextSize:
		is := d.in.Sized.Players[q.player].Size
		label := w.Size
		if bigger, err := garment.ParseSize(w.Size, is.Group); err == nil {
			label = d.sizeLabel(bigger)
		}
		return high, fmt.Sprintf("on %s instead of %s", withArticle(label), withArticle(d.sizeLabel(is)))
	}
	return high, ""
}

// floor is the smallest letter height that the job allows.
func (d *document) floor(p sizes.Piece) string {
	if h := d.order.Fit.Height; h != nil {
		return d.length(min(h.MM(), p.Name.Asked))
	}
	return d.length(fit.DefaultLadder(p.Name.Asked).Height)
}

func (d *document) arcWords(w *fit.WayOut) string {
	switch {
	case w.Rise > 0:
		return ", rise " + d.length(w.Rise)
	case w.Radius > 0:
		return ", circle " + d.length(w.Radius)
	}
	return ", straight"
}

// spare says what a wider room leaves before the seam.
func (d *document) spare(room garment.Room, limit float64) string {
	line := room.Line
	if line == "" {
		line = "seam"
	}
	if left := (room.Panel - limit) / 2; left >= 0 {
		return fmt.Sprintf("then %s to spare by the %s", d.rounded(left, length.Down), line)
	}
	return fmt.Sprintf("%s too near the %s", d.rounded((limit-room.Panel)/2, length.Up), line)
}

// titleOf is the title of a tile.
func titleOf(kind string) string {
	switch kind {
	case fit.NarrowerFace, fit.FlatterArch, fit.RounderArch:
		return "A " + kind
	case fit.NextSize:
		return "The next size"
	}
	return sentenceCase(strings.ReplaceAll(kind, "_", " "))
}
