package nest_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/nest"
)

var (
	roll      = nest.Stock{Name: "white film", Width: 500, Margin: 10, Gap: 5}
	sheets700 = nest.Stock{Name: "navy twill", Width: 500, Height: 700, Margin: 10, Gap: 5}
	cuts      = nest.Stock{Name: "short table", Width: 500, MaxLength: 900, Margin: 10, Gap: 5}
)

var everyOption = []nest.Options{{}, {By: nest.Outlines}, {Order: nest.Tight}, {Order: nest.Tight, By: nest.Outlines}}

// narrow are the same stocks at less than half the size, for properties.
func narrow() []nest.Stock {
	out := []nest.Stock{roll, sheets700, cuts}
	for i := range out {
		out[i].Width, out[i].Height, out[i].MaxLength = 0.4*out[i].Width, 0.4*out[i].Height, 0.4*out[i].MaxLength
	}
	return out
}

// failer is a test, a property or a fuzz run.
type failer interface {
	require.TestingT
	Helper()
}

// requireSound holds a layout against what every layout promises.
func requireSound(t failer, items []nest.Item, stock nest.Stock, out nest.Layout) {
	t.Helper()
	byID := map[int]nest.Item{}
	ink := 0.0
	for _, item := range items {
		byID[item.ID] = item
		ink += item.Shape.Area()
	}
	seen, area := map[int]bool{}, 0.0
	for _, sheet := range out.Sheets {
		area += sheet.Width * sheet.Height
		require.NotEmpty(t, sheet.Placed)
		requireStock(t, stock, sheet)
		for _, p := range sheet.Placed {
			require.False(t, seen[p.ID], "piece %d is placed twice", p.ID)
			seen[p.ID] = true
			require.Equal(t, byID[p.ID].Group, sheet.Group)
		}
		requireClear(t, byID, stock, sheet)
	}
	require.Len(t, seen, len(items))
	require.InEpsilon(t, area, out.Stock, 1e-9)
	require.InDelta(t, 1-ink/area, out.Waste(), 1e-9)
	require.InDelta(t, 1, out.Waste()+out.Share(), 1e-12)
	require.LessOrEqual(t, out.InkBound, out.Stock*(1+1e-9))
	require.GreaterOrEqual(t, out.InkBound, out.Ink)
}

func requireStock(t failer, stock nest.Stock, sheet nest.Sheet) {
	t.Helper()
	require.Equal(t, stock.Width, sheet.Width)
	require.LessOrEqual(t, sheet.Used, sheet.Height+1e-6)
	if stock.Roll() {
		require.True(t, stock.MaxLength == 0 || sheet.Height <= stock.MaxLength+1e-6)
		require.Equal(t, sheet.Height, sheet.Used)
	} else {
		require.Equal(t, stock.Height, sheet.Height)
	}
}

// requireClear measures every piece of a sheet against the margins and against
// every other piece.
func requireClear(t failer, byID map[int]nest.Item, stock nest.Stock, sheet nest.Sheet) {
	t.Helper()
	const slack = 1e-6
	inside := geom.Rect{Min: geom.Point{X: stock.Margin, Y: stock.Margin}, Max: geom.Point{X: sheet.Width - stock.Margin, Y: sheet.Height - stock.Margin}}.Grow(slack)
	lowest := math.Inf(1)
	lying := make([]geom.Region, len(sheet.Placed))
	for i, p := range sheet.Placed {
		item := byID[p.ID]
		requireTurn(t, item, p)
		lying[i] = item.Shape.Transform(p.Move)
		box := lying[i].Bounds()
		lowest = math.Min(lowest, box.Min.Y)
		require.InDelta(t, p.At.X, box.Min.X, slack)
		require.InDelta(t, p.At.Y, box.Min.Y, slack)
		require.True(t, box.Min.X >= inside.Min.X && box.Min.Y >= inside.Min.Y && box.Max.X <= inside.Max.X && box.Max.Y <= inside.Max.Y,
			"piece %d at %v leaves %v", p.ID, box, inside)
		for k, other := range lying[:i] {
			if apart(box, other.Bounds()) < stock.Gap {
				require.GreaterOrEqual(t, distance(lying[i], other, stock.Gap+1), stock.Gap-slack, "pieces %d and %d", p.ID, sheet.Placed[k].ID)
			}
		}
	}
	require.InDelta(t, sheet.Height-sheet.Used, lowest-stock.Margin, slack)
}

