package sizes_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// hawks is a football order with back numbers alone, in a face.
func hawks(face string, players ...order.Player) *order.Order {
	o := herons(players...)
	o.Sport, o.Garment.Cut = "football", garment.FootballYoke
	o.Pieces = o.Pieces[1:]
	o.Pieces[0].Face, o.Pieces[0].Height = face, order.Height{By: order.ByRule}
	return o
}

func rulesOf(t *testing.T, id string) *rulebook.Rules {
	t.Helper()
	book, err := rulebook.Load(id)
	require.NoError(t, err)
	r, err := book.In("2026")
	require.NoError(t, err)
	return r
}

// changed is the order with a way out taken, as a shop would write it.
func changed(t *testing.T, o order.Order, w numeral.WayOut) *order.Order {
	t.Helper()
	o.Pieces = append([]order.Piece{}, o.Pieces...)
	p, r := &o.Pieces[0], w.Request
	p.Face, p.Outlines = r.Face.ID(), nil
	for _, l := range r.Outlines {
		p.Outlines = append(p.Outlines, order.Outline{Width: length.FromMM(l.Width, length.Millimetre), Join: l.Join})
	}
	exact := func(mm float64) *length.Length {
		l := length.FromMM(mm, length.Millimetre)
		return &l
	}
	if !math.IsNaN(r.Gap) {
		p.Gap = exact(r.Gap)
	}
	if !math.IsNaN(r.Wdth) {
		p.Wdth = &r.Wdth
	}
	if s := r.Stroke + r.EmboldenTo; s > 0 {
		p.Stroke = exact(s)
	}
	if w.Kind == numeral.LowerDigits {
		p.Height = order.Height{Length: *exact(r.Height)}
	}
	return &o
}

// TestAYouthTeamOfFootballGetsAWayOutOfEveryNumber: 10 in high with the border
// on every youth size, in a block and in the widest slab.
func TestAYouthTeamOfFootballGetsAWayOutOfEveryNumber(t *testing.T) {
	rules := rulesOf(t, "nfhs-football")
	met, kinds := 0, map[string]int{}
	for _, face := range []string{"graduate", "alfa-slab-one"} {
		var players []order.Player
		for _, letter := range garment.Sizes(garment.Youth) {
			for number := 0; number < 100; number += 4 {
				players = append(players, player(fmt.Sprint("P", number, letter), fmt.Sprint(number), garment.Youth, letter))
			}
		}
		o := hawks(face, players...)
		s := resolve(t, o, rules)
		for k, p := range s.Players {
			piece := p.Pieces[0]
			if piece.Number.Verdict == numeral.Full {
				assert.Nil(t, piece.Conflict, p.Label())
				continue
			}
			require.NotNil(t, piece.Conflict, p.Label())
			assert.NotEmpty(t, piece.Conflict.WaysOut, "%s %s", face, p.Label())
			assert.InDelta(t, piece.Number.InkWidth-piece.Number.Limit, piece.Conflict.OverBy, 1e-9)
			for _, w := range piece.Conflict.WaysOut {
				kinds[w.Kind]++
				assert.NotEqual(t, numeral.LowerDigits, w.Kind, "the book demands 10 in")
				if met++; met%7 != 0 && kinds[w.Kind] > 3 {
					continue // a share of them is taken as a shop would
				}
				takes(t, o, rules, o.Players[k], w)
			}
		}
	}
	t.Log(met, kinds)
	assert.Greater(t, met, 50)
	for _, kind := range []string{numeral.NarrowerFace, numeral.NextSize, numeral.SmallerGap} {
		assert.NotZero(t, kinds[kind], kind)
	}
}

