package typeface_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"yokeline/fonts"
	"yokeline/lettering/geom"
	"yokeline/lettering/typeface"
)

// alphabets are the accented letters of languages whose names a roster
// brings, as their national alphabets have them (Polish, Czech, Slovak,
// Hungarian, Turkish, Romanian, Latvian, Lithuanian, Estonian).
var alphabets = []struct{ language, letters string }{
	{"Polish", "ĄĆĘŃÓŚŹŻąćęńóśźż"},
	{"Czech", "ÁČĎÉĚÍŇÓŘŠŤÚŮÝŽáčďéěíňóřšťúůýž"},
	{"Slovak", "ÄĹĽÔŔäĺľôŕ"},
	{"Hungarian", "ÁÉÍÓÖŐÚÜŰáéíóöőúüű"},
	{"Turkish", "ÇĞİÖŞÜçğöşüÂÎÛâîû"},
	{"Romanian", "ĂÂÎȘȚŞŢăâîșțşţ"},
	{"Latvian", "ĀČĒĢĪĶĻŅŌŖŠŪŽāčēģīķļņōŗšūž"},
	{"Lithuanian", "ĄČĘĖĮŠŲŪŽąčęėįšųūž"},
	{"Estonian", "ÄÕÖÜŠŽäõöüšž"},
}

// lacking is what stays missing of the alphabets, and why: the comma of
// Quantico (which has Ŗ ķ ŗ of its own) is more than half as high as its capitals, too big to stand under a
// letter, and Latvian does not take a cedilla instead.
var lacking = map[string]string{"graduate": "", "quantico": "ĢĶĻŅģļņ"}

var composing = []string{"graduate", "quantico"}

// composedOf lists the letters of the alphabets that the face composes, each
// once.
func composedOf(face *typeface.Face) []rune {
	var out []rune
	for _, a := range alphabets {
		for _, r := range a.letters {
			if _, _, ok := face.Composed(r); ok && !strings.ContainsRune(string(out), r) {
				out = append(out, r)
			}
		}
	}
	return out
}

func TestAlphabetsAreWholeButForWhatCannotBeComposed(t *testing.T) {
	for _, id := range composing {
		face, missing := embedded(t, id), ""
		for _, a := range alphabets {
			for _, r := range a.letters {
				if !face.Has(r) && !strings.ContainsRune(missing, r) {
					missing += string(r)
				}
				_, err := face.NewShaper().Shape(string(r), "")
				assert.Equal(t, face.Has(r), err == nil, "%s %c: Has says what Shape does", id, r)
			}
		}
		assert.Equal(t, lacking[id], missing, id)
		t.Logf("%s: %d composed: %s", id, len(composedOf(face)), string(composedOf(face)))
	}
}

// Letters of the face's own, letters with a stroke, and letters with more than
// one accent are left to the font.
func TestOnlyASingleAccentIsComposed(t *testing.T) {
	for _, id := range composing {
		face := embedded(t, id)
		for _, r := range "ÁŠŽÇŁAa1-" {
			_, _, ok := face.Composed(r)
			assert.False(t, ok, "%s %c is the face's own", id, r)
			assert.True(t, face.Has(r), "%s %c", id, r)
		}
		for _, r := range "ĐđĦŦŧỄẤǗơƯẠỂ" {
			_, err := face.NewShaper().Shape(string(r), "")
			var missing *typeface.MissingError
			require.ErrorAs(t, err, &missing, "%s %c", id, r)
			assert.Equal(t, r, missing.Rune)
			assert.NotContains(t, missing.Suggest, "graduate")
		}
	}
	letter, spacing, ok := embedded(t, "graduate").Composed('ī')
	assert.Equal(t, "ı¯true", fmt.Sprint(string(letter), string(spacing), ok), "the dot gives way")
	letter, spacing, ok = embedded(t, "quantico").Composed('į')
	assert.Equal(t, "i˛true", fmt.Sprint(string(letter), string(spacing), ok), "the dot stays")
}

// pair shapes a composed letter alone and returns its letter and its accent.
func pair(t *testing.T, face *typeface.Face, r rune) (base, mark typeface.Glyph) {
	line, err := face.NewShaper().Shape(string(r), "")
	require.NoError(t, err)
	require.Len(t, line.Glyphs, 2, "%c", r)
	base, mark = line.Glyphs[0], line.Glyphs[1]
	require.False(t, base.Mark)
	require.True(t, mark.Mark)
	require.Equal(t, base.Cluster, mark.Cluster)
	return base, mark
}

func boxAt(face *typeface.Face, g typeface.Glyph) geom.Rect {
	box := face.Bounds(g.ID)
	return geom.Rect{Min: box.Min.Add(geom.Point{X: g.X, Y: g.Y}), Max: box.Max.Add(geom.Point{X: g.X, Y: g.Y})}
}

func ringsAt(face *typeface.Face, g typeface.Glyph) geom.Region {
	return face.Outline(g.ID).Transform(geom.Translate(g.X, g.Y)).Flatten(0.5)
}

