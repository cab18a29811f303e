package tail_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/tail"
)

const height = 60.0

// words end in a bowl, an exit stroke, a descender, a terminal; some have
// descenders that the tail passes.
var words = []string{"Herons", "Otters", "Larks", "Badgers", "Sturgeon", "Rail", "Ducky", "Elk", "Wolf", "Crane", "Jazz"}

// everyScript calls f with every script and every few words.
func everyScript(t *testing.T, few int, f func(t *testing.T, ink geom.Region)) {
	for i, face := range scripts {
		for k, word := range words {
			if (i+k)%(few*min(dear, 2)) != 0 {
				continue
			}
			t.Run(face+"/"+word, func(t *testing.T) { f(t, script(t, face, word, height)) })
		}
	}
}

func outers(r geom.Region) []geom.Ring {
	var out []geom.Ring
	for _, ring := range r {
		if ring.Area() > 0 {
			out = append(out, ring)
		}
	}
	return out
}

// offTo returns the distance of p from the edge of the region, by brute force.
func offTo(p geom.Point, r geom.Region) float64 {
	best := math.Inf(1)
	for _, ring := range r {
		for i, a := range ring {
			d := ring[(i+1)%len(ring)].Sub(a)
			t := math.Max(0, math.Min(1, p.Sub(a).Dot(d)/d.Dot(d)))
			best = math.Min(best, p.Sub(a.Add(d.Mul(t))).Norm())
		}
	}
	return best
}

// points of a ring, at most step apart.
func points(ring geom.Ring, step float64) []geom.Point {
	var out []geom.Point
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		n := math.Ceil(b.Sub(a).Norm() / step)
		for k := range int(n) {
			out = append(out, a.Lerp(b, float64(k)/n))
		}
	}
	return out
}

func TestTailSharesTheContourOfOneLetter(t *testing.T) {
	everyScript(t, 2, func(t *testing.T, ink geom.Region) {
		drawn, err := tail.Draw(ink, height, tail.Default())
		require.NoError(t, err)
		before, after := outers(ink), outers(drawn.Joined)
		require.Len(t, after, len(before))
		require.Len(t, drawn.Joined, len(ink), "a counter was closed or filled")
		areas := map[float64]int{}
		for _, ring := range before {
			areas[ring.Area()]++
		}
		changed := 0
		for _, ring := range after {
			if areas[ring.Area()]--; areas[ring.Area()] < 0 {
				changed++
				assert.InDelta(t, 0, offTo(drawn.Foot, geom.Region{ring}), 0.2, "grows out of another contour")
			}
		}
		assert.Equal(t, 1, changed)
		again, err := outline.Union(drawn.Joined)
		require.NoError(t, err)
		assert.Equal(t, again, drawn.Joined)
		assert.Equal(t, drawn.Joined.Bounds(), drawn.Bounds)
	})
}

func TestTailDoesNotCrossItself(t *testing.T) {
	everyScript(t, 6, func(t *testing.T, ink geom.Region) {
		for _, v := range variants() {
			p := tail.Default()
			v.apply(&p)
			p.Length.Share += 0.3
			drawn, err := tail.Draw(ink, height, p)
			require.NoError(t, err, v.what)
			flat := drawn.Edge.Flatten(0.01)
			require.Len(t, drawn.Alone, 1)
			// Where a piece lapped over, the winding rule would count it once and
			// the signed area twice.
			assert.InDelta(t, flat.Area(), drawn.Alone.Area(), 1e-4*flat.Perimeter(), v.what)
		}
	})
}

