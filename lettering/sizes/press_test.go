package sizes_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/platen"
)

// TestThePressIsToldForThePieceThatNeedsMost holds every row against all pieces of
// its size and place, with the shapes of their outlines measured.
func TestThePressIsToldForThePieceThatNeedsMost(t *testing.T) {
	s := resolve(t, herons(squad()...), nil)
	rows := s.Press()
	require.Len(t, rows, 6*3, "six sizes, name, number and both at once")
	for _, row := range rows {
		worn, widest := 0, 0.0
		for _, p := range s.Players {
			if p.Size != row.Size {
				continue
			}
			worn++
			piece, ok := p.Piece(row.Place)
			if !ok {
				assert.Empty(t, row.Place)
				continue
			}
			layers, err := piece.Outlines()
			require.NoError(t, err)
			box := layers[len(layers)-1].Bounds()
			need := box.Width() + 2*platen.Edge
			widest = math.Max(widest, need)
			assert.InDelta(t, box.Height(), piece.Box().Height, 0.2)
			assert.InDelta(t, box.Width(), piece.Box().Width, 0.2)
		}
		assert.Equal(t, worn, row.Pieces)
		if row.Place == "" {
			continue
		}
		assert.InDelta(t, widest, row.Fit.NeedWidth, 0.2)
		require.Equal(t, 1, row.Fit.Presses)
		down := row.Fit.Platen.Width.MM() + row.Fit.Platen.Height.MM() - row.Fit.Across
		assert.LessOrEqual(t, row.Fit.NeedWidth, row.Fit.Across)
		assert.LessOrEqual(t, row.Fit.NeedHeight, down)
	}
}

func TestTheBoxOfAPieceLiesWhereItsInkLies(t *testing.T) {
	o := herons(player("Wojciechowski", "27", garment.Adult, "M"))
	o.Garment.Cut = garment.Hockey
	o.Pieces = append(o.Pieces, order.Piece{Place: garment.SleeveNumber, Face: "quantico", Height: o.Pieces[0].Height, Shape: "straight", Spacing: "baseline"})
	for _, piece := range resolve(t, o, nil).Players[0].Pieces {
		onGarment := piece.Ink().Transform(geom.Scale(1, -1).Then(geom.Rotate(piece.Turn)).Then(geom.Translate(piece.At.X, piece.At.Y)))
		box := piece.Box()
		upright := onGarment.Transform(geom.Translate(-box.Centre.X, -box.Centre.Y).Then(geom.Rotate(-piece.Turn))).Bounds().Grow(piece.Reach())
		assert.InDelta(t, 0, upright.Center().X, 1e-6, string(piece.Asked.Place))
		assert.InDelta(t, 0, upright.Center().Y, 1e-6)
		assert.InDelta(t, box.Width, upright.Width(), 1e-6)
		assert.InDelta(t, box.Height, upright.Height(), 1e-6)
		assert.Equal(t, piece.Asked.Place == garment.SleeveNumber, piece.Turn != 0)
	}
}

func TestTheShopsOwnPlatensAreTaken(t *testing.T) {
	o := herons(player("Wojciechowski", "27", garment.Adult, "M"))
	for _, text := range []string{"9in x 14in", "30cm x 40cm"} {
		p, err := platen.Parse(text)
		require.NoError(t, err)
		o.Platens = append(o.Platens, p)
	}
	rows := resolve(t, o, nil).Press()
	require.Len(t, rows, 3)
	for _, row := range rows {
		assert.Contains(t, o.Platens, row.Fit.Platen)
	}
	o.Platens = o.Platens[:1]
	back := resolve(t, o, nil).Press()[2]
	assert.Empty(t, back.Place)
	assert.Equal(t, 2, back.Fit.Presses, "name and number on 9 in x 14 in: %.0f x %.0f mm", back.Box.Width, back.Box.Height)
	assert.NotEmpty(t, back.Fit.Under)
}