// distance returns how far apart the inks of two glyphs are, 0 if they
// overlap; every pair of edges is tried.
func distance(a, b geom.Region) float64 {
	best := math.Inf(1)
	toEdges := func(a, b geom.Region) {
		for _, ring := range a {
			for _, p := range ring {
				if b.Contains(p) {
					best = 0
				}
				for _, other := range b {
					for i, q := range other {
						v := other[(i+1)%len(other)].Sub(q)
						share := math.Min(1, math.Max(0, p.Sub(q).Dot(v)/v.Dot(v)))
						best = math.Min(best, p.Sub(q.Add(v.Mul(share))).Norm())
					}
				}
			}
		}
	}
	toEdges(a, b)
	toEdges(b, a)
	return best
}

// ownTops returns the range of the tops of the face's own accented letters.
func ownTops(t *testing.T, face *typeface.Face, letters string) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, r := range letters {
		if _, _, composed := face.Composed(r); composed || !face.Has(r) {
			continue
		}
		line, err := face.NewShaper().Shape(string(r), "")
		require.NoError(t, err)
		top := boxAt(face, line.Glyphs[0]).Max.Y
		low, high = math.Min(low, top), math.Max(high, top)
	}
	return low, high
}

func TestAccentsStandAsTheFacesOwnDo(t *testing.T) {
	for _, id := range composing {
		face := embedded(t, id)
		upperLow, upperHigh := ownTops(t, face, "ÁÀÂÄÃÉÈÊËÑÓÒÔÖÕÚÙÛÜÝŸŠŽ")
		lowerLow, lowerHigh := ownTops(t, face, "áàâäãåéèêëñóòôöõúùûüýÿšž")
		em := face.UnitsPerEm()
		for _, r := range composedOf(face) {
			base, mark := pair(t, face, r)
			letter, accent := boxAt(face, base), boxAt(face, mark)
			apart := distance(ringsAt(face, base), ringsAt(face, mark))
			name := fmt.Sprintf("%s %c", id, r)
			combining := []rune(norm.NFD.String(string(r)))[1]
			if combining == '\u0327' || combining == '\u0328' || combining == '\u0326' {
				checkFoot(t, name, face, mark, letter, accent, apart, em)
				continue
			}
			assert.GreaterOrEqual(t, apart, 0.025*em, "%s: the accent is clear of the letter", name)
			if strings.ContainsRune("ĽľďťĹĺ", r) && combining == '\u030C' && accent.Max.Y <= letter.Max.Y {
				assert.InDelta(t, letter.Max.Y, accent.Max.Y, 1e-9, "%s: level with the letter", name)
				continue
			}
			assert.InDelta(t, letter.Center().X, accent.Center().X, 0.01*em, "%s: centred", name)
			assert.Zero(t, mark.Advance, name)
			low, high := upperLow, upperHigh
			if letter.Max.Y < face.XHeight()+0.05*em {
				low, high = lowerLow, lowerHigh
			}
			switch combining {
			case '\u0304': // a macron is flatter than any accent the faces have on letters
				low -= 0.035 * em
			case '\u030A': // Quantico joins its ring to Å; over U it stands clear, and higher
				high += 0.085 * em
			}
			assert.GreaterOrEqual(t, accent.Max.Y, low-1e-9, "%s: top", name)
			assert.LessOrEqual(t, accent.Max.Y, high+1e-9, "%s: top", name)
		}
	}
}

func checkFoot(t *testing.T, name string, face *typeface.Face, mark typeface.Glyph, letter, accent geom.Rect, apart, em float64) {
	comma, err := face.NewShaper().Shape(",", "")
	require.NoError(t, err)
	ogonek, err := face.NewShaper().Shape("˛", "")
	require.NoError(t, err)
	switch mark.ID {
	case comma.Glyphs[0].ID:
		assert.GreaterOrEqual(t, apart, 0.02*em, "%s: a comma is clear of the letter", name)
		assert.InDelta(t, letter.Center().X, accent.Center().X, 0.01*em, name)
	case ogonek.Glyphs[0].ID:
		assert.Zero(t, apart, "%s: an ogonek is joined to the letter", name)
		assert.Greater(t, accent.Center().X, letter.Center().X, "%s: right foot", name)
	default:
		assert.Zero(t, apart, "%s: a cedilla is joined to the letter", name)
		off := 0.01 * em
		if strings.HasSuffix(name, "ț") || strings.HasSuffix(name, "ţ") {
			off = 0.1 * em // the foot of t lies beside its middle
		}
		assert.InDelta(t, letter.Center().X, accent.Center().X, off, name)
	}
	assert.Less(t, accent.Max.Y, letter.Min.Y+0.01*em, "%s: under the letter", name)
}

