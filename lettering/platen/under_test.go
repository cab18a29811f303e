package platen_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/platen"
)

func shirt(t require.TestingT, cut garment.Cut, size string) *garment.Garment {
	s, err := garment.ParseSize(size, garment.Adult)
	require.NoError(t, err)
	g, err := garment.New(cut, s)
	require.NoError(t, err)
	return g
}

// words lists what lies under a platen.
func words(f platen.Fit, side garment.Side) []string {
	out := []string{}
	for _, u := range f.Under {
		out = append(out, u.Words(side))
	}
	return out
}

// The adult M two-button has its armhole seams 208.8 mm from the centre where
// they come nearest, its back neck seam 20 mm down, its placket (18 mm to each
// side) from the front neck seam at 95 mm down to 260 mm and its hem at 760 mm.
func TestWhatLiesUnderABackNumber(t *testing.T) {
	g := shirt(t, garment.TwoButton, "M")
	piece := platen.Piece{Side: garment.Back, Centre: geom.Point{Y: 300}, Width: 300, Height: 200}
	small := platen.Choose(g, piece, parsed(t, "36cm x 30cm")) // reaches y 150 to 450, x ±180
	require.Equal(t, []string{"front placket behind"}, words(small, garment.Back))
	assert.True(t, small.Under[0].Hard)
	assert.Zero(t, small.Under[0].FromPiece, "the number lies over the buttons")

	wide := platen.Choose(g, piece, parsed(t, "20in x 25in")) // turned or not, at least ±254
	assert.Contains(t, words(wide, garment.Back), "both armhole seams")
	for _, u := range wide.Under {
		if u.Name == "armhole seam" {
			assert.InDelta(t, g.Measures().ShoulderWidth/2-150, u.FromPiece, 30, "the seam bends in from the shoulder point")
		}
	}
}

func TestALowPieceHasNothingUnderItButTheCloth(t *testing.T) {
	g := shirt(t, garment.CrewTee, "XL")
	piece := platen.Piece{Side: garment.Back, Centre: geom.Point{Y: 480}, Width: 250, Height: 150}
	assert.Empty(t, platen.Choose(g, piece, parsed(t, "30cm x 20cm")).Under)
	high := piece
	high.Centre.Y = 100
	assert.Contains(t, words(platen.Choose(g, high, parsed(t, "30cm x 20cm")), garment.Back), "neck seam")
	low := piece
	low.Centre.Y = g.Hem() - 60
	assert.Contains(t, words(platen.Choose(g, low, parsed(t, "30cm x 20cm")), garment.Back), "hem")
}

func TestATurnedPlatenFollowsTheSleeve(t *testing.T) {
	g := shirt(t, garment.Hockey, "M")
	place, err := g.Place(garment.SleeveNumber)
	require.NoError(t, err)
	centre := place.Point(0, place.TopFor(80)+40)
	piece := platen.Piece{Side: place.Side, Centre: centre, Width: 50, Height: 80, Turn: place.Turn}
	along := words(platen.Choose(g, piece, parsed(t, "90mm x 400mm")), place.Side)
	assert.NotContains(t, along, "left sleeve hem")
	piece.Turn = 0
	assert.NotEqual(t, along, words(platen.Choose(g, piece, parsed(t, "90mm x 400mm")), place.Side), "upright it would cross the sleeve")
}

// TestWhatLiesUnderAgreesWithSamples holds the clipping against points taken
// along the lines of the garment.
func TestWhatLiesUnderAgreesWithSamples(t *testing.T) {
	made := map[garment.Cut]*garment.Garment{} // panels are traced once
	for _, info := range garment.Cuts() {
		made[info.Cut] = shirt(t, info.Cut, "M")
	}
	rapid.Check(t, func(t *rapid.T) {
		g := made[rapid.SampledFrom(garment.Cuts()).Draw(t, "cut").Cut]
		piece := platen.Piece{
			Side:   rapid.SampledFrom([]garment.Side{garment.Front, garment.Back}).Draw(t, "side"),
			Centre: geom.Point{X: rapid.Float64Range(-300, 300).Draw(t, "x"), Y: rapid.Float64Range(0, 700).Draw(t, "y")},
			Width:  rapid.Float64Range(20, 300).Draw(t, "width"), Height: rapid.Float64Range(20, 300).Draw(t, "height"),
			Turn: rapid.Float64Range(-1.5, 1.5).Draw(t, "turn"),
		}
		f := platen.Choose(g, piece, platen.Usual())
		require.Equal(t, 1, f.Presses)
		down := f.Platen.Width.MM() + f.Platen.Height.MM() - f.Across
		found := map[string]platen.Under{}
		for _, u := range f.Under {
			if !u.Behind {
				found[u.Name] = u
			}
		}
		sampled := map[string]float64{}
		sin, cos := math.Sincos(piece.Turn)
		for _, panel := range g.Panels(piece.Side) {
			for _, line := range panel.Lines {
				if line.Kind == garment.FoldLine || line.Name == "centre front" {
					continue
				}
				for _, p := range dense(line.Points) {
					d := p.Sub(piece.Centre)
					x, y := math.Abs(d.X*cos+d.Y*sin), math.Abs(d.Y*cos-d.X*sin)
					if x < f.Across/2 && y < down/2 {
						far := math.Hypot(math.Max(0, x-piece.Width/2), math.Max(0, y-piece.Height/2))
						if old, seen := sampled[line.Name]; !seen || far < old {
							sampled[line.Name] = far
						}
					}
				}
			}
		}
		for name, far := range sampled {
			require.Contains(t, found, name)
			assert.LessOrEqual(t, found[name].FromPiece, far+1e-9, name)
			assert.InDelta(t, far, found[name].FromPiece, 0.51, name)
		}
	})
}

// dense returns points along a line, at most half a millimetre apart.
func dense(points []geom.Point) []geom.Point {
	out := []geom.Point{points[0]}
	for i := 1; i < len(points); i++ {
		n := int(points[i].Sub(points[i-1]).Norm()*2) + 1
		for k := 1; k <= n; k++ {
			out = append(out, points[i-1].Lerp(points[i], float64(k)/float64(n)))
		}
	}
	return out
}

func BenchmarkChoose(b *testing.B) {
	size, _ := garment.ParseSize("M", garment.Adult)
	g, err := garment.New(garment.TwoButton, size)
	require.NoError(b, err)
	piece := platen.Piece{Side: garment.Back, Centre: geom.Point{Y: 300}, Width: 300, Height: 200}
	platens := platen.Usual()
	for b.Loop() {
		platen.Choose(g, piece, platens)
	}
}
