package garment

import "yokeline/lettering/geom"

// PanelInfo is one panel of a side: the part of a piece of cloth on which
// decoration may lie.
type PanelInfo struct {
	Name   string      // named by the wearer's side: front, left front, right sleeve
	Sleeve bool        // on a sleeve and not on the body
	Region geom.Region // one ring of positive signed area; y grows down
	Clear  []string    // what it keeps clear of: neck seam, hem
	Cloth  geom.Ring   // the piece of cloth itself, seam to seam
	Lines  []KeepClear // every line it keeps clear of, those of each hand apart
}

// clears returns the pieces of one side with what must stay free on them.
func (g *Garment) clears(s Side) []*clear {
	f := &g.faces[s&1]
	f.panelsOnce.Do(func() {
		for _, p := range g.shape.pieces(s & 1) {
			f.panels = append(f.panels, newClear(p, g.margins))
		}
	})
	return f.panels
}

// Panels returns the panels of one side, the body's first. A panel is every point
// of its piece that is at least its margin from each line to keep clear of,
// traced within 0.05 mm. The caller must not change them.
func (g *Garment) Panels(s Side) []PanelInfo {
	var out []PanelInfo
	for _, c := range g.clears(s) {
		info := PanelInfo{Name: c.name, Sleeve: c.piece.sleeve, Region: c.trace(), Cloth: c.ring, Lines: c.lines(s)}
		for _, k := range c.keeps {
			if n := len(info.Clear); n == 0 || info.Clear[n-1] != k.why {
				info.Clear = append(info.Clear, k.why)
			}
		}
		out = append(out, info)
	}
	return out
}

// Panel returns the decoration panels of the body on one side, without the
// sleeves: one ring, or one a part where a placket, a yoke or the legs part it.
// The caller must not change it.
func (g *Garment) Panel(s Side) geom.Region {
	var out geom.Region
	for _, c := range g.clears(s) {
		if !c.piece.sleeve {
			out = append(out, c.trace()...)
		}
	}
	return out
}
