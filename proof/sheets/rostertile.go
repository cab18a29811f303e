package sheets

import (
	"fmt"
	"math"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// rosterTile is one player's tile, its caption broken into lines.
type rosterTile struct {
	player  sizes.Player
	number  parts.Type
	name    parts.Type
	lines   []string // of the name
	nameX   float64  // of the name, from the tile's left edge
	verdict verdictText
	remark  remark
	below   bool    // the remark stands under the verdict
	high    float64 // of the whole caption
}

// verdictText is a mark with what follows its word.
type verdictText struct {
	mark parts.Verdict
	rest string
	has  bool
}

// remark is what else a coach must know about a player.
type remark struct {
	text   string
	mark   parts.Result
	marked bool
	choice int  // 1 and up: the question that the page reference leads to
	spare  bool // left out where it has no room beside the verdict
}

// The caption of a tile, mm below the window.
const (
	captionName    = 4.5
	captionStep    = 3.4 // to a further line of the name
	captionVerdict = 4.2 // to the verdict
	captionRemark  = 3.4 // to a remark under the verdict
	captionFoot    = 1.0 // under the last baseline
	nameGap        = 1.8 // number to name
	nameLeast      = 7.6 // pt
	remarkRadius   = 1.25
	remarkGap      = 1.7
)

// rosterTiles sets the captions for tiles of that width.
func (d *document) rosterTiles(width float64) []rosterTile {
	remarks := d.remarks()
	out := make([]rosterTile, len(d.in.Sized.Players))
	for i, p := range d.in.Sized.Players {
		t := rosterTile{player: p, remark: remarks[i], verdict: d.verdictOf(p)}
		d.setCaption(&t, width)
		out[i] = t
	}
	return out
}

// setCaption shrinks, then breaks the name, and finds a place for the remark.
func (d *document) setCaption(t *rosterTile, width float64) {
	number, name := t.player.Number, d.asCut(t.player)
	t.number, t.name = parts.Heading(), parts.GroupTitle()
	if number == "" {
		number, t.number = "no number", parts.GroupTitle().In(parts.Slate)
		t.number.Weight = page.Regular
	}
	if name == "" {
		name, t.name.Weight, t.name.Colour = "no name", page.Regular, parts.Slate
	}
	t.number = d.shrunk(t.number, parts.Label().Size, width/2, number)
	t.nameX = d.book.Width(t.number.Style, number) + nameGap
	room := width - t.nameX - d.sizeRoom(t.player)
	t.name = d.shrunk(t.name, nameLeast, room, name)
	t.lines = d.book.Wrap(t.name.Style, room, name)
	base := captionName + captionStep*float64(len(t.lines)-1)
	if t.remark.text != "" || t.verdict.has {
		base += captionVerdict
	}
	if t.remark.spare && d.verdictWidth(t.verdict)+d.remarkWidth(t.remark)+3 > width {
		t.remark = remark{}
	}
	if t.below = t.remark.text != "" && d.verdictWidth(t.verdict)+d.remarkWidth(t.remark)+3 > width && t.verdict.has; t.below {
		base += captionRemark
	}
	t.high = max(tileCaption, base+captionFoot)
}

// sizeRoom is what the size takes at the end of a caption.
func (d *document) sizeRoom(p sizes.Player) float64 {
	if p.Garment == nil {
		return 0
	}
	return d.book.Width(parts.Sentence().Style, d.sizeLabel(p.Size)) + nameGap
}

// shrunk is parts.Shrunk before there is a page.
func (d *document) shrunk(t parts.Type, least, width float64, text string) parts.Type {
	for t.Size > least && d.book.Width(t.Style, text) > width {
		t = t.Sized(math.Max(least, math.Round(10*t.Size-1)/10))
	}
	return t
}

func (d *document) verdictWidth(v verdictText) float64 {
	if !v.has {
		return 0
	}
	return 1.8*parts.VerdictHeight + 1.5 + d.book.Width(parts.Caption().Bold().Style, v.mark.String()) + d.book.Width(parts.Caption().Style, "  "+v.rest)
}

func (d *document) remarkWidth(r remark) float64 {
	if !r.marked {
		return d.book.Width(parts.Caption().Style, r.text)
	}
	return d.book.Width(parts.Caption().Bold().Style, r.text) + 2*remarkRadius + remarkGap
}

// verdictOf says how a player's name came out, or whatever is over.
func (d *document) verdictOf(p sizes.Player) verdictText {
	name, named := p.Piece(garment.BackName)
	if named && name.Name.Verdict == fit.Over {
		return verdictText{parts.Over, d.overWords(name), true}
	}
	for _, piece := range p.Pieces {
		if _, over := overBy(piece); over {
			return verdictText{parts.Over, fmt.Sprintf("%s, %s", d.overWords(piece), piece.Asked.Place), true}
		}
	}
	if named {
		return verdictText{markOf(name.Name.Verdict), d.heightOf(name) + " high", true}
	}
	if number, ok := p.Piece(garment.BackNumber); ok {
		return verdictText{parts.Full, d.heightOf(number) + " high", true}
	}
	return verdictText{}
}

// overBy returns how far a piece is over its limit.
func overBy(p sizes.Piece) (by float64, over bool) {
	if p.Name != nil {
		return p.Name.OverBy, p.Name.Verdict == fit.Over
	}
	return p.Number.InkWidth - p.Number.Limit, p.Number.Verdict == parts.Over.String()
}

func markOf(v fit.Verdict) parts.Verdict {
	return [...]parts.Verdict{fit.Full: parts.Full, fit.Eased: parts.Eased, fit.Reduced: parts.Reduced, fit.Over: parts.Over}[v]
}

// heightOf prints the height of a piece. One that came out lower than asked
// rounds down and is never printed as the height asked.
func (d *document) heightOf(p sizes.Piece) string {
	if p.Name == nil || p.Name.Verdict != fit.Reduced {
		return d.length(p.Height())
	}
	return d.lowered(p.Height(), p.Name.Asked)
}

// lowered prints a height that is lower than asked.
func (d *document) lowered(h, asked float64) string {
	printed := d.rounded(h, length.Down)
	if printed == d.length(asked) {
		return length.Exact(h, d.order.Units)
	}
	return printed
}

// remarks finds what else to say of each player: a number worn twice, a choice
// to make, a rule that only some break.
func (d *document) remarks() []remark {
	players := d.in.Sized.Players
	out := make([]remark, len(players))
	for _, c := range choices.Clashes(d.in.Sized, d.in.Results) {
		for _, i := range c.Players {
			r := remark{text: "number twice", mark: parts.Broken, marked: true}
			if same := c.Others(players, i); len(same) > 0 {
				r.text = "same as " + list(same)
			}
			if c.Advice {
				r.mark = parts.Advice
			}
			out[i] = r
		}
	}
	broken, asked := d.broken(), d.askedOf()
	for i, p := range players {
		switch {
		case d.compared(p):
			out[i] = remark{text: "signed, to compare"}
		case out[i].text != "":
		case asked[i] > 0:
			out[i] = remark{text: seeChoice, choice: asked[i], spare: d.verdictOf(p).mark != parts.Over}
		case d.verdictOf(p).mark == parts.Over:
			out[i] = remark{text: seePage}
		case broken[p.Label()]:
			out[i] = remark{text: seePage, mark: parts.Broken, marked: true}
		}
	}
	return out
}

// askedOf returns the number of the first question about a piece of each player
// who has one, counted from 1.
func (d *document) askedOf() map[int]int {
	out := map[int]int{}
	for i, q := range d.questions() {
		if q.piece != nil && choices.PerPlayer(q.piece.Asked.Place) && out[q.player] == 0 {
			out[q.player] = i + 1
		}
	}
	return out
}

// seeChoice stands for the choice and the page that shows it.
const seeChoice = "choice 00, page 00"

// seePage stands for the page that says more, known only when drawing.
const seePage = "see page 00"

// broken names the players who have something of their own to put right: not a
// size that is missing, which the tile says itself, and not what all share.
func (d *document) broken() map[string]bool {
	out, all := map[string]bool{}, len(d.in.Sized.Players)
	for _, g := range findings.Grouped(d.in.Results, all) {
		if g.Severity != findings.Violation || g.What == "size" || choices.AboutClash(g.Result) || all > 1 && len(g.Players) == all {
			continue
		}
		for _, label := range g.Players {
			out[label] = true
		}
	}
	return out
}

func (f *frame) drawTile(r *roster, t rosterTile, x, y float64) error {
	tile := r.grid.tile
	f.FillRect(x, y, tile, r.window, parts.Tile)
	over := t.verdict.mark == parts.Over
	if t.player.Garment == nil {
		f.say(x+tile/2, y+r.window/2+1, parts.Sentence().In(parts.Slate).To(page.Middle), "size not known")
	} else {
		posts := shirt.ThinPosts
		if over {
			posts = shirt.OverPosts
		}
		v := shirt.View{
			Garment: t.player.Garment, Side: r.side, Pieces: t.player.Pieces, Cloth: f.cloth, Posts: posts, Plain: r.plain,
			Scale: r.grid.scale(), X: x + tile/2, Y: y + windowAbove*r.grid.scale(),
			Window: geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + tile, Y: y + r.window}},
		}
		if err := v.Paint(f.Pen); err != nil {
			return err
		}
	}
	if over {
		f.StrokeRect(x, y, tile, r.window, parts.Decide, page.Line{Weight: parts.OverFrame})
	} else {
		f.StrokeRect(x, y, tile, r.window, parts.Rule, page.Line{Weight: parts.Hair})
	}
	f.drawCaption(t, x, y+r.window, tile)
	return nil
}

