package numeral_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/numeral"
	"yokeline/lettering/outline"
	"yokeline/lettering/stroke"
	"yokeline/lettering/typeface"
)

const inch = 25.4

// widest to narrowest, as package sizes tries them.
func others(t require.TestingT) (out []*typeface.Face) {
	for _, id := range []string{"quantico", "graduate", "oswald", "barlow-condensed", "anton", "league-gothic"} {
		face, err := typeface.Embedded(id)
		require.NoError(t, err)
		out = append(out, face)
	}
	return out
}

// verified sizes a way out anew, with a sizer of its own, and measures the
// drawing: it must be within the limit and keep the demand.
func verified(t require.TestingT, q numeral.Quest, w numeral.WayOut) {
	n := number(t, w.Request)
	who := fmt.Sprint(w.Kind, " ", w.Request.Text, " ", w.Number.FaceID)
	assert.Equal(t, numeral.Full, n.Verdict, who)
	assert.Equal(t, w.Number.InkWidth, n.InkWidth, who)
	assert.Equal(t, q.Text, w.Request.Text, who)
	drawn := n.Ink().Bounds()
	reach := outline.Reach(w.Request.Outlines)
	if q.Limit > 0 {
		assert.Equal(t, q.Limit, w.Request.Limit)
		assert.LessOrEqual(t, drawn.Width()+2*reach, q.Limit+1e-6, who)
	}
	high := n.Height
	if q.Keep.HeightOutlined {
		high += 2 * reach
	}
	assert.GreaterOrEqual(t, math.Round(high*1e6), math.Round(q.Keep.Height.Least*1e6), who)
	if w.Kind != numeral.LowerDigits {
		assert.GreaterOrEqual(t, high, q.Height, who)
	}
	if q.Keep.Stroke.Least > 0 {
		settled, err := n.Settled()
		require.NoError(t, err)
		assert.GreaterOrEqual(t, n.StrokeThin, q.Keep.Stroke.Least-1e-6, who)
		assert.GreaterOrEqual(t, stroke.Measure(settled, 0).Main, q.Keep.Stroke.Least*0.98, who)
	}
	if len(q.Text) > 1 {
		assert.GreaterOrEqual(t, n.Gap, 2*reach+q.SmallestGap-1e-9, who)
	}
}

func kinds(c *numeral.Conflict) (out []string) {
	for _, w := range c.WaysOut {
		out = append(out, w.Kind)
	}
	return out
}

func TestEveryWayOutOfANumberIsVerified(t *testing.T) {
	sizer, faces := numeral.NewSizer(), others(t)
	found := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		q := numeral.Quest{Faces: faces}
		q.Request = request(t, rapid.SampledFrom([]string{"graduate", "quantico", "archivo", "league-gothic"}).Draw(t, "face"), rapid.StringMatching(`[0-9]{1,2}`).Draw(t, "text"))
		q.Height = rapid.Float64Range(150, 254).Draw(t, "height")
		q.SmallestGap = rapid.SampledFrom([]float64{0, 1.5, 6}).Draw(t, "smallest gap")
		for range rapid.IntRange(0, 2).Draw(t, "outlines") {
			q.Outlines = append(q.Outlines, outline.Layer{Width: rapid.SampledFrom([]float64{inch / 8, inch / 4}).Draw(t, "outline")})
		}
		if rapid.Bool().Draw(t, "rule") {
			q.Keep.Height.Least = rapid.SampledFrom([]float64{6 * inch, 8 * inch, 10 * inch}).Draw(t, "least")
			q.Keep.HeightOutlined = rapid.Bool().Draw(t, "outlined")
			q.Keep.Stroke.Least = rapid.SampledFrom([]float64{0, 0.75 * inch}).Draw(t, "stroke")
		}
		q.Limit = number(t, q.Settled()).InkWidth * rapid.Float64Range(0.6, 1.05).Draw(t, "share of the room that is needed")
		settled := number(t, q.Settled())
		c, err := sizer.Conflict(q)
		require.NoError(t, err)
		if c == nil {
			assert.Equal(t, numeral.Full, settled.Verdict)
			return
		}
		assert.InDelta(t, math.Max(0, settled.InkWidth-q.Limit), c.OverBy, 1e-9)
		assert.True(t, c.OverBy > 0 || c.StrokeShort != 0, "something is the matter")
		seen := map[string]bool{}
		for _, w := range c.WaysOut {
			verified(t, q, w)
			assert.False(t, seen[w.Kind], "each kind once")
			seen[w.Kind] = true
			found[w.Kind]++
		}
	})
	t.Log(found)
	assert.NotEmpty(t, found)
}

