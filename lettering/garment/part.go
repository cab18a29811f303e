package garment

import (
	"yokeline/lettering/garment/internal/curve"
	"yokeline/lettering/geom"
)

// Side is one face of a garment.
type Side uint8

// The two faces.
const (
	Front Side = iota
	Back
)

// String returns front or back.
func (s Side) String() string {
	if s == Back {
		return "back"
	}
	return "front"
}

// Role is what a painted part is. The drawing layer gives each role its colour
// or its line.
type Role uint8

// The roles. Areas are filled; Fold is a translucent hint of a fold. From Outline
// on they are lines.
const (
	None         Role = iota
	Inside            // the far layer, seen through the neck or past an armhole
	InsideCollar      // the inside of the far collar or waistband
	Body
	Sleeve
	SidePanel
	Yoke
	Binding // bound armhole edge of a tank
	Cuff
	Collar
	Waistband
	Placket
	Button
	Fold
	Outline // outer edge, against the paper
	Edge    // edge of a layer that lies on another one
	Seam    // sewn joint
	Stitch  // row of stitching, usually dashed
	Detail  // thin solid line: tape, button hole, gather
)

// String returns the role in words.
func (r Role) String() string {
	names := [...]string{"none", "inside", "inside collar", "body", "sleeve", "side panel", "yoke", "binding", "cuff",
		"collar", "waistband", "placket", "button", "fold", "outline", "edge", "seam", "stitch", "detail"}
	if int(r) < len(names) {
		return names[r]
	}
	return "unknown"
}

// Line reports whether the role is drawn as a line and not filled.
func (r Role) Line() bool { return r >= Outline }

// Part is one thing to paint.
type Part struct {
	Role   Role
	Name   string    // what it is in words: back neck seam
	Path   geom.Path // one contour, or two that mirror each other
	Closed bool      // contours are closed
	Cloth  Role      // of a line or a fold: the area it lies on
	Beside Role      // of a seam between two areas: the other one; else None
	Fine   bool      // leave out when the garment is drawn small (under 45 mm wide)
}

// painter collects the parts of one view, in painting order.
type painter struct{ parts []Part }

// fill adds a filled area of one or more contours.
func (p *painter) fill(r Role, name string, contours ...chain) {
	p.add(Part{Role: r, Name: name, Closed: true}, contours)
}

// fold adds a translucent hint of a fold on a cloth.
func (p *painter) fold(cloth Role, name string, contours ...chain) {
	p.add(Part{Role: Fold, Name: name, Closed: true, Cloth: cloth, Fine: true}, contours)
}

// line adds a line on a cloth; beside is None but for a seam of two cloths.
func (p *painter) line(r, cloth, beside Role, name string, contours ...chain) {
	p.add(Part{Role: r, Name: name, Cloth: cloth, Beside: beside, Fine: r == Stitch || r == Detail}, contours)
}

func (p *painter) add(part Part, contours []chain) {
	for _, c := range contours {
		if len(c) == 0 {
			continue
		}
		if part.Closed {
			c = c.Closed()
		}
		part.Path = append(part.Path, c.Path(part.Closed)...)
	}
	if len(part.Path) > 0 {
		p.parts = append(p.parts, part)
	}
}

// both returns a chain and its mirror image.
func both(c chain) []chain {
	if len(c) == 0 {
		return nil
	}
	return []chain{c, c.Mirror()}
}

// wisp lays two leaves over each other, mirrored on both sides: a soft edge
// without a gradient or a blur, so that every renderer agrees.
func (p *painter) wisp(cloth Role, name string, a, b pt, bow, w float64) {
	p.fold(cloth, name, both(curve.Leaf(a, b, bow, w))...)
	p.fold(cloth, name, both(curve.Leaf(a.Lerp(b, 0.06), a.Lerp(b, 0.80), bow*0.72, w*0.5))...)
}
