package sheets

import (
	"errors"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
	"yokeline/proof/parts"
)

// teamName sets the team's name for the head in the face of the names on the
// back; it is empty when there is no such face or when it lacks a character.
func (d *document) teamName() (geom.Path, error) {
	p, ok := d.asked(garment.BackName)
	if !ok {
		return nil, nil
	}
	return d.sample(p, d.order.Team, parts.TeamHeight, parts.TeamTracking)
}

// asked returns what the order asks for at a place.
func (d *document) asked(place order.Place) (order.Piece, bool) {
	for _, p := range d.order.Pieces {
		if p.Place == place {
			return p, true
		}
	}
	return order.Piece{}, false
}

// sample sets a line straight in the face of a piece, cased as the piece is: y
// up, baseline 0, capitals height mm high. It is empty when the face lacks a
// character of it.
func (d *document) sample(p order.Piece, text string, height, tracking float64) (geom.Path, error) {
	face, err := d.face(p)
	if err != nil {
		return nil, err
	}
	line, err := face.NewShaper().Shape(spelling.Apply(text, p.Case, p.Lang), p.Lang)
	var missing *typeface.MissingError
	switch {
	case errors.As(err, &missing):
		return nil, nil
	case err != nil:
		return nil, err
	}
	k := height / face.CapHeight()
	var out geom.Path
	track := 0.0
	for i, g := range line.Glyphs {
		if i > 0 && !g.Mark {
			track += tracking
		}
		out = append(out, face.Outline(g.ID).Transform(geom.Affine{A: k, D: k, E: g.X*k + track, F: g.Y * k})...)
	}
	return out, nil
}

// face opens the face of a piece at its asked axis values.
func (d *document) face(p order.Piece) (*typeface.Face, error) {
	face, err := d.in.Face(p.Face)
	if err != nil {
		return nil, err
	}
	axes := map[string]float64{}
	if p.Wdth != nil {
		axes["wdth"] = *p.Wdth
	}
	if p.Wght != nil {
		axes["wght"] = *p.Wght
	}
	return face.Instance(axes)
}
