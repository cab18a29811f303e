package garment

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment/internal/curve"
	"yokeline/lettering/geom"
)

// crossing finds a place where two edges of a ring that are not neighbours cross.
// Edges are swept by x, so that only those near each other are compared.
func crossing(r geom.Ring) (geom.Point, bool) {
	n := len(r)
	order := make([]int, n)
	left := func(i int) float64 { return math.Min(r[i].X, r[(i+1)%n].X) }
	right := func(i int) float64 { return math.Max(r[i].X, r[(i+1)%n].X) }
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(left(a), left(b)) })
	for k, i := range order {
		for _, j := range order[k+1:] {
			if left(j) > right(i) {
				break
			}
			if d := (i - j + n) % n; d <= 1 || d == n-1 {
				continue
			}
			t, u, ok := curve.Meet(r[i], r[(i+1)%n], r[j], r[(j+1)%n])
			if ok && t > 1e-6 && t < 1-1e-6 && u > 1e-6 && u < 1-1e-6 {
				return r[i].Lerp(r[(i+1)%n], t), true
			}
		}
	}
	return pt{}, false
}

func TestCrossingFindsAKnot(t *testing.T) {
	_, bad := crossing(geom.Ring{{X: 0, Y: 0}, {X: 10, Y: 10}, {X: 10, Y: 0}, {X: 0, Y: 10}})
	assert.True(t, bad)
	_, bad = crossing(geom.Ring{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 0, Y: 10}})
	assert.False(t, bad)
}

// sound checks every filled part: closed, of positive area, free of crossings.
func sound(t assert.TestingT, g *Garment, s Side) {
	for _, p := range g.View(s) {
		for _, seg := range p.Path {
			for _, q := range seg.P {
				if math.IsNaN(q.X+q.Y) || math.IsInf(q.X+q.Y, 0) {
					assert.Fail(t, "not a number", "%s %s %s", g.Cut(), g.Size(), p.Name)
					return
				}
			}
		}
		if !p.Closed {
			continue
		}
		assert.Equal(t, geom.Close, p.Path[len(p.Path)-1].Op, "%s %s is closed", g.Cut(), p.Name)
		for _, ring := range p.Path.Flatten(0.1) {
			if p.Role != Fold {
				q, bad := crossing(ring)
				assert.False(t, bad, "%s %s %s: %s crosses itself at %.1f, %.1f", g.Cut(), g.Size(), s, p.Name, q.X, q.Y)
			}
			assert.Greater(t, math.Abs(ring.Area()), 10.0, "%s %s %s: %s", g.Cut(), g.Size(), s, p.Name)
		}
	}
}

func TestEveryFilledPartIsClosedAndSimple(t *testing.T) {
	for _, c := range Cuts() {
		for _, size := range AllSizes() {
			g := must(t, c.Cut, size)
			sound(t, g, Front)
			sound(t, g, Back)
		}
	}
}

func TestTheOutlineComesLastAndHoldsEverythingThatIsFilled(t *testing.T) {
	for _, c := range Cuts() {
		for _, size := range []Size{{Youth, "XS"}, {Adult, "M"}, {Women, "3XL"}} {
			g := must(t, c.Cut, size)
			for _, s := range []Side{Front, Back} {
				view := g.View(s)
				last := view[len(view)-1]
				assert.Equal(t, Outline, last.Role)
				assert.Equal(t, g.Silhouette(s), last.Path)
				box := g.Bounds(s).Grow(0.01)
				outline := g.Silhouette(s).Flatten(0.01)
				for _, p := range view {
					b := p.Path.Bounds()
					assert.True(t, box.Min.X <= b.Min.X && b.Max.X <= box.Max.X && box.Min.Y <= b.Min.Y && b.Max.Y <= box.Max.Y, "%s %s", c.Cut, p.Name)
					if !p.Closed || p.Role == Outline {
						continue
					}
					for _, q := range p.Path.Flatten(1)[0] {
						if !outline.Contains(q) {
							assert.Less(t, distanceTo(append(outline[0], outline[0][0]), q), 0.05, "%s %s: %s leaves the outline", c.Cut, size, p.Name)
						}
					}
				}
			}
		}
	}
}

