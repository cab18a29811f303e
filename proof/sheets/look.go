package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// look is page 1 under work.
type look struct {
	*frame
	plan   lookPlan
	player sizes.Player
	views  []*lookView // front, back
	chips  []teamColour
}

const lookTitle = "The look"

// planLook plans page 1, which every proof has.
func (d *document) planLook() ([]leaf, error) {
	l := leaf{section: lookSection, title: lookTitle}
	player, ok := d.shown()
	if !ok {
		l.sheet = d.in.Paper.sheet().Landscape()
		l.sentence = "No player has a size yet, so there is no " + d.noun() + " to draw."
		l.draw = (*frame).drawLookWithout
		return []leaf{l}, nil
	}
	plan := planLookViews(d.in.Paper, lookSizeOf(player.Garment))
	l.sheet, l.sentence = plan.sheet, d.lookSentence(player)
	l.draw = func(f *frame) error { return f.drawLook(plan, player) }
	return []leaf{l}, nil
}

// shown returns the player that page 1 shows: the first on the commonest size
// whose name is full, else the first on it. Of sizes worn equally often it is
// the largest. It is false when no player has a size.
func (d *document) shown() (sizes.Player, bool) {
	best, ok := d.commonest()
	if !ok {
		return sizes.Player{}, false
	}
	var first *sizes.Player
	for i := range d.in.Sized.Players {
		p := &d.in.Sized.Players[i]
		if p.Garment == nil || p.Size != best {
			continue
		}
		if first == nil {
			first = p
		}
		if name, has := p.Piece(garment.BackName); has && name.Name.Verdict == fit.Full {
			return *p, true
		}
	}
	return *first, true
}

// commonest returns the size that most players wear, the largest of equals.
func (d *document) commonest() (best garment.Size, ok bool) {
	most := 0
	for _, c := range d.sizeCounts() {
		if c.players >= most {
			best, most = c.size, c.players
		}
	}
	return best, most > 0
}

// lookSentence says who is drawn, in words the coach uses.
func (d *document) lookSentence(p sizes.Player) string {
	who := "Front and back of " + spoken(p.Player)
	size := "on " + withArticle(d.sizeWords(p.Size))
	return fmt.Sprintf("%s, %s%s. Every length is printed beside the thing it measures.", who, size, d.howCommon(p.Size))
}

// spoken names a player in a sentence: number 17, Halvorsen.
func spoken(p order.Player) string {
	switch {
	case p.Number != "" && p.Name != "":
		return "number " + p.Number + ", " + p.Name
	case p.Number != "":
		return "number " + p.Number
	case p.Name != "":
		return p.Name
	}
	return p.Label()
}

// howCommon says how many wear the size that is drawn.
func (d *document) howCommon(s garment.Size) string {
	counts := d.sizeCounts()
	mine, all, ties := 0, 0, 0
	for _, c := range counts {
		all += c.players
		if c.size == s {
			mine = c.players
		}
	}
	for _, c := range counts {
		if c.players == mine {
			ties++
		}
	}
	switch {
	case len(d.in.Sized.Players) == 1:
		return ""
	case mine == len(d.in.Sized.Players):
		return ": the size all of you wear"
	case ties == 1 && 2*mine > all:
		return ": the size most of you wear"
	case ties == 1:
		return ": the size that is worn most"
	}
	return ""
}

func (f *frame) drawLook(plan lookPlan, player sizes.Player) error {
	l := &look{frame: f, plan: plan, player: player}
	if err := l.drawViews(); err != nil {
		return err
	}
	if err := l.strip(); err != nil {
		return err
	}
	f.foot(f.lookNote(), plan.scale)
	return nil
}

// drawViews draws front and back with their lengths.
func (l *look) drawViews() error {
	l.views = []*lookView{l.newView(garment.Front), l.newView(garment.Back)}
	l.chips = l.teamColours()
	l.datum()
	for _, v := range l.views {
		if err := v.paint(); err != nil {
			return err
		}
	}
	l.tapes()
	for _, v := range l.views {
		v.measures()
	}
	l.leads()
	return nil
}

// drawLookWithout draws the page of an order in which no player has a size.
func (f *frame) drawLookWithout() error {
	f.foot(f.lookNote(), 0)
	return nil
}

// lookNote is the note in the foot: two lines, so an upright page says less.
func (f *frame) lookNote() string {
	const print = "If a ruler disagrees with the lower scale, print again at 100 %."
	if !f.Wide {
		return "Heights are without outlines, widths with them. " + print
	}
	step := "millimetre"
	if f.in.Paper == Letter {
		step = "¹⁄₁₆ in"
	}
	return "Lengths to the nearest " + step + ". Letter heights are of the flat capital H, without outlines; widths include them. " + print
}

// datum draws the level of the high point of shoulder through the views; they
// lie over it.
func (l *look) datum() {
	line := page.Line{Weight: parts.Hair, Dash: parts.DatumDash()}
	const past = 15.0
	if !l.plan.stacked {
		l.Line(l.plan.front.X-past, l.plan.front.Y, l.plan.back.X+past, l.plan.back.Y, parts.Ink, line)
		return
	}
	for _, v := range l.views {
		l.Line(l.plan.tape, v.view.Y, v.view.X+past, v.view.Y, parts.Ink, line)
	}
}

// tapes draws one tape between the views, or one beside each.
func (l *look) tapes() {
	if !l.plan.stacked {
		end := max(l.views[0].view.Bounds().Max.Y, l.views[1].view.Bounds().Max.Y)
		parts.Tape(l.Pen, l.plan.tape, l.plan.front.Y, end, l.plan.scale, l.order.Units)
		return
	}
	for _, v := range l.views {
		parts.Tape(l.Pen, l.plan.tape, v.view.Y, v.view.Bounds().Max.Y, l.plan.scale, l.order.Units)
	}
}

// newView places one side of the player's garment.
func (l *look) newView(side garment.Side) *lookView {
	at := l.plan.front
	if side == garment.Back {
		at = l.plan.back
	}
	v := &lookView{look: l, view: shirt.View{
		Garment: l.player.Garment, Side: side, Pieces: l.player.Pieces, Cloth: l.cloth,
		Scale: l.plan.scale, X: at.X, Y: at.Y,
	}}
	v.left = side == garment.Front && !l.plan.stacked
	v.prepare()
	return v
}

// withArticle puts a or an before a size as it is read aloud: an M, an adult M,
// a women’s M, a 2XL.
func withArticle(size string) string {
	if size != "" && strings.Contains("MLSXa", size[:1]) {
		return "an " + size
	}
	return "a " + size
}
