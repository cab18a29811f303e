package typeface_test

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"yokeline/fonts"
	"yokeline/lettering/typeface"
)

func embedded(t testing.TB, id string) *typeface.Face {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	return face
}

// Cap heights over the em, as measured earlier on the same files by raster.
func TestCapHeightIsTheInkOfH(t *testing.T) {
	for id, share := range map[string]float64{
		"graduate": 0.750, "quantico": 0.700, "alfa-slab-one": 0.778, "roboto-slab": 0.711, "anton": 0.859,
		"oswald": 0.810, "saira": 0.688, "yellowtail": 0.721, "damion": 0.705, "oleo-script": 0.710,
	} {
		face := embedded(t, id)
		assert.InDelta(t, share, face.CapHeight()/face.UnitsPerEm(), 0.0005, id)
		line, err := face.NewShaper().Shape("H", "")
		require.NoError(t, err)
		assert.Equal(t, face.Bounds(line.Glyphs[0].ID).Max.Y, face.CapHeight(), id)
		assert.Less(t, face.XHeight(), face.CapHeight(), id)
	}
}

func TestMissingCharacterIsNamedWithFacesThatHaveIt(t *testing.T) {
	_, err := embedded(t, "graduate").NewShaper().Shape("NGUYỄN", "vi")
	require.EqualError(t, err, `face graduate has no 'Ễ' (U+1EC4), needed for "NGUYỄN"; alfa-slab-one, roboto-slab and saira-stencil-one have it`)
	_, err = embedded(t, "oswald").NewShaper().Shape("山田", "ja")
	require.EqualError(t, err, `face oswald has no '山' (U+5C71), needed for "山田"; no embedded face has it; spell the name without it`)
	_, err = embedded(t, "oswald").NewShaper().Shape("A\u200BB", "")
	var missing *typeface.MissingError
	require.ErrorAs(t, err, &missing, "a character that draws nothing is not dropped in silence")
	assert.Equal(t, '\u200B', missing.Rune)
	_, err = embedded(t, "anton").NewShaper().Shape("bad \xff byte", "")
	require.ErrorAs(t, err, &missing)
	assert.Equal(t, '\uFFFD', missing.Rune)
}

func TestSuggestionsThatHaveTheWholeNameComeFirst(t *testing.T) {
	// Ш is in several faces, Ễ in fewer, both in Roboto Slab and Oswald alone.
	_, err := embedded(t, "graduate").NewShaper().Shape("ШỄ", "")
	var missing *typeface.MissingError
	require.ErrorAs(t, err, &missing)
	require.Len(t, missing.Suggest, 3)
	for _, id := range missing.Suggest[:2] {
		assert.True(t, embedded(t, id).Has('Ш') && embedded(t, id).Has('Ễ'), id)
	}
}

func TestApostropheLettersFallBackToTheirQuotationMarks(t *testing.T) {
	for _, pair := range [][2]rune{{'\u02BB', '\u2018'}, {'\u02BC', '\u2019'}} {
		without := 0
		for _, e := range fonts.Catalogue() {
			shaper := embedded(t, e.ID).NewShaper()
			letter, err := shaper.Shape("KA"+string(pair[0])+"A", "haw")
			require.NoError(t, err, e.ID)
			mark, err := shaper.Shape("KA"+string(pair[1])+"A", "haw")
			require.NoError(t, err, e.ID)
			if letter.Glyphs[2].ID == mark.Glyphs[2].ID {
				without++
				assert.Equal(t, mark, letter, e.ID)
			}
			assert.True(t, shaper.Face().Has(pair[0]))
		}
		assert.Positive(t, without, "no face tests the fallback for %U", pair[0])
		assert.Less(t, without, len(fonts.Catalogue()), "no face has %U itself", pair[0])
	}
}

func TestApostrophesStayAsTyped(t *testing.T) {
	shaper := embedded(t, "oswald").NewShaper()
	typewriter, err := shaper.Shape("'", "")
	require.NoError(t, err)
	curly, err := shaper.Shape("’", "")
	require.NoError(t, err)
	assert.NotEqual(t, typewriter.Glyphs[0].ID, curly.Glyphs[0].ID)
}

func TestHasSaysWhatShapeDraws(t *testing.T) {
	for _, e := range fonts.Catalogue() {
		face := embedded(t, e.ID)
		shaper := face.NewShaper()
		yes, no := 0, 0
		for _, span := range [][2]rune{{0x20, 0x7E}, {0xA0, 0x24F}, {0x370, 0x52F}, {0x1E00, 0x1EFF}, {0x2000, 0x2030}, {0x20A0, 0x2122}} {
			for r := span[0]; r <= span[1]; r++ {
				_, err := shaper.Shape("H"+string(r), "")
				has := face.Has([]rune(norm.NFC.String(string(r)))[0])
				require.Equal(t, has, err == nil, "%s %U: %v", e.ID, r, err)
				if has {
					yes++
				} else {
					no++
				}
			}
		}
		assert.Greater(t, yes, 190, e.ID)
		assert.Greater(t, no, 30, e.ID)
	}
}

func TestInstanceRefusesWhatTheAxesDoNotHave(t *testing.T) {
	saira := embedded(t, "saira")
	for _, c := range []struct {
		axes map[string]float64
		want string
	}{
		{map[string]float64{"wdth": 49.9}, "saira: axis wdth cannot be 49.9; it goes from 50 to 125"},
		{map[string]float64{"wght": 901}, "saira: axis wght cannot be 901; it goes from 100 to 900"},
		{map[string]float64{"wght": math.NaN()}, "saira: axis wght cannot be NaN; it goes from 100 to 900"},
		{map[string]float64{"slnt": 3, "opsz": 9}, `saira has no axis "opsz"; its axes: wght 100 to 900, wdth 50 to 125`},
	} {
		_, err := saira.Instance(c.axes)
		assert.EqualError(t, err, c.want)
	}
	_, err := embedded(t, "anton").Instance(map[string]float64{"wdth": 90})
	assert.EqualError(t, err, `anton has no axis "wdth"; its axes: none`)
}