func (f *frame) drawCaption(t rosterTile, x, y, width float64) {
	y += captionName
	number := t.player.Number
	if number == "" {
		number = "no number"
	}
	f.say(x, y, t.number, number)
	if t.player.Garment != nil {
		f.say(x+width, y, parts.Sentence().To(page.End), f.sizeLabel(t.player.Size))
	}
	for i, line := range t.lines {
		f.say(x+t.nameX, y+captionStep*float64(i), t.name, line)
	}
	y += captionStep*float64(len(t.lines)-1) + captionVerdict
	if t.verdict.has {
		parts.VerdictLine(f.Pen, x, y, t.verdict.mark, t.verdict.rest)
	}
	if t.below {
		f.drawRemark(t.remark, x, y+captionRemark, page.Start)
		return
	}
	f.drawRemark(t.remark, x+width, y, page.End)
}

func (f *frame) drawRemark(r remark, x, y float64, a page.Align) {
	text := r.text
	switch {
	case text == seePage:
		text = f.seeMore(r.marked)
	case r.choice > 0:
		if text = f.choiceRef(r.choice - 1); text == "" {
			text = f.seeMore(false)
		}
	}
	if text == "" {
		return
	}
	if !r.marked {
		f.say(x, y, parts.Caption().To(a), text)
		return
	}
	t := parts.Caption().Bold().In(r.mark.Colour())
	if a == page.End {
		x -= f.Width(t.Style, text) + 2*remarkRadius + remarkGap
	}
	parts.ResultMark(f.Pen, x+remarkRadius, y-1, remarkRadius, r.mark, r.mark.Colour())
	f.say(x+2*remarkRadius+remarkGap, y, t, text)
}

// seeMore names the page that says more of a player.
func (f *frame) seeMore(rule bool) string {
	at := [...]section{decideSection, signOffSection}
	if rule {
		at = [...]section{rulesSection, signOffSection}
	}
	for _, s := range at {
		if n := f.pageOf(s); n > 0 {
			return fmt.Sprintf("see page %d", n)
		}
	}
	return ""
}
