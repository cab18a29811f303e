package typeface_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/fonts"
	"yokeline/lettering/typeface"
)

func TestPenRunsThroughTheLine(t *testing.T) {
	names := []string{"WAVERLY", "O’NEIL", "MÜLLER", "Ẹ̀KỌ́"}
	for _, id := range []string{"oswald", "roboto-slab"} {
		shaper := embedded(t, id).NewShaper()
		for _, name := range names {
			line, err := shaper.Shape(name, "")
			require.NoError(t, err)
			pen := 0.0
			for _, g := range line.Glyphs {
				if !g.Mark {
					assert.Equal(t, pen, g.X, name)
				}
				pen += g.Advance
			}
			assert.Equal(t, pen, line.Advance)
		}
	}
}

func TestKerningIsOnAndLigaturesAreOff(t *testing.T) {
	shaper := embedded(t, "oswald").NewShaper()
	together, err := shaper.Shape("AV", "")
	require.NoError(t, err)
	a, _ := shaper.Shape("A", "")
	v, _ := shaper.Shape("V", "")
	assert.Less(t, together.Advance, a.Advance+v.Advance)
	for _, e := range fonts.Catalogue() {
		line, err := embedded(t, e.ID).NewShaper().Shape("ffi fl", "")
		require.NoError(t, err)
		assert.Len(t, line.Glyphs, 6, e.ID)
	}
}

func TestMarksRideOnTheirBase(t *testing.T) {
	line, err := embedded(t, "oswald").NewShaper().Shape("OỌ̀A", "")
	require.NoError(t, err)
	var marks, clusters []any
	for _, g := range line.Glyphs {
		marks, clusters = append(marks, g.Mark), append(clusters, g.Cluster)
	}
	assert.Equal(t, []any{false, false, true, false}, marks)
	assert.Equal(t, []any{0, 1, 1, 3}, clusters)
	assert.Zero(t, line.Glyphs[2].Advance)
}

func TestTextIsBroughtToNFC(t *testing.T) {
	shaper := embedded(t, "oswald").NewShaper()
	composed, err := shaper.Shape("NGUYỄN", "")
	require.NoError(t, err)
	apart, err := shaper.Shape("NGUYE\u0302\u0303N", "")
	require.NoError(t, err)
	assert.Equal(t, composed, apart)
}

func TestLanguageFormsAreUsed(t *testing.T) {
	// Turkish keeps the dot of i apart in small capitals and ligatures, so
	// Archivo has a form of its own; it must survive the conditional
	// alternates that are in force at Archivo's default weight.
	shaper := embedded(t, "archivo").NewShaper()
	plain, err := shaper.Shape("Dijk", "")
	require.NoError(t, err)
	turkish, err := shaper.Shape("Dijk", "tr")
	require.NoError(t, err)
	assert.NotEqual(t, plain.Glyphs[1].ID, turkish.Glyphs[1].ID)
	again, err := shaper.Shape("Dijk", "")
	require.NoError(t, err)
	assert.Equal(t, plain, again)
}

func TestConditionalAlternatesFollowTheInstance(t *testing.T) {
	face := embedded(t, "saira")
	shaper := face.NewShaper()
	light, err := shaper.Shape("Q", "")
	require.NoError(t, err)
	heavy, err := face.Instance(map[string]float64{"wght": 800})
	require.NoError(t, err)
	require.NoError(t, shaper.Use(heavy))
	bold, err := shaper.Shape("Q", "")
	require.NoError(t, err)
	assert.NotEqual(t, light.Glyphs[0].ID, bold.Glyphs[0].ID)
	require.NoError(t, shaper.Use(face))
	back, err := shaper.Shape("Q", "")
	require.NoError(t, err)
	assert.Equal(t, light, back)
}

func TestUseEqualsANewShaper(t *testing.T) {
	face := embedded(t, "archivo")
	shared := face.NewShaper()
	rapid.Check(t, func(t *rapid.T) {
		instance, err := face.Instance(map[string]float64{
			"wdth": rapid.Float64Range(62, 125).Draw(t, "wdth"),
			"wght": rapid.Float64Range(100, 900).Draw(t, "wght"),
		})
		require.NoError(t, err)
		require.NoError(t, shared.Use(instance))
		name := rapid.SampledFrom([]string{"AVATAR", "ŻÓŁĆ", "QUICK", "17"}).Draw(t, "name")
		want, err := instance.NewShaper().Shape(name, "")
		require.NoError(t, err)
		got, err := shared.Shape(name, "")
		require.NoError(t, err)
		require.Equal(t, want, got)
	})
}

func TestShaperRefusesAnotherFont(t *testing.T) {
	err := embedded(t, "oswald").NewShaper().Use(embedded(t, "anton"))
	assert.EqualError(t, err, "a shaper for oswald cannot shape in anton; make a new one")
}

