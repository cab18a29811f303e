package tail_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/tail"
)

func TestParametersThatNoTailCanHave(t *testing.T) {
	ink := script(t, "yellowtail", "Rail", height)
	for _, c := range []struct {
		want   string
		change func(*tail.Params)
	}{
		{"tail length is 0 mm; give 0.6 to", func(p *tail.Params) { p.Length = tail.Measure{} }},
		{"tail thickness is 40 mm; give 1.2 to 36 mm", func(p *tail.Params) { p.Thickness = tail.MM(40) }},
		{"tail thickness is NaN mm", func(p *tail.Params) { p.Thickness = tail.MM(math.NaN()) }},
		{"tail gap is -1 mm; give 1.2 to 120 mm", func(p *tail.Params) { p.Gap = tail.MM(-1) }},
		{"tail curl is 1.5; give -1 to 1", func(p *tail.Params) { p.Curl = 1.5 }},
		{"tail taper is -0.1; give 0 to 1", func(p *tail.Params) { p.Taper = -0.1 }},
		{"tail slope is 30 degrees; give -20 to 20 degrees", func(p *tail.Params) { p.Slope = 30 }},
		{"tail bow is 90 degrees; give 0 to 40 degrees", func(p *tail.Params) { p.Bow = 90 }},
	} {
		p := tail.Default()
		c.change(&p)
		_, err := tail.Draw(ink, height, p)
		assert.ErrorContains(t, err, c.want)
	}
	_, err := tail.Draw(ink, 0, tail.Default())
	assert.ErrorContains(t, err, "letter height of a tail is 0 mm")
	_, err = tail.Draw(nil, height, tail.Default())
	assert.ErrorContains(t, err, "no script")
	_, err = tail.Draw(ink, height, tail.Params{})
	assert.Error(t, err)
}

func TestNoRoomComesWithAFigureThatDoes(t *testing.T) {
	for _, face := range scripts {
		ink := script(t, face, "Rail", height)
		p := tail.Default()
		p.Length = tail.MM(30)
		_, err := tail.Draw(ink, height, p)
		var room *tail.RoomError
		require.ErrorAs(t, err, &room)
		assert.Equal(t, "length", room.Remedy)
		assert.Equal(t, 30.0, room.Asked)
		assert.Contains(t, room.Error(), "with a length of 30.00 mm")
		p.Length = tail.MM(room.WouldDo)
		_, err = tail.Draw(ink, height, p)
		assert.NoError(t, err)
		p.Length = tail.MM(room.WouldDo / 1.2)
		_, err = tail.Draw(ink, height, p)
		assert.Error(t, err, "far less does too")
	}
}

func TestInkWithoutAFoot(t *testing.T) {
	// A bar in the air: nothing of it is near the baseline.
	bar := geom.Region{{{X: 0, Y: 40}, {X: 100, Y: 40}, {X: 100, Y: 50}, {X: 0, Y: 50}}}
	_, err := tail.Draw(bar, height, tail.Default())
	assert.ErrorIs(t, err, tail.ErrFoot)
}

func TestAlmostEveryEndingHasATail(t *testing.T) {
	var without []string
	for i, letter := range "abcdefghijklmnopqrstuvwxyz" {
		face := scripts[i%len(scripts)]
		_, err := tail.Draw(script(t, face, "Am"+string(letter), height), height, tail.Default())
		if err != nil {
			var room *tail.RoomError
			require.ErrorAs(t, err, &room)
			without = append(without, face+" "+string(letter))
		}
	}
	assert.LessOrEqual(t, len(without), 1, "%v", without)
}
