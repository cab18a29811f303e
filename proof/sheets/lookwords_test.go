package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

func TestChipsSayWhatAColourIsFor(t *testing.T) {
	for _, row := range []struct {
		name  string
		pairs []string
		want  []string
	}{
		{"the guide's order", nil, []string{"shirt", "all letters and digits", "outlines and collar"}},
		{"cuffs where there are some", []string{"cut: v-neck", "cut: soccer"}, []string{"shirt", "all letters and digits", "outlines, side panels, cuffs and collar"}},
		{"digits of another colour", []string{"8in, colour: egret", "8in, colour: marsh gold", "height: 3in, colour: egret", "height: 3in, colour: marsh gold"},
			[]string{"shirt", "all letters", "all digits, outlines and collar"}},
		{"one number of another colour", []string{"8in, colour: egret", "8in, colour: marsh gold"},
			[]string{"shirt", "all letters and front number", "back number, outlines and collar"}},
		{"one outline of another colour", []string{"3/32in, colour: marsh gold", "3/32in, colour: tidewater"},
			[]string{"shirt and outline of front number", "all letters and digits", "outline of back number and team name, collar"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			d, err := newDocument(sampleInput(t, row.pairs...))
			require.NoError(t, err)
			var got []string
			for i, c := range d.teamColours() {
				assert.Equal(t, string(rune('a'+i)), c.key)
				got = append(got, d.uses(c))
			}
			assert.Equal(t, row.want, got)
		})
	}
}

func TestMakingSaysMethodLayersAndFinestDetail(t *testing.T) {
	for _, row := range []struct {
		name  string
		pairs []string
		want  string
	}{
		{"two layers", nil, "Cut heat-transfer film in two layers: marsh gold first, egret on top."},
		{"three layers", []string{"{width: 3/16in, colour: marsh gold}", "{width: 1/8in, colour: tidewater}, {width: 1/16in, colour: marsh gold}"},
			"Cut heat-transfer film in three layers: marsh gold first, then tidewater, egret on top."},
		{"printed", []string{"method: cut film", "method: sublimation"}, "Dye sublimation in two colours."},
	} {
		t.Run(row.name, func(t *testing.T) {
			d, err := newDocument(sampleInput(t, row.pairs...))
			require.NoError(t, err)
			assert.Contains(t, d.makingWords(), row.want)
			stroke, _ := d.finest()
			assert.Contains(t, d.makingWords(), "The thinnest stroke of a digit is "+d.fine(stroke))
		})
	}
}

// The finest detail is the smallest over all players, not the one drawn.
func TestFinestLooksAtEveryPlayer(t *testing.T) {
	d, err := newDocument(sampleInput(t))
	require.NoError(t, err)
	stroke, gap := d.finest()
	for _, p := range d.in.Sized.Players {
		name, _ := p.Piece(garment.BackName)
		assert.False(t, name.Name.SmallestGap > 0 && name.Name.SmallestGap < gap)
		number, _ := p.Piece(garment.FrontNumber)
		assert.GreaterOrEqual(t, number.Number.StrokeThin, stroke)
	}
	assert.Equal(t, "under ¹⁄₁₆\u00a0in", d.fine(0.4), "never printed as nothing")
	assert.Equal(t, "¹⁄₁₆\u00a0in", d.fine(3.1), "rounded down")
}

// Two cheap leads that cross cost more than a dearer one that does not.
func TestKeysAreChosenTogether(t *testing.T) {
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	a := []lead{{key: "a", from: at(0, 0), to: at(20, 20), cost: 20}, {key: "a", from: at(0, 20), to: at(20, 20), cost: 25}}
	b := []lead{{key: "b", from: at(0, 10), to: at(20, 5), cost: 20}}
	got := cheapest([][]lead{a, b})
	require.Len(t, got, 2)
	assert.Equal(t, at(0, 20), got[0].from)
	assert.Equal(t, "b", got[1].key)
	assert.Zero(t, got[0].against(got[1]))
	assert.Equal(t, float64(keyOverKey), a[0].against(b[0]))
	assert.Equal(t, 2*keyOverKey, a[0].against(lead{from: at(1, 1), to: at(9, 1)}), "a ring on a ring")
	assert.Empty(t, cheapest(nil))
}

// A spot lies in its colour and out of the hole, as near the wish as it can.
func TestSpotLiesInItsColour(t *testing.T) {
	square := func(low, high float64) geom.Region {
		return geom.Region{{{X: low, Y: low}, {X: high, Y: low}, {X: high, Y: high}, {X: low, Y: high}}}
	}
	p, ok := spotIn(square(0, 10), square(2, 10), geom.Point{X: 9, Y: 9})
	require.True(t, ok)
	assert.True(t, p.X < 2 || p.Y < 2, "in the frame of the hole")
	_, ok = spotIn(square(0, 10), square(0, 10), geom.Point{})
	assert.False(t, ok, "nothing is left of it")
}

func TestArticlesAreThoseOneSays(t *testing.T) {
	for size, want := range map[string]string{"M": "an M", "XL": "an XL", "2XL": "a 2XL", "women’s M": "a women’s M", "youth L": "a youth L", "YM": "a YM", "adult S": "an adult S"} {
		assert.Equal(t, want, withArticle(size))
	}
}

func BenchmarkLook(b *testing.B) {
	in := sampleInput(b)
	for b.Loop() {
		_, err := draw(in, (*document).planLook)
		require.NoError(b, err)
	}
}
