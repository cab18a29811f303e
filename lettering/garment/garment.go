package garment

import (
	"fmt"
	"slices"
	"sync"

	"yokeline/lettering/geom"
)

// Garment is one cut in one size: its measures, its shape and its panels. It is
// safe for concurrent use; what takes time is worked out once, on first use.
type Garment struct {
	cut      Cut
	size     Size
	measures Measures
	figures  []Figure
	shape    shape
	margins  Margins
	faces    [2]face
}

// face caches what belongs to one side.
type face struct {
	viewOnce   sync.Once
	view       []Part
	panelsOnce sync.Once
	panels     []*clear
}

// shape is a constructed garment: a frame, or a pair of shorts.
type shape interface {
	view(Side) []Part
	silhouette(Side) chain
	collar(Side) float64
	pieces(Side) []piece
}

// New returns a cut in a size with the generic measures of the embedded table.
// Errors name an unknown cut or a size that does not exist.
func New(cut Cut, size Size) (*Garment, error) {
	m, figures, err := Standard(cut, size)
	if err != nil {
		return nil, err
	}
	return build(cut, size, m, figures)
}

// Custom returns a cut in a size with measures of its own, as from a maker's
// spec sheet; basis says where they come from. Errors name the measure that
// cannot be drawn.
func Custom(cut Cut, size Size, m Measures, basis string) (*Garment, error) {
	if _, ok := cut.Info(); !ok {
		_, err := ParseCut(string(cut))
		return nil, err
	}
	if err := size.check(); err != nil {
		return nil, err
	}
	if err := m.check(cut); err != nil {
		return nil, fmt.Errorf("%s %s: %w", cut, size, err)
	}
	var figures []Figure
	for _, name := range required(cut) {
		figures = append(figures, Figure{Measure: name, MM: *m.field(name), Basis: basis})
	}
	return build(cut, size, m, figures)
}

func build(cut Cut, size Size, m Measures, figures []Figure) (*Garment, error) {
	g := &Garment{cut: cut, size: size, measures: m, figures: figures, margins: DefaultMargins()}
	if cut == Shorts {
		s, err := newShorts(m)
		if err != nil {
			return nil, fmt.Errorf("%s %s: %w", cut, size, err)
		}
		g.shape = s
		return g, nil
	}
	f, err := newFrame(cut, size.Group, m)
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", cut, size, err)
	}
	g.shape = f
	return g, nil
}

// Cut returns the pattern of the garment.
func (g *Garment) Cut() Cut { return g.cut }

// Size returns the size of the garment.
func (g *Garment) Size() Size { return g.size }

// Measures returns the finished measures, in millimetres.
func (g *Garment) Measures() Measures { return g.measures }

// Figures returns every measure with what it rests on.
func (g *Garment) Figures() []Figure { return slices.Clone(g.figures) }

// View returns what to paint of one side, in painting order: each part covers
// those before it, and the silhouette's outline is the last. The caller must not
// change it.
func (g *Garment) View(s Side) []Part {
	f := &g.faces[s&1]
	f.viewOnce.Do(func() { f.view = g.shape.view(s & 1) })
	return f.view
}

// Silhouette returns the whole outline of one side, closed.
func (g *Garment) Silhouette(s Side) geom.Path { return g.shape.silhouette(s & 1).Path(true) }

// Bounds returns the box around everything that is drawn of one side.
func (g *Garment) Bounds(s Side) geom.Rect { return g.Silhouette(s).Bounds() }

// Collar returns the y of the neck seam at x = 0 on one side; of shorts, the y of
// the waistband's seam.
func (g *Garment) Collar(s Side) float64 { return g.shape.collar(s & 1) }

// HPS returns the high point of shoulder on the viewer's right; of shorts, the
// top corner of the waistband.
func (g *Garment) HPS() geom.Point {
	if g.cut == Shorts {
		return pt{X: g.measures.WaistHalf / 2, Y: -bandDip}
	}
	return pt{X: g.measures.NeckWidth / 2}
}

// Hem returns the y of the hem at the centre; of shorts, that of the hem's lowest
// point.
func (g *Garment) Hem() float64 {
	if g.cut == Shorts {
		return g.Bounds(Front).Max.Y
	}
	return g.measures.BodyLength
}
