package nest_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/nest"
)

func arrange(t require.TestingT, items []nest.Item, stock nest.Stock, o nest.Options) nest.Layout {
	out, err := nest.Arrange(items, stock, o)
	require.NoError(t, err)
	return out
}

var (
	tightBoxes    = nest.Options{Order: nest.Tight}
	tightOutlines = nest.Options{Order: nest.Tight, By: nest.Outlines}
)

func TestArchedNamesTakeLessStockByOutlineThanByBox(t *testing.T) {
	r := rand.New(rand.NewPCG(2027, 4))
	for name, items := range map[string][]nest.Item{
		"arched names, grain":        team(r, 12, 0, nest.HalfTurns),
		"names and numbers, upright": team(r, 8, 5, nest.Upright),
	} {
		plain, err := nest.Shelves(items, roll)
		require.NoError(t, err)
		boxes := arrange(t, items, roll, tightBoxes)
		outlines := arrange(t, items, roll, nest.Options{Order: nest.Tight, By: nest.Outlines, Effort: 3})
		kept, nested := arrange(t, items, roll, nest.Options{}), arrange(t, items, roll, nest.Options{By: nest.Outlines})
		t.Logf("%s, waste: shelves %.1f %%, boxes %.1f %%, outlines %.1f %%; in order by boxes %.1f %%, by outlines %.1f %%; at the least by boxes %.1f %%, by ink %.1f %%", name,
			100*plain.Waste(), 100*boxes.Waste(), 100*outlines.Waste(), 100*kept.Waste(), 100*nested.Waste(), 100*(1-boxes.Ink/boxes.BoxBound), 100*(1-boxes.Ink/boxes.InkBound))
		assert.Less(t, boxes.Stock, plain.Stock, name)
		assert.Less(t, outlines.Stock, boxes.Stock, name)
		assert.Less(t, nested.Stock, kept.Stock, name)
		for _, l := range []nest.Layout{plain, boxes, outlines, kept, nested} {
			requireSound(t, items, roll, l)
		}
	}
}

// Two digits far apart and a ring would leave room for small squares; the carrier
// of a number must stay whole.
func TestNothingLiesBetweenTheDigitsOfANumberOrInACounter(t *testing.T) {
	wide := geom.Region{{{X: 0, Y: 0}, {X: 20, Y: 0}, {X: 20, Y: 200}, {X: 0, Y: 200}}, {{X: 280, Y: 0}, {X: 300, Y: 0}, {X: 300, Y: 200}, {X: 280, Y: 200}}}
	ring := append(rectangle(300, 200), geom.Ring{{X: 20, Y: 20}, {X: 20, Y: 180}, {X: 280, Y: 180}, {X: 280, Y: 20}})
	items := []nest.Item{{ID: 100, Shape: wide}, {ID: 101, Shape: ring}}
	for i := range 30 {
		items = append(items, nest.Item{ID: i, Shape: rectangle(30, 30)})
	}
	for _, o := range everyOption {
		out := arrange(t, items, roll, o)
		requireSound(t, items, roll, out)
		at := spots(out)
		for _, big := range []int{100, 101} {
			box := items[big-100].Shape.Transform(at[big].Move).Bounds()
			for i := range 30 {
				small := items[i+2].Shape.Transform(at[i].Move).Bounds()
				assert.GreaterOrEqual(t, apart(box, small), roll.Gap-1e-6)
			}
		}
	}
}

func TestGroupsAddUpAndNeverShareASheet(t *testing.T) {
	items := team(rand.New(rand.NewPCG(1, 2)), 6, 4, nest.HalfTurns)
	for i := range items {
		items[i].Group = []string{"white film", "gold film", "navy twill"}[i%3]
	}
	out := arrange(t, items, cuts, nest.Options{})
	requireSound(t, items, cuts, out)
	var sum nest.Figures
	count := 0
	for i, g := range out.Groups {
		assert.Equal(t, items[i].Group, g.Group, "in the order in which they appear")
		sum.Stock, sum.Ink, sum.Boxes = sum.Stock+g.Stock, sum.Ink+g.Ink, sum.Boxes+g.Boxes
		count += g.Sheets
	}
	assert.Len(t, out.Sheets, count)
	assert.InEpsilon(t, out.Stock, sum.Stock, 1e-12)
	assert.InEpsilon(t, out.Ink, sum.Ink, 1e-12)
	assert.InEpsilon(t, out.Boxes, sum.Boxes, 1e-12)
}