// takes sizes the order of one player again with the way out taken.
func takes(t *testing.T, o *order.Order, rules *rulebook.Rules, p order.Player, w numeral.WayOut) {
	t.Helper()
	alone := *o
	alone.Players = []order.Player{p}
	if w.Kind == numeral.NextSize {
		for _, size := range garment.AllSizes() {
			if size.String() == w.Size {
				alone.Players[0].Size = size
			}
		}
		require.NotEqual(t, p.Size, alone.Players[0].Size)
	}
	piece := resolve(t, changed(t, alone, w), rules).Players[0].Pieces[0]
	who := fmt.Sprint(p.Number, " ", w.Kind, " ", w.Number.FaceID, " ", p.Size)
	assert.Equal(t, numeral.Full, piece.Number.Verdict, who)
	assert.Nil(t, piece.Conflict, who)
	assert.GreaterOrEqual(t, math.Round((piece.Number.Height+2*piece.Reach())*1e6), 254e6, who)
	assert.InDelta(t, w.Number.InkWidth, piece.Number.InkWidth, 1e-4, who)
}

func TestANumberThatARuleRaisesPastItsRoomIsAConflict(t *testing.T) {
	o := hawks("graduate", player("Quist", "88", garment.Youth, "XS"))
	o.Pieces[0].Height = order.Height{Length: length.Inches(6, 1)}
	piece := resolve(t, o, rulesOf(t, "nfhs-football")).Players[0].Pieces[0]
	assert.Equal(t, numeral.Full, piece.Number.Verdict, "as it was asked it fits")
	require.NotNil(t, piece.Conflict)
	assert.InDelta(t, 254-2*3.175, piece.Conflict.Number.Height, 1e-9)
	assert.NotEmpty(t, piece.Conflict.WaysOut)
	assert.Nil(t, resolve(t, o, nil).Players[0].Pieces[0].Conflict, "no book, no conflict")
}

func TestWaysOutOfNumbersAreLookedForOnlyWhenAskedFor(t *testing.T) {
	o := hawks("alfa-slab-one", player("Quist", "88", garment.Youth, "XS"))
	o.Pieces[0].Height = order.Height{Length: length.Inches(10, 1)}
	for _, c := range []struct {
		options sizes.Options
		want    bool
	}{{sizes.Options{}, true}, {sizes.Options{NoWaysOut: true}, false}, {sizes.Options{NoWaysOut: true, NumberWays: true}, true}} {
		c.options.Face = typeface.Embedded
		s, err := sizes.Resolve(context.Background(), o, c.options)
		require.NoError(t, err)
		assert.Equal(t, c.want, s.Players[0].Pieces[0].Conflict != nil)
	}
}

func TestFacesForNumbersGoFromWideToNarrow(t *testing.T) {
	faces, err := sizes.NumberFaces()
	require.NoError(t, err)
	before := math.Inf(1)
	for _, face := range faces {
		n, err := numeral.NewSizer().Number(numeral.Request{Text: "88", Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 200, Gap: math.NaN()})
		require.NoError(t, err)
		assert.Less(t, n.InkWidth, before, face.ID())
		before = n.InkWidth
	}
}

func TestAWayOutOfANumberInWords(t *testing.T) {
	o := hawks("graduate", player("Quist", "88", garment.Youth, "XS"))
	ways := resolve(t, o, rulesOf(t, "nfhs-football")).Players[0].Pieces[0].Conflict.WaysOut
	text := sizes.NumberWays(ways, length.Inch)
	assert.Regexp(t, `^set it in [a-z-]+ \(9 3/4 in high, 10 in with its outline, \d+( \d+/\d+)? in wide\)(, .*)?, or order youth (S|M|L)$`, text)
	assert.Equal(t, "", sizes.NumberWays(nil, length.Inch))

	r := ways[0].Request
	for _, c := range []struct {
		way  numeral.WayOut
		want string
	}{
		{numeral.WayOut{Kind: numeral.SmallerGap, AnyLower: true}, "set its digits 7/16 in apart"},
		{numeral.WayOut{Kind: numeral.SmallerGap}, "set its digits 0.472 in apart"},
		{numeral.WayOut{Kind: numeral.NarrowerOutlines}, "outline it with 1/8 in"},
		{numeral.WayOut{Kind: numeral.ThickerDigits}, "give it strokes of 0.788 in"},
	} {
		c.way.Request, c.way.Number = r, ways[0].Number
		c.way.Request.Gap, c.way.Request.EmboldenTo = 12, 20
		assert.Contains(t, sizes.NumberWay(c.way, length.Inch), c.want+" (")
	}
}
