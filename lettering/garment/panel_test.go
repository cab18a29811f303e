package garment

import (
	"math"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

// someSizes are sizes at the ends and in the middle; every size with -every.
func someSizes() []Size {
	if *every {
		return AllSizes()
	}
	return []Size{{Youth, "XS"}, {Women, "3XL"}, {Adult, "M"}, {Adult, "4XL"}}
}

// shortest is how far a point is inside the margin of the worst line, and that
// line; negative when it is clear of all. It measures to the lines themselves.
func shortest(keeps []keep, lines [][]geom.Point, q geom.Point) (float64, string) {
	worst, why := math.Inf(-1), ""
	for i, k := range keeps {
		near := k.margin + 1
		for j := 1; j < len(lines[i]); j++ {
			a, b := lines[i][j-1], lines[i][j]
			if math.Min(a.Y, b.Y)-near > q.Y || math.Max(a.Y, b.Y)+near < q.Y || math.Min(a.X, b.X)-near > q.X || math.Max(a.X, b.X)+near < q.X {
				continue
			}
			if d := k.margin - segmentDistance(q, a, b); d > worst {
				worst, why = d, k.why
			}
		}
	}
	return worst, why
}

func linesOf(keeps []keep, tol float64) [][]geom.Point {
	var out [][]geom.Point
	for _, k := range keeps {
		out = append(out, k.line.Flatten(tol))
	}
	return out
}

func TestPanelsLieOnTheirPieceAndClearOfEveryLine(t *testing.T) {
	worst, panels := math.Inf(-1), 0
	for _, c := range Cuts() {
		for _, size := range someSizes() {
			g := must(t, c.Cut, size)
			for _, s := range []Side{Front, Back} {
				for _, p := range g.clears(s) {
					if strings.HasPrefix(p.name, "right") { // the mirror image of the left
						continue
					}
					panels++
					label := string(c.Cut) + " " + size.String() + " " + p.name
					region := p.trace()
					require.Len(t, region, 1, label)
					assert.Greater(t, region.Area(), 1000.0, label)
					at, bad := crossing(region[0])
					assert.False(t, bad, "%s crosses itself at %v", label, at)
					lines := linesOf(p.keeps, 0.01)
					piece := p.outline.Flatten(0.02)
					for i, q := range region[0] {
						mid := q.Lerp(region[0][(i+1)%len(region[0])], 0.5)
						short, why := shortest(p.keeps, lines, mid)
						worst = math.Max(worst, short)
						assert.LessOrEqual(t, short, 0.05, "%s is too near its %s at %.1f, %.1f", label, why, mid.X, mid.Y)
						assert.True(t, geom.Region{piece}.Contains(mid), "%s leaves its piece at %.1f, %.1f", label, mid.X, mid.Y)
					}
				}
			}
		}
	}
	t.Logf("%d panels, worst clearance missing %.4f mm", panels, worst)
}

func TestPanelsTakeInEveryPointThatIsClear(t *testing.T) {
	for _, c := range []Cut{CrewTee, VNeck, TwoButton, FullButton, Raglan, Hockey, Shorts, FootballYoke} { // side panels leave strips of their own
		g := must(t, c, Size{Adult, "M"})
		for _, s := range []Side{Front, Back} {
			for _, p := range g.clears(s) {
				region, lines := p.trace(), linesOf(p.keeps, 0.05)
				box := geom.Region{p.ring}.Bounds()
				for y := box.Min.Y; y < box.Max.Y; y += 11.3 {
					for x := box.Min.X; x < box.Max.X; x += 12.9 {
						q := pt{X: x, Y: y}
						if !(geom.Region{p.ring}).Contains(q) {
							assert.False(t, region.Contains(q))
							continue
						}
						short, _ := shortest(p.keeps, lines, q)
						if math.Abs(short) > 0.1 {
							assert.Equal(t, short < 0, region.Contains(q), "%s %s at %.1f, %.1f: %.2f short", c, p.name, x, y, short)
						}
					}
				}
			}
		}
	}
}

func TestClearancesAreThoseOfTheTrade(t *testing.T) {
	want := map[string]float64{"hem": 25, "sleeve hem": 25, "placket": 25, "waistband": 25, "drawcord": 25, "underarm": 40, "fold": 6}
	for _, c := range Cuts() {
		g := must(t, c.Cut, Size{Adult, "M"})
		for _, s := range []Side{Front, Back} {
			for _, p := range g.clears(s) {
				for _, k := range p.keeps {
					margin, special := want[k.why]
					if !special {
						margin = 12
					}
					assert.Equal(t, margin, k.margin, "%s %s %s", c.Cut, p.name, k.why)
				}
			}
		}
	}
}

func TestBodyPanelsGrowWithTheSize(t *testing.T) {
	for _, c := range Cuts() {
		for _, g := range Groups() {
			before := 0.0
			made := Sizes(g)
			for _, l := range []string{made[0], made[len(made)/2], made[len(made)-1]} {
				area := must(t, c.Cut, Size{g, l}).Panel(Back).Area()
				assert.Greater(t, area, before, "%s %s %s", c.Cut, g, l)
				before = area
			}
		}
	}
}

func TestPanelsAreNamedByTheWearersSide(t *testing.T) {
	g := must(t, FullButton, Size{Adult, "M"})
	for s, want := range map[Side]float64{Front: 1, Back: -1} {
		for _, p := range g.Panels(s) {
			if p.Name == "left sleeve" || p.Name == "left front" {
				assert.Positive(t, want*p.Region.Bounds().Center().X, "%s %s", s, p.Name)
			}
		}
	}
	assert.Len(t, g.Panel(Front), 2, "the placket parts the front")
	assert.Len(t, g.Panel(Back), 1)
	assert.Len(t, must(t, FootballYoke, Size{Adult, "M"}).Panel(Front), 3, "the yoke is parted by seam and neck")
}

func TestGarmentsMayBeSharedBetweenGoroutines(t *testing.T) {
	g := must(t, BasketballTank, Size{Youth, "L"})
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			assert.NotEmpty(t, g.View(Front))
			assert.NotEmpty(t, g.Panel(Back))
			assert.Positive(t, g.Room(BackNumber, 180, 320).Width)
		})
	}
	wg.Wait()
}

