package sizes_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

// finishedOf returns the finished shape of a piece where it lies on the garment.
func finishedOf(t require.TestingT, p sizes.Piece) geom.Region {
	layers, err := p.Outlines()
	require.NoError(t, err)
	shape := p.Ink().Flatten(0.02)
	if len(layers) > 0 {
		shape = layers[len(layers)-1]
	}
	return shape.Transform(geom.Scale(1, -1)).Transform(geom.Translate(p.At.X, p.At.Y))
}

// nearest is the smallest distance from a point of a to an edge of b, measured
// the long way.
func nearest(a, b geom.Region) float64 {
	least := math.Inf(1)
	for _, ring := range a {
		for _, p := range ring {
			for _, other := range b {
				for i, from := range other {
					d := other[(i+1)%len(other)].Sub(from)
					share := 0.0
					if d.Dot(d) > 0 {
						share = math.Max(0, math.Min(1, p.Sub(from).Dot(d)/d.Dot(d)))
					}
					least = math.Min(least, p.Sub(from.Add(d.Mul(share))).Norm())
				}
			}
		}
	}
	return least
}

// inside reports whether a finished shape lies in the panels of its side, but for
// a tenth of a millimetre, for panels are traced within half of that.
func inside(p sizes.Piece, g *garment.Garment, shape geom.Region) bool {
	panel, middle := g.Panel(p.Side), shape.Bounds().Center()
	for _, ring := range shape {
		for _, q := range ring {
			if d := middle.Sub(q); d.Norm() > 0.1 {
				q = q.Add(d.Mul(0.1 / d.Norm()))
			}
			if !panel.Contains(q) {
				return false
			}
		}
	}
	return true
}

func anyStack(t *rapid.T) *order.Order {
	inch16 := func(lo, hi int, what string) length.Length {
		return length.Inches(int64(rapid.IntRange(lo, hi).Draw(t, what)), 16)
	}
	cut := rapid.SampledFrom([]garment.Cut{garment.CrewTee, garment.TwoButton, garment.RacerbackTank, garment.FootballYoke, garment.Raglan, garment.Soccer}).Draw(t, "cut")
	o := herons()
	o.Garment.Cut = cut
	name, number := &o.Pieces[0], &o.Pieces[1]
	name.Face = rapid.SampledFrom([]string{"oswald", "graduate", "yellowtail"}).Draw(t, "face")
	name.Case = rapid.SampledFrom([]spelling.Case{spelling.Upper, spelling.Typed}).Draw(t, "case")
	name.Height.Length = inch16(16, 60, "letters")
	number.Height = order.Height{By: order.ByLength, Length: inch16(60, 200, "digits")}
	name.Shape = rapid.SampledFrom([]string{"straight", "radial arch", "radial arch down", "vertical arch"}).Draw(t, "shape")
	name.Rise = nil
	if name.Shape != "straight" {
		rise := inch16(4, 28, "rise")
		name.Rise = &rise
	}
	for _, p := range []*order.Piece{name, number} {
		p.Outlines = nil
		if rapid.Bool().Draw(t, "outlined") {
			p.Outlines = []order.Outline{{Width: length.Inches(1, 8), Join: rapid.SampledFrom([]outline.Join{outline.Round, outline.Mitre}).Draw(t, "join")}}
		}
	}
	o.Fit.Same = rapid.SampledFrom([]string{"none", "team"}).Draw(t, "same")
	for range rapid.IntRange(1, 3).Draw(t, "players") {
		size := rapid.SampledFrom([]garment.Size{{Group: garment.Youth, Letter: "XS"}, {Group: garment.Adult, Letter: "M"}}).Draw(t, "size")
		o.Players = append(o.Players, player(rapid.SampledFrom([]string{"Quigg", "Ng", "Jacquemont", "Íñiguez", "Maly"}).Draw(t, "name"),
			rapid.SampledFrom([]string{"7", "88", "10", "00"}).Draw(t, "number"), size.Group, size.Letter))
	}
	return o
}

