package tally_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
	"yokeline/lettering/typeface"
)

// An invented club.
const job = `yokeline: 1
team: Alder Point Herons
sport: softball
units: in
roster: roster.csv
garment: {cut: v-neck, group: women, colour: tidewater, trim: marsh gold, fibre: polyester}
method: cut film
colours: {tidewater: "#1d3b53", egret: "#fbf7ec", marsh gold: "#e2a336"}
pieces:
  back name: {face: oswald, height: 1 3/4in, shape: straight, colour: egret}
  back number: {face: graduate, height: 8in, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}
  front name: {text: Herons, face: yellowtail, case: typed, height: 3in, colour: egret}
fit: {tracking: -4%, width: 80%, height: 1in, same: none}
`

func sized(t require.TestingT, job, roster string) *sizes.Sized {
	o, err := order.Read("job.yaml", func(name string) ([]byte, error) {
		if name == "job.yaml" {
			return []byte(job), nil
		}
		return []byte(roster), nil
	})
	require.NoError(t, err)
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, NoWaysOut: true})
	require.NoError(t, err)
	return s
}

func count(t require.TestingT, s *sizes.Sized, o tally.Options) *tally.Count {
	c, err := tally.Of(s, o)
	require.NoError(t, err)
	return c
}

const roster = "Name,Number,Size\nNg,00,S\nAbara,0,M\nO’Rourke,69,M\nQuill,96,XL\nRook,07,\n"

func TestDigitsAndLettersAreCountedAsCut(t *testing.T) {
	c := count(t, sized(t, job, roster), tally.Options{})
	digits, letters := map[string]int{}, map[string]int{}
	for _, k := range c.Kits {
		total := 0
		for _, g := range k.Counts {
			if k.Kind == tally.Digits {
				digits[g.Text] += g.Count
			} else {
				letters[g.Text] += g.Count
			}
			total += g.Count
		}
		assert.Equal(t, total, k.Total)
	}
	assert.Equal(t, map[string]int{"0": 3, "6": 2, "9": 2}, digits, "6 and 9 apart; the player without a size has nothing made")
	assert.Equal(t, 4, letters["H"])
	assert.Equal(t, 1, letters["’"], "an apostrophe is cut too")
	assert.Equal(t, 4, letters["e"], "the team's name keeps its case")
	assert.NotContains(t, letters, " ")
}

func TestKitsDifferByFaceHeightAndColour(t *testing.T) {
	c := count(t, sized(t, job, roster), tally.Options{})
	var faces []string
	for _, k := range c.Kits {
		faces = append(faces, fmt.Sprint(k.Kind, " ", k.Face, " ", k.Form, " ", tally.ColourWords(k.Colour, k.Outlines)))
	}
	assert.Equal(t, []string{"digits graduate  egret, outlined marsh gold", "letters oswald  egret", "letters yellowtail  egret"}, faces)
	assert.InDelta(t, 203.2, c.Kits[0].Height, 1e-9)
}

func TestMarksBelongToTheirLetters(t *testing.T) {
	assert.Equal(t, []string{"Í", "Ñ", "M̃", "-", "’"}, tally.Characters("Í Ñ\nM̃-’"))
	assert.Empty(t, tally.Characters(" \n"))
}

func TestUnknownSizesAreAskedFor(t *testing.T) {
	c := count(t, sized(t, job, roster), tally.Options{})
	assert.Equal(t, []int{4}, c.ToAsk)
	var got []string
	for _, b := range c.Blanks {
		got = append(got, fmt.Sprintf("%s %d %s/%s", b.Size.Label(), b.Count, b.Colour.Name, b.Trim.Name))
	}
	assert.Equal(t, []string{"WS 1 tidewater/marsh gold", "WM 2 tidewater/marsh gold", "WXL 1 tidewater/marsh gold"}, got)
	assert.False(t, c.Picks[4].Known)
	assert.Empty(t, c.Picks[4].Pieces)
}

// Checked against the widths, heights and shapes that the pieces themselves
// report.
func TestMaterialsAddUp(t *testing.T) {
	s := sized(t, job, roster)
	roll := func(tally.Material) float64 { return 470 }
	c := count(t, s, tally.Options{Roll: roll})
	require.Len(t, c.Materials, 2)
	egret, gold := c.Materials[0], c.Materials[1]
	assert.Equal(t, "egret film", egret.Name())
	assert.Equal(t, 12, egret.Shapes)
	assert.Equal(t, 4, gold.Shapes)
	box := 0.0
	for _, p := range s.Players {
		if n, ok := p.Piece(garment.BackNumber); ok {
			box += n.Number.InkWidth * n.Number.InkHeight
		}
	}
	assert.InEpsilon(t, box, gold.Box, 1e-3, "the outline's box is the finished number's")
	for _, m := range c.Materials {
		assert.Less(t, m.Ink, m.Box)
		assert.InEpsilon(t, m.Length*1.1, m.WithAllowance, 1e-12)
		assert.Greater(t, m.Length*(470+tally.DefaultGap), m.Box)
		assert.False(t, m.TooWide)
	}
	knocked := count(t, s, tally.Options{KnockedOut: true})
	bare := 0.0
	for _, p := range s.Players {
		if n, ok := p.Piece(garment.BackNumber); ok {
			r, err := n.Number.Settled()
			require.NoError(t, err)
			bare += r.Area()
		}
	}
	assert.InEpsilon(t, gold.Ink-bare, knocked.Materials[1].Ink, 1e-9, "without what egret covers")
	assert.Zero(t, knocked.Materials[0].Length, "no roll, no length")
	narrow := count(t, s, tally.Options{Roll: func(tally.Material) float64 { return 100 }})
	assert.True(t, narrow.Materials[1].TooWide)
	laid := count(t, s, tally.Options{Roll: roll, Allowance: -1, Laid: func(tally.Material) (float64, bool) { return 1234, true }})
	assert.Equal(t, [2]float64{1234, 1234}, [2]float64{laid.Materials[0].Length, laid.Materials[0].WithAllowance})
}