// freeHalf is the free half width about x between two levels, read from the
// traced panels and not from the lines: crossings of the ring with many rows and
// the ring's own corners within the band.
func freeHalf(region geom.Region, x, y0, y1 float64) float64 {
	best := math.Inf(1)
	row := func(y float64) {
		if !region.Contains(pt{X: x, Y: y}) {
			best = 0
			return
		}
		for _, r := range region {
			for i, a := range r {
				b := r[(i+1)%len(r)]
				if (a.Y > y) != (b.Y > y) {
					best = math.Min(best, math.Abs(a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y)-x))
				}
			}
		}
	}
	for i := range 101 {
		row(y0 + 1e-9 + (y1-y0-2e-9)*float64(i)/100)
	}
	for _, r := range region {
		for _, q := range r {
			if y0 < q.Y && q.Y < y1 {
				best = math.Min(best, math.Abs(q.X-x))
			}
		}
	}
	return best
}

func TestRoomAgreesWithTheTracedPanel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := rapid.SampledFrom(Cuts()).Draw(rt, "cut").Cut
		p := rapid.SampledFrom(Places(c)).Draw(rt, "place")
		if p == SleeveNumber {
			rt.Skip("centred on the fold, not on a panel")
		}
		g, err := New(c, rapid.SampledFrom(AllSizes()).Draw(rt, "size"))
		require.NoError(rt, err)
		place, err := g.Place(p)
		require.NoError(rt, err)
		if place.Split {
			rt.Skip("parted at the placket")
		}
		top := rapid.Float64Range(0, g.Hem()).Draw(rt, "top")
		height := rapid.Float64Range(5, 300).Draw(rt, "height")
		r := g.Room(p, top, top+height)
		want := 2 * freeHalf(g.Panel(place.Side), place.CentreX, top, top+height)
		assert.InDelta(rt, want, r.Panel, 0.3, "%s %s %s %v", c, g.Size(), p, r) // a traced row may be 1e-4 mm off, which tells where a clearance is round
		assert.LessOrEqual(rt, r.Width, r.Panel)
	})
}
