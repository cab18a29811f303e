package findings_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
)

func detail(results []findings.Result, place, what string) (findings.Result, bool) {
	for _, r := range results {
		if r.Place == place && r.What == what {
			return r, true
		}
	}
	return findings.Result{}, false
}

func TestDetailsTooFineForTheMethodNameTheLettersAndTheFigure(t *testing.T) {
	s := demo(t, func(o *order.Order) {
		o.Fit.Tracking = -0.04
		o.Pieces[0].Height = order.Height{Length: o.Pieces[0].Height.Length}
	})
	r, ok := detail(findings.Check(s.Rules, findings.Of(s)), "back name", "gap")
	require.True(t, ok)
	assert.Equal(t, findings.Advice, r.Severity)
	assert.Regexp(t, `^0\.\d\d mm at [A-ZÅÓÑÜ'’-]{2} of [A-ZÅÓÑÜ'’ -]+`, r.Measured)
	assert.Equal(t, "at least 1.5 mm", r.Required)
	assert.Contains(t, r.Source, "common practice, no source")
	assert.Empty(t, r.How, "no rule book says so")
}

func TestTheMethodDecidesWhatIsTooFine(t *testing.T) {
	coarse, fine := "sewn twill", "sublimation"
	count := func(method string) int {
		s := demo(t, func(o *order.Order) {
			o.Method = method
			o.Pieces = []order.Piece{o.Pieces[1]} // the back number alone
		})
		return len(findings.Of(s).Fine)
	}
	assert.Zero(t, count(fine))
	assert.Positive(t, count(coarse))
	s := demo(t, func(o *order.Order) { o.Method, o.Pieces = fine, []order.Piece{o.Pieces[1]} })
	r, ok := detail(findings.Check(nil, findings.Of(s)), "", "finest details")
	require.True(t, ok)
	assert.Equal(t, findings.InOrder, r.Severity)
}

func TestPiecesThatWereNotMeasuredAreSaid(t *testing.T) {
	s := demo(t, func(o *order.Order) {
		o.Pieces = []order.Piece{o.Pieces[0]}
		one := o.Players[0]
		o.Players = nil
		for i := range 420 {
			p := one
			p.Name = "A" + strings.Repeat("B", i%20) + string(rune('C'+i/20))
			p.Number = fmt.Sprint(i % 100)
			p.Size = garment.Size{Group: garment.Adult, Letter: "M"}
			o.Players = append(o.Players, p)
		}
	})
	r, ok := detail(findings.Check(nil, findings.Of(s)), "", "finest details")
	require.True(t, ok)
	assert.Equal(t, findings.Unknown, r.Severity)
	assert.Equal(t, "20 further pieces were not measured", r.Measured)
}
