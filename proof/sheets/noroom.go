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
