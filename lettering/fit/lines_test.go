package fit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

func TestTwoLinesStandAtOneHeightAndShareWhatTheWiderNeeds(t *testing.T) {
	r := request(t, "oswald", "HART-\nMALDONADO")
	r.Limit, r.Outlines = 0, nil
	plain := name(t, r)
	require.Equal(t, fit.Full, plain.Verdict)
	assert.InDelta(t, 1.3*r.Height, plain.Leading, 1e-9, "capitals with nothing over or under them")
	for limit := plain.InkWidth * 0.6; limit < plain.InkWidth; limit *= 1.1 {
		r.Limit = limit
		both := name(t, r)
		wide := r
		wide.Text = "MALDONADO"
		alone := name(t, wide)
		assert.Equal(t, alone.LetterHeight, both.LetterHeight)
		assert.Equal(t, alone.WidthScale, both.WidthScale)
		assert.Equal(t, alone.Tracking, both.Tracking)
		assert.Equal(t, alone.Verdict, both.Verdict)
		assert.InDelta(t, alone.InkWidth, both.InkWidth, 1e-9)
		assert.InDelta(t, both.InkWidth, both.Ink().Bounds().Width(), 1e-6, "one box covers both lines")
		assert.InDelta(t, both.InkHeight, both.Ink().Bounds().Height(), 1e-6)
		assert.InDelta(t, both.Leading+both.LetterHeight, both.InkHeight, 0.05*both.LetterHeight)
	}
}

func TestLinesOfAnArchAreConcentric(t *testing.T) {
	// A bar that stands in the middle of its line shows where the line stands.
	for _, shape := range []fit.Shape{fit.RadialArch, fit.RadialArchDown, fit.VerticalArch, fit.VerticalArchDown} {
		r := request(t, "oswald", "OIHIO\nOIHIO")
		r.Shape, r.Radius, r.Limit, r.Outlines = shape, 300, 0, nil
		both := name(t, r)
		one := r
		one.Text = "OIHIO"
		switch shape {
		case fit.RadialArch:
			one.Radius -= both.Leading
		case fit.RadialArchDown:
			one.Radius += both.Leading
		}
		want := name(t, one).Ink()
		ink := both.Ink()
		below := ink[len(ink)-len(want):]
		shift := below.Bounds().Min.Sub(want.Bounds().Min)
		assert.InDelta(t, -both.Leading, shift.Y, 1e-6, shape)
		assert.InDelta(t, want.Bounds().Width(), below.Bounds().Width(), 1e-6, shape)
		assert.InDelta(t, both.Apex, below.Bounds().Min.X+want.Bounds().Width()/2+name(t, one).Apex, 1e-6, "both circles have their middle under one x: %v", shape)
	}
}

func TestAccentsDescendersAndOutlinesPartTheLines(t *testing.T) {
	leading := func(text string, reach float64) float64 {
		r := request(t, "archivo", text)
		r.Limit, r.Outlines = 0, []outline.Layer{{Width: reach}}
		n := name(t, r)
		assert.GreaterOrEqual(t, n.SmallestGap, 0.0)
		return n.Leading / n.LetterHeight
	}
	assert.InDelta(t, 1.3, leading("HAL\nVOR", 1), 1e-9)
	assert.Greater(t, leading("HAL\nVÖR", 1), 1.3, "an accent on the lower line")
	assert.Greater(t, leading("gyp\nVOR", 1), 1.3, "descenders on the upper line")
	assert.Greater(t, leading("HAL\nVOR", 9), 1.3, "wide outlines")
}

