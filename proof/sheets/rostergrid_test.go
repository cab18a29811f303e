package sheets

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/proof/parts"
)

// mockNeed is the shirt that the style guide's table was worked out for.
func mockNeed() rosterNeed { return rosterNeed{wide: 595, deep: 448, letters: 44.45} }

func (g rosterGrid) words() string {
	turn := "P"
	if g.sheet.Wide() {
		turn = "L"
	}
	text := fmt.Sprintf("%s %d×%d 1:%g", turn, g.columns, g.rows, g.ratio)
	if g.pages > 1 {
		text += fmt.Sprintf(", %d p.", g.pages)
	}
	return text
}

// The table in section 7 of the style guide, "The look of a proof".
func TestRosterGridIsThatOfTheStyleGuide(t *testing.T) {
	const players = "1 | 2 | 3 | 5 | 8 | 10 | 12 | 15 | 18 | 20 | 24 | 30 | 40"
	for paper, row := range map[Paper]string{
		Letter: "L 2×1 1:6 | L 2×1 1:6 | L 3×1 1:8 | L 3×2 1:8 | L 4×2 1:12 | L 5×2 1:14 | L 4×3 1:14 | L 5×3 1:14 | L 6×3 1:18 | P 4×5 1:18 | L 4×3 1:14, 2 p. | L 5×3 1:14, 2 p. | P 4×5 1:18, 2 p.",
		A4:     "L 2×1 1:5 | L 2×1 1:5 | L 3×1 1:8 | P 2×3 1:8 | L 4×2 1:12 | P 3×4 1:12 | P 3×4 1:12 | L 5×3 1:16 | L 6×3 1:16 | P 4×5 1:16 | P 3×4 1:12, 2 p. | L 5×3 1:16, 2 p. | P 4×5 1:16, 2 p.",
	} {
		counts := strings.Split(players, " | ")
		for i, want := range strings.Split(row, " | ") {
			var n int
			_, err := fmt.Sscan(counts[i], &n)
			require.NoError(t, err)
			assert.Equal(t, want, chooseGrid(n, paper, mockNeed(), tileCaption).words(), "%d players", n)
		}
	}
}

// Whatever the garment and the number of players: everybody has a place, tiles
// stay on the page, and the widest chest fits its tile.
func TestRosterGridHoldsEverybody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 400).Draw(t, "players")
		need := rosterNeed{
			wide: rapid.Float64Range(250, 900).Draw(t, "wide"), deep: rapid.Float64Range(150, 700).Draw(t, "deep"),
			letters: rapid.SampledFrom([]float64{0, 5, 12, 25, 44.45, 76}).Draw(t, "letters"),
		}
		caption := rapid.Float64Range(tileCaption, 25).Draw(t, "caption")
		g := chooseGrid(n, rapid.SampledFrom([]Paper{Letter, A4}).Draw(t, "paper"), need, caption)
		f := parts.NewGrid(g.sheet)
		require.GreaterOrEqual(t, g.pages*g.columns*g.rows, n)
		require.Less(t, (g.pages-1)*g.columns*g.rows, n, "no page is empty")
		require.GreaterOrEqual(t, g.tile, tileLeast)
		require.LessOrEqual(t, need.wide*chestMargin*g.scale(), g.tile+1e-9)
		high := g.window(need, need.deep+rapid.Float64Range(0, 400).Draw(t, "longer"), caption)
		require.GreaterOrEqual(t, high, need.deep*g.scale()-1e-9)
		x, y := g.at(f, g.columns*g.rows-1, high+caption)
		require.InDelta(t, f.Right, x+g.tile, 1e-9)
		require.LessOrEqual(t, y+high+caption, f.Bottom-rosterKey+1e-9)
	})
}

func TestRosterGridTakesTheSmallestScaleForWhatNeverFits(t *testing.T) {
	g := chooseGrid(30, Letter, rosterNeed{wide: 9000, deep: 9000, letters: 40}, tileCaption)
	assert.Equal(t, 24.0, g.ratio)
	assert.GreaterOrEqual(t, g.pages*g.columns*g.rows, 30)
}
