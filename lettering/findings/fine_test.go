package findings_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

func detail(results []findings.Result, place, what string) (findings.Result, bool) {
	for _, r := range results {
		if r.Place == place && r.What == what {
			return r, true
		}
	}
	return findings.Result{}, false
}

// millimetres is a length as a job writes it.
func millimetres(t *testing.T, n int) length.Length {
	t.Helper()
	l, err := length.Parse(fmt.Sprint(n, "mm"))
	require.NoError(t, err)
	return l
}

// named sizes the demo with one piece and the given names on the roster.
func named(t *testing.T, piece int, names []string, edit func(*order.Order, *order.Piece)) *sizes.Sized {
	t.Helper()
	return demo(t, func(o *order.Order) {
		o.Pieces = []order.Piece{o.Pieces[piece]}
		one := o.Players[0]
		o.Players = nil
		for i, name := range names {
			p := one
			p.Name, p.Lines, p.Number, p.Size = name, "", fmt.Sprint(i+1), garment.Size{Group: garment.Adult, Letter: "M"}
			o.Players = append(o.Players, p)
		}
		edit(o, &o.Pieces[0])
	})
}

func TestEachKindOfDetailNamesItsLetterAndItsFigure(t *testing.T) {
	const name, number, script = 0, 1, 2
	// A face with weights is set in its default one where the job says nothing: the
	// lightest of saira.
	thin := func(face string) func(*order.Order, *order.Piece) {
		return func(_ *order.Order, p *order.Piece) {
			p.Face, p.Height = face, order.Height{Length: millimetres(t, 38)}
		}
	}
	for _, c := range []struct {
		what, place string
		piece       int
		names       []string
		edit        func(*order.Order, *order.Piece)
		where       string // in the measured figure
		required    string
	}{
		{"thinnest stroke", "back name", name, []string{"Quill"}, thin("saira"), `^\d\.\d\d mm at [QUIL] in QUILL$`, "at least 2 mm"},
		{"smallest gap", "back name", name, []string{"Ng", "Featherwhistleton"}, func(*order.Order, *order.Piece) {}, `^\d\.\d\d mm at [A-Z]{2} in FEATHERWHISTLETON$`, "at least 1.5 mm"},
		{"smallest counter", "back number", number, []string{"A", "B", "C", "D"}, func(o *order.Order, p *order.Piece) {
			o.Method, p.Height = "satin twill", order.Height{Length: millimetres(t, 50)}
		}, `^\d\.\d\d mm( in the outline)? at [1-4]; `, "at least 8 mm"},
		{"closed counter", "back name", name, []string{"Ino"}, func(_ *order.Order, p *order.Piece) {
			p.Height = order.Height{Length: millimetres(t, 20)}
			p.Outlines = []order.Outline{{Width: millimetres(t, 8), Colour: p.Colour}}
		}, `^0\.00 mm in the outline at O in INO$`, "at least 1.5 mm"},
		{"letter height", "back name", name, []string{"Quill"}, func(o *order.Order, p *order.Piece) {
			o.Method, p.Height = "flock film", order.Height{Length: millimetres(t, 18)}
		}, `^18\.00 mm at QUILL$`, "at least 19 mm"},
		{"smallest counter", "front name", script, []string{"Quill"}, func(*order.Order, *order.Piece) {}, `^\d\.\d\d mm( in the outline)? at ([Herons]{1,2}|the tail)( and [Herons])? in Herons`, "at least 1.5 mm"},
	} {
		t.Run(c.place+" "+c.what, func(t *testing.T) {
			s := named(t, c.piece, c.names, c.edit)
			results := findings.Check(nil, findings.Of(s))
			r, ok := detail(results, c.place, c.what)
			require.True(t, ok, "%v", results)
			assert.Equal(t, findings.Advice, r.Severity)
			assert.Regexp(t, c.where, r.Measured)
			assert.Equal(t, c.required, r.Required)
			assert.Equal(t, "common practice, no source: the supplier's data sheet decides", r.Source)
			assert.Empty(t, r.How, "no rule book says so")
			assert.NotEmpty(t, r.By)
			assert.NotEmpty(t, r.Remedy)
		})
	}
}

// TestTheGapIsThatOfTheFit compares with the fit, which measures the distance of
// neighbouring letters on the curves and not on the flattened shapes.
func TestTheGapIsThatOfTheFit(t *testing.T) {
	s := demo(t, func(o *order.Order) { o.Pieces = o.Pieces[:1] })
	least, short := math.Inf(1), 0
	for _, p := range s.Players {
		for _, piece := range p.Pieces {
			if n := piece.Name; n.Verdict != fit.Over && n.SmallestGap < 1.45 {
				short++
				least = min(least, n.SmallestGap)
			}
		}
	}
	require.Positive(t, short)
	for _, f := range findings.Of(s).Fine {
		if f.What.String() == "gap" {
			assert.InDelta(t, least, f.Measured, 0.03)
			assert.Equal(t, short, f.Pieces)
			return
		}
	}
	assert.Fail(t, "no gap was found")
}

