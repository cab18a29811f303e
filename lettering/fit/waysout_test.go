package fit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
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
	assert.Equal(t, []string{fit.LowerLetters, fit.NarrowerLetters, fit.NarrowerFace, fit.MoreRoom, fit.TwoLines, fit.AnInitial}, kinds(n.WouldFit))
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
			for shape := fit.Straight; shape <= fit.VerticalArchDown; shape++ {
				for _, limit := range []float64{120, 190, 260, 330, 400} {
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
	for _, k := range []string{fit.LowerLetters, fit.NarrowerLetters, fit.NarrowerFace, fit.MoreRoom, fit.TwoLines, fit.AnInitial} {
		assert.Greater(t, seen[k], 5, k)
	}
}

// TestAnArchGivesWayWhereThatIsEnough sets limits that an arch misses by a
// little: heads draw apart on an arch up and together on an arch down.
func TestAnArchGivesWayWhereThatIsEnough(t *testing.T) {
	f := fit.NewFitter()
	for _, c := range []struct {
		shape fit.Shape
		kind  string
	}{{fit.RadialArch, fit.FlatterArch}, {fit.RadialArchDown, fit.RounderArch}} {
		for _, rise := range []float64{0, 30} {
			for _, floor := range []float64{30, 50} { // over, and reduced
				r := request(t, "oswald", "HALVORSEN")
				r.Shape, r.Radius, r.Ladder.Width, r.Ladder.Height = c.shape, 260, 1, 50
				other := r
				other.Radius = 300
				if c.shape == fit.RadialArchDown {
					other.Radius = 225
				}
				other.Limit = 1 // over: every rung at its floor
				r.Limit = name(t, other).InkWidth
				r.Ladder.Height = floor
				if rise > 0 {
					r.Rise, r.Radius = geom.Sagitta(260, r.Limit), 0
				}
				n, err := f.Name(r)
				require.NoError(t, err)
				require.Equal(t, map[float64]fit.Verdict{30: fit.Reduced, 50: fit.Over}[floor], n.Verdict)
				var ways []fit.WayOut
				for _, w := range f.WaysOut(r, n) {
					if w.Kind == c.kind {
						ways = append(ways, w)
						tryOut(t, f, r, n, w)
						assert.InDelta(t, other.Radius, w.Radius, 0.3, "%v", w)
					}
				}
				assert.Len(t, ways, 1, "%v", c)
			}
		}
	}
}

// as is the request that a way out asks for, in its own figures only.
func as(t *testing.T, r fit.Request, w fit.WayOut) fit.Request {
	r.NoWaysOut, r.Limit, r.Text, r.Ladder.Width = true, w.Limit, w.Text, w.WidthFloor
	if r.Radius, r.Rise = w.Radius, w.Rise; w.Rise > 0 {
		r.Radius = 0
	}
	if w.Kind == fit.LowerLetters {
		r.Ladder.Height = w.Height
	}
	r.Face = embedded(t, w.FaceID)
	return r
}

func tryOut(t *testing.T, f *fit.Fitter, r fit.Request, before fit.Name, w fit.WayOut) {
	t.Helper()
	n, err := f.Name(as(t, r, w))
	require.NoError(t, err)
	require.NotEqual(t, fit.Over, n.Verdict, "%v", w)
	require.LessOrEqual(t, n.InkWidth, w.Limit)
	assert.InDelta(t, w.Height, n.LetterHeight, 0.0101, "%v", w)
	assert.Equal(t, n.LetterHeight, w.Name.LetterHeight)
	assert.Equal(t, n.InkWidth, w.Name.InkWidth)
	if before.Verdict == fit.Reduced {
		assert.Greater(t, n.LetterHeight, before.LetterHeight)
	}
	changed(t, r, before, w)
	if less, ok := lessThan(w, r); ok {
		back := as(t, r, less)
		if before.Verdict == fit.Reduced {
			back.Ladder.Height = r.Height
		}
		n, err := f.Name(back)
		assert.True(t, err != nil || n.Verdict == fit.Over || n.LetterHeight < r.Height && w.Kind == fit.MoreRoom, "%s: no less would do: %v", r.Text, w)
	}
}

// changed holds a way out against what its kind may change.
func changed(t *testing.T, r fit.Request, before fit.Name, w fit.WayOut) {
	t.Helper()
	assert.Equal(t, w.Kind == fit.NarrowerFace, before.FaceID != w.FaceID)
	assert.Equal(t, w.Kind == fit.MoreRoom, w.Limit != before.Limit)
	assert.Equal(t, w.Kind == fit.NarrowerLetters, w.WidthFloor != r.Ladder.Width)
	assert.Equal(t, w.Kind == fit.TwoLines || w.Kind == fit.AnInitial, w.Text != before.Text)
	switch w.Kind {
	case fit.LowerLetters:
		assert.Equal(t, fit.Over, before.Verdict)
		assert.Less(t, w.Height, before.LetterHeight)
	case fit.NarrowerLetters:
		assert.Less(t, w.WidthFloor, r.Ladder.Width)
		assert.GreaterOrEqual(t, w.WidthFloor, 0.5)
	case fit.FlatterArch:
		assert.Greater(t, w.Radius, before.Radius)
	case fit.RounderArch:
		assert.Less(t, w.Radius, before.Radius)
	case fit.MoreRoom:
		assert.Greater(t, w.Limit, before.Limit)
		assert.Equal(t, r.Height, w.Height)
	case fit.TwoLines:
		assert.Equal(t, letters(before.Text), letters(w.Text))
		assert.Positive(t, w.Name.Leading)
	case fit.AnInitial:
		assert.Contains(t, w.Text, ".")
	}
}

// lessThan is the way out with a little less of what it changes.
func lessThan(w fit.WayOut, r fit.Request) (fit.WayOut, bool) {
	switch w.Kind {
	case fit.NarrowerLetters:
		w.WidthFloor += 0.0011
		return w, w.WidthFloor < r.Ladder.Width
	case fit.FlatterArch, fit.RounderArch:
		step := 1.0001
		if w.Kind == fit.FlatterArch {
			step = 1 / step
		}
		w.Radius *= step
		if w.Rise > 0 {
			w.Rise += 0.02
			if w.Kind == fit.RounderArch {
				w.Rise -= 0.04
			}
		}
	case fit.MoreRoom:
		w.Limit -= 0.02
	default:
		return w, false
	}
	return w, true
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
		{"HALVORSEN JR.", "", ""},
		{"J. HALVORSEN JR.", "", ""},
		{"É. QUIST-HALVORSEN", "É. QUIST-\nHALVORSEN", "É. Q.-HALVORSEN"},
		{"QUIST-HALVORSEN III", "QUIST-\nHALVORSEN III", "Q.-HALVORSEN III"},
		{"DE LA\nCRUZ", "", "D. LA\nCRUZ"},
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
