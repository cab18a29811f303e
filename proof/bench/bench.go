// Package bench writes the production art of one piece for the machines of a
// shop, at 1:1: SVG and PDF with one layer for each thing that is cut, printed
// or sewn, and PNG for transfers that are printed from a picture. What is not
// part of the art, a label for people and the mark of art that nobody signed,
// stands outside the ink in layers of its own. Same art, same bytes.
package bench

import (
	"fmt"
	"time"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/proof/page"
)

// Label says whose piece it is, for the people who weed, pack and press. It reads
// the right way round on mirrored art too.
type Label struct {
	Player, Place, Size string
	Note                string // what else is to be said, such as gold, 2 of 3
}

// Options say what goes with the art.
type Options struct {
	Label    Label
	Unsigned bool      // mark the art as UNSIGNED, in a strip under it
	Made     time.Time // date in the PDF; zero stands for 1 January 2000

	whole bool // a whole sheet: its page is the sheet, with no margin round it
}

// Bench writes art. It is not safe for concurrent use.
type Bench struct {
	pen *page.Pen
	cap float64 // capital height of the label's face, of its size
}

// New returns a bench ready to write. An error means that an embedded face is
// damaged.
func New() (*Bench, error) {
	book, err := page.NewBook()
	if err != nil {
		return nil, fmt.Errorf("labels of production files: %w", err)
	}
	b := &Bench{pen: book.Add(page.A4(), "").Pen}
	b.cap = b.pen.Outlines(0, 0, style(72), "H").Bounds().Height() / (72 * page.MMPerPoint)
	return b, nil
}

func style(points float64) page.Style { return page.Style{Size: points, Weight: page.SemiBold} }

// Height of the strip with the mark UNSIGNED and of its letters, mm, and the
// margin of a page, in which the line at the edge of the art is seen whole.
const (
	strip       = 10.0
	stripLetter = 6.0
	margin      = 1.0
)

// Extent is the box, mm, of the page that SVG and PDF are written as: the art's
// box with a small margin, and the strip under it that says UNSIGNED. A sheet has
// no margin of its own: its page is the sheet that goes into the machine.
func Extent(art layers.Art, o Options) geom.Rect {
	box := art.Box
	if !o.whole {
		box = box.Grow(margin)
	}
	if o.Unsigned {
		box.Min.Y -= strip
	}
	return box
}

// Colours of what is not the art's own. Cut and stitch lines are seen on any film
// and are no team colour.
const (
	cutColour      = page.Colour(0xD6006C)
	stitchColour   = page.Colour(0x0090C8)
	labelColour    = page.Colour(0x55616E)
	unsignedColour = page.Colour(0xA8361A)
)

// hairline is the weight of lines that a cutter follows, stitchWeight that of
// stitch lines, mm; they are dashed by dash.
const (
	hairline     = 0.05
	stitchWeight = 0.3
)

func dash() []float64 { return []float64{2.5, 1.5} }

// paint is a colour: of a spot by its name, or mixed by the printer.
type paint struct {
	spot   string
	colour page.Colour
}

// group is one layer as it is drawn: filled, stroked, or both.
type group struct {
	name, kind, colour string
	order              int
	path               geom.Path
	fill, line         *paint
	weight             float64
	dash               []float64
}

// groups lists what is drawn, the undermost first.
func (b *Bench) groups(art layers.Art, o Options) ([]group, error) {
	var out []group
	for _, l := range art.Layers {
		g, err := layerGroup(art, l)
		if err != nil {
			return nil, err
		}
		out = append(out, g)
	}
	if path := b.label(art, o.Label); len(path) > 0 {
		out = append(out, group{name: "label", kind: "label", path: path, fill: &paint{"label", labelColour}})
	}
	if o.Unsigned {
		out = append(out, b.unsignedGroup(art))
	}
	return out, nil
}

func (b *Bench) unsignedGroup(art layers.Art) group {
	return group{name: "unsigned", kind: "unsigned", path: b.unsigned(art.Box.Min, art.Box.Width()), fill: &paint{"unsigned", unsignedColour}}
}

func layerGroup(art layers.Art, l layers.Layer) (group, error) {
	g := group{name: l.Name, kind: string(l.Kind), colour: l.Colour.Name, order: l.Order, path: l.Region.Path()}
	if l.Line != nil {
		g.path = l.Line
	}
	if l.Colour.Hex != "" && l.Line == nil {
		colour, err := page.ParseColour(l.Colour.Hex)
		if err != nil {
			return g, fmt.Errorf("colour of %s: %w", l.Name, err)
		}
		g.fill = &paint{l.Spot, colour}
	}
	switch {
	case l.Kind == layers.StitchLine:
		g.line, g.weight, g.dash = &paint{l.Spot, stitchColour}, stitchWeight, dash()
	case l.Kind == layers.Registration && l.Spot == layers.AllPlates:
		g.fill = &paint{l.Spot, 0}
	case l.Kind == layers.CutContour || l.Kind == layers.Registration || l.Kind == layers.WeedBorder:
		g.line, g.weight = &paint{art.Cut, cutColour}, hairline
	}
	return g, nil
}
