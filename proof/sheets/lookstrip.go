package sheets

import (
	"math"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// strip draws what stands under the views, or partly beside them: colours,
// faces, how it is made, the edge at true size, sizes.
func (l *look) strip() error {
	y := l.plan.strip
	l.rule(y - 4.4)
	if l.plan.stacked {
		return l.stackedStrip(y)
	}
	l.colours(l.Left, y, l.Span(4))
	if err := l.faces(l.X(5)+2, y, l.Span(3)-4); err != nil {
		return err
	}
	l.making(l.X(8)-1, y, l.Span(2)-3)
	if err := l.edgeCircle(l.X(10)-1, y); err != nil {
		return err
	}
	l.sizesBlock(l.Right-sizesWidth, y)
	return nil
}

// stackedStrip keeps colours and faces below; the rest stands in the column at
// the right of the views.
func (l *look) stackedStrip(y float64) error {
	l.colours(l.Left, y, l.Span(6)-4)
	if err := l.faces(l.X(7), y, l.Span(6)); err != nil {
		return err
	}
	x, top := l.Right-stackColumn+5, l.plan.back.Y
	l.making(x, top, stackColumn-5)
	if err := l.edgeCircle(x, top+40); err != nil {
		return err
	}
	l.sizesBlock(x, l.plan.front.Y)
	return nil
}

// heading sets the head of a block of the strip.
func (l *look) heading(x, y float64, text string) { l.say(x, y+1, parts.Value(), text) }

// colours draws one chip a colour. More than four would be too narrow; they are
// listed in rows.
func (l *look) colours(x, y, width float64) {
	l.Spans(x, y+1, page.Start, parts.Value().Span("Colours"), parts.Label().Span("   right field: the same in grey print"))
	const gap, few, many = 3.0, 3, 4
	n := len(l.chips)
	if n > many {
		l.colourRows(x, y+6.4, width)
		return
	}
	wide := (width - gap*float64(max(n, few)-1)) / float64(max(n, few))
	for i, c := range l.chips {
		// Broken here, or the words of one chip would run into the next.
		use := strings.Join(l.book.Wrap(parts.Note().Style, wide+gap/2, l.uses(c)), "\n")
		parts.ColourChip(l.Pen, x+float64(i)*(wide+gap), y+3.4, wide, parts.Chip{
			Key: c.key, Name: sentenceCase(c.colour.Name), Colour: c.paint(), Use: use,
		})
	}
}

// colourRows lists colours in two columns, each with a small chip.
func (l *look) colourRows(x, y, width float64) {
	rows := (len(l.chips) + 1) / 2
	pitch := math.Min(8, 24/float64(rows))
	lines := 1
	if pitch > 7 {
		lines = 2
	}
	for i, c := range l.chips {
		left, at := x+float64(i/rows)*width/2, y+float64(i%rows)*pitch
		l.FillRect(left, at-2.6, 5, 3.4, c.paint())
		l.FillRect(left+5, at-2.6, 2, 3.4, parts.Grey(c.paint()))
		l.StrokeRect(left, at-2.6, 7, 3.4, parts.Ink, page.Line{Weight: parts.DimensionLine})
		parts.KeyRing(l.Pen, left+9.6, at-0.9, c.key)
		room := width/2 - 14
		l.Text(left+12.2, at-0.6, parts.Label().Bold().In(parts.Ink).Style,
			parts.Shortened(l.Pen, parts.Label().Bold(), room, strings.TrimSpace(sentenceCase(c.colour.Name)+" "+c.paint().Hex())))
		use := l.book.Wrap(parts.Label().Style, room, l.uses(c))
		for k, line := range use[:min(lines, len(use))] {
			if k == lines-1 && len(use) > lines {
				line = parts.Shortened(l.Pen, parts.Label(), room, line+" …")
			}
			l.say(left+12.2, at+2+2.5*float64(k), parts.Label(), line)
		}
	}
}

// faceUse is a face with the pieces that are set in it.
type faceUse struct {
	piece  order.Piece // the first of them
	places []order.Piece
}

// faceUses lists the faces of the order, each at its axis values once.
func (d *document) faceUses() []faceUse {
	same := func(a, b *float64) bool { return a == b || a != nil && b != nil && *a == *b }
	var out []faceUse
	for _, p := range d.order.Pieces {
		i := slices.IndexFunc(out, func(u faceUse) bool {
			return u.piece.Face == p.Face && same(u.piece.Wdth, p.Wdth) && same(u.piece.Wght, p.Wght)
		})
		if i < 0 {
			i, out = len(out), append(out, faceUse{piece: p})
		}
		out[i].places = append(out[i].places, p)
	}
	return out
}

// faces draws a true sample of each face with what it is used for.
func (l *look) faces(x, y, width float64) error {
	l.heading(x, y, "Faces")
	uses := l.faceUses()
	pitch := math.Min(facePitch, 24.6/float64(max(1, len(uses))))
	at := y + 6.6 - (facePitch-pitch)*0.3
	for _, u := range uses {
		if err := l.faceSample(x, at, width, pitch, u); err != nil {
			return err
		}
		at += pitch
	}
	return nil
}

// facePitch is the usual distance of two samples, mm.
const facePitch = 8.2

// faceSample draws one sample and its caption.
func (l *look) faceSample(x, y, width, pitch float64, u faceUse) error {
	high := 2.9
	if order.IsNumber(u.piece.Place) {
		high = 2.7
	}
	path, err := l.sample(u.piece, l.sampleText(u.piece), high*math.Pow(pitch/facePitch, 1.3), 0)
	if err != nil {
		return err
	}
	face, err := l.face(u.piece)
	if err != nil {
		return err
	}
	if box := path.Bounds(); !box.Empty() {
		k := math.Min(1, width/box.Width())
		l.FillPath(path, geom.Affine{A: k, D: -k, E: x - k*box.Min.X, F: y}, parts.Ink)
	}
	words := face.Name() + " · " + l.roles(u, l.role)
	if l.Width(parts.Label().Style, words) > width {
		words = face.Name() + " · " + l.roles(u, func(p order.Piece) string { return roleWord(p.Place) })
	}
	t, _ := parts.Shrunk(l.Pen, parts.Note(), parts.Label().Size, width, words)
	l.say(x, y+0.427*pitch, t, parts.Shortened(l.Pen, t, width, words))
	return nil
}

// roles joins what a face is used for.
func (l *look) roles(u faceUse, role func(order.Piece) string) string {
	var roles []string
	for _, p := range u.places {
		if r := role(p); !slices.Contains(roles, r) {
			roles = append(roles, r)
		}
	}
	return strings.Join(roles, ", ")
}

// sampleText is what a sample of a piece says.
func (l *look) sampleText(p order.Piece) string {
	switch {
	case order.IsNumber(p.Place):
		return "0123456789"
	case p.Text != "":
		return p.Text
	case l.player.Name != "":
		return l.player.Name
	}
	return l.order.Team
}

// roleWord says what a face is used for.
func roleWord(p garment.Place) string {
	switch {
	case order.IsNumber(p):
		return "numbers"
	case p == garment.BackName:
		return "names"
	case p == garment.FrontName:
		return "team name"
	}
	return string(p)
}

// role says what a face is used for, with the line that names stand on.
func (l *look) role(p order.Piece) string {
	words := roleWord(p.Place)
	switch {
	case p.Shape == "straight" || p.Shape == "":
		return words
	case p.Radius != nil:
		return words + ", " + arched(p.Shape) + " on a " + l.length(p.Radius.MM()) + " circle"
	case p.Rise != nil:
		return words + ", " + arched(p.Shape) + ", rising " + l.length(p.Rise.MM())
	}
	return words + ", " + arched(p.Shape)
}

// arched says the shape of a baseline after a noun.
func arched(shape string) string {
	switch shape {
	case "radial arch":
		return "arched"
	case "radial arch down":
		return "arched down"
	case "vertical arch":
		return "arched, stems upright"
	case "vertical arch down":
		return "arched down, stems upright"
	}
	return shape // a form between two edges goes by its name
}

// making says how the pieces are made and how fine they come out.
func (l *look) making(x, y, width float64) {
	l.heading(x, y, "How it is made")
	l.paragraph(x, y+5.2, width, parts.Note().In(parts.Ink), l.makingWords())
}
