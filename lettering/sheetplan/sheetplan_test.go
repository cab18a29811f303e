package sheetplan_test

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/nest"
	"yokeline/lettering/order"
	"yokeline/lettering/sheetplan"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
	"yokeline/lettering/typeface"
)

// demo is the demo order made by a method.
func demo(t testing.TB, method string, players int) *sizes.Sized {
	t.Helper()
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) },
		order.WithFaces("oswald", "quantico", "yellowtail"), order.WithRules("nfhs-softball"))
	require.NoError(t, err)
	o.Method, o.Players = method, o.Players[:players]
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: 2, NoWaysOut: true})
	require.NoError(t, err)
	return s
}

func plan(t testing.TB, s *sizes.Sized, o sheetplan.Options) *sheetplan.Plan {
	t.Helper()
	o.Settings, o.Workers = layers.Default(), 2
	p, err := sheetplan.Of(context.Background(), s, o)
	require.NoError(t, err)
	return p
}

func TestEveryPartLiesOnOneSheetOfItsMaterial(t *testing.T) {
	for _, method := range []string{"cut film", "printed film", "screen transfer", "direct-to-film", "flock film", "sewn twill", "sublimation", "embroidery"} {
		t.Run(method, func(t *testing.T) {
			s := demo(t, method, 3)
			p := plan(t, s, sheetplan.Options{})
			pieces := 0
			for _, player := range s.Players {
				pieces += len(player.Pieces)
			}
			assert.Len(t, p.Pieces, pieces)
			placed := map[[3]int]int{}
			for n, sheet := range p.Layout.Sheets {
				on := p.On(n, nest.Boxes)
				require.Len(t, on, len(sheet.Placed))
				for k, part := range on {
					assert.Equal(t, sheet.Group, part.Material)
					assert.Equal(t, k+1, part.Number)
					placed[[3]int{part.Player, part.Piece, part.Of}]++
					inside := geom.Rect{Max: geom.Point{X: sheet.Width, Y: sheet.Height}}.Grow(-p.Stock.Margin + 1e-6)
					assert.True(t, part.Art.Box.Min.X >= inside.Min.X && part.Art.Box.Max.X <= inside.Max.X &&
						part.Art.Box.Min.Y >= inside.Min.Y && part.Art.Box.Max.Y <= inside.Max.Y, "%v on %v", part.Art.Box, inside)
				}
			}
			assert.Len(t, placed, len(p.Parts)-len(p.Loose))
			for _, n := range placed {
				assert.Equal(t, 1, n)
			}
			if method == "embroidery" {
				assert.Empty(t, p.Parts, "embroidery goes on no sheet")
			} else {
				assert.NotEmpty(t, p.Parts)
			}
		})
	}
}

// The art on a sheet is the art of the piece, moved: areas stay, and boxes have
// the sides that they had, one way round or the other.
func TestArtIsOnlyMoved(t *testing.T) {
	p := plan(t, demo(t, "cut film", 4), sheetplan.Options{Nest: nest.Options{Order: nest.Tight}})
	for n := range p.Layout.Sheets {
		for _, part := range p.On(n, nest.Boxes) {
			was := part.Part.Art
			require.Len(t, part.Art.Layers, len(was.Layers))
			for i := range was.Layers {
				assert.InDelta(t, was.Layers[i].Region.Area(), part.Art.Layers[i].Region.Area(), 1e-6)
			}
			sides := []float64{was.Box.Width(), was.Box.Height()}
			now := []float64{part.Art.Box.Width(), part.Art.Box.Height()}
			slices.Sort(sides)
			slices.Sort(now)
			assert.InDeltaSlice(t, sides, now, 1e-9)
		}
	}
}

// One player's pieces are the same art whoever is made with them.
func TestOnlySomePlayersGiveTheSameArt(t *testing.T) {
	s := demo(t, "cut film", 5)
	all := plan(t, s, sheetplan.Options{})
	some := plan(t, s, sheetplan.Options{Only: func(player int) bool { return player == 3 }})
	var from []sheetplan.Piece
	for _, piece := range all.Pieces {
		if piece.Player == 3 {
			from = append(from, piece)
		}
	}
	assert.Equal(t, fmt.Sprint(from), fmt.Sprint(some.Pieces))
}

func TestSpotsNameEveryPartOfAPiece(t *testing.T) {
	s := demo(t, "cut film", 3)
	p := plan(t, s, sheetplan.Options{})
	taken := 0.0
	materials := map[string]bool{}
	for _, part := range p.Parts {
		materials[part.Material] = true
	}
	for m := range materials {
		mm, ok := p.Taken(m)
		assert.True(t, ok, m)
		taken += mm
	}
	used := 0.0
	for _, sheet := range p.Layout.Sheets {
		used += sheet.Height
	}
	assert.InDelta(t, used, taken, 1e-9)
	for i, player := range s.Players {
		for _, piece := range player.Pieces {
			spots := p.Spots(s, i, piece.Asked.Place)
			assert.Len(t, spots, 1+len(piece.Asked.Outlines), "a film for the letters and one for each outline")
			for _, at := range spots {
				assert.NotEmpty(t, at.Sheet)
				assert.NotEmpty(t, at.Position)
			}
		}
	}
	_, ok := p.Taken("unobtainium")
	assert.False(t, ok)
}