func TestThicknessRunsFromTheStrokeOverFullToTheEnd(t *testing.T) {
	p := tail.Default()
	everyScript(t, 4, func(t *testing.T, ink geom.Region) {
		drawn, err := tail.Draw(ink, height, p)
		require.NoError(t, err)
		full := p.Thickness.Share * height
		least, most := math.Inf(1), 0.0
		along := drawn.Axis.Flatten(0.01)[0]
		for _, at := range along[len(along)/10:] {
			thick := 2 * offTo(at, drawn.Alone)
			least, most = math.Min(least, thick), math.Max(most, thick)
		}
		assert.InDelta(t, full, most, 0.02*full)
		end := (1 - p.Taper) * full
		assert.InDelta(t, end, 2*offTo(along[len(along)-1], drawn.Alone), 0.02*full)
		assert.InDelta(t, end, least, 0.02*full, "thinner on its way than at its end")
		none, err := outline.Offset(drawn.Alone, -0.51*full, outline.Round)
		require.NoError(t, err)
		assert.Empty(t, none, "thicker than asked")
	})
}

// wayBack returns the points of the tail well left of the turn.
func wayBack(drawn tail.Tail) []geom.Point {
	var out []geom.Point
	for _, p := range points(drawn.Alone[0], 1) {
		if p.X < drawn.Foot.X-0.5*height {
			out = append(out, p)
		}
	}
	return out
}

func TestGapIsKeptAndNotExceeded(t *testing.T) {
	for _, gap := range []float64{5, 12} {
		p := tail.Default()
		p.Gap = tail.MM(gap)
		p.Length = tail.Share(1)
		everyScript(t, 4, func(t *testing.T, ink geom.Region) {
			drawn, err := tail.Draw(ink, height, p)
			if err != nil {
				var room *tail.RoomError
				require.ErrorAs(t, err, &room)
				return
			}
			least := math.Inf(1)
			for _, q := range wayBack(drawn) {
				require.False(t, ink.Contains(q))
				least = math.Min(least, offTo(q, ink))
			}
			assert.GreaterOrEqual(t, least, gap-0.03)
			assert.GreaterOrEqual(t, drawn.Gap, gap)
			assert.GreaterOrEqual(t, least, drawn.Gap-0.03)
		})
	}
	ink := script(t, "yellowtail", "Badgers", height)
	drawn, err := tail.Draw(ink, height, tail.Default())
	require.NoError(t, err)
	assert.InDelta(t, tail.Default().Gap.Share*height, drawn.Gap, 0.05, "lower than the gap asks for")
}

func TestLengthIsMeasuredFromTheRightEndOfTheScript(t *testing.T) {
	everyScript(t, 6, func(t *testing.T, ink geom.Region) {
		for _, length := range []tail.Measure{tail.Share(0.95), tail.Share(1.2), tail.MM(210)} {
			p := tail.Default()
			p.Length = length
			drawn, err := tail.Draw(ink, height, p)
			require.NoError(t, err)
			box := ink.Bounds()
			assert.InDelta(t, box.Max.X-length.MM-length.Share*box.Width(), drawn.Alone.Bounds().Min.X, 0.02)
		}
	})
}

func TestTailScalesWithItsScript(t *testing.T) {
	for _, face := range scripts {
		ink := script(t, face, "Badgers", height)
		base, err := tail.Draw(ink, height, tail.Default())
		require.NoError(t, err)
		for _, k := range []float64{0.5, 2, 3.7} {
			scaled, err := tail.Draw(ink.Transform(geom.Scale(k, k)), k*height, tail.Default())
			require.NoError(t, err)
			require.Len(t, scaled.Edge, len(base.Edge))
			for i, s := range base.Edge.Transform(geom.Scale(k, k)) {
				for n, p := range s.P {
					assert.InDelta(t, 0, p.Sub(scaled.Edge[i].P[n]).Norm(), 2e-3*k*height)
				}
			}
			assert.InDelta(t, k*k*base.Joined.Area(), scaled.Joined.Area(), 1e-3*k*k*base.Joined.Area())
		}
	}
}

func TestSameInputSameTail(t *testing.T) {
	ink := script(t, "damion", "Sturgeon", height)
	kept := ink.Transform(geom.Identity())
	a, err := tail.Draw(ink, height, tail.Default())
	require.NoError(t, err)
	b, err := tail.Draw(ink, height, tail.Default())
	require.NoError(t, err)
	assert.Equal(t, a, b)
	assert.Equal(t, kept, ink, "the ink was changed")
}

