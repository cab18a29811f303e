package fit_test

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
)

func TestWaysOutCanBeAskedForLater(t *testing.T) {
	f := fit.NewFitter()
	r := request(t, "oswald", "HERNANDEZ MONTALVO")
	r.Limit, r.Ladder = 150, fit.DefaultLadder(50)
	r.Narrower = append(r.Narrower, embedded(t, "league-gothic"))
	r.NoWaysOut = false
	at := name(t, r)
	require.NotEmpty(t, at.WouldFit)
	r.NoWaysOut = true
	later, err := f.Name(r)
	assert.NoError(t, err)
	assert.Empty(t, later.WouldFit)
	asked := f.WaysOut(r, later)
	require.Len(t, asked, len(at.WouldFit))
	for i, w := range at.WouldFit {
		assert.Equal(t, w.Kind, asked[i].Kind)
		assert.Equal(t, w.Height, asked[i].Height)
	}
	r.Limit = 1000
	assert.Empty(t, f.WaysOut(r, name(t, r)), "nothing is wrong with it")
}

// TestInkIsDrawnWhenAskedAndAlwaysTheSame draws one name in several
// goroutines, after its fitter has gone on to others; the width axis of the
// second stands at a value of that name alone.
func TestInkIsDrawnWhenAskedAndAlwaysTheSame(t *testing.T) {
	assert.Nil(t, fit.Name{}.Ink(), "no fitter made it")
	f := fit.NewFitter()
	for _, id := range []string{"oswald", "archivo"} {
		for _, bold := range []float64{0, 1} {
			r := request(t, id, "HERNANDEZ")
			r.Limit, r.Shape, r.Radius, r.Embolden = 200, fit.VerticalArch, 300, bold
			r.Ladder = fit.DefaultLadder(r.Height)
			n, err := f.Name(r)
			assert.NoError(t, err)
			want := n.Ink()
			assert.InDelta(t, n.InkWidth, want.Bounds().Width(), 1e-6)
			other := r
			other.Text = "VASQUEZ"
			_, err = f.Name(other)
			assert.NoError(t, err)
			got := make([]geom.Path, 4)
			var group sync.WaitGroup
			for i := range got {
				group.Go(func() { got[i] = n.Ink() })
			}
			group.Wait()
			for i := range got {
				assert.Equal(t, want, got[i], "%s", id)
				got[i][0].P[0].X++ // the caller's own
			}
			assert.Equal(t, want, n.Ink())
		}
	}
}