func TestWhatNoSheetTakesIsLoose(t *testing.T) {
	small := nest.Stock{Name: "postcard", Width: 148, Height: 105, Margin: 5, Gap: 3}
	s := demo(t, "cut film", 2)
	p := plan(t, s, sheetplan.Options{Stock: &small})
	assert.NotEmpty(t, p.Loose)
	for i, why := range p.Loose {
		assert.Contains(t, why, "postcard")
		assert.NotContains(t, why, fmt.Sprintf("piece %d", i), "readers know a piece by its player and place")
		part := p.Parts[i]
		assert.Contains(t, tally.SpotWords(p.Spots(s, part.Player, s.Players[part.Player].Pieces[part.Piece].Asked.Place)), "on no sheet")
	}
}

// Parts that lie by their outlines reach up to the margins: no label is cut off by
// the edge of the sheet.
func TestRoomsForLabelsLieOnTheSheet(t *testing.T) {
	bare := nest.Stock{Name: "bare roll", Width: 600, MaxLength: 1500, Gap: 3}
	p := plan(t, demo(t, "cut film", 4), sheetplan.Options{Stock: &bare, Nest: nest.Options{Order: nest.Tight, By: nest.Outlines, Effort: 2}})
	rooms := 0
	for n, sheet := range p.Layout.Sheets {
		for _, part := range p.On(n, nest.Outlines) {
			for _, room := range part.Art.Waste {
				if room.Empty() {
					continue
				}
				rooms++
				assert.True(t, room.Min.X >= 0 && room.Min.Y >= 0 && room.Max.X <= sheet.Width && room.Max.Y <= sheet.Height, "sheet %d: %v", n+1, room)
			}
		}
	}
	assert.Positive(t, rooms)
}

// A note that is true of several pieces is said once, with their places.
func TestNotesNameThePlaces(t *testing.T) {
	s := demo(t, "embroidery", 2)
	notes := plan(t, s, sheetplan.Options{}).Notes(s)
	require.NotEmpty(t, notes)
	said := 0
	for _, note := range notes {
		if strings.Contains(note, "digitising") {
			said++
			for _, piece := range s.Players[0].Pieces {
				assert.Contains(t, note, string(piece.Asked.Place))
			}
		}
	}
	assert.Equal(t, 1, said)
}

func TestStocksGrow(t *testing.T) {
	for _, m := range order.Methods() {
		width := 0.0
		for _, s := range sheetplan.Stocks(m.ID) {
			assert.Greater(t, s.Width, width, m.ID)
			width = s.Width
		}
		assert.False(t, math.IsNaN(width))
	}
}

// Parts that lie in each other by their true outlines keep the gap, and take no
// more than boxes do.
func TestTrueOutlinesTakeNoMoreThanBoxes(t *testing.T) {
	s := demo(t, "cut film", 4)
	boxes := plan(t, s, sheetplan.Options{Nest: nest.Options{Order: nest.Tight}})
	nested := plan(t, s, sheetplan.Options{Nest: nest.Options{Order: nest.Tight, By: nest.Outlines, Effort: 6}})
	require.Len(t, nested.Parts, len(boxes.Parts))
	assert.Empty(t, nested.Loose)
	assert.LessOrEqual(t, nested.Layout.Stock, boxes.Layout.Stock)
	b, n := boxes.Figures(nest.Boxes), nested.Figures(nest.Outlines)
	assert.InDelta(t, b.Ink, n.Ink, 1e-6, "the same is made either way")
	for _, f := range []sheetplan.Figures{b, n} {
		least, area := f.Least()
		assert.GreaterOrEqual(t, f.Waste(), area)
		assert.GreaterOrEqual(t, f.Waste(), least)
		assert.LessOrEqual(t, f.AreaBound, f.Stock)
	}
	for n := range nested.Layout.Sheets {
		for _, part := range nested.On(n, nest.Outlines) {
			for _, l := range part.Art.Layers {
				assert.NotEqual(t, layers.WeedBorder, l.Kind, "borders would cross")
			}
			for _, room := range part.Art.Waste {
				for _, other := range nested.On(n, nest.Outlines) {
					if other.Number == part.Number || room.Empty() {
						continue
					}
					for _, l := range other.Art.Layers {
						for _, ring := range l.Region {
							for _, p := range ring {
								assert.False(t, p.X > room.Min.X && p.X < room.Max.X && p.Y > room.Min.Y && p.Y < room.Max.Y, "a label would lie on another part")
							}
						}
					}
				}
			}
		}
	}
}