func TestPrintedMethodsTakeOneMaterial(t *testing.T) {
	c := count(t, sized(t, strings.Replace(job, "method: cut film", "method: screen transfer", 1), roster), tally.Options{})
	require.Len(t, c.Materials, 1)
	assert.Equal(t, "transfers", c.Materials[0].Name())
	assert.Equal(t, c.Pieces, c.Materials[0].Shapes)
}

// Every field quoted, and a number's zeros kept where a spreadsheet makes
// figures of figures.
func TestNumbersSurviveASpreadsheet(t *testing.T) {
	c := count(t, sized(t, job, "Name,Number,Size\n=SUM(A1),00,S\nVo,0,M\nPeña,07,M\n\"Al \"\"Ace\"\"\",7,M\n"), tally.Options{
		Spots: func(player int, _ garment.Place) []tally.Spot {
			return []tally.Spot{{Sheet: fmt.Sprint(player + 1), Position: "B4"}}
		},
	})
	tables := c.Tables()
	i := slices.IndexFunc(tables, func(t tally.Table) bool { return t.Name == "pick-list" })
	var out bytes.Buffer
	require.NoError(t, tables[i].WriteCSV(&out))
	require.True(t, strings.HasPrefix(out.String(), "\ufeff"), "the mark by which spreadsheets know UTF-8")
	out.Next(len("\ufeff"))
	for _, line := range strings.Split(strings.TrimSuffix(out.String(), "\r\n"), "\r\n") {
		assert.Regexp(t, `^"([^"]|"")*"(,"([^"]|"")*")*$`, line)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+3*4)
	assert.Equal(t, []string{"'=SUM(A1)", "'=SUM(A1)", "00", "No. 00", "women", "S", "back name", "'=SUM(A1)", "44.45", "sheet 1 B4"}, rows[1])
	assert.Equal(t, []string{"0", "No. 0"}, rows[4][2:4])
	assert.Equal(t, []string{"07", "No. 07"}, rows[7][2:4])
	assert.Equal(t, "No. 07", rows[8][7])
	assert.Equal(t, `Al "Ace"`, rows[10][1])
	var read struct {
		Picks []struct {
			Number string
			Name   string
		} `json:"pick_list"`
	}
	out.Reset()
	require.NoError(t, c.WriteJSON(&out))
	require.NoError(t, json.Unmarshal(out.Bytes(), &read))
	assert.Equal(t, "00", read.Picks[0].Number)
	assert.Equal(t, "=SUM(A1)", read.Picks[0].Name)
	assert.Equal(t, "07", read.Picks[2].Number)
}

func TestSameOrderSameBytes(t *testing.T) {
	write := func() string {
		var out bytes.Buffer
		c := count(t, sized(t, job, roster), tally.Options{Roll: func(tally.Material) float64 { return 470 }})
		require.NoError(t, c.WriteJSON(&out))
		for _, table := range c.Tables() {
			require.NoError(t, table.WriteCSV(&out))
		}
		return out.String()
	}
	assert.Equal(t, write(), write())
}

// Whatever the roster: pieces counted by size = pieces on pick lists = pieces of
// the order, digits and letters sum up to what the texts have, and every player
// has a garment or is asked.
func TestEverythingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		b.WriteString("Name,Number,Size\n")
		for range rapid.IntRange(1, 6).Draw(t, "players") {
			name := rapid.SampledFrom([]string{"Ng", "De la Cruz", "Íñiguez", "O’Rourke", "Quill-Moss"}).Draw(t, "name")
			number := rapid.SampledFrom([]string{"0", "00", "7", "07", "69", "96", ""}).Draw(t, "number")
			size := rapid.SampledFrom([]string{"S", "M", "youth L", "adult XL", "", "huge"}).Draw(t, "size")
			fmt.Fprintf(&b, "%s,%s,%s\n", name, number, size)
		}
		s := sized(t, job, b.String())
		c := count(t, s, tally.Options{})
		pieces, digits, letters := 0, 0, 0
		for _, p := range s.Players {
			pieces += len(p.Pieces)
			for _, piece := range p.Pieces {
				n := len([]rune(strings.Join(strings.Fields(piece.Text()), "")))
				if piece.Number != nil {
					digits += n
				} else {
					letters += n
				}
			}
		}
		bySize, onPicks, garments := 0, 0, 0
		for _, r := range c.Sizes {
			bySize += r.Pieces
		}
		for _, p := range c.Picks {
			onPicks += len(p.Pieces)
		}
		for _, blank := range c.Blanks {
			garments += blank.Count
		}
		for _, k := range c.Kits {
			if k.Kind == tally.Digits {
				digits -= k.Total
			} else {
				letters -= k.Total
			}
		}
		if pieces != bySize || pieces != onPicks || pieces != c.Pieces {
			t.Fatalf("%d pieces, %d by size, %d on pick lists, %d counted", pieces, bySize, onPicks, c.Pieces)
		}
		if digits != 0 || letters != 0 {
			t.Fatalf("%d digits and %d letters not counted", digits, letters)
		}
		if garments+len(c.ToAsk) != len(s.Players) {
			t.Fatalf("%d garments and %d to ask for %d players", garments, len(c.ToAsk), len(s.Players))
		}
	})
}