func TestViewsAreSymmetricalButForTheClosing(t *testing.T) {
	for _, c := range Cuts() {
		g := must(t, c.Cut, Size{Adult, "L"})
		for _, s := range []Side{Front, Back} {
			box := g.Bounds(s)
			assert.InDelta(t, 0, box.Min.X+box.Max.X, 1e-9, "%s", c.Cut)
			area := g.Silhouette(s).Flatten(0.05)[0].Area()
			half := g.Silhouette(s).Transform(geom.Scale(-1, 1)).Flatten(0.05)[0].Area()
			assert.InDelta(t, area, -half, 1e-6)
		}
	}
}

func TestLinesSayOnWhichClothTheyLie(t *testing.T) {
	for _, c := range Cuts() {
		g := must(t, c.Cut, Size{Women, "M"})
		for _, s := range []Side{Front, Back} {
			fills := map[Role]bool{}
			for _, p := range g.View(s) {
				if p.Role.Line() || p.Role == Fold {
					assert.True(t, fills[p.Cloth], "%s %s: %s lies on %s, which is not painted before it", c.Cut, s, p.Name, p.Cloth)
					assert.True(t, p.Beside == None || fills[p.Beside] || p.Beside == InsideCollar, "%s: %s", c.Cut, p.Name)
				} else {
					fills[p.Role] = true
				}
				assert.NotEmpty(t, p.Name)
			}
		}
	}
}

// scaled is a maker's garment: every measure of the table off by up to a tenth.
func scaled(rt *rapid.T, c Cut, s Size) Measures {
	m, _, err := Standard(c, s)
	require.NoError(rt, err)
	for _, name := range required(c) {
		*m.field(name) *= rapid.Float64Range(0.9, 1.1).Draw(rt, name)
	}
	if m.StrapWidth > 0 {
		m.ShoulderWidth = m.NeckWidth + 2*m.StrapWidth
	}
	return m
}

func TestGarmentsWithAMakersMeasuresAreDrawnOrRefused(t *testing.T) {
	drawn, refused := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		c := rapid.SampledFrom(Cuts()).Draw(rt, "cut").Cut
		s := rapid.SampledFrom(AllSizes()).Draw(rt, "size")
		m := scaled(rt, c, s)
		g, err := Custom(c, s, m, "spec sheet")
		if err != nil {
			refused++
			return
		}
		drawn++
		side := rapid.SampledFrom([]Side{Front, Back}).Draw(rt, "side")
		sound(rt, g, side)
		panel := g.clears(side)[rapid.IntRange(0, len(g.clears(side))-1).Draw(rt, "panel")]
		require.NotEmpty(rt, panel.trace(), "%s %s has a panel %s", c, s, panel.name)
		assert.Greater(rt, panel.trace().Area(), 1000.0)
	})
	t.Logf("%d drawn, %d refused", drawn, refused)
	assert.Greater(t, drawn, 3*refused)
}

func TestMeasuresThatCannotBeDrawnAreRefusedByName(t *testing.T) {
	for want, change := range map[string]func(*Measures){
		"sleeve length": func(m *Measures) { m.SleeveLength = 60 },
		"neck width":    func(m *Measures) { m.NeckWidth = m.ShoulderWidth },
		"body length":   func(m *Measures) { m.BodyLength = math.NaN() },
		"armhole depth": func(m *Measures) { m.ArmholeDepth = m.BodyLength },
		"chest half":    func(m *Measures) { m.ChestHalf = -1 },
	} {
		m, _, err := Standard(Hockey, Size{Adult, "4XL"})
		require.NoError(t, err)
		change(&m)
		_, err = Custom(Hockey, Size{Adult, "4XL"}, m, "")
		assert.ErrorContains(t, err, want)
	}
	m, _, _ := Standard(FootballYoke, Size{Adult, "M"})
	m.YokeDepth = m.NeckDropFront - 1
	_, err := Custom(FootballYoke, Size{Adult, "M"}, m, "")
	assert.ErrorContains(t, err, "two pieces")
	m, _, _ = Standard(Shorts, Size{Adult, "M"})
	m.Outseam = 900
	_, err = Custom(Shorts, Size{Adult, "M"}, m, "")
	assert.ErrorContains(t, err, "outseam")
}

func TestSameGarmentSamePartsEveryTime(t *testing.T) {
	for _, c := range Cuts() {
		a, b := must(t, c.Cut, Size{Adult, "XL"}), must(t, c.Cut, Size{Adult, "XL"})
		assert.Equal(t, a.View(Front), b.View(Front))
		assert.Equal(t, a.Panels(Back), b.Panels(Back))
	}
}
