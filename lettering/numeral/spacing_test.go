package numeral_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
)

// sides flattens a path within 0.002 mm into its straight sides, and leaves out
// those that lie beyond what is looked at.
func sides(p geom.Path, from, to float64) (out [][2]geom.Point) {
	for _, ring := range p.Flatten(0.002) {
		for i, a := range ring {
			if b := ring[(i+1)%len(ring)]; math.Max(a.X, b.X) > from && math.Min(a.X, b.X) < to {
				out = append(out, [2]geom.Point{a, b})
			}
		}
	}
	return out
}

func toSide(p geom.Point, s [2]geom.Point) float64 {
	d := s[1].Sub(s[0])
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = math.Max(0, math.Min(1, p.Sub(s[0]).Dot(d)/l))
	}
	return p.Sub(s[0].Lerp(s[1], t)).Norm()
}

// planeGap is the smallest distance between the sides of two inks that do not
// cross, up to 20 mm: that of an end of one to the other.
func planeGap(a, b geom.Path) float64 {
	const most = 20
	best := float64(most)
	as, bs := sides(a, b.Bounds().Min.X-most, math.Inf(1)), sides(b, math.Inf(-1), a.Bounds().Max.X+most)
	for _, pair := range [][2][][2]geom.Point{{as, bs}, {bs, as}} {
		for _, s := range pair[0] {
			for _, t := range pair[1] {
				if math.Min(t[0].X, t[1].X)-best > s[0].X || math.Max(t[0].X, t[1].X)+best < s[0].X ||
					math.Min(t[0].Y, t[1].Y)-best > s[0].Y || math.Max(t[0].Y, t[1].Y)+best < s[0].Y {
					continue
				}
				best = math.Min(best, toSide(s[0], t))
			}
		}
	}
	return best
}

// TestEveryPairOfDigitsOfEveryFaceHasTheGapAsked: 11 and 88 alike.
func TestEveryPairOfDigitsOfEveryFaceHasTheGapAsked(t *testing.T) {
	worst, where := 0.0, ""
	for _, e := range fonts.Catalogue() {
		sizer := numeral.NewSizer()
		for pair := range 100 {
			r := request(t, e.ID, fmt.Sprintf("%02d", pair))
			n, err := sizer.Number(r)
			require.NoError(t, err)
			digits := parts(t, r.Face, n)
			if off := math.Abs(planeGap(digits[0], digits[1]) - 12); off > worst {
				worst, where = off, e.ID+" "+r.Text
			}
			assert.InDelta(t, 12, n.Gap, 1e-9)
		}
	}
	t.Logf("worst difference %.5f mm, %s", worst, where)
	assert.Less(t, worst, 0.01)
}

// roomOf is the rectangle that a 1 of full width takes, from the boxes of the
// ten digits alone.
func roomOf(t *testing.T, r numeral.Request, one geom.Path) geom.Path {
	box, scale := one.Bounds(), 0.0
	widest := digitBox(t, r.Face, '1').Width()
	scale = box.Width() / widest
	for _, d := range "023456789" {
		widest = math.Max(widest, digitBox(t, r.Face, d).Width())
	}
	x, half := box.Center().X, widest*scale/2
	return geom.Region{{
		{X: x - half, Y: box.Min.Y}, {X: x + half, Y: box.Min.Y}, {X: x + half, Y: box.Max.Y}, {X: x - half, Y: box.Max.Y},
	}}.Path()
}

func TestAOneOfFullWidthStandsInTheRoomOfTheWidestDigit(t *testing.T) {
	sizer := numeral.NewSizer()
	for _, id := range []string{"graduate", "oswald", "league-gothic", "alfa-slab-one"} {
		for _, text := range []string{"17", "71", "11", "101", "10"} {
			r := request(t, id, text)
			r.Ones = numeral.FullWidth
			n, err := sizer.Number(r)
			require.NoError(t, err)
			digits := parts(t, r.Face, n)
			for i := range digits {
				if text[i] == '1' {
					digits[i] = roomOf(t, r, digits[i])
				}
			}
			for i := 1; i < len(digits); i++ {
				assert.InDelta(t, 12, planeGap(digits[i-1], digits[i]), 0.01, "%s %s", id, text)
			}
			assert.InDelta(t, 0, n.Ink().Bounds().Center().X, 1e-9, "the ink is what is centred")
			r.Ones = numeral.OwnWidth
			own, err := sizer.Number(r)
			require.NoError(t, err)
			assert.Greater(t, n.InkWidth, own.InkWidth, "%s %s", id, text)
		}
	}
}

func TestFullWidthIsOnlyAboutOnesAmongOthers(t *testing.T) {
	sizer := numeral.NewSizer()
	for _, text := range []string{"1", "7", "27", "80"} {
		r := request(t, "graduate", text)
		own, err := sizer.Number(r)
		require.NoError(t, err)
		r.Ones = numeral.FullWidth
		full, err := sizer.Number(r)
		require.NoError(t, err)
		assert.Equal(t, own.InkWidth, full.InkWidth, text)
		assert.Equal(t, own.Ink(), full.Ink(), text)
	}
	assert.Equal(t, "own width", numeral.OwnWidth.String())
	assert.Equal(t, "full width", numeral.FullWidth.String())
}
