package sheets

import (
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// overWords says by how much a piece is over, or that nothing is left for it.
func (d *document) overWords(p sizes.Piece) string {
	switch {
	case p.TooTight != nil:
		return "its arch is too tight"
	case p.NoRoom:
		return "no room for it here"
	}
	by, _ := overBy(p)
	return "by " + d.rounded(by, length.Up)
}

// remedyWays are the answers for a piece that has no room where it was asked to
// lie, or that is too wide once it is parted at a placket.
func (d *document) remedyWays(p sizes.Piece) []way {
	var out []way
	for _, r := range p.Remedies {
		w := way{title: r.Kind, detail: r.Words(d.length)}
		if w.detail == w.title {
			w.detail = ""
		}
		out = append(out, w)
	}
	return out
}
