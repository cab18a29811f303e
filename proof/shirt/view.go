// Package shirt paints one side of a player's garment with its pieces on a
// page, at a scale: the cloth by its parts, then each piece with its outlines.
// Everything is painted to its true measures; only line weights belong to the
// paper.
package shirt

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
)

// Posts are the two thin lines that show the room beside a name.
type Posts uint8

// No posts, thin ones, or the longer and thicker ones of a name that is over.
const (
	NoPosts Posts = iota
	ThinPosts
	OverPosts
)

// View is one side of a garment where it stands on a page.
type View struct {
	Garment *garment.Garment
	Side    garment.Side
	Pieces  []sizes.Piece // painted in this order; those of the other side are left out
	Cloth   Cloth
	Scale   float64 // mm of paper for a mm of garment
	X, Y    float64 // mm on the page: the centre line, and the high point of shoulder
	// Window, when not empty, cuts the drawing: mm on the page.
	Window geom.Rect
	Posts  Posts
	Plain  bool // without stitches and folds, whatever the width
	// Under, when not nil, draws on the page between the cloth and the pieces,
	// where extension lines lie.
	Under func(*page.Pen)
}

// Map returns the map from the garment's millimetres to the page's.
func (v View) Map() geom.Affine {
	return geom.Affine{A: v.Scale, D: v.Scale, E: v.X, F: v.Y}
}

// Silhouette returns the garment's outline on the page, not cut by the window.
func (v View) Silhouette() geom.Path { return v.Garment.Silhouette(v.Side).Transform(v.Map()) }

// Bounds returns the box of the garment on the page, not cut by the window.
func (v View) Bounds() geom.Rect {
	b := v.Garment.Bounds(v.Side)
	return geom.Rect{Min: v.Map().Apply(b.Min), Max: v.Map().Apply(b.Max)}
}

// Paint paints the view. The error is that of an outline that could not be made.
func (v View) Paint(pen *page.Pen) error {
	if v.Window.Empty() || v.Window == (geom.Rect{}) {
		return v.paint(pen)
	}
	var err error
	w := v.Window
	pen.Clip(page.RectPath(w.Min.X, w.Min.Y, w.Width(), w.Height()), geom.Identity(), func(inner *page.Pen) {
		err = v.paint(inner)
	})
	return err
}

func (v View) paint(pen *page.Pen) error {
	pen.Use(v.clothArt(pen.Book()), geom.Translate(v.X, v.Y))
	if v.Under != nil {
		v.Under(pen)
	}
	for _, p := range v.Pieces {
		if p.Side != v.Side {
			continue
		}
		if err := v.paintPiece(pen, p); err != nil {
			return err
		}
		v.paintPosts(pen, p)
	}
	return nil
}
