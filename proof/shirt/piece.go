package shirt

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// paintPiece places the piece's shared drawing, which is kept in the piece's
// own millimetres, y up.
func (v View) paintPiece(pen *page.Pen, p sizes.Piece) error {
	art, err := pieceArt(pen.Book(), p, v.Cloth.Body, v.Scale)
	if err != nil {
		return err
	}
	pen.Use(art, v.PieceMap(p))
	return nil
}

// PieceMap returns the map from the piece's own millimetres (y up, baseline at
// 0) to the page's. A piece on a sleeve is turned.
func (v View) PieceMap(p sizes.Piece) geom.Affine {
	at := v.Map().Apply(p.At)
	sin, cos := math.Sincos(p.Turn)
	k := v.Scale
	return geom.Affine{A: k * cos, B: k * sin, C: k * sin, D: -k * cos, E: at.X, F: at.Y}
}

// Lettering paints a piece alone, its origin at x, y of the page, at a scale.
// ground is the colour it lies on.
func Lettering(pen *page.Pen, p sizes.Piece, ground page.Colour, x, y, scale float64) error {
	art, err := pieceArt(pen.Book(), p, ground, scale)
	if err != nil {
		return err
	}
	pen.Use(art, geom.Affine{A: scale, D: -scale, E: x, F: y})
	return nil
}

// pieceArt returns the drawing of a piece. A keyline has a weight of the paper,
// so only pieces with one are kept apart by scale.
func pieceArt(b *page.Book, p sizes.Piece, ground page.Colour, scale float64) (*page.Art, error) {
	colours := coloursOf(p.Asked)
	lines := keylines(colours, ground)
	ink := p.Ink()
	key := pieceKey(p, ink, ground)
	if len(lines) > 0 {
		key = fmt.Sprintf("%s @%g", key, scale)
	}
	var err error
	art := b.Art(key, func(pen *page.Pen) {
		var layers []geom.Region
		if layers, err = p.Outlines(); err != nil {
			return
		}
		shapes := []geom.Path{ink}
		for _, l := range layers {
			shapes = append(shapes, l.Path())
		}
		paintLayers(pen, shapes, colours, lines, scale)
		if len(p.Laid) > 0 {
			pen.FillPath(p.Laid.Path(), geom.Identity(), Paint(p.Asked.Tail.Colour))
		}
	})
	if err != nil {
		return nil, fmt.Errorf("outline of %s %q: %w", p.Asked.Place, p.Text(), err)
	}
	return art, nil
}

// paintLayers paints shapes from the outside in. lines[i] edges shape i.
func paintLayers(pen *page.Pen, shapes []geom.Path, colours []page.Colour, lines map[int]page.Colour, scale float64) {
	for i := len(shapes) - 1; i >= 0; i-- {
		pen.FillPath(shapes[i], geom.Identity(), colours[i])
		if c, ok := lines[i]; ok {
			pen.StrokePath(shapes[i], geom.Identity(), c, page.Line{Weight: parts.Hair / scale, Join: page.RoundJoin})
		}
	}
}

// keylines returns, for each layer (0 = letters) that meets the colour outside
// it too softly, the colour of a line between the two: white or ink, whichever
// stands out more from the worse of them.
func keylines(colours []page.Colour, ground page.Colour) map[int]page.Colour {
	out := map[int]page.Colour{}
	for i, c := range colours {
		outer := ground
		if i+1 < len(colours) {
			outer = colours[i+1]
		}
		if !parts.NeedsKeyline(c, outer) {
			continue
		}
		out[i] = parts.Ink
		if worst(page.White, c, outer) > worst(parts.Ink, c, outer) {
			out[i] = page.White
		}
	}
	return out
}

// worst returns the smaller contrast of a line with the colours on its sides.
func worst(line, a, b page.Colour) float64 {
	return min(parts.Contrast(line, a), parts.Contrast(line, b))
}

// pieceKey names everything that a piece's drawing depends on: its curves, as
// a digest, and its colours.
func pieceKey(p sizes.Piece, ink geom.Path, ground page.Colour) string {
	var b strings.Builder
	fmt.Fprintf(&b, "piece %s %s %s", digest(ink), ground.Hex(), p.Asked.Colour.Hex)
	for _, o := range p.Asked.Outlines {
		fmt.Fprintf(&b, " %d %s %v", o.Width.Nanometres(), o.Colour.Hex, o.Join)
	}
	if len(p.Laid) > 0 {
		fmt.Fprintf(&b, " %s %s", digest(p.Laid.Path()), p.Asked.Tail.Colour.Hex)
	}
	return b.String()
}

// digest returns a name for exactly these curves.
func digest(path geom.Path) string {
	bytes := make([]byte, 0, 49*len(path))
	for _, s := range path {
		bytes = append(bytes, byte(s.Op))
		for _, q := range s.P {
			bytes = binary.LittleEndian.AppendUint64(bytes, math.Float64bits(q.X))
			bytes = binary.LittleEndian.AppendUint64(bytes, math.Float64bits(q.Y))
		}
	}
	sum := sha256.Sum256(bytes)
	return hex.EncodeToString(sum[:12])
}

// Posts reach this far above and below the band of the letters, mm of garment.
const (
	postAbove, postBelow         = 14, 34
	overPostAbove, overPostBelow = 26, 46
)

// paintPosts draws the room beside a name: posts span the height that was
// asked for, so that all of a team stand alike.
func (v View) paintPosts(pen *page.Pen, p sizes.Piece) {
	if v.Posts == NoPosts || p.Name == nil || p.Room.Width <= 0 {
		return
	}
	above, below, weight := float64(postAbove), float64(postBelow), parts.Hair
	if v.Posts == OverPosts {
		above, below, weight = overPostAbove, overPostBelow, parts.OverPost
	}
	m := v.Map()
	for _, side := range [2]float64{-1, 1} {
		x := p.RoomCentre() + side*p.Room.Width/2
		a, z := m.Apply(geom.Point{X: x, Y: p.Top - above}), m.Apply(geom.Point{X: x, Y: p.Top + max(p.Name.Asked, p.Name.LetterHeight) + below})
		v.Cloth.Line(pen, a.X, a.Y, z.X, z.Y, page.Line{Weight: weight})
	}
}