func TestAPieceThatDoesNotFitIsNotMeasured(t *testing.T) {
	s := named(t, 0, []string{"Quillfeatherstonehamquillfeather"}, func(*order.Order, *order.Piece) {})
	subject := findings.Of(s)
	require.Equal(t, "over", subject.Players[0].Pieces[0].Verdict)
	assert.Empty(t, subject.Fine)
	assert.Zero(t, subject.Unmeasured)
}

func TestAGapSetToTheMethodsSmallestIsEnough(t *testing.T) {
	s := demo(t, func(o *order.Order) { o.Pieces = []order.Piece{o.Pieces[3]} }) // the front number, gap raised for its outline
	_, ok := detail(findings.Check(nil, findings.Of(s)), "front number", "smallest gap")
	assert.False(t, ok)
}

func TestTheMethodDecidesWhatIsTooFine(t *testing.T) {
	of := func(method string) *sizes.Sized {
		return demo(t, func(o *order.Order) { o.Method, o.Pieces = method, []order.Piece{o.Pieces[1]} }) // the back number
	}
	assert.NotEmpty(t, findings.Of(of("satin twill")).Fine)
	r, ok := detail(findings.Check(nil, findings.Of(of("sublimation"))), "", "finest details")
	require.True(t, ok)
	assert.Equal(t, findings.InOrder, r.Severity)
}

func TestBeyondTheMostTheTightestAreMeasuredAndTheRestIsSaid(t *testing.T) {
	var names []string
	for i := range 520 {
		names = append(names, strings.Repeat("O", 1+i%5)+string(rune('A'+i/26))+string(rune('A'+i%26)))
	}
	s := named(t, 0, names, func(*order.Order, *order.Piece) {})
	subject := findings.Of(s)
	least, different := math.Inf(1), map[string]bool{}
	for _, p := range s.Players {
		least = min(least, p.Pieces[0].Name.SmallestGap)
		different[p.Pieces[0].Text()] = true
	}
	require.Greater(t, len(different), 500)
	r, ok := detail(findings.Check(nil, subject), "", "finest details")
	require.True(t, ok)
	assert.Equal(t, findings.Unknown, r.Severity)
	assert.Equal(t, fmt.Sprintf("%d pieces were not measured", len(different)-500), r.Measured)
	require.NotEmpty(t, subject.Fine)
	assert.InDelta(t, least, subject.Fine[0].Measured, 0.03, "the closest letters of all are among the measured")
}

func TestALookThatIsLowerThanAskedNamesWhoSetsIt(t *testing.T) {
	names := []string{"Ng", "Featherwhistleton", "Quill"}
	for _, c := range []struct{ same, what string }{{"team", "letters of the team"}, {"size", "letters of size adult M"}} {
		s := named(t, 0, names, func(o *order.Order, _ *order.Piece) { o.Fit.Same = c.same })
		results := findings.Check(nil, findings.Of(s))
		r, ok := detail(results, "back name", c.what)
		require.True(t, ok, "%v", results)
		assert.Equal(t, findings.Advice, r.Severity)
		assert.Equal(t, s.Players[1].Label(), r.Player)
		assert.Regexp(t, `^1 \d+/\d+ in, set by this name; without it 2 in$`, r.Measured)
		assert.Equal(t, "2 in as asked", r.Required)
		assert.Contains(t, r.Remedy, "without that name the others would be 2 in high")
	}
	s := named(t, 0, []string{"Ng", "Quill"}, func(o *order.Order, _ *order.Piece) { o.Fit.Same = "team" })
	_, ok := detail(findings.Check(nil, findings.Of(s)), "back name", "letters of the team")
	assert.False(t, ok, "all are as high as asked")
	s = named(t, 0, []string{"Featherwhistleton", "Featherwhistleton"}, func(o *order.Order, _ *order.Piece) { o.Fit.Same = "team" })
	r, _ := detail(findings.Check(nil, findings.Of(s)), "back name", "letters of the team")
	assert.Contains(t, r.Measured, "no higher without it")
	for _, same := range []string{"team", "size"} {
		s = named(t, 0, []string{"Featherwhistleton"}, func(o *order.Order, _ *order.Piece) { o.Fit.Same = same })
		for _, r := range findings.Check(nil, findings.Of(s)) {
			assert.NotContains(t, r.What, "letters of", "there are no others to be kept low")
		}
	}
}

func TestALoweredNameIsAsHighInAFindingAsInTheListOfSizes(t *testing.T) {
	s := named(t, 0, []string{"Ng", "Featherwhistleton"}, func(o *order.Order, _ *order.Piece) { o.Fit.Same = "team" })
	name, ok := s.Players[1].Piece("back name")
	require.True(t, ok)
	results := findings.Check(nil, findings.Of(s))
	r, ok := detail(results, "back name", "name height")
	require.True(t, ok)
	assert.Equal(t, length.Plain(name.Height(), s.Order.Units, length.Down), r.Measured, "as size and the proof print it")
	look, ok := detail(results, "back name", "letters of the team")
	require.True(t, ok)
	assert.Contains(t, look.Measured, r.Measured+", set by this name")
	assert.Equal(t, r.By, look.By)
}