// The checks here look at nothing that sizing worked out but the pieces
// themselves: finished shapes, sampled, on the traced panel.
func TestStacksLieInsideThePanelKeepTheirGapAndShareOneLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anyStack(t)
		s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, NoWaysOut: true})
		if err != nil {
			require.Regexp(t, "75 degrees|wide as the circle", err.Error(), "only an arch that is too tight is refused")
			return
		}
		levels := map[garment.Size]float64{}
		for _, p := range s.Players {
			name, _ := p.Piece(garment.BackName)
			number, _ := p.Piece(garment.BackNumber)
			what := fmt.Sprintf("%s on %s %s", p.Name, o.Garment.Cut, p.Size)
			if level, seen := levels[p.Size]; seen {
				assert.Equal(t, level, number.Top, what)
			}
			levels[p.Size] = number.Top
			shapes := [2]geom.Region{finishedOf(t, name), finishedOf(t, number)}
			if !name.NoRoom {
				assert.GreaterOrEqual(t, math.Min(nearest(shapes[0], shapes[1]), nearest(shapes[1], shapes[0])), sizes.Clearance-0.05, what)
			}
			if !number.NoRoom && number.Number.Verdict == "full" && number.Short == 0 {
				assert.True(t, inside(number, p.Garment, shapes[1]), "%s: number in the panel", what)
			}
			if number.Short > 0 {
				assert.True(t, !inside(number, p.Garment, shapes[1]) || number.Number.Verdict == "over", "%s: a stack that is short does not fit", what)
			}
		}
	})
}

// words are what the notes of an eased stack begin with.
func words(eased []string) (out []string) {
	for _, e := range eased {
		first, _, _ := strings.Cut(e, " ")
		out = append(out, first)
	}
	return out
}

func TestAStackGivesUpTheGapThenTheLettersThenTheDigits(t *testing.T) {
	size := garment.Size{Group: garment.Youth, Letter: "XS"}
	last := 0
	reached := map[int]bool{}
	for digits := int64(36); digits <= 120 && last < 4; digits++ { // quarters of an inch
		o := herons(player("Ng", "1", size.Group, size.Letter))
		o.Pieces[0].Shape, o.Pieces[0].Rise, o.Pieces[0].Height.Length = "straight", nil, length.Inches(5, 2)
		o.Pieces[1].Height = order.Height{By: order.ByLength, Length: length.Inches(digits, 4)}
		s := resolve(t, o, nil)
		name, _ := s.Players[0].Piece(garment.BackName)
		number, _ := s.Players[0].Piece(garment.BackNumber)
		got := words(number.Eased)
		stage := len(got)
		switch {
		case number.Short > 0:
			stage = 4
			assert.Empty(t, got)
			assert.InDelta(t, number.AskedHeight, number.Height(), 1e-9, "nothing is given up in vain")
		case stage > 0:
			assert.Equal(t, []string{"gap", "letters", "digits"}[:stage], got, "%d/4 in", digits)
		}
		assert.Equal(t, stage >= 3 && stage < 4, number.Height() < number.AskedHeight-1e-6, "%d/4 in", digits)
		assert.Equal(t, stage >= 2 && stage < 4, name.Height() < name.AskedHeight-1e-6, "%d/4 in", digits)
		if stage == 2 || stage == 3 {
			assert.Equal(t, fit.Reduced, name.Name.Verdict, "a name that a stack made lower is told as reduced")
			assert.InDelta(t, 63.5, name.Name.Asked, 1e-9)
		}
		assert.GreaterOrEqual(t, stage, last, "a taller number gives up no less")
		last, reached[stage] = stage, true
	}
	assert.True(t, reached[0] && reached[1] && reached[2] && reached[3] && reached[4], "%v", reached)
}

func TestTheLowestNameOfASizeDecidesItsLevel(t *testing.T) {
	o := herons(player("Ng", "7", garment.Youth, "M"), player("Maly", "8", garment.Youth, "M"), player("Ng", "7", garment.Youth, "L"))
	o.Pieces[0].Face, o.Pieces[0].Case, o.Pieces[0].Shape, o.Pieces[0].Rise = "yellowtail", spelling.Typed, "straight", nil
	with := resolve(t, o, nil)
	without := *o
	without.Players = []order.Player{player("Nn", "7", garment.Youth, "M")}
	alone := resolve(t, &without, nil)
	level := func(s *sizes.Sized, k int) float64 {
		p, _ := s.Players[k].Piece(garment.BackNumber)
		return p.Top
	}
	assert.Equal(t, level(with, 0), level(with, 1))
	assert.Greater(t, level(with, 0), level(alone, 0)+1, "the y of Maly reaches under the usual gap")
}

func TestAFixedDistanceIsKeptAndToldWhenItIsTooNear(t *testing.T) {
	o := herons(player("Brightwater", "88", garment.Adult, "L"))
	near := length.Inches(7, 1)
	o.Pieces[1].Below = &near
	number, _ := resolve(t, o, nil).Players[0].Piece(garment.BackNumber)
	assert.InDelta(t, near.MM(), number.BelowCollar, 1e-9)
	assert.Positive(t, number.TooNear)
	further := length.FromMM(near.MM()+number.TooNear+0.01, length.Millimetre)
	o.Pieces[1].Below = &further
	number, _ = resolve(t, o, nil).Players[0].Piece(garment.BackNumber)
	assert.Zero(t, number.TooNear, "moved down by what lacks, it is near enough no more")
}