func TestTwoLinesNeverMeet(t *testing.T) {
	f, faces := fit.NewFitter(), []*typeface.Face{embedded(t, "oswald"), embedded(t, "graduate"), embedded(t, "saira")}
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[A-Zgjpqy]{1,9}`)
		r := fit.Request{
			Text: word.Draw(t, "upper") + "\n" + word.Draw(t, "lower"), Face: rapid.SampledFrom(faces).Draw(t, "face"),
			Wdth: math.NaN(), Wght: math.NaN(), Height: rapid.Float64Range(15, 90).Draw(t, "height"), NoWaysOut: true,
			Limit: rapid.Float64Range(80, 350).Draw(t, "limit"), Shape: rapid.SampledFrom([]fit.Shape{0, 1, 2, 3, 4}).Draw(t, "shape"),
			Outlines: []outline.Layer{{Width: rapid.Float64Range(0, 8).Draw(t, "outline")}},
		}
		r.Ladder = fit.DefaultLadder(r.Height)
		if r.Shape != fit.Straight {
			r.Radius = rapid.Float64Range(250, 900).Draw(t, "radius")
		}
		n, err := f.Name(r)
		if err != nil {
			require.ErrorAs(t, err, new(*fit.TooTightError))
			return
		}
		if n.Verdict != fit.Over {
			require.LessOrEqual(t, n.InkWidth, r.Limit+1e-9)
		}
		box, reach := n.Ink().Bounds(), outline.Reach(r.Outlines)
		require.InDelta(t, n.InkWidth-2*reach, box.Width(), 0.02)
		require.InDelta(t, n.InkHeight-2*reach, box.Height(), 0.02)
		require.InDelta(t, 0, (box.Min.X+box.Max.X)/2, 0.01, "centred by its box")
		least := 2*reach + 0.05*n.LetterHeight
		if r.Shape == fit.VerticalArch || r.Shape == fit.VerticalArchDown {
			least = 0 // the lines keep their distance upright, not square to the curve
		}
		require.Greater(t, linesApart(n, r), least)
	})
}

// linesApart returns the distance of the two lines' letters, measured on points.
func linesApart(n fit.Name, r fit.Request) float64 {
	upper := r
	upper.Text, _, _ = strings.Cut(r.Text, "\n")
	upper.Shape, upper.Radius, upper.Limit = fit.Straight, 0, 0
	alone, _ := fit.Fit(upper)
	rings, first := n.Ink().Flatten(0.05), len(alone.Ink().Flatten(0.05))
	least := math.Inf(1)
	for _, a := range rings[:first] {
		for _, b := range rings[first:] {
			for _, p := range a {
				for _, q := range b {
					least = min(least, p.Sub(q).Norm())
				}
			}
		}
	}
	return least
}

func TestATextInThreeLinesIsRefused(t *testing.T) {
	r := request(t, "oswald", "DE\nLA\nCRUZ")
	_, err := fit.Fit(r)
	require.EqualError(t, err, `"DE\nLA\nCRUZ" has 3 lines; a name is set in one or two`)
	r.Text = "DE\n"
	_, err = fit.Fit(r)
	require.ErrorContains(t, err, "no letters")
}

func TestAnArchTooTightForTheLowerLineSaysWhichRadiusWouldDo(t *testing.T) {
	r := request(t, "oswald", "HALVORSEN\nHALVORSEN")
	r.Limit, r.Shape, r.Radius = 0, fit.RadialArch, 95
	_, err := fit.Fit(r)
	var tight *fit.TooTightError
	require.ErrorAs(t, err, &tight)
	r.Radius = tight.Smallest
	_, err = fit.Fit(r)
	require.NoError(t, err)
	r.Radius = tight.Smallest - 0.01
	_, err = fit.Fit(r)
	require.Error(t, err, "no smaller one does")
}

func TestRaisedLettersStandSmallAtTheCapLine(t *testing.T) {
	r := request(t, "oswald", "HHH")
	r.Limit, r.Outlines = 0, nil
	plain := name(t, r)
	r.Raised = []int{1}
	raised := name(t, r)
	boxes := contours(raised.Ink())
	require.Len(t, boxes, 3)
	assert.InDelta(t, r.Height, boxes[1].Max.Y, 1e-6, "its head is at the cap line")
	assert.InDelta(t, 0.72*r.Height, boxes[1].Height(), 1e-6)
	assert.InDelta(t, 0.72*boxes[0].Width(), boxes[1].Width(), 1e-6)
	assert.InDelta(t, 0, boxes[2].Min.Y, 1e-6)
	whole := contours(plain.Ink())
	advance := whole[1].Min.X - whole[0].Min.X
	assert.InDelta(t, 1.72*advance, boxes[2].Min.X-boxes[0].Min.X, 1e-6, "what follows moves up by what the letter lost")
	assert.InDelta(t, raised.InkWidth, raised.Ink().Bounds().Width(), 1e-6)
}

func TestAnAccentIsRaisedWithItsLetter(t *testing.T) {
	r := request(t, "oswald", "HẤH")
	r.Limit, r.Outlines, r.Raised = 0, nil, []int{1}
	alone := r
	alone.Text, alone.Raised = "Ấ", nil
	small, whole := name(t, r), name(t, alone)
	assert.InDelta(t, 0.28*r.Height+0.72*whole.Ink().Bounds().Max.Y, small.Ink().Bounds().Max.Y, 1e-6)
}

func TestRaisedLettersOfTheLowerLine(t *testing.T) {
	r := request(t, "oswald", "HH\nHH")
	r.Limit, r.Outlines, r.Raised = 0, nil, []int{4}
	n := name(t, r)
	boxes := contours(n.Ink())
	require.Len(t, boxes, 4)
	assert.InDelta(t, 0.72*r.Height, boxes[3].Height(), 1e-6)
	assert.InDelta(t, r.Height, boxes[2].Height(), 1e-6)
}

func contours(p geom.Path) []geom.Rect {
	var out []geom.Rect
	for _, ring := range p.Flatten(0.01) {
		box := geom.Rect{Min: ring[0], Max: ring[0]}
		for _, q := range ring {
			box.Min.X, box.Min.Y = min(box.Min.X, q.X), min(box.Min.Y, q.Y)
			box.Max.X, box.Max.Y = max(box.Max.X, q.X), max(box.Max.Y, q.Y)
		}
		out = append(out, box)
	}
	return out
}