func requireTurn(t failer, item nest.Item, p nest.Placed) {
	t.Helper()
	allowed := map[nest.Turns][]nest.Turn{nest.Upright: {0}, nest.HalfTurns: {0, 180}, nest.QuarterTurns: {0, 90, 180, 270}}
	require.Contains(t, allowed[item.Turns], p.Turn)
	s, c := math.Sincos(float64(p.Turn) * math.Pi / 180)
	for _, pair := range [][2]float64{{c, p.Move.A}, {s, p.Move.B}, {-s, p.Move.C}, {c, p.Move.D}} {
		require.InDelta(t, pair[0], pair[1], 1e-12, "turned, not mirrored")
	}
}

// randomItems are rectangles, stars and arches, small enough for narrow.
func randomItems(t *rapid.T, most int) []nest.Item {
	n := rapid.IntRange(1, most).Draw(t, "n")
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
	out := make([]nest.Item, n)
	for i := range out {
		out[i] = nest.Item{ID: 7*i%n + n*(7*i/n), Turns: nest.Turns(r.IntN(3)), Group: []string{"", "gold"}[r.IntN(2)]}
		switch r.IntN(3) {
		case 0:
			out[i].Shape = rectangle(5+70*r.Float64(), 5+70*r.Float64())
		case 1:
			out[i].Shape = star(r, 10+25*r.Float64())
		case 2:
			out[i].Shape = arched(2+r.IntN(5), 10+10*r.Float64(), 70+50*r.Float64())
		}
	}
	return out
}

func TestEveryPieceLiesOnceClearOfTheOthersAndOfTheMargins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := randomItems(t, 10)
		stock := rapid.SampledFrom(narrow()).Draw(t, "stock")
		stock.Gap = rapid.SampledFrom([]float64{0, 0.7, 5, 12.5}).Draw(t, "gap")
		stock.Margin = rapid.SampledFrom([]float64{0, 3.3, 10}).Draw(t, "margin")
		options := rapid.SampledFrom(everyOption).Draw(t, "options")
		options.Effort = 1
		out, err := nest.Arrange(items, stock, options)
		require.NoError(t, err)
		requireSound(t, items, stock, out)
		if options.By == nest.Boxes {
			require.LessOrEqual(t, out.BoxBound, out.Stock*(1+1e-9))
		}
	})
}

func TestTightIsNeverWorseThanShelvesNorOutlinesThanBoxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := randomItems(t, 5)
		stock := rapid.SampledFrom(narrow()).Draw(t, "stock")
		area := func(l nest.Layout, err error) float64 {
			require.NoError(t, err)
			return l.Stock
		}
		plain := area(nest.Shelves(items, stock))
		boxes := area(nest.Arrange(items, stock, nest.Options{Order: nest.Tight, Effort: 1}))
		outlines := area(nest.Arrange(items, stock, nest.Options{Order: nest.Tight, By: nest.Outlines, Effort: 1}))
		require.LessOrEqual(t, boxes, plain*(1+1e-9))
		require.LessOrEqual(t, outlines, boxes*(1+1e-9))
	})
}

func TestSameInputGivesTheSameLayoutWhateverTheOrderOfTheItems(t *testing.T) {
	items := team(rand.New(rand.NewPCG(3, 3)), 3, 2, nest.QuarterTurns)
	for _, o := range everyOption {
		o.Effort = 2
		first, err := nest.Arrange(items, sheets700, o)
		require.NoError(t, err)
		again, err := nest.Arrange(items, sheets700, o)
		require.NoError(t, err)
		require.Equal(t, first, again)
		if o.Order == nest.Kept {
			continue
		}
		shuffled := append([]nest.Item(nil), items...)
		rand.New(rand.NewPCG(9, 9)).Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
		other, err := nest.Arrange(shuffled, sheets700, o)
		require.NoError(t, err)
		require.Equal(t, spots(first), spots(other), "ties go by ID, not by the order given")
	}
}

func spots(l nest.Layout) map[int]nest.Placed {
	out := map[int]nest.Placed{}
	for _, s := range l.Sheets {
		for _, p := range s.Placed {
			out[p.ID] = p
		}
	}
	return out
}

