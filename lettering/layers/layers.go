// Package layers makes the production art of one sized piece at 1:1: which
// shapes a decoration method cuts, prints or sews, in which order, mirrored or
// not, with what they overlap by and the marks by which they meet. Lengths are
// millimetres, y up; the origin is that of the piece, the middle of its ink on
// the baseline.
package layers

import (
	"errors"
	"fmt"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// Kind is what is done along or inside a layer.
type Kind string

// The kinds of layer. A cut contour with a colour is cut from that film or
// twill; one without is cut round what was printed before. A stitched area is
// the area that stitches will cover, not the stitches.
const (
	CutContour   Kind = "cut contour"
	Print        Kind = "print"
	White        Kind = "white"
	StitchLine   Kind = "stitch line"
	StitchedArea Kind = "stitched area"
	Registration Kind = "registration"
	WeedBorder   Kind = "weed border"
)

// AllPlates is the name of the colour that prints on every separation (ISO
// 32000-2, 8.6.6.4): registration marks of printed methods are in it.
const AllPlates = "All"

// Layer is one shape of the art. Region is set for areas, Line for stitch lines
// and the weed border.
type Layer struct {
	Name   string // digits, outline 1, white, registration; unlike that of any other layer
	Colour order.Colour
	Kind   Kind
	Region geom.Region
	Line   geom.Path
	// Order is when the layer is put down: 1 goes first, on the garment for film
	// and twill, on the carrier for transfers. Layers with one order are made at
	// once; 0 is for what goes with every one of them, marks and weed border.
	Order int
	// Spot is the name of the ink, film or tool that the layer is of where it is
	// one by itself; empty for colours that a printer mixes.
	Spot string
}

// Art is the production art of a piece.
type Art struct {
	Method order.Method
	// Layers are listed as they lie on the finished garment, the undermost first,
	// then marks and weed border.
	Layers []Layer
	// Mirrored art is the reflection x -> -x of what is seen on the garment. All
	// points are reflected one by one, so rings run the other way round.
	Mirrored bool
	Ink      geom.Rect // of all layers but marks and weed border
	Box      geom.Rect // of everything, the margin round the ink included
	// Waste are the rooms in the margin without ink and marks, where a label may
	// stand: under, over, left and right of the ink. One that is too small is
	// empty.
	Waste [4]geom.Rect
	// Cut is the spot name of lines that are cut.
	Cut   string
	Notes []string // what the maker must know, in plain words
}

// Of returns the production art of a piece by a decoration method, an id of
// order.Methods or another of its words. Errors: an unknown method, a setting
// outside its range, a piece without ink, a shape that cannot be settled.
func Of(piece sizes.Piece, method string, settings Settings) (Art, error) {
	m, ok := order.LookupMethod(method)
	if !ok {
		return Art{}, fmt.Errorf("method %q is not known: use %s", method, methodWords())
	}
	if err := settings.Check(); err != nil {
		return Art{}, err
	}
	b := builder{settings: settings, art: Art{Method: m, Cut: settings.CutName}}
	if err := b.make(piece); err != nil {
		return Art{}, fmt.Errorf("art of %s %q as %s: %w", piece.Asked.Place, piece.Text(), m.Name, err)
	}
	return b.art, nil
}

// Plates returns the art once for every order of its layers, first put down
// first: what runs through the machine at once, with the marks and the weed
// border that all share. Boxes and notes are those of the whole.
func (a Art) Plates() []Art {
	var plates []Art
	for k := 1; ; k++ {
		plate, found := a, false
		plate.Layers = nil
		for _, l := range a.Layers {
			found = found || l.Order == k
			if l.Order == k || l.Order == 0 {
				plate.Layers = append(plate.Layers, l)
			}
		}
		if !found {
			return plates
		}
		plates = append(plates, plate)
	}
}

// Mirror returns the art reflected at x = 0.
func (a Art) Mirror() Art {
	out := a.mapped(geom.Scale(-1, 1))
	out.Mirrored = !a.Mirrored
	out.Ink, out.Box = flipped(a.Ink), flipped(a.Box)
	out.Waste = [4]geom.Rect{flipped(a.Waste[0]), flipped(a.Waste[1]), flipped(a.Waste[3]), flipped(a.Waste[2])}
	return out
}

// mapped returns the art with the points of its layers mapped.
func (a Art) mapped(m geom.Affine) Art {
	out := a
	out.Layers = make([]Layer, len(a.Layers))
	for i, l := range a.Layers {
		if l.Region != nil {
			l.Region = l.Region.Transform(m)
		}
		if l.Line != nil {
			l.Line = l.Line.Transform(m)
		}
		out.Layers[i] = l
	}
	return out
}

func flipped(r geom.Rect) geom.Rect {
	if r.Empty() {
		return r
	}
	return geom.Rect{Min: geom.Point{X: -r.Max.X, Y: r.Min.Y}, Max: geom.Point{X: -r.Min.X, Y: r.Max.Y}}
}

func methodWords() string {
	var ids []string
	for _, m := range order.Methods() {
		ids = append(ids, m.ID)
	}
	return strings.Join(ids, ", ")
}

// build makes the layers of each method from the piece's shapes.
func (b *builder) build(shapes []shape) error {
	switch b.art.Method.ID {
	case "cut film", "flock film":
		return b.film(shapes)
	case "printed film":
		return b.printedFilm(shapes)
	case "screen transfer":
		return b.separations(shapes)
	case "direct-to-film":
		return b.directToFilm(shapes)
	case "sewn twill", "satin twill":
		return b.twill(shapes)
	case "embroidery":
		return b.embroidery(shapes)
	case "sublimation":
		return b.sublimation(shapes)
	}
	return errors.New("no art is known for this method")
}