// TestComposedLettersKernAsTheirBase sets every composed letter between
// letters that kern and compares all advances with those of its base.
func TestComposedLettersKernAsTheirBase(t *testing.T) {
	kerned := 0
	for _, id := range composing {
		face := embedded(t, id)
		shaper := face.NewShaper()
		for _, r := range composedOf(face) {
			base, _, _ := face.Composed(r)
			for _, frame := range []string{"A%cV", "T%cA", "V%cT", "L%cY", "7%c.", "o%cv"} {
				got, err := shaper.Shape(fmt.Sprintf(frame, r), "")
				require.NoError(t, err)
				want, err := shaper.Shape(fmt.Sprintf(frame, base), "")
				require.NoError(t, err)
				var letters []typeface.Glyph
				room := 0.0
				for _, g := range got.Glyphs {
					if g.Mark {
						room += g.Advance // beside an ascender
						continue
					}
					g.X -= room
					letters = append(letters, g)
				}
				assert.Equal(t, want.Glyphs, letters, "%s %c in %s", id, r, frame)
				assert.Equal(t, want.Advance, got.Advance-room)
				if face.Advance(want.Glyphs[0].ID) != want.Glyphs[0].Advance {
					kerned++
				}
			}
		}
	}
	assert.Greater(t, kerned, 20, "some pairs kern at all")
}

func TestLettersTypedInPiecesAreComposedAlike(t *testing.T) {
	for _, id := range composing {
		shaper := embedded(t, id).NewShaper()
		for _, name := range []string{"WOŹNIAK", "DVOŘÁK", "ŐRY", "GÜNEŞ", "Přemysl", "Gąska"} {
			composed, err := shaper.Shape(name, "")
			require.NoError(t, err)
			apart, err := shaper.Shape(norm.NFD.String(name), "")
			require.NoError(t, err)
			assert.Equal(t, composed, apart, name)
		}
	}
}

func TestComposedLettersAreTheSameAtEveryUse(t *testing.T) {
	first := embedded(t, "quantico")
	want, err := first.NewShaper().Shape("ŠEŇČÍKOVÁ", "")
	require.NoError(t, err)
	entry, _ := fonts.Lookup("quantico")
	data, err := fonts.Read(entry.File)
	require.NoError(t, err)
	again, err := typeface.Open("quantico", data)
	require.NoError(t, err)
	got, err := again.NewShaper().Shape("ŠEŇČÍKOVÁ", "")
	require.NoError(t, err)
	assert.Equal(t, want, got)
	clusters := ""
	for _, g := range got.Glyphs {
		clusters += fmt.Sprint(g.Cluster)
	}
	assert.Equal(t, "01223345678", clusters, "an accent is in its letter's cluster")
}

// TestComposedSpecimen keeps a picture of the composed letters beside the
// face's own; -update draws it anew.
func TestComposedSpecimen(t *testing.T) {
	const file = "testdata/composed.svg"
	got := specimen(t)
	if *update {
		require.NoError(t, os.WriteFile(file, got, 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.True(t, bytes.Equal(want, got), "the specimen changed; look at it and record it with -update")
}

func specimen(t *testing.T) []byte {
	rows := []string{
		"ÁĆÉŃÓŚŹŻ ŠČŘĚŇĎŤŽ", "ÂĂÃĀÖŐÜŰŮÅİĪĘĄĮŲ", "ÇŞŢȘȚĞĹĽŔĒĖ", "áćéńóśźż ščřěňďťž",
		"âăãāöőüűůåīęąįų", "çşţșțğĺľŕēė", "WOŹNIAK DVOŘÁK", "Přemysl Gąska ĽUDOVÍT", "ĶĢĻŅŖķļņŗ",
	}
	var body strings.Builder
	y := 0.0
	for _, id := range composing {
		face := embedded(t, id)
		for _, row := range rows {
			line, err := face.NewShaper().Shape(row, "")
			if err != nil {
				continue // what this face cannot compose
			}
			k := 60 / face.CapHeight()
			y += 130
			for _, g := range line.Glyphs {
				path := face.Outline(g.ID).Transform(geom.Translate(g.X, g.Y).Then(geom.Scale(k, -k)).Then(geom.Translate(20, y)))
				fill := "#000"
				if g.Mark {
					fill = "#b00"
				}
				if d := pathData(path); d != "" {
					fmt.Fprintf(&body, "<path fill=\"%s\" d=\"%s\"/>\n", fill, d)
				}
			}
		}
	}
	return fmt.Appendf(nil, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1300 %.0f\">\n%s</svg>\n", y+60, body.String())
}

func pathData(path geom.Path) string {
	var d strings.Builder
	for _, s := range path {
		n := map[geom.Op]int{geom.Move: 1, geom.Line: 1, geom.Quad: 2, geom.Cube: 3}[s.Op]
		d.WriteString(map[geom.Op]string{geom.Move: "M", geom.Line: "L", geom.Quad: "Q", geom.Cube: "C", geom.Close: "Z"}[s.Op])
		for _, p := range s.P[:n] {
			fmt.Fprintf(&d, "%.2f %.2f ", p.X, p.Y)
		}
	}
	return d.String()
}
