package sizes_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

func embedded(id string) (*typeface.Face, error) { return typeface.Embedded(id) }

func inLines(name, lines, number string) order.Player {
	p := player(name, number, garment.Adult, "L")
	p.Lines = lines
	return p
}

func TestANumberMovesDownUnderTwoLinesAndOnlyThere(t *testing.T) {
	for _, shape := range []string{"straight", "radial arch", "radial arch down", "vertical arch"} {
		for _, same := range []string{"none", "team"} {
			o := herons(inLines("Quist-Maldonaro", "Quist-\nMaldonaro", "88"), player("Ng", "88", garment.Adult, "L"), player("Schwarzenbergers", "8", garment.Adult, "L"))
			o.Fit.Same, o.Pieces[0].Shape = same, shape
			if o.Pieces[0].Height.Length = length.Inches(2, 1); shape == "straight" {
				o.Pieces[0].Rise = nil
			}
			s := resolve(t, o, nil)
			two := backName(t, s.Players[0])
			require.NotZero(t, two.Name.Leading, shape)
			lowered, _ := s.Players[0].Piece(garment.BackNumber)
			usual, _ := s.Players[1].Piece(garment.BackNumber)
			third, _ := s.Players[2].Piece(garment.BackNumber)
			assert.Equal(t, usual.Top, third.Top)
			assert.Greater(t, lowered.Top, usual.Top, shape)
			assert.InDelta(t, lowered.Top-usual.Top, lowered.At.Y-usual.At.Y, 1e-9)
			assert.InDelta(t, lowered.Top-usual.Top, lowered.BelowCollar-usual.BelowCollar, 1e-9)
			assert.Empty(t, overlap(t, two, lowered), "%s, %s", shape, same)
			if same == "team" {
				assert.Equal(t, s.Looks[0].Height, two.Name.LetterHeight)
			}
		}
	}
}

// overlap returns a complaint where two pieces with their outlines meet on the
// garment, looked at on points.
func overlap(t *testing.T, name, number sizes.Piece) string {
	t.Helper()
	outer := func(p sizes.Piece) (lowest, highest func(x float64) float64) {
		layers, err := p.Outlines()
		require.NoError(t, err)
		at := func(x float64, best float64, pick func(a, b float64) float64) float64 {
			for _, ring := range layers[len(layers)-1] {
				for i := range ring {
					a, b := ring[i], ring[(i+1)%len(ring)]
					if (a.X+p.At.X-x)*(b.X+p.At.X-x) <= 0 {
						best = pick(best, max(p.At.Y-a.Y, p.At.Y-b.Y))
						best = pick(best, min(p.At.Y-a.Y, p.At.Y-b.Y))
					}
				}
			}
			return best
		}
		return func(x float64) float64 { return at(x, -1e9, func(a, b float64) float64 { return max(a, b) }) },
			func(x float64) float64 { return at(x, 1e9, func(a, b float64) float64 { return min(a, b) }) }
	}
	foot, _ := outer(name)
	_, head := outer(number)
	for x := -160.0; x <= 160; x++ {
		if foot(x) >= head(x) {
			return "they meet"
		}
	}
	return ""
}

func TestTwoLinesHaveTheRoomOfTheirBand(t *testing.T) {
	o := herons(inLines("Quist-Maldonaro", "Quist-\nMaldonaro", "88"))
	s := resolve(t, o, nil)
	piece := backName(t, s.Players[0])
	assert.Equal(t, "QUIST-\nMALDONARO", piece.Text())
	assert.LessOrEqual(t, piece.InkWidth(), piece.Room.Width+1e-9)
	box := piece.Ink().Bounds()
	deepest := piece.At.Y - box.Min.Y
	room := s.Players[0].Garment.Room(garment.BackName, piece.Top, deepest)
	assert.LessOrEqual(t, piece.InkWidth(), room.Width+1e-9)
}

func TestApostrophesComeOutAlike(t *testing.T) {
	var all []order.Player
	for _, sign := range []string{"'", "’", "‘", "ʼ", "´", "`", "′", "＇"} {
		all = append(all, player("O"+sign+"Rourke", "11", garment.Adult, "L"))
	}
	s := resolve(t, herons(all...), nil)
	for _, p := range s.Players {
		assert.Equal(t, "O’ROURKE", backName(t, p).Text())
		assert.Equal(t, backName(t, s.Players[0]).Ink(), backName(t, p).Ink())
	}
	s = resolve(t, herons(player("Kaʻahumanu", "1", garment.Adult, "L")), nil)
	assert.Equal(t, "KA‘AHUMANU", backName(t, s.Players[0]).Text())
}

