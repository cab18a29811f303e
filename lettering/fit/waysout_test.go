package fit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

func kinds(ways []fit.WayOut) []string {
	var out []string
	for _, w := range ways {
		out = append(out, w.Kind)
	}
	return out
}

func TestWaysOutAreListedInOrder(t *testing.T) {
	r := request(t, "graduate", "DE LA FUENTE-MONTALVO")
	r.NoWaysOut, r.Limit = false, 320
	r.Narrower = []*typeface.Face{embedded(t, "graduate"), embedded(t, "oswald"), embedded(t, "league-gothic")}
	n := name(t, r)
	require.Equal(t, fit.Over, n.Verdict)
	assert.Equal(t, []string{fit.LowerLetters, fit.NarrowerFace, fit.MoreRoom, fit.TwoLines, fit.AnInitial}, kinds(n.WouldFit))
}

func TestNamesThatFitNeedNoWayOut(t *testing.T) {
	r := request(t, "oswald", "DE LA FUENTE")
	r.NoWaysOut = false
	assert.Empty(t, name(t, r).WouldFit)
	r.Limit = name(t, r).InkWidth * 0.95
	n := name(t, r)
	assert.Equal(t, fit.Eased, n.Verdict)
	assert.Empty(t, n.WouldFit)
}

// TestEveryWayOutWorks does what each one says and looks at what comes out.
func TestEveryWayOutWorks(t *testing.T) {
	faces := []*typeface.Face{embedded(t, "oswald"), embedded(t, "league-gothic"), embedded(t, "archivo")}
	f, seen := fit.NewFitter(), map[string]int{}
	for _, text := range []string{"DE LA FUENTE-MONTALVO", "ANNA-MARIA SCHWARZENBERG", "WOJCIECHOWSKI", "O’HARA LEE"} {
		for _, id := range []string{"graduate", "saira"} {
			for shape := fit.Straight; shape <= fit.VerticalArch; shape++ {
				for _, limit := range []float64{120, 190, 260} {
					r := request(t, id, text)
					r.Shape, r.Limit, r.Narrower, r.NoWaysOut = shape, limit, faces, false
					r.Outlines = []outline.Layer{{Width: 2}}
					if r.Radius = 330; limit == 190 {
						r.Radius, r.Rise = 0, 15
					}
					n, err := f.Name(r)
					if err != nil {
						continue
					}
					for _, w := range n.WouldFit {
						seen[w.Kind]++
						tryOut(t, f, r, n, w)
					}
				}
			}
		}
	}
	for _, k := range []string{fit.LowerLetters, fit.NarrowerFace, fit.MoreRoom, fit.TwoLines, fit.AnInitial} {
		assert.Greater(t, seen[k], 5, k)
	}
}

func tryOut(t *testing.T, f *fit.Fitter, r fit.Request, before fit.Name, w fit.WayOut) {
	t.Helper()
	r.NoWaysOut = true
	texts := strings.Split(w.Text, "\n")
	switch w.Kind {
	case fit.LowerLetters:
		assert.Equal(t, fit.Over, before.Verdict)
		assert.Less(t, w.Height, before.LetterHeight)
		r.Ladder.Height = w.Height
		n, err := f.Name(r)
		require.NoError(t, err)
		assert.InDelta(t, w.Height, n.LetterHeight, 0.0101, "no higher letters fit")
	case fit.NarrowerFace:
		assert.NotEqual(t, before.FaceID, w.FaceID)
		r.Face = embedded(t, w.FaceID)
	case fit.MoreRoom:
		assert.Greater(t, w.Limit, before.Limit)
		assert.Equal(t, r.Height, w.Height)
		less := r
		less.Limit = w.Limit - 0.02
		if n, err := f.Name(less); err == nil {
			assert.NotEqual(t, fit.Full, n.Verdict)
			assert.Less(t, n.LetterHeight, r.Height, "no less room would do")
		}
	case fit.TwoLines:
		require.Len(t, texts, 2)
		assert.Equal(t, letters(before.Text), letters(w.Text))
	case fit.AnInitial:
		assert.Contains(t, w.Text, ".")
	}
	r.Limit = w.Limit
	lowest := math.Inf(1)
	for _, r.Text = range texts {
		n, err := f.Name(r)
		require.NoError(t, err)
		assert.NotEqual(t, fit.Over, n.Verdict, "%v", w)
		lowest = math.Min(lowest, n.LetterHeight)
	}
	assert.InDelta(t, w.Height, lowest, 0.0101, "%v", w)
	if w.Kind != fit.LowerLetters && before.Verdict == fit.Reduced {
		assert.Greater(t, lowest, before.LetterHeight)
	}
}

func letters(s string) string {
	return strings.NewReplacer(" ", "", "\n", "").Replace(s)
}

func TestBreaksAndInitials(t *testing.T) {
	cases := []struct{ text, lines, initial string }{
		{"DE LA CRUZ-PRENTISS", "DE LA CRUZ-\nPRENTISS", "D. LA CRUZ-PRENTISS"},
		{"VAN DER BERG", "VAN DER\nBERG", "V. DER BERG"},
		{"ÉLODIE-ZOË", "ÉLODIE-\nZOË", "É.-ZOË"},
		{"SCHWARZENBERG", "", ""},
	}
	for _, c := range cases {
		r := request(t, "oswald", c.text)
		whole := name(t, r).InkWidth
		r.NoWaysOut, r.Ladder, r.Limit = false, fit.Ladder{}, whole-0.5 // any shorter text will do
		n := name(t, r)
		require.Equal(t, fit.Over, n.Verdict)
		got := map[string]string{}
		for _, w := range n.WouldFit {
			got[w.Kind] = w.Text
		}
		assert.Equal(t, c.lines, got[fit.TwoLines])
		assert.Equal(t, c.initial, got[fit.AnInitial])
	}
}
