package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/proof/parts"
)

// The style guide's shirt is 700 mm wide and 660 long: at 1 : 7 two of them need
// 2 × 100 + 51.4 = 251.4 mm, the whole live width of Letter on its side, and
// 94.3 + 53 of its 152.5 mm of height.
func TestPlanTakesTheLargestScaleAtWhichBothViewsFit(t *testing.T) {
	for _, row := range []struct {
		name    string
		paper   Paper
		size    lookSize
		ratio   float64
		stacked bool
	}{
		{"the guide's shirt on Letter", Letter, lookSize{width: 700, length: 660}, 7, false},
		{"a hair wider takes the next scale", Letter, lookSize{width: 701, length: 660}, 8, false},
		{"the guide's shirt on A4", A4, lookSize{width: 700, length: 660}, 7, false},
		{"as long as 1 : 7 allows on Letter: 99.5 mm", Letter, lookSize{width: 700, length: 696}, 7, false},
		{"longer than that", Letter, lookSize{width: 700, length: 700}, 8, false},
		{"as long as 1 : 7 allows on A4: 97.6 mm", A4, lookSize{width: 700, length: 683}, 7, false},
		{"longer than that on A4", A4, lookSize{width: 700, length: 684}, 8, false},
		{"a wide one stands", Letter, lookSize{width: 1250, length: 775}, 12, true},
		{"a tie goes to side by side", Letter, lookSize{width: 1150, length: 750}, 12, false},
		{"a giant gets the smallest scale", Letter, lookSize{width: 9000, length: 9000}, 24, false},
		{"a child's tank", A4, lookSize{width: 412, length: 618}, 7, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			plan := planLookViews(row.paper, row.size)
			assert.InDelta(t, row.ratio, 1/plan.scale, 1e-9)
			assert.Equal(t, row.stacked, plan.stacked)
			assert.Equal(t, !row.stacked, plan.sheet.Wide())
		})
	}
}

func TestPlanMeetsTheGuidesFigures(t *testing.T) {
	p := planLookViews(Letter, lookSize{width: 700, length: 660})
	assert.InDelta(t, 42+14.6, p.front.Y, 1e-9, "datum below the content top")
	assert.InDelta(t, 14+50, p.front.X, 1e-9)
	assert.InDelta(t, 279.4-14-50, p.back.X, 1e-9)
	assert.InDelta(t, 139.7, p.tape, 1e-9)
	assert.InDelta(t, 42+14.6+660.0/7+11.4, p.strip, 1e-9, "strip below the hem")
	p = planLookViews(A4, lookSize{width: 700, length: 660})
	assert.InDelta(t, 42+13.6, p.front.Y, 1e-9)
	assert.InDelta(t, 14+50+(269-251.4)/4, p.front.X, 1e-9, "a quarter of the spare width")
	assert.InDelta(t, 42+13.6+660.0/7+8.4, p.strip, 1e-9)
}

// Whatever the garment, the views keep the tape's room between them, stay
// within the margins and leave the strip above the foot.
func TestPlanKeepsEverythingOnThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := lookSize{
			width:  rapid.Float64Range(200, 2000).Draw(t, "width"),
			above:  rapid.Float64Range(0, 40).Draw(t, "above"),
			length: rapid.Float64Range(250, 1200).Draw(t, "length"),
		}
		paper := rapid.SampledFrom([]Paper{Letter, A4}).Draw(t, "paper")
		p := planLookViews(paper, size)
		g, k := parts.NewGrid(p.sheet), p.scale
		half := size.width * k / 2
		require.Contains(t, scales(), float64(int(1/k*10+0.5))/10)
		require.GreaterOrEqual(t, p.front.X-half, g.Left-rounding)
		require.LessOrEqual(t, p.back.X+half, g.Right+rounding)
		require.LessOrEqual(t, p.strip+stripHeight, g.Bottom+rounding)
		require.GreaterOrEqual(t, p.front.Y-size.above*k, g.Top+datumDownLow-rounding)
		if p.stacked {
			require.InDelta(t, p.front.X, p.back.X, 1e-9)
			require.GreaterOrEqual(t, p.front.Y-size.above*k-(p.back.Y+size.length*k), stackBetween-rounding)
			require.LessOrEqual(t, p.front.X+half+stackColumn, g.Right+rounding)
			return
		}
		require.GreaterOrEqual(t, p.back.X-p.front.X-2*half, sideAcross-rounding)
	})
}

func TestEveryGarmentFindsAScale(t *testing.T) {
	for _, cut := range garment.Cuts() {
		for _, size := range garment.AllSizes() {
			g, err := garment.New(cut.Cut, size)
			require.NoError(t, err)
			for _, paper := range []Paper{Letter, A4} {
				plan := planLookViews(paper, lookSizeOf(g))
				assert.GreaterOrEqual(t, plan.scale, 1.0/16, "%s %s", cut.Cut, size)
				assert.Equal(t, cut.Cut == garment.Hockey && plan.stacked, plan.stacked, "only the widest cut stands: %s %s", cut.Cut, size)
			}
		}
	}
}
