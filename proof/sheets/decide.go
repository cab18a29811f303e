package sheets

import (
	"fmt"
	"slices"

	"yokeline/proof/parts"
)

const decideTitle = "To decide"

// The page of choices, mm.
const (
	rowsPerPage   = 3
	bandRule      = 0.3 // top of a band to the rule over it
	bandTop       = 3.8 // to its tiles
	captionTitleY = 4.4 // window to the title of a way out
	captionFigure = 4.0 // to its figure
	captionMore   = 3.4 // to a further line
	captionsHigh  = 17.2
	tilesPerRow   = 5
	tileColumns   = 2
	tileFirst     = 3 // column of the grid
	tileLettersUp = 8.0
)

// decideRow is one row of tiles, with the question at its left when it is the
// first of its band.
type decideRow struct {
	question *question
	index    int // of the question
	first    bool
	tiles    []decideTile
	last     string // said where the next tile would stand
}

// planDecide plans the pages on which the coach chooses: none when there is
// nothing to choose.
func (d *document) planDecide() ([]leaf, error) {
	questions := d.questions()
	if len(questions) == 0 {
		return nil, nil
	}
	sheet := d.in.Paper.sheet().Landscape()
	grid := parts.NewGrid(sheet)
	room := grid.Bottom - grid.Top - footClear
	rows := d.decideRows(questions)
	pages := flow(d.decideStrips(rows, room/rowsPerPage), room)
	var out []leaf
	from := 0
	for i, page := range pages {
		on := rows[from : from+len(page)]
		from += len(page)
		l := leaf{section: decideSection, sheet: sheet, title: pageTitle(decideTitle, i, len(pages)), sentence: d.decideSentence(questions, on, i)}
		scale := d.decideScale(grid, on)
		l.questions = questionsOn(on)
		l.draw = func(f *frame) error { return f.drawDecide(page, scale) }
		out = append(out, l)
	}
	return out, nil
}

// decideStrips gives every row its height, that of rows with drawings being high.
func (d *document) decideStrips(rows []decideRow, high float64) []strip {
	strips := make([]strip, len(rows))
	for i, r := range rows {
		strips[i] = strip{high: d.rowHigh(r, high), keep: i+1 < len(rows) && !rows[i+1].first}
		strips[i].draw = func(f *frame, y float64) { f.drawDecideRow(r, y, strips[i].high) }
	}
	return strips
}

// questionsOn lists the questions that begin on a page.
func questionsOn(rows []decideRow) []int {
	var out []int
	for _, r := range rows {
		if r.first {
			out = append(out, r.index)
		}
	}
	return out
}

// decideRows breaks each question's tiles into rows.
func (d *document) decideRows(questions []question) []decideRow {
	var out []decideRow
	for i := range questions {
		q := &questions[i]
		tiles := d.decideTiles(q)
		for k := 0; k < max(1, len(tiles)); k += tilesPerRow {
			r := decideRow{question: q, index: i, first: k == 0, tiles: tiles[k:min(len(tiles), k+tilesPerRow)]}
			if k > 0 && q.over == 0 {
				r.tiles = inWordsAlone(r.tiles)
			}
			if k+tilesPerRow >= len(tiles) && len(r.tiles) < tilesPerRow && q.piece != nil {
				r.last = q.nothingElse()
			}
			out = append(out, r)
		}
	}
	return out
}

// nothingElse says that all ways out are drawn, or that there are none.
func (q *question) nothingElse() string {
	switch {
	case len(q.ways) == 0:
		return "No way out was found: it needs another name, number or place. Write it on the sign-off page."
	}
	return "No other way out fits this " + q.kind() + "."
}

// inWordsAlone leaves the drawings out: of the last ways out of a name that fits
// as it is, only lower.
func inWordsAlone(tiles []decideTile) []decideTile {
	out := slices.Clone(tiles)
	for i := range out {
		t := &out[i]
		t.more, t.figure, t.player, t.mark = detailWords(t.figure, t.more), "", nil, nil
	}
	return out
}

