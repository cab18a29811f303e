package outline_test

import (
	"flag"
	"fmt"
	"math"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

var long = flag.Bool("long", false, "compare 2,000 outlined names with the other polygon library, not 87")

// lettersOf sets a name letter by letter, 60 mm high, on an arc for a radius
// over 0, with the spacing of the advances, and settles each letter.
func lettersOf(t *testing.T, e *outline.Engine, face *typeface.Face, text string, radius float64) []geom.Region {
	line, err := face.NewShaper().Shape(text, "")
	require.NoError(t, err)
	k := 60 / face.CapHeight()
	var out []geom.Region
	for _, g := range line.Glyphs {
		m := geom.Translate(g.X, g.Y).Then(geom.Scale(k, k))
		if radius > 0 {
			middle := g.X + g.Advance/2
			turn := (line.Advance/2 - middle) * k / radius
			m = geom.Translate(g.X-middle, g.Y).Then(geom.Scale(k, k)).Then(geom.Translate(0, radius)).Then(geom.Rotate(turn))
		}
		letter, err := e.Union(face.Outline(g.ID).Transform(m).Flatten(outline.Tolerance))
		require.NoError(t, err)
		out = append(out, letter)
	}
	return out
}

// polygons turns a settled region into the other library's, each hole in the
// smallest outer ring around it.
func polygons(r geom.Region) sf.Geometry {
	var outer, holes []geom.Ring
	for _, ring := range r {
		if ring.Area() > 0 {
			outer = append(outer, ring)
		} else {
			holes = append(holes, ring)
		}
	}
	rings := make([][]sf.LineString, len(outer))
	for i, ring := range outer {
		rings[i] = []sf.LineString{closed(ring)}
	}
	for _, hole := range holes {
		best, area := -1, math.Inf(1)
		for i, ring := range outer {
			if a := ring.Area(); a < area && around(ring, hole) {
				best, area = i, a
			}
		}
		rings[best] = append(rings[best], closed(hole))
	}
	out := make([]sf.Polygon, len(rings))
	for i := range rings {
		out[i] = sf.NewPolygon(rings[i])
	}
	return sf.NewMultiPolygon(out).AsGeometry()
}

// around reports whether the middle of an edge of the hole lies inside the
// ring; corners may touch it.
func around(ring, hole geom.Ring) bool {
	return geom.Region{ring}.Contains(hole[0].Lerp(hole[1], 0.5))
}

func closed(ring geom.Ring) sf.LineString {
	xy := make([]float64, 0, 2*len(ring)+2)
	for _, p := range append(ring[:len(ring):len(ring)], ring[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return sf.NewLineString(sf.NewSequence(xy, sf.DimXY))
}

// TestUnionAgreesWithAnotherLibrary outlines every letter of a name by itself,
// so that neighbours run into each other, and merges them twice: here, and with
// github.com/peterstace/simplefeatures, an independent polygon library that
// works in floating point. The area of both must be the same but for the grid.
// The same name outlined as a whole must have that area too, but for the edges
// that its round corners are drawn with.
func TestUnionAgreesWithAnotherLibrary(t *testing.T) {
	faces := []string{"graduate", "anton", "oswald", "yellowtail"}
	radii := []float64{0, 250, 400, 600, 900}
	var e outline.Engine
	step, compared, merged := 23, 0, 0
	if *long {
		step = 1
	}
	worst, worstWhole := 0.0, 0.0
	for i := 0; i < 100*len(faces)*len(radii); i += step {
		text := names()[i%100]
		face, err := typeface.Embedded(faces[i/100%len(faces)])
		require.NoError(t, err)
		name := fmt.Sprintf("%s in %s", text, face.ID())
		letters := lettersOf(t, &e, face, text, radii[i/400])
		distance, join := []float64{1.5, 3, 6}[i%3], outline.Join(i%2)
		var rings, ink geom.Region
		var parts []sf.Geometry
		for _, letter := range letters {
			fat, err := e.Offset(letter, distance, join)
			require.NoError(t, err, name)
			rings, ink, parts = append(rings, fat...), append(ink, letter...), append(parts, polygons(fat))
			require.InDelta(t, fat.Area(), parts[len(parts)-1].Area(), 1e-6, name)
		}
		theirs, err := sf.UnionMany(parts)
		require.NoError(t, err, name)
		ours, err := e.Union(rings)
		require.NoError(t, err, name)
		worst = math.Max(worst, math.Abs(ours.Area()-theirs.Area()))
		assert.InDelta(t, theirs.Area(), ours.Area(), 0.01, name)
		settled, err := e.Union(ink)
		require.NoError(t, err, name)
		whole, err := e.Offset(settled, distance, join)
		require.NoError(t, err, name)
		if join == outline.Round {
			share := math.Abs(whole.Area()-theirs.Area()) / theirs.Area()
			worstWhole = math.Max(worstWhole, share)
			assert.Less(t, share, 2e-4, name)
		}
		compared++
		if rings.Area() > ours.Area()+1 {
			merged++
		}
	}
	t.Logf("%d names, %d with letters that merge: worst difference %.2g mm², whole name %.2g of the area", compared, merged, worst, worstWhole)
	assert.Greater(t, merged, compared/4, "too few names whose letters merge")
}