func TestWaysOutOfANumberChangeOneThingAndAsLittleAsNeeded(t *testing.T) {
	sizer := numeral.NewSizer()
	base := func(face, text string, limit float64) numeral.Quest {
		q := numeral.Quest{Request: request(t, face, text), Faces: others(t)}
		q.Limit = limit
		return q
	}
	find := func(q numeral.Quest, kind string) numeral.WayOut {
		c, err := sizer.Conflict(q)
		require.NoError(t, err)
		require.NotNil(t, c)
		for _, w := range c.WaysOut {
			if w.Kind == kind {
				verified(t, q, w)
				return w
			}
		}
		t.Fatalf("there is no %s among %v", kind, kinds(c))
		return numeral.WayOut{}
	}
	over := func(r numeral.Request) bool { return number(t, r).Verdict == numeral.Over }

	w := find(base("graduate", "88", 259), numeral.SmallerGap) // 262.7 wide with a gap of 12
	assert.InDelta(t, 12-3.67, w.Number.Gap, 0.02)
	more := w.Request
	more.Gap += 0.011
	assert.True(t, over(more), "no larger gap does")

	q := base("graduate", "8", 133) // 125.3 wide and 12 of outlines
	q.Outlines = []outline.Layer{{Width: 3}, {Width: 3}}
	w = find(q, numeral.NarrowerOutlines)
	require.Len(t, w.Request.Outlines, 2)
	assert.Equal(t, w.Request.Outlines[0].Width, w.Request.Outlines[1].Width)
	assert.Greater(t, w.Request.Outlines[0].Width, 1.0)
	w = find(q, numeral.FewerOutlines)
	assert.Less(t, len(w.Request.Outlines), 2)

	w = find(base("archivo", "88", 240), numeral.NarrowerDigits)
	assert.Equal(t, "archivo", w.Number.FaceID)
	assert.Zero(t, math.Mod(w.Request.Wdth, 5))
	wider := w.Request
	wider.Wdth += 5
	assert.True(t, over(wider), "five units wider do not fit")

	assert.Equal(t, "oswald", find(base("graduate", "88", 230), numeral.NarrowerFace).Number.FaceID, "the widest that fits")
	assert.Equal(t, "anton", find(base("graduate", "88", 219), numeral.NarrowerFace).Number.FaceID)
	w = find(base("graduate", "88", 160), numeral.NarrowerFace)
	assert.Equal(t, "league-gothic", w.Number.FaceID)
	assert.Less(t, w.Request.Wdth, 100.0, "its width axis moves too")
	assert.InDelta(t, number(t, base("graduate", "88", 230).Request).WouldFitHeight, find(base("graduate", "88", 230), numeral.LowerDigits).Number.Height, 1e-9)
}

func TestALowerNumberIsNoWayOutWhereTheRuleForbidsIt(t *testing.T) {
	q := numeral.Quest{Request: request(t, "graduate", "88"), Faces: others(t)}
	q.Limit, q.Keep.Height.Least = 230, 200
	c, err := numeral.NewSizer().Conflict(q)
	require.NoError(t, err)
	assert.NotContains(t, kinds(c), numeral.LowerDigits)
	fits := number(t, q.Request).WouldFitHeight
	for _, f := range []struct {
		least float64
		want  bool
	}{{fits - 1e-6, true}, {fits, true}, {fits + 1e-6, false}} {
		q.Keep.Height.Least = f.least
		c, err := numeral.NewSizer().Conflict(q)
		require.NoError(t, err)
		assert.Equal(t, f.want, assert.ObjectsAreEqual(numeral.LowerDigits, c.WaysOut[len(c.WaysOut)-1].Kind), "%.6f", f.least)
	}
}

