package weight_test

import (
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

func embedded(t testing.TB, id string) *typeface.Face {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	return face
}

func digit(t testing.TB, face *typeface.Face, d rune) uint32 {
	id, err := face.Digit(d)
	require.NoError(t, err)
	return id
}

func pathOf(t testing.TB, c *weight.Cut, id uint32) geom.Path {
	path, err := c.Path(id)
	require.NoError(t, err)
	return path
}

func TestAPlainCutIsTheFace(t *testing.T) {
	face := embedded(t, "oswald")
	c, err := weight.Embolden(face, 0)
	require.NoError(t, err)
	id := digit(t, face, '8')
	assert.Equal(t, face.Outline(id), pathOf(t, c, id))
	assert.Equal(t, face.CapHeight(), c.CapHeight())
	assert.Zero(t, c.Amount())
	assert.Same(t, face, c.Face())
}

func TestEmboldeningGrowsEverySideByTheAmount(t *testing.T) {
	for _, id := range []string{"graduate", "oswald", "alfa-slab-one"} {
		face := embedded(t, id)
		amount := face.UnitsPerEm() / 50
		c, err := weight.Embolden(face, amount)
		require.NoError(t, err)
		assert.InDelta(t, face.CapHeight()+2*amount, c.CapHeight(), 0.01, id)
		for d := '0'; d <= '9'; d++ {
			glyph := digit(t, face, d)
			was, is := face.Bounds(glyph), pathOf(t, c, glyph).Bounds()
			near := 1e-4 * face.UnitsPerEm() // curves are flattened
			// A mitred tip may stand out of the grown box, never short of it.
			tip := (outline.MitreLimit - 1) * amount
			for what, side := range map[string][2]float64{
				"left": {was.Min.X, is.Min.X}, "foot": {was.Min.Y, is.Min.Y},
				"right": {-was.Max.X - 2*amount, -is.Max.X}, "head": {-was.Max.Y - 2*amount, -is.Max.Y},
			} {
				assert.LessOrEqual(t, side[1], side[0]+near, "%s %c, %s", id, d, what)
				assert.GreaterOrEqual(t, side[1], side[0]-tip-near, "%s %c, %s", id, d, what)
			}
		}
		flat := embedded(t, "graduate")
		bold, err := weight.Embolden(flat, 10)
		require.NoError(t, err)
		box := pathOf(t, bold, digit(t, flat, '8')).Bounds()
		was := flat.Bounds(digit(t, flat, '8'))
		assert.InDelta(t, was.Min.X, box.Min.X, 0.01, "keeps its place after its origin")
		assert.InDelta(t, was.Min.Y, box.Min.Y, 0.01, "keeps its foot")
		assert.InDelta(t, was.Width()+20, box.Width(), 0.01)
		assert.InDelta(t, was.Height()+20, box.Height(), 0.01)
	}
}

// TestAreaGrowsBySteinersFormula holds the grown 1 of Graduate, whose corners
// are all mitred, against A + d·P + d²·Σ tan(turn/2), Steiner's formula with
// mitred corners; the corners that the offset cuts into count with their sign.
func TestAreaGrowsBySteinersFormula(t *testing.T) {
	face := embedded(t, "graduate")
	settled, err := outline.Union(face.Outline(digit(t, face, '1')).Flatten(0.01))
	require.NoError(t, err)
	for _, d := range []float64{2, 5, 10} {
		want := settled.Area() + d*settled.Perimeter()
		for _, ring := range settled {
			for i, p := range ring {
				before, after := p.Sub(ring[(i+len(ring)-1)%len(ring)]), ring[(i+1)%len(ring)].Sub(p)
				turn := math.Atan2(before.Cross(after), before.Dot(after))
				want += d * d * math.Tan(turn/2)
			}
		}
		c, err := weight.Embolden(face, d)
		require.NoError(t, err)
		got := pathOf(t, c, digit(t, face, '1')).Flatten(0.01).Area()
		assert.InEpsilon(t, want, got, 1e-4, "%g units", d)
	}
}

func TestAnAmountThatIsNoWeightIsAnError(t *testing.T) {
	face := embedded(t, "oswald")
	for _, amount := range []float64{-1, math.NaN(), face.UnitsPerEm(), math.Inf(1)} {
		_, err := weight.Embolden(face, amount)
		assert.ErrorContains(t, err, "cannot be emboldened", "%g", amount)
	}
}

func TestACutIsSharedByGoroutines(t *testing.T) {
	face := embedded(t, "oswald")
	c, err := weight.Embolden(face, 20)
	require.NoError(t, err)
	var group sync.WaitGroup
	got := make([]geom.Path, 4)
	for i := range got {
		group.Go(func() {
			for d := '9'; d >= '0'; d-- {
				id, _ := face.Digit(d)
				got[i], _ = c.Path(id)
			}
		})
	}
	group.Wait()
	for _, path := range got {
		assert.Equal(t, got[0], path)
	}
}

func TestTheLightestWeightIsTheFirstThatDoes(t *testing.T) {
	for _, id := range []string{"archivo", "saira"} {
		for _, set := range []weight.Set{weight.Digits, weight.Capitals, weight.Letters} {
			const share = 0.09
			face := embedded(t, id)
			wght, ok, err := weight.Lightest(face, set, share)
			require.NoError(t, err)
			require.True(t, ok)
			at := func(value float64) float64 {
				made, err := face.Instance(map[string]float64{"wght": value})
				require.NoError(t, err)
				thin, err := weight.Thinnest(weight.Plain(made), set)
				require.NoError(t, err)
				return thin
			}
			assert.GreaterOrEqual(t, at(wght), share, "%s %d: wght %g", id, set, wght)
			assert.Less(t, at(wght-1), share, "%s %d: wght %g", id, set, wght-1)
		}
	}
}

func TestAWeightKeepsTheOtherAxes(t *testing.T) {
	face, err := embedded(t, "archivo").Instance(map[string]float64{"wdth": 70, "wght": 100})
	require.NoError(t, err)
	narrow, ok, err := weight.Lightest(face, weight.Digits, 0.1)
	require.NoError(t, err)
	require.True(t, ok)
	wide, _, err := weight.Lightest(embedded(t, "archivo"), weight.Digits, 0.1)
	require.NoError(t, err)
	assert.NotEqual(t, wide, narrow)
}

func TestTooMuchIsSaidNotMade(t *testing.T) {
	wght, ok, err := weight.Lightest(embedded(t, "archivo"), weight.Digits, 0.6)
	require.NoError(t, err)
	assert.False(t, ok)
	assert.Equal(t, 900.0, wght, "the heaviest")
	wght, ok, err = weight.Lightest(embedded(t, "graduate"), weight.Digits, 0.05)
	require.NoError(t, err)
	assert.False(t, ok)
	assert.True(t, math.IsNaN(wght), "no weight axis")
	face := embedded(t, "graduate")
	amount, ok, err := weight.EmboldenTo(face, weight.Digits, 0.9, face.CapHeight())
	require.NoError(t, err)
	assert.False(t, ok)
	assert.Zero(t, amount)
}

func BenchmarkLightest(b *testing.B) {
	face := embedded(b, "archivo")
	for b.Loop() {
		_, _, err := weight.Lightest(face, weight.Capitals, 0.12)
		require.NoError(b, err)
	}
}

func BenchmarkEmboldenedLetter(b *testing.B) {
	face := embedded(b, "graduate")
	id := digit(b, face, '8')
	for b.Loop() {
		c, err := weight.Embolden(face, 20)
		require.NoError(b, err)
		_, err = c.Path(id)
		require.NoError(b, err)
	}
}