func TestSlopeTurnsTheSweep(t *testing.T) {
	ink := script(t, "oleo-script", "Otters", height)
	for _, slope := range []float64{-4, 0, 6} {
		p := tail.Default()
		p.Slope, p.Bow, p.Curl = slope, 0, 0
		drawn, err := tail.Draw(ink, height, p)
		require.NoError(t, err)
		assert.InDelta(t, slope, drawn.Spot.Angle, 0.01)
	}
}

func TestAnyTailKeepsItsPromises(t *testing.T) {
	inks := map[string]geom.Region{}
	runs := 0
	rapid.Check(t, func(t *rapid.T) {
		face := rapid.SampledFrom(scripts).Draw(t, "face")
		word := rapid.StringMatching(`[A-Z][a-z]{3,4}`).Draw(t, "word")
		p := tail.Params{
			Length:    tail.Share(rapid.Float64Range(1.1, 1.6).Draw(t, "length")),
			Thickness: tail.Share(rapid.Float64Range(0.05, 0.35).Draw(t, "thickness")),
			Gap:       tail.Share(rapid.Float64Range(0.03, 0.3).Draw(t, "gap")),
			Curl:      rapid.Float64Range(-0.4, 1).Draw(t, "curl"),
			Taper:     rapid.Float64Range(0, 1).Draw(t, "taper"),
			Slope:     rapid.Float64Range(-2, 6).Draw(t, "slope"),
			Bow:       rapid.Float64Range(0, 30).Draw(t, "bow"),
		}
		if runs++; runs%dear != 0 {
			return
		}
		key := face + word
		if inks[key] == nil {
			ink, err := inkOf(face, word, height)
			if err != nil {
				t.Skip(err)
			}
			inks[key] = ink
		}
		ink := inks[key]
		drawn, err := tail.Draw(ink, height, p)
		if err != nil {
			var room *tail.RoomError
			require.ErrorAs(t, err, &room)
			return
		}
		require.Equal(t, len(outers(ink)), len(outers(drawn.Joined)))
		require.Len(t, drawn.Joined, len(ink))
		require.GreaterOrEqual(t, drawn.Gap, p.Gap.Share*height)
		require.Len(t, drawn.Alone, 1)
		flat := drawn.Edge.Flatten(0.01)
		require.InDelta(t, flat.Area(), drawn.Alone.Area(), 1e-4*flat.Perimeter())
		box := ink.Bounds()
		require.InDelta(t, box.Max.X-p.Length.Share*box.Width(), drawn.Alone.Bounds().Min.X, 0.02)
		none, err := outline.Offset(drawn.Alone, -0.52*p.Thickness.Share*height, outline.Round)
		require.NoError(t, err)
		require.Empty(t, none)
	})
}

func FuzzDraw(f *testing.F) {
	d := tail.Default()
	f.Add(d.Length.Share, d.Thickness.Share, d.Gap.Share, d.Curl, d.Taper, d.Slope, d.Bow)
	f.Add(0.0, math.NaN(), 1.0, -1.0, 1.0, math.Inf(1), 3.0)
	f.Add(1e9, 0.6, 2.0, 1.0, 0.0, -20.0, 40.0)
	ink := script(f, "yellowtail", "Rail", height)
	f.Fuzz(func(t *testing.T, length, thickness, gap, curl, taper, slope, bow float64) {
		p := tail.Params{Length: tail.Share(length), Thickness: tail.Share(thickness), Gap: tail.Share(gap), Curl: curl, Taper: taper, Slope: slope, Bow: bow}
		drawn, err := tail.Draw(ink, height, p)
		if err == nil && len(drawn.Joined) != len(ink) {
			t.Fatalf("%d rings of %d", len(drawn.Joined), len(ink))
		}
	})
}
