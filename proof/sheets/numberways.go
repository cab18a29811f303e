package sheets

import (
	"fmt"
	"slices"

	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/sizes"
)

// numberWords say in figures what a way out of a number comes to, and what
// follows from it.
func (d *document) numberWords(p sizes.Piece, w *numeral.WayOut) (figure, more string) {
	high := d.rounded(w.Number.Height, length.Down) + " high"
	if w.Number.Height >= p.Number.Height {
		high = d.length(w.Number.Height) + " high"
	}
	switch w.Kind {
	case numeral.SmallerGap:
		return high, "digits " + d.length(w.Number.Gap) + " apart"
	case numeral.NarrowerOutlines:
		return high, "its outlines narrower than the team’s"
	case numeral.FewerOutlines:
		return high, "without its outermost outline"
	case numeral.NarrowerFace:
		return high, d.faceName(w.Number.FaceID) + ", this number only"
	case numeral.NextSize:
		return high, "on " + withArticle(w.Size)
	case numeral.LowerDigits:
		return high, "the others: " + d.length(p.Number.Height)
	}
	return high, "this number only"
}

// withOutlines gives a piece the outlines of a way out: all narrower, or
// without the outermost.
func (d *document) withOutlines(p *sizes.Piece, w *numeral.WayOut) {
	n := min(len(p.Asked.Outlines), len(w.Request.Outlines))
	p.Asked.Outlines = slices.Clone(p.Asked.Outlines[:n])
	for i := range p.Asked.Outlines {
		p.Asked.Outlines[i].Width = length.FromMM(w.Request.Outlines[i].Width, d.order.Units)
	}
}

// detailWords puts a figure and what follows from it in one sentence.
func detailWords(figure, more string) string {
	if more == "" {
		return figure
	}
	return fmt.Sprintf("%s; %s", figure, more)
}