// rowHigh is the height of a row, drawn where something is drawn.
func (d *document) rowHigh(r decideRow, drawn float64) float64 {
	if slices.ContainsFunc(r.tiles, func(t decideTile) bool { return t.drawn() }) || len(r.tiles) == 0 {
		return drawn
	}
	high := bandTop
	if r.first {
		high += 18
	}
	for _, t := range r.tiles {
		high = max(high, bandTop+d.plainTileHigh(t)+2.5)
	}
	if r.first {
		high = max(high, bandTop+d.questionHigh(r.question)+2.5)
	}
	return high
}

// decideSentence says what is asked on a page.
func (d *document) decideSentence(questions []question, on []decideRow, page int) string {
	if page > 0 {
		ids := questionsOn(on)
		if len(ids) == 0 {
			return "More ways out for the choice before."
		}
		return fmt.Sprintf("%s of %d. Tick one letter for each, here or on the sign-off page.", choicesFromTo(ids[0]+1, ids[len(ids)-1]+1), len(questions))
	}
	drawn := ""
	if slices.ContainsFunc(questions, func(q question) bool { return q.piece != nil }) {
		drawn = " Each way out is drawn on that player’s own size; the posts show the room."
	}
	return asksFor(questions) + drawn + " Tick one letter for each, here or on the sign-off page."
}

// asksFor counts what waits for the coach: three names and one number ask for
// your choice.
func asksFor(questions []question) string {
	var said []string
	for _, c := range [...]struct{ kind, one, many string }{
		{kindName, "name", "names"}, {kindNumber, "number", "numbers"},
		{kindClash, "number that is worn twice", "numbers that are worn twice"}, {kindRule, "broken rule", "broken rules"},
	} {
		n := 0
		for i := range questions {
			n += count(questions[i].kind() == c.kind)
		}
		if n > 0 {
			said = append(said, inWords(n, c.one, c.many))
		}
	}
	verb := "ask"
	if len(questions) == 1 {
		verb = "asks"
	}
	return sentenceCase(list(said)) + " " + verb + " for your choice."
}

func choicesFromTo(from, to int) string {
	if from == to {
		return fmt.Sprintf("Choice %d", from)
	}
	return fmt.Sprintf("Choices %d to %d", from, to)
}

// decideScale is the scale of a page: the widest room, or what hangs over it,
// fits its tile.
func (d *document) decideScale(grid parts.Grid, rows []decideRow) float64 {
	const roomShare, inkShare = 1.12, 1.06
	need, tile := 0.0, grid.Span(tileColumns)
	for _, r := range rows {
		for _, t := range r.tiles {
			if t.drawn() {
				need = max(need, roomShare*t.limit, inkShare*t.piece().InkWidth())
			}
		}
	}
	if need == 0 {
		return 0
	}
	const largest = 6.0 // larger ones would show less than the shoulders
	for _, n := range scales() {
		if n >= largest && need/n <= tile {
			return 1 / n
		}
	}
	return tile / need
}

// drawDecide draws one page of choices.
func (f *frame) drawDecide(strips []strip, scale float64) error {
	f.scale = scale
	f.drawStrips(strips, f.Top)
	note := "Ways out that would not fit are left out. A narrower face or more room changes only this name; the number stays as it is unless it says so."
	if scale == 0 {
		note = "Tick here or on the sign-off page; both count as one answer."
	}
	f.foot(note, scale)
	return f.failed
}

// choiceRef names a choice and the page that shows it: choice 3, page 4. It may
// be asked only while drawing; empty when no page shows it.
func (d *document) choiceRef(q int) string {
	for i, l := range d.pages {
		if slices.Contains(l.questions, q) {
			return fmt.Sprintf("choice %d, page %d", q+1, i+1)
		}
	}
	return ""
}

// decidePages names the pages of the choices: page 4, pages 4 to 6; empty
// for none. Only while drawing.
func (d *document) decidePages() string {
	first, n := d.pageOf(decideSection), 0
	for _, l := range d.pages {
		if l.section == decideSection {
			n++
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("page %d", first)
	case 2:
		return fmt.Sprintf("pages %d and %d", first, first+1)
	}
	return fmt.Sprintf("pages %d to %d", first, first+n-1)
}