func TestInstanceKeepsItsOwnMeasures(t *testing.T) {
	face := embedded(t, "league-gothic")
	same, err := face.Instance(nil)
	require.NoError(t, err)
	assert.Same(t, face, same)
	same, err = face.Instance(map[string]float64{"wdth": 100})
	require.NoError(t, err)
	assert.Same(t, face, same, "the default, asked for by value")
	narrow, err := face.Instance(map[string]float64{"wdth": 75})
	require.NoError(t, err)
	again, err := narrow.Instance(map[string]float64{"wdth": 75})
	require.NoError(t, err)
	assert.Same(t, narrow, again)
	assert.Equal(t, map[string]float64{"wdth": 75}, narrow.Settings())
	assert.Equal(t, []typeface.Axis{{Tag: "wdth", Min: 75, Default: 100, Max: 100}}, narrow.Axes())
	assert.Empty(t, embedded(t, "oswald").Settings())
	id, err := face.Digit('8')
	require.NoError(t, err)
	assert.Less(t, narrow.Bounds(id).Width(), face.Bounds(id).Width())
	assert.Less(t, narrow.Advance(id), face.Advance(id))
	assert.Equal(t, face.Digest(), narrow.Digest())
}

func TestInstancesAreBounded(t *testing.T) {
	face := embedded(t, "saira")
	first, err := face.Instance(map[string]float64{"wdth": 60})
	require.NoError(t, err)
	for i := range 400 {
		_, err := face.Instance(map[string]float64{"wdth": 61 + float64(i)/10})
		require.NoError(t, err)
	}
	again, err := face.Instance(map[string]float64{"wdth": 60})
	require.NoError(t, err)
	assert.NotSame(t, first, again, "the oldest was let go")
	assert.Equal(t, first.CapHeight(), again.CapHeight())
}

func TestDigitsAreTheFacesOwnButForGraduatesZero(t *testing.T) {
	for _, e := range fonts.Catalogue() {
		face := embedded(t, e.ID)
		shaper := face.NewShaper()
		for d := '0'; d <= '9'; d++ {
			id, err := face.Digit(d)
			require.NoError(t, err)
			line, err := shaper.Shape(string(d), "")
			require.NoError(t, err)
			assert.Equal(t, e.Zero != 0 && d == '0', id != line.Glyphs[0].ID, "%s %c", e.ID, d)
			assert.Equal(t, line.Advance, face.Advance(id), "%s %c", e.ID, d)
			for _, a := range face.Axes() {
				odd, err := face.Instance(map[string]float64{a.Tag: a.Min + 0.377*(a.Max-a.Min)})
				require.NoError(t, err)
				require.NoError(t, shaper.Use(odd))
				line, err := shaper.Shape(string(d), "")
				require.NoError(t, err)
				assert.Equal(t, line.Advance, odd.Advance(line.Glyphs[0].ID), "%s %c", e.ID, d)
				require.NoError(t, shaper.Use(face))
			}
		}
	}
	graduate := embedded(t, "graduate")
	id, err := graduate.Digit('0')
	require.NoError(t, err)
	line, err := graduate.NewShaper().Shape("0O", "")
	require.NoError(t, err)
	assert.Equal(t, line.Glyphs[1].ID, id)
	assert.Equal(t, graduate.Bounds(line.Glyphs[0].ID), graduate.Bounds(id), "the O is the 0 without its dot, in the same box")
	_, err = graduate.Digit('x')
	assert.EqualError(t, err, "'x' is not a digit; a number on a uniform is made of 0 to 9")
}

func TestUnknownFaceNamesTheNearest(t *testing.T) {
	for id, near := range map[string]string{"oswold": "oswald", "graduat": "graduate", "plex": "alfa-slab-one", "": "graduate", "Saira": "saira"} {
		_, err := typeface.Embedded(id)
		require.Error(t, err)
		if id != "plex" && id != "" {
			assert.Contains(t, err.Error(), near, id)
		}
		assert.Contains(t, err.Error(), fmt.Sprintf("there is no face %q; nearest: ", id))
	}
}

func TestFaceIsSafeForConcurrentUse(t *testing.T) {
	library := typeface.NewLibrary()
	var group sync.WaitGroup
	lines := make([]string, 8)
	for i := range lines {
		group.Go(func() {
			face, err := library.Face("saira")
			if err != nil {
				return
			}
			var out strings.Builder
			shaper := face.NewShaper()
			for k := range 40 {
				instance, err := face.Instance(map[string]float64{"wdth": 70 + float64(k%10), "wght": 700})
				if err != nil || shaper.Use(instance) != nil {
					return
				}
				line, err := shaper.Shape("QUAYSIDE 17", "")
				fmt.Fprint(&out, line.Advance, err)
				for _, g := range line.Glyphs {
					fmt.Fprint(&out, instance.Outline(g.ID).Bounds(), instance.Advance(g.ID))
				}
			}
			lines[i] = out.String()
		})
	}
	group.Wait()
	require.NotEmpty(t, lines[0])
	for _, line := range lines[1:] {
		assert.Equal(t, lines[0], line)
	}
}
