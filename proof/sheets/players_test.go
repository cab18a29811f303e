package sheets

import (
	"fmt"
	"strings"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// row is a player of a roster that is not worth sizing.
type row struct {
	name, number, size string // no size: not known
	verdict            fit.Verdict
}

// blockInput makes an order whose names and numbers are rectangles: as many
// players as wanted, each with the verdict wanted, without fitting any.
func blockInput(t require.TestingT, unit length.Unit, rows []row) Input {
	o := &order.Order{
		Team: "Alder Point Herons", Number: "2611-04", Revision: "B", ProofDate: "2026-11-25", Shop: "Kettle Lane Lettering",
		Sport: "softball", Units: unit, Method: "cut film",
		Garment: order.GarmentChoice{Cut: garment.VNeck, Group: garment.Women, Colour: colour("tidewater", "#1d3b53"), Trim: colour("marsh gold", "#e2a336")},
		Pieces: []order.Piece{
			{Place: garment.BackName, Face: "oswald", Colour: colour("egret", "#fbf7ec"), Shape: "straight"},
			{Place: garment.BackNumber, Face: "graduate", Colour: colour("egret", "#fbf7ec")},
		},
	}
	sized := &sizes.Sized{Order: o}
	for i, r := range rows {
		p := order.Player{Name: r.name, Number: r.number}
		p.Row.Line = i + 2
		sized.Players = append(sized.Players, blockPlayer(t, p, r))
	}
	return Input{Sized: sized, Results: findings.Check(nil, findings.Of(sized)), Fingerprint: strings.Repeat("7c41e09b52d6a38f", 4), Paper: PaperFor(unit), Face: typeface.Embedded}
}

func blockPlayer(t require.TestingT, p order.Player, r row) sizes.Player {
	out := sizes.Player{Player: p}
	if r.size == "" {
		return out
	}
	size, err := garment.ParseSize(r.size, garment.Women)
	require.NoError(t, err)
	out.Size, out.SizeKnown = size, true
	out.Garment, err = garment.New(garment.VNeck, size)
	require.NoError(t, err)
	if r.name != "" {
		piece := block(garment.BackName, 0, 90, 200, 44.45, 270)
		piece.Name.Text, piece.Name.Verdict = strings.ToUpper(r.name), r.verdict
		piece.Name.Limit = 270
		switch r.verdict {
		case fit.Reduced:
			piece.Name.LetterHeight = 40
			piece.Name.WouldFit = []fit.WayOut{{Kind: fit.MoreRoom, Limit: 300, Height: 44.45, FaceID: "oswald"}}
		case fit.Over:
			piece.Name.InkWidth, piece.Name.OverBy = 300, 30
			piece.Name.WouldFit = []fit.WayOut{
				{Kind: fit.LowerLetters, Limit: 270, Height: 20, FaceID: "oswald"}, {Kind: fit.NarrowerFace, Limit: 270, Height: 44.45, FaceID: "league-gothic"},
				{Kind: fit.MoreRoom, Limit: 300, Height: 35, FaceID: "oswald"}, {Kind: fit.TwoLines, Limit: 270, Height: 40, FaceID: "oswald", Text: "A-\nB"},
				{Kind: fit.AnInitial, Limit: 270, Height: 44.45, FaceID: "oswald", Text: "A. B"},
			}
		}
		out.Pieces = append(out.Pieces, piece)
	}
	if r.number != "" {
		piece := block(garment.BackNumber, 0, 170, 180, 203.2, 0)
		piece.Number.Text = r.number
		out.Pieces = append(out.Pieces, piece)
	}
	return out
}

// manyRows is a roster of n invented players of every kind.
func manyRows(n int) []row {
	names := []string{"Ng", "Abara", "Íñiguez", "O’Rourke", "De la Cruz-Prentiss", "Wojciechowska", "Featherstonehaugh", "Vandermeulenbroek-Asquith", "Okonjo-Bell", "Ünsal"}
	letters := []string{"XS", "S", "M", "L", "XL", "2XL"}
	var out []row
	for i := range n {
		r := row{name: fmt.Sprintf("%s %c", names[i%len(names)], 'A'+rune(i/len(names))), number: fmt.Sprint(i), size: letters[i%len(letters)], verdict: fit.Verdict(i % 4)}
		switch i % 37 {
		case 17:
			r.name = ""
		case 18:
			r.number = ""
		case 19:
			r.size = ""
		}
		out = append(out, r)
	}
	return out
}

// requireTidy is what every page of a proof keeps to: texts apart, no line
// through a text, everything inside the margins, content above the foot.
func requireTidy(t require.TestingT, p *page.Page) {
	requireApart(t, p)
	g := parts.NewGrid(p.Sheet)
	for _, op := range p.Ops() {
		if _, words := op.(page.Words); words {
			continue // their boxes are a whole em larger than the ink
		}
		box := page.Bounds([]page.Op{op})
		if box.Min.X < g.Left-2 || box.Max.X > g.Right+2 || box.Max.Y > p.Sheet.H-parts.FootMargin {
			require.Failf(t, "beyond the margins", "%T at %v", op, box)
		}
	}
	foot := footTexts(p)
	for _, w := range textBoxes(p) {
		if w.box.Min.X < g.Left-2.5 || w.box.Max.X > g.Right+0.01 || w.box.Max.Y > g.Bottom && !foot[w.text] {
			require.Failf(t, "beyond the margins", "%q at %v", w.text, w.box)
		}
	}
}

// requireApart says whether texts of a page lie over each other or under a
// line. Pages of hundreds of texts make plain comparisons worth while.
func requireApart(t require.TestingT, p *page.Page) {
	words, lines := textBoxes(p), edges(p)
	require.NotEmpty(t, words)
	require.NotEmpty(t, lines)
	for i, a := range words {
		for _, b := range words[i+1:] {
			if meet(a.box.Grow(-0.05), b.box.Grow(-0.05)) {
				require.Failf(t, "texts meet", "%q at %v lies over %q at %v", a.text, a.box, b.text, b.box)
			}
		}
		for _, e := range lines {
			if crosses(e[0], e[1], a.box.Grow(-0.1)) {
				require.Failf(t, "a line runs through a text", "from %v to %v through %q at %v", e[0], e[1], a.text, a.box)
			}
		}
	}
}

// footTexts are the texts below the rule of the foot of a page without content.
func footTexts(p *page.Page) map[string]bool {
	g, out := parts.NewGrid(p.Sheet), map[string]bool{}
	for _, w := range textBoxes(p) {
		if w.box.Min.Y > g.Bottom {
			out[w.text] = true
		}
	}
	return out
}

// inBox lists the texts of a page that start inside a box.
func inBox(p *page.Page, box geom.Rect) []string {
	var out []string
	for _, w := range textBoxes(p) {
		if c := w.box.Min; c.X >= box.Min.X && c.X <= box.Max.X && w.box.Max.Y >= box.Min.Y && w.box.Max.Y <= box.Max.Y {
			out = append(out, w.text)
		}
	}
	return out
}
