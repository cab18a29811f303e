// Package weight gives a face the weight that a piece needs: emboldened by a
// mitred offset of its letters, or, on a face with a weight axis, the lightest
// setting whose strokes are thick enough. All values are font units.
package weight

import (
	"fmt"
	"math"
	"sync"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// Cut is a face as it is drawn, or emboldened. It never changes to a caller's
// eyes and is safe for concurrent use; inside it keeps the emboldened letters.
type Cut struct {
	face   *typeface.Face
	amount float64
	cap    float64

	mu    sync.Mutex
	paths map[uint32]geom.Path
}

// Plain returns the face as it is drawn.
func Plain(face *typeface.Face) *Cut { return &Cut{face: face, cap: face.CapHeight()} }

// Embolden returns the face with every letter grown outward by amount, 0 or
// more and at most a quarter of the em. Corners stay corners (mitred up to
// outline.MitreLimit times the amount, bevelled beyond). Every letter is moved
// right and up by the amount, so that it keeps its place after its origin and
// its foot on the baseline; what follows it belongs another two amounts to the
// right, so that the white between letters stays as designed.
func Embolden(face *typeface.Face, amount float64) (*Cut, error) {
	if amount == 0 {
		return Plain(face), nil
	}
	if most := face.UnitsPerEm() / 4; !(amount > 0 && amount <= most) {
		return nil, fmt.Errorf("%s cannot be emboldened by %g units; give 0 to %g", face.ID(), amount, most)
	}
	c := &Cut{face: face, amount: amount, paths: map[uint32]geom.Path{}}
	line, err := face.NewShaper().Shape("H", "")
	if err != nil {
		return nil, err
	}
	for _, g := range line.Glyphs {
		path, err := c.Path(g.ID)
		if err != nil {
			return nil, err
		}
		c.cap = math.Max(c.cap, path.Bounds().Max.Y)
	}
	return c, nil
}

// Face returns the face that the cut is made from.
func (c *Cut) Face() *typeface.Face { return c.face }

// Amount returns how far each letter is grown outward, 0 for none.
func (c *Cut) Amount() float64 { return c.amount }

// CapHeight returns the top of the ink of H above the baseline, measured. A
// flat capital grows by the amount at its foot and at its head.
func (c *Cut) CapHeight() float64 { return c.cap }

// Path returns the outline of a glyph. It is kept and must not be changed. The
// error wraps outline.ErrRange or outline.ErrUnsettled, and only a face with
// monstrous letters makes it.
func (c *Cut) Path(id uint32) (geom.Path, error) {
	path := c.face.Outline(id)
	if c.amount == 0 || len(path) == 0 {
		return path, nil
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if kept, ok := c.paths[id]; ok {
		return kept, nil
	}
	path, err := grown(path, c.amount, c.face.UnitsPerEm())
	if err != nil {
		return nil, fmt.Errorf("%s, glyph %d, emboldened by %g units: %w", c.face.ID(), id, c.amount, err)
	}
	c.paths[id] = path
	return path, nil
}

// em is the size in mm that letters are offset at: it makes the grid and the
// tolerance of package outline two thousandths of a per cent of the em.
const em = 1000

// grown returns the path grown by the amount and moved by it. It is polygonal.
func grown(path geom.Path, amount, upem float64) (geom.Path, error) {
	k := em / upem
	settled, err := outline.Union(path.Transform(geom.Scale(k, k)).Flatten(outline.Tolerance / 2))
	if err != nil {
		return nil, err
	}
	fat, err := outline.Offset(settled, k*amount, outline.Mitre)
	if err != nil {
		return nil, err
	}
	back := geom.Scale(1/k, 1/k).Then(geom.Translate(amount, amount))
	out := fat.Transform(back).Path()
	return onBaseline(out), nil
}

// onBaseline puts corners that the grid left beside the baseline by a
// millionth of the em back on it.
func onBaseline(path geom.Path) geom.Path {
	const hair = 1e-3 // font units
	for i := range path {
		for k := range path[i].P {
			if math.Abs(path[i].P[k].Y) < hair {
				path[i].P[k].Y = 0
			}
		}
	}
	return path
}