func TestKeptOrderReadsFromTheUpperLeftRowByRow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := randomItems(t, 10)
		for i := range items {
			items[i].Group = ""
		}
		by := rapid.SampledFrom([]nest.By{nest.Boxes, nest.Outlines}).Draw(t, "by")
		out, err := nest.Arrange(items, narrow()[2], nest.Options{By: by})
		require.NoError(t, err)
		i := 0
		for _, sheet := range out.Sheets {
			right, rowTop, floor := -1.0, math.Inf(1), math.Inf(1)
			for _, p := range sheet.Placed {
				require.Equal(t, items[i].ID, p.ID)
				require.Zero(t, p.Turn)
				box := items[i].Shape.Transform(p.Move).Bounds()
				if box.Min.X < right { // a new row, starting at or below where the last one did
					floor, rowTop = rowTop, math.Inf(1)
				}
				require.LessOrEqual(t, box.Max.Y, floor+1e-6)
				right, rowTop = box.Max.X, math.Min(rowTop, box.Max.Y)
				i++
			}
		}
		require.Len(t, items, i)
	})
}

func TestAPieceThatFitsNoSheetIsNamedWithTheSheetItNeeds(t *testing.T) {
	items := []nest.Item{
		{ID: 1, Shape: rectangle(300, 60), Turns: nest.QuarterTurns},
		{ID: 27, Shape: rectangle(520, 60), Turns: nest.HalfTurns},
		{ID: 28, Shape: rectangle(800.04, 520), Turns: nest.QuarterTurns},
	}
	_, err := nest.Arrange(items, sheets700, nest.Options{})
	assert.EqualError(t, err, "piece 27 is 520.0 × 60.0 mm and does not fit the sheet (navy twill): it needs a sheet at least 540.0 mm wide and 80.0 mm long, or narrower margins, or must be made smaller\n"+
		"piece 28 is 800.1 × 520.0 mm and does not fit the sheet (navy twill), turned or not: it needs a sheet at least 540.0 mm wide and 820.1 mm long, or narrower margins, or must be made smaller")
	var fit *nest.FitError
	require.True(t, errors.As(err, &fit))
	assert.Equal(t, 27, fit.ID)
	_, err = nest.Arrange(items[1:2], roll, nest.Options{})
	assert.ErrorContains(t, err, "does not fit the roll (white film): it needs a roll at least 540.0 mm wide, or")
	items[1].Turns = nest.QuarterTurns
	_, err = nest.Arrange(items[1:2], roll, nest.Options{})
	assert.NoError(t, err, "turned it fits")
}

func TestWhatCannotBeUsedIsRefused(t *testing.T) {
	one := nest.Item{ID: 1, Shape: rectangle(10, 10)}
	nan := nest.Item{ID: 2, Shape: geom.Region{{{X: math.NaN()}, {X: 1}, {Y: 1}}}}
	for name, c := range map[string]struct {
		items []nest.Item
		stock nest.Stock
		says  string
	}{
		"negative gap":     {[]nest.Item{one}, nest.Stock{Width: 100, Gap: -1}, "gap of the stock is -1 mm"},
		"margins too wide": {[]nest.Item{one}, nest.Stock{Name: "strip", Width: 100, Margin: 50}, "margins of 50 mm leave nothing of stock strip"},
		"sheet and roll":   {[]nest.Item{one}, nest.Stock{Width: 100, Height: 100, MaxLength: 50}, "both a height and a longest cut"},
		"same number":      {[]nest.Item{one, one}, roll, "two pieces have the number 1"},
		"no shape":         {[]nest.Item{{ID: 3}}, roll, "piece 3 has no shape"},
		"flat":             {[]nest.Item{{ID: 3, Shape: rectangle(4, 0)}}, roll, "piece 3 has no shape"},
		"not a number":     {[]nest.Item{nan}, roll, "piece 2 has a point at (NaN, 0) mm"},
		"unknown turns":    {[]nest.Item{{ID: 4, Shape: rectangle(1, 1), Turns: 9}}, roll, "piece 4 has the unknown turns 9"},
	} {
		_, err := nest.Arrange(c.items, c.stock, nest.Options{})
		assert.ErrorContains(t, err, c.says, name)
	}
	empty, err := nest.Arrange(nil, roll, nest.Options{})
	require.NoError(t, err)
	assert.Empty(t, empty.Sheets)
	assert.Zero(t, empty.Waste())
}