func TestANumberAskedTooLowIsTriedAtTheHeightOfTheRule(t *testing.T) {
	q := numeral.Quest{Request: request(t, "graduate", "88"), Faces: others(t)}
	q.Height, q.Limit, q.Keep.Height.Least = 150, 230, 203.2
	c, err := numeral.NewSizer().Conflict(q)
	require.NoError(t, err)
	require.NotNil(t, c, "it fits as asked, but not as high as the rule wants it")
	assert.Equal(t, 203.2, c.Number.Height)
	q.Outlines, q.Keep.HeightOutlined = []outline.Layer{{Width: 3}}, true
	assert.InDelta(t, 197.2, q.Settled().Height, 1e-12, "the outlines count")
	q.Limit = 300
	c, err = numeral.NewSizer().Conflict(q)
	require.NoError(t, err)
	assert.Nil(t, c, "at that height it fits: no conflict")
}

func TestStrokesUnderTheRuleAreMadeThickEnough(t *testing.T) {
	for _, id := range []string{"graduate", "archivo"} {
		q := numeral.Quest{Request: request(t, id, "88"), Faces: others(t)}
		q.Limit = 400
		thin := number(t, q.Request).StrokeThin
		q.Keep.Stroke.Least = thin + 5
		c, err := numeral.NewSizer().Conflict(q)
		require.NoError(t, err)
		require.NotNil(t, c)
		assert.True(t, c.Simple())
		assert.Equal(t, []string{numeral.ThickerDigits}, kinds(c))
		assert.InDelta(t, 5, c.StrokeShort, 1e-9)
		verified(t, q, c.WaysOut[0])
		for off, conflict := range map[float64]bool{-1e-6: false, 0: false, 1e-6: true} {
			q.Keep.Stroke.Least = thin + off
			c, err := numeral.NewSizer().Conflict(q)
			require.NoError(t, err)
			assert.Equal(t, conflict, c != nil, "%s %g mm", id, off)
		}
	}
}

func TestADemandIsHeldInWholeNanometres(t *testing.T) {
	n := numeral.Number{Text: "27", Height: 200, TallestDigit: 204, InkWidth: 250, Gap: 12, StrokeThin: 25, StrokeMain: 27, NarrowestDigit: 110}
	three := []outline.Layer{{Width: 3}}
	const nm = 1e-6
	cases := []struct {
		name string
		at   func(off float64) numeral.Demand // holds at 0 and above, or at 0 and below
		up   bool                             // a larger figure breaks it
	}{
		{"least height", func(o float64) numeral.Demand { return numeral.Demand{Height: numeral.Span{Least: 200 + o}} }, true},
		{"least height with outlines", func(o float64) numeral.Demand {
			return numeral.Demand{Height: numeral.Span{Least: 206 + o}, HeightOutlined: true}
		}, true},
		{"most height", func(o float64) numeral.Demand { return numeral.Demand{Height: numeral.Span{Most: 204 + o}} }, false},
		{"least stroke", func(o float64) numeral.Demand { return numeral.Demand{Stroke: numeral.Span{Least: 25 + o}} }, true},
		{"least stroke with outlines", func(o float64) numeral.Demand {
			return numeral.Demand{Stroke: numeral.Span{Least: 31 + o}, StrokeOutlined: true}
		}, true},
		{"most stroke", func(o float64) numeral.Demand { return numeral.Demand{Stroke: numeral.Span{Most: 27 + o}} }, false},
		{"digit width", func(o float64) numeral.Demand { return numeral.Demand{DigitWidth: numeral.Span{Least: 110 + o}} }, true},
		{"width", func(o float64) numeral.Demand { return numeral.Demand{Width: numeral.Span{Least: 250 + o}} }, true},
		{"gap", func(o float64) numeral.Demand { return numeral.Demand{Gap: numeral.Span{Most: 12 + o}} }, false},
		{"outlines", func(o float64) numeral.Demand { return numeral.Demand{Outlines: numeral.Span{Least: 3 + o}} }, true},
		{"each outline", func(o float64) numeral.Demand { return numeral.Demand{EachOutline: numeral.Span{Most: 3 + o}} }, false},
	}
	for _, c := range cases {
		for _, off := range []float64{-nm, 0, nm} {
			keeps, _ := c.at(off).Keeps(n, three)
			assert.Equal(t, off == 0 || (off < 0) == c.up, keeps, "%s %g", c.name, off)
		}
	}
	n.StrokeThin = math.NaN()
	keeps, short := numeral.Demand{Stroke: numeral.Span{Least: 1}}.Keeps(n, nil)
	assert.False(t, keeps, "what is not measurable keeps nothing")
	assert.True(t, math.IsNaN(short))
}