func TestEveryEmbeddedFaceDrawsApostrophes(t *testing.T) {
	for _, id := range []string{"graduate", "oswald", "quantico", "yellowtail", "saira", "league-gothic"} {
		face, err := typeface.Embedded(id)
		require.NoError(t, err)
		text, _ := sizes.Wording("O'Neil Kaʻa", face, spelling.Typed, "", false)
		for _, r := range text {
			assert.True(t, r == ' ' || face.Has(r), "%s lacks %U", id, r)
		}
	}
}

func TestARaisedPrefixIsDrawnSmallAndSigned(t *testing.T) {
	o := herons(player("McTa", "1", garment.Adult, "L"))
	plain := resolve(t, o, nil)
	o = herons(player("McTa", "1", garment.Adult, "L"))
	o.Pieces[0].RaisePrefix = true
	raised := resolve(t, o, nil)
	assert.Equal(t, "MCTA", backName(t, raised.Players[0]).Text())
	assert.Less(t, backName(t, raised.Players[0]).InkWidth(), backName(t, plain.Players[0]).InkWidth())
	assert.NotEqual(t, plain.Fingerprint(), raised.Fingerprint())
}

func TestEveryWayOutOfAnOrderWorks(t *testing.T) {
	names := []order.Player{
		player("Featherstonehaugh-Lindqvist", "0", garment.Youth, "S"), player("Wojciechowskieva", "8", garment.Youth, "M"),
		player("Brandtmeister", "8", garment.Women, "XS"), player("De la Fuente-Montalvo", "8", garment.Adult, "S"), player("Schwarzenbergers", "9", garment.Adult, "4XL"),
	}
	seen := map[string]int{}
	for _, p := range resolve(t, herons(names...), nil).Players {
		before := backName(t, p).Name
		require.GreaterOrEqual(t, before.Verdict, fit.Reduced, p.Name)
		for _, w := range before.WouldFit {
			seen[w.Kind]++
			again := p.Player
			o := herons(again)
			switch w.Kind {
			case fit.NextSize:
				_, letter, _ := strings.Cut(w.Size, " ")
				o.Players[0].Size.Letter = letter
			case fit.TwoLines:
				o.Players[0].Lines = w.Text
			case fit.AnInitial:
				o.Players[0].Name = w.Text
			case fit.MoreRoom:
				limit := length.FromMM(w.Limit, length.Millimetre)
				o.Pieces[0].Limit = &limit
			case fit.NarrowerLetters:
				o.Fit.Width = w.WidthFloor
			case fit.NarrowerFace:
				o.Pieces[0].Face = w.FaceID
			case fit.FlatterArch:
				rise := length.FromMM(w.Rise, length.Millimetre)
				o.Pieces[0].Rise = &rise
			case fit.LowerLetters:
				floor := length.FromMM(w.Height, length.Millimetre)
				o.Fit.Height = &floor
			}
			after := backName(t, resolve(t, o, nil).Players[0]).Name
			assert.NotEqual(t, fit.Over, after.Verdict, "%s: %s", p.Name, w.Kind)
			assert.InDelta(t, w.Height, after.LetterHeight, 0.0101, "%s: %s", p.Name, w.Kind)
			if before.Verdict == fit.Reduced {
				assert.Greater(t, after.LetterHeight, before.LetterHeight)
			}
		}
	}
	for _, kind := range []string{fit.LowerLetters, fit.NarrowerLetters, fit.NarrowerFace, fit.MoreRoom, fit.TwoLines, fit.AnInitial, fit.NextSize} {
		assert.Positive(t, seen[kind], kind)
	}
}

func TestWaysOutAreLeftOutWhereNobodyWantsThem(t *testing.T) {
	s, err := sizes.Resolve(t.Context(), herons(team()...), sizes.Options{Face: embedded, NoWaysOut: true})
	require.NoError(t, err)
	for _, p := range s.Players {
		assert.Empty(t, backName(t, p).Name.WouldFit)
	}
}

func TestPlayersAlikeShareWhatWasWorkedOut(t *testing.T) {
	one, err := sizes.Resolve(t.Context(), herons(player("Ng", "7", garment.Adult, "M"), player("Ng", "7", garment.Adult, "M")), sizes.Options{Face: embedded, Workers: 1})
	require.NoError(t, err)
	assert.Same(t, backName(t, one.Players[0]).Name, backName(t, one.Players[1]).Name)
}
