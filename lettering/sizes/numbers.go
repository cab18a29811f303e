package sizes

import (
	"math"

	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
)

// number sets piece i. The result is shared and must not be changed.
func (w *worker) number(i int, text string, limit, height float64) (*numeral.Number, error) {
	return kept(w.numbers, key{piece: i, text: text, limit: limit, height: height}, func() (numeral.Number, error) {
		return w.sizer.Number(w.plan.numberRequest(w.plan.order.Pieces[i], text, limit, height))
	})
}

func (p *plan) numberRequest(asked order.Piece, text string, limit, height float64) numeral.Request {
	r := numeral.Request{
		Text: text, Face: p.faces[asked.Face], Wdth: axis(asked.Wdth), Wght: axis(asked.Wght),
		Height: height, Gap: math.NaN(), SmallestGap: p.gap, Limit: limit, Outlines: layers(asked),
	}
	if asked.FullOnes {
		r.Ones = numeral.FullWidth
	}
	if asked.Gap != nil {
		r.Gap = asked.Gap.MM()
	}
	if asked.Embolden != nil {
		r.Embolden = asked.Embolden.MM()
	}
	if asked.Stroke != nil {
		weigh(&r, asked.Stroke.MM())
	}
	return r
}

// weigh asks for a stroke: of a weight axis where the face has one, else of a
// face that is emboldened.
func weigh(r *numeral.Request, stroke float64) {
	for _, a := range r.Face.Axes() {
		if a.Tag == "wght" {
			r.Stroke = stroke
			return
		}
	}
	r.EmboldenTo = stroke
}