func TestEdgesOfText(t *testing.T) {
	shaper := embedded(t, "oswald").NewShaper()
	line, err := shaper.Shape("", "")
	require.NoError(t, err)
	assert.Empty(t, line.Glyphs)
	line, err = shaper.Shape("A B", "")
	require.NoError(t, err)
	assert.True(t, shaper.Face().Bounds(line.Glyphs[1].ID).Empty())
	_, err = shaper.Shape(strings.Repeat("A", typeface.MaxRunes), "")
	require.NoError(t, err)
	_, err = shaper.Shape(strings.Repeat("A", typeface.MaxRunes+1), "")
	assert.ErrorContains(t, err, "longer than 1000 characters; shorten it")
	assert.Empty(t, shaper.Face().Outline(1<<20))
	assert.Zero(t, shaper.Face().Advance(1<<20))
}

func TestShapeIntoReusesTheLine(t *testing.T) {
	shaper := embedded(t, "oswald").NewShaper()
	var line typeface.Line
	require.NoError(t, shaper.ShapeInto(&line, "WOJCIECHOWSKI", ""))
	kept := &line.Glyphs[0]
	require.NoError(t, shaper.ShapeInto(&line, "TATE", ""))
	assert.Same(t, kept, &line.Glyphs[0])
	want, err := shaper.Shape("TATE", "")
	require.NoError(t, err)
	assert.Equal(t, want, line)
	require.Error(t, shaper.ShapeInto(&line, "山", ""))
	assert.Empty(t, line.Glyphs)
	assert.Zero(t, line.Advance)
}

// The totals were taken from HarfBuzz 6.0.0 and from the shaper's library in
// an earlier, separate measurement of these files, each name on its own.
func TestLineAdvanceEqualsEarlierMeasurement(t *testing.T) {
	const none = -1 // a glyph is missing
	for _, c := range []struct {
		id, axes string
		totals   [4]float64
	}{
		{"graduate", "-", [4]float64{3777, 3286, 2600, none}},
		{"quantico", "-", [4]float64{3739, 3168, 2516, none}},
		{"alfa-slab-one", "-", [4]float64{4324, 3710, 2596, 4936}},
		{"roboto-slab", "-", [4]float64{8279, 6855, 4348, 9033}},
		{"russo-one", "-", [4]float64{3900, 3370, 2245, none}},
		{"saira-stencil-one", "-", [4]float64{3809, 3221, 2292, 4031}},
		{"anton", "-", [4]float64{5591, 4612, 3713, 5760}},
		{"oswald", "-", [4]float64{3066, 2516, 1872, 3232}},
		{"barlow-condensed", "-", [4]float64{2608, 2269, 1628, 2878}},
		{"yellowtail", "-", [4]float64{7640, 6218, 2942, none}},
		{"damion", "-", [4]float64{7171, 7007, 3478, 7709}},
		{"oleo-script", "-", [4]float64{3616, 3099, 2056, none}},
		{"ibm-plex-sans", "-", [4]float64{3532, 3157, 2400, 3963}},
		{"league-gothic", "wdth=85", [4]float64{3256, 2739, 1987, 3482}},
		{"saira", "wght=800,wdth=62", [4]float64{2364, 1965, 1458, 2470}},
		{"archivo", "wght=800,wdth=70", [4]float64{3039, 2602, 1775, 3319}},
	} {
		shaper := faceOf(t, setting{c.id, c.axes, "und"}).NewShaper()
		for i, name := range []string{"AVATAR", "O’NEIL", "1740", "NGUYỄN"} {
			line, err := shaper.Shape(name, "")
			if c.totals[i] == none {
				var missing *typeface.MissingError
				require.ErrorAs(t, err, &missing, "%s %s", c.id, name)
				assert.Equal(t, 'Ễ', missing.Rune)
				continue
			}
			require.NoError(t, err)
			assert.Equal(t, c.totals[i], line.Advance, "%s %s", c.id, name)
		}
	}
}

// A font without glyph classes: the shaper takes the mark's advance away.
func TestMarksAreKnownWithoutGlyphClasses(t *testing.T) {
	data, err := os.ReadFile("testdata/boxes-kern.ttf")
	require.NoError(t, err)
	face, err := typeface.Open("boxes", data)
	require.NoError(t, err)
	line, err := face.NewShaper().Shape("H\u0301V", "")
	require.NoError(t, err)
	require.Len(t, line.Glyphs, 3)
	assert.Equal(t, []bool{false, true, false}, []bool{line.Glyphs[0].Mark, line.Glyphs[1].Mark, line.Glyphs[2].Mark})
}

func TestOddSpacesAreMadeFromThePlainOne(t *testing.T) {
	data, err := os.ReadFile("testdata/boxes-kern.ttf")
	require.NoError(t, err)
	face, err := typeface.Open("boxes", data)
	require.NoError(t, err)
	for _, space := range "\u00A0\u2009\u202F\u3000" {
		assert.True(t, face.Has(space), "%U", space)
		line, err := face.NewShaper().Shape("H"+string(space)+"H", "")
		require.NoError(t, err, "%U", space)
		assert.True(t, face.Bounds(line.Glyphs[1].ID).Empty(), "%U", space)
	}
	assert.False(t, face.Has('\u2011'))
	oswald := embedded(t, "oswald")
	assert.Equal(t, oswald.Has('\u2010'), oswald.Has('\u2011'))
}
