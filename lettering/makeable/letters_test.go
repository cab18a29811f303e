package makeable_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/geom"
	"yokeline/lettering/makeable"
	"yokeline/lettering/outline"
)

// count returns the shapes and the holes of a region that are larger than a
// crumb, mm².
func count(r geom.Region, crumb float64) (shapes, holes int) {
	for _, ring := range r {
		switch a := ring.Area(); {
		case a > crumb:
			shapes++
		case a < -crumb:
			holes++
		}
	}
	return shapes, holes
}

// less is a little under half a width. Round joins of an offset may lie outside
// by the outline's tolerance.
func less(width float64) float64 { return math.Max(0, 0.48*width-outline.Tolerance) }

func grown(t *testing.T, r geom.Region, d float64) geom.Region {
	out, err := outline.Offset(r, d, outline.Round)
	require.NoError(t, err)
	return out
}

// TestGrowingAndShrinkingAgree holds the measures of real letters against
// offsets, which know nothing of walls: shrunk by a little less than half the
// thinnest stroke nothing breaks or vanishes, grown by a little less than half
// the smallest opening nothing fuses or closes; and by a little more than half
// the gap two shapes fuse.
func TestGrowingAndShrinkingAgree(t *testing.T) {
	texts := []string{"HAMBURGEFONTSIV", "WOJCKIDXYQLPZ", "MÅÑŠ8 6905", "aegknrstz"}
	layers := 0
	for _, e := range fonts.Catalogue() {
		for i, text := range texts {
			if i == 3 && e.Caps {
				continue
			}
			_, layer := set(t, e.ID, text, 50)
			if i%2 == 1 {
				layer = grown(t, layer, 1.5)
			}
			checkByOffsets(t, e.ID+" "+text, layer)
			layers++
		}
	}
	t.Logf("%d layers", layers)
	assert.Greater(t, layers, 50)
}

func checkByOffsets(t *testing.T, name string, layer geom.Region) {
	r, err := makeable.Measure(layer, makeable.Options{})
	require.NoError(t, err)
	require.True(t, r.Stroke.Found(), name)
	shapes, holes := count(layer, 0)
	got, open := count(grown(t, layer, -less(r.Stroke.Width)), 0)
	assert.Equal(t, fmt.Sprint(shapes, holes), fmt.Sprint(got, open), "%s: shrunk by stroke %.2f at %v", name, r.Stroke.Width, r.Stroke.From)
	const crumb = 0.02 // a round crotch may close with a speck of field left in it
	least := math.Inf(1)
	for _, s := range []makeable.Spot{r.Gap, r.Counter} {
		if s.Found() {
			least = math.Min(least, s.Width)
		}
	}
	require.False(t, math.IsInf(least, 1), name)
	shapes, holes = count(layer, crumb)
	got, open = count(grown(t, layer, less(least)), crumb)
	assert.Equal(t, fmt.Sprint(shapes, holes), fmt.Sprint(got, open), "%s: grown by opening %.2f, counter at %v", name, least, r.Counter.From)
	if r.Gap.Found() {
		got, _ = count(grown(t, layer, 0.505*r.Gap.Width+0.001), crumb)
		assert.Less(t, got, shapes, "%s: fused by gap %.2f", name, r.Gap.Width)
	}
}

func TestLettersNameTheirPlaces(t *testing.T) {
	letters, ink := set(t, "graduate", "ROŻEK", 50)
	r, err := makeable.Measure(ink, makeable.Options{Letters: letters})
	require.NoError(t, err)
	assert.Equal(t, "Ż Ż", r.Gap.Letter+" "+r.Gap.Other, "the composed dot is the nearest shape of its own letter")
	assert.Equal(t, 2, r.Gap.Index)
	assert.InDelta(t, 61*50/750.0, r.Gap.Width, 0.001, "its clearance in the face, scaled")
}

// Of Graduate's H the serifs are 80 units high and the stems 92; between the
// serifs of the two stems is a bay of 168 (its outline: 750 high, so 0.1 mm a
// unit at 75 mm).
func TestAFaceMeasuresAsItIsDrawn(t *testing.T) {
	_, ink := set(t, "graduate", "H", 75)
	r, err := makeable.Measure(ink, makeable.Options{})
	require.NoError(t, err)
	assert.InDelta(t, 8, r.Stroke.Width, 0.001)
	assert.InDelta(t, 16.8, r.Counter.Width, 0.001)
	assert.False(t, r.Gap.Found())
}
