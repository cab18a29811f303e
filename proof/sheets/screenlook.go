package sheets

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// ScreenLook is page 1 taken apart: the drawing, and in words what stands under
// it.
type ScreenLook struct {
	Player   int        // index of the player who is shown
	Sentence string     // number 17, Halvorsen, on a women’s M
	Page     *page.Page // both views with their lengths
	View     geom.Rect  // of the page, mm: all that is drawn
	Front    []parts.Step
	Back     []parts.Step // the same lengths in words
	Colours  []ScreenColour
	Faces    []string // Oswald Bold: names, arched
	Making   string
}

// ScreenColour is one chip.
type ScreenColour struct {
	Key, Name, Hex, Grey string
	Use                  string
}

// screenLook draws the views of page 1 without head, strip and foot.
func (d *document) screenLook() (*ScreenLook, error) {
	player, ok := d.shown()
	if !ok {
		return nil, nil
	}
	plan := planLookViews(d.in.Paper, lookSizeOf(player.Garment))
	p := d.book.Add(plan.sheet, lookTitle)
	l := &look{frame: &frame{Pen: p.Pen, document: d, Grid: parts.NewGrid(plan.sheet)}, plan: plan, player: player}
	if err := l.drawViews(); err != nil {
		return nil, err
	}
	out := &ScreenLook{Page: p, View: tight(p.Ops()).Grow(1), Making: d.makingWords(), Sentence: d.lookSentence(player)}
	for i := range d.in.Sized.Players {
		if d.in.Sized.Players[i].Row == player.Row {
			out.Player = i
		}
	}
	for _, v := range l.views {
		if v.view.Side == garment.Front {
			out.Front = v.steps()
		} else {
			out.Back = v.steps()
		}
	}
	for _, c := range l.chips {
		out.Colours = append(out.Colours, ScreenColour{
			Key: c.key, Name: sentenceCase(c.colour.Name), Hex: c.paint().Hex(), Grey: parts.Grey(c.paint()).Hex(), Use: d.uses(c),
		})
	}
	for _, u := range d.faceUses() {
		face, err := d.face(u.piece)
		if err != nil {
			return nil, err
		}
		out.Faces = append(out.Faces, face.Name()+": "+l.roles(u, l.role))
	}
	return out, nil
}

// steps lists all lengths of a view in words.
func (v *lookView) steps() []parts.Step {
	out := append([]parts.Step(nil), v.chain.Steps...)
	for i := range out {
		if i > 0 && out[i].Word == "gap" {
			out[i].Word = out[i-1].Word + " to " + out[min(i+1, len(out)-1)].Word
		}
	}
	for _, w := range v.widths {
		out = append(out, parts.Step{Word: widthWord(w.Word), Value: w.Value})
	}
	for _, w := range v.numbers {
		out = append(out, parts.Step{Word: widthWord(w.Word), Value: w.Value})
	}
	return out
}

// widthWord names a width where no drawing shows that it is one.
func widthWord(word string) string {
	if len(word) > 4 && word[:4] == "room" {
		return word
	}
	return word + " wide"
}

// tight is the box of what is drawn, with text no larger than its letters.
func tight(ops []page.Op) geom.Rect {
	box := geom.EmptyRect()
	for _, op := range ops {
		words, is := op.(page.Words)
		if !is {
			box = box.Union(page.Bounds([]page.Op{op}))
			continue
		}
		em := words.Style.Size * page.MMPerPoint
		for _, g := range words.Glyphs {
			at := geom.Point{X: words.X + g.X, Y: words.Y + g.Y}
			box = box.Include(at.Add(geom.Point{Y: -em})).Include(at.Add(geom.Point{X: g.Advance * em, Y: em / 3}))
		}
	}
	return box
}
