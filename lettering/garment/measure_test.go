package garment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

// The measures are read back from what is painted, with nothing of the
// construction: flattened rings, scanned across and down.

const (
	fine   = 0.001 // flattening for reading back, mm
	within = 0.01  // deviation allowed, mm
)

func part(t *testing.T, g *Garment, s Side, name string) Part {
	t.Helper()
	for _, p := range g.View(s) {
		if p.Name == name {
			return p
		}
	}
	require.Fail(t, "no part", "%s %s %s has no %s", g.Cut(), g.Size(), s, name)
	return Part{}
}

// across returns the extreme x of a ring at height y.
func across(r geom.Ring, y float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if (a.Y > y) != (b.Y > y) {
			x := a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
			lo, hi = math.Min(lo, x), math.Max(hi, x)
		}
	}
	return lo, hi
}

// down returns the extreme y of a ring at x.
func down(r geom.Ring, x float64) (lo, hi float64) {
	turned := make(geom.Ring, len(r))
	for i, p := range r {
		turned[i] = pt{X: p.Y, Y: p.X}
	}
	return across(turned, x)
}

// run returns the points of an open stretch of a path from segment i to j.
func run(p geom.Path, i, j int) []geom.Point {
	var q geom.Path
	last := p[i-1]
	q.MoveTo(last.P[map[geom.Op]int{geom.Move: 0, geom.Line: 0, geom.Quad: 1, geom.Cube: 2}[last.Op]])
	q = append(q, p[i:j]...)
	q.LineTo(pt{X: 1e4, Y: 1e4}) // Flatten wants an area; the far point is dropped again
	r := q.Flatten(fine)[0]
	return r[:len(r)-1]
}

func lengthOf(ps []geom.Point) float64 {
	sum := 0.0
	for i := 1; i < len(ps); i++ {
		sum += ps[i].Sub(ps[i-1]).Norm()
	}
	return sum
}

func ends(p geom.Path) (first, last geom.Point) {
	ps := run(p, 1, len(p))
	return ps[0], ps[len(ps)-1]
}

func eachShirt(t *testing.T, check func(g *Garment, s Side)) {
	for _, c := range Cuts() {
		if c.Cut == Shorts {
			continue
		}
		for _, size := range AllSizes() {
			g := must(t, c.Cut, size)
			check(g, Front)
			check(g, Back)
		}
	}
}

func TestWidthsAndDropsReadBackFromTheDrawing(t *testing.T) {
	eachShirt(t, func(g *Garment, s Side) {
		m, label := g.Measures(), string(g.Cut())+" "+g.Size().String()+" "+s.String()
		body := part(t, g, s, "body").Path.Flatten(fine)[0]
		lo, hi := across(body, m.ArmholeDepth+1e-6)
		assert.InDelta(t, m.ChestHalf, hi-lo, within, "%s chest half", label)
		_, hem := down(body, m.NeckWidth/2)
		assert.InDelta(t, m.BodyLength, hem, within, "%s body length", label)
		from, to := ends(part(t, g, s, "neck seam").Path)
		assert.InDelta(t, m.NeckWidth, to.X-from.X, within, "%s neck width", label)
		assert.InDelta(t, 0, to.Y, within, "%s neck seam ends at HPS level", label)
		drop, _ := down(body, 1e-6)
		assert.InDelta(t, map[Side]float64{Front: m.NeckDropFront, Back: m.NeckDropBack}[s], drop, within, "%s neck drop", label)
		assert.InDelta(t, g.Collar(s), drop, within, "%s collar", label)
		assert.Equal(t, pt{X: m.NeckWidth / 2}, g.HPS())
		assert.Equal(t, m.BodyLength, g.Hem())
		if g.Cut() == Raglan {
			return
		}
		_, tip := across(body, m.ShoulderDrop-1e-7)
		assert.InDelta(t, m.ShoulderWidth, 2*tip, within, "%s shoulder width", label)
		if m.StrapWidth > 0 {
			assert.InDelta(t, m.StrapWidth, tip-to.X, within, "%s strap width", label)
		}
	})
}

func TestArmholesReadBackFromTheDrawing(t *testing.T) {
	eachShirt(t, func(g *Garment, s Side) {
		m, name := g.Measures(), "armhole seams"
		if m.SleeveLength == 0 {
			name = "armhole edges"
		}
		seam := part(t, g, s, name).Path
		half := len(seam) / 2 // the other half is its mirror image
		from, to := ends(seam[:half])
		assert.InDelta(t, m.ArmholeDepth, to.Y, within, "%s %s armhole depth", g.Cut(), g.Size())
		assert.InDelta(t, m.ChestHalf/2, to.X, within)
		if g.Cut() != Raglan {
			assert.InDelta(t, m.ShoulderDrop, from.Y, within, "%s %s shoulder drop", g.Cut(), g.Size())
			assert.InDelta(t, m.ShoulderWidth/2, from.X, within)
		}
	})
}

func TestSleevesReadBackFromTheDrawing(t *testing.T) {
	eachShirt(t, func(g *Garment, s Side) {
		m := g.Measures()
		if m.SleeveLength == 0 {
			return
		}
		path := part(t, g, s, "sleeves").Path
		// The fold bends and then runs straight: it ends with the first line after a curve.
		end, bent := 0, false
		for i, seg := range path {
			bent = bent || seg.Op == geom.Cube
			if bent && seg.Op == geom.Line {
				end = i + 1
				break
			}
		}
		fold := run(path, 1, end)
		assert.InDelta(t, m.SleeveLength, lengthOf(fold), within, "%s %s sleeve length", g.Cut(), g.Size())
		if g.Cut() == Raglan {
			tip := pt{X: m.ShoulderWidth / 2, Y: m.ShoulderDrop}
			assert.InDelta(t, 0, distanceTo(fold, tip), within, "%s the virtual shoulder point lies on the fold", g.Size())
		}
	})
}

func distanceTo(line []geom.Point, q geom.Point) float64 {
	best := math.Inf(1)
	for i := 1; i < len(line); i++ {
		best = math.Min(best, segmentDistance(q, line[i-1], line[i]))
	}
	return best
}

func TestPartsOfSingleCutsReadBackFromTheDrawing(t *testing.T) {
	for _, size := range AllSizes() {
		g := must(t, TwoButton, size)
		_, foot := down(part(t, g, Front, "placket").Path.Flatten(fine)[0], 1e-6)
		assert.InDelta(t, g.Measures().PlacketLength, foot-g.Measures().NeckDropFront, within, "%s placket", size)

		g = must(t, FootballYoke, size)
		for _, s := range []Side{Front, Back} {
			_, yoke := down(part(t, g, s, "yoke").Path.Flatten(fine)[0], g.Measures().NeckWidth/2)
			assert.InDelta(t, g.Measures().YokeDepth, yoke, within, "%s yoke", size)
		}

		g = must(t, RacerbackTank, size)
		back := part(t, g, Back, "body").Path.Flatten(fine)[0]
		from, to := g.Measures().NeckDropBack+20, g.Measures().ArmholeDepth-5
		narrow := math.Inf(1)
		for _, step := range []float64{4, 0.2, 0.02} { // closer and closer round the narrowest place
			at := from
			for y := from; y < to; y += step {
				if lo, hi := across(back, y); hi-lo < narrow {
					narrow, at = hi-lo, y
				}
			}
			from, to = at-step, at+step
		}
		assert.InDelta(t, g.Measures().RacerWidth, narrow, within, "%s racer", size)
	}
}

func TestShortsReadBackFromTheDrawing(t *testing.T) {
	for _, size := range AllSizes() {
		g := must(t, Shorts, size)
		m := g.Measures()
		legs := part(t, g, Front, "legs").Path.Flatten(fine)[0]
		lo, hi := across(legs, 0.75*m.FrontRise)
		assert.InDelta(t, m.HipHalf, hi-lo, within, "%s hip", size)
		_, crotch := ends(part(t, g, Front, "centre seam").Path)
		assert.InDelta(t, m.FrontRise, crotch.Y, within, "%s front rise", size)
		outline := part(t, g, Back, "outline").Path
		top, _ := down(outline.Flatten(fine)[0], 1e-6)
		assert.InDelta(t, m.BackRise, crotch.Y-top, within, "%s back rise", size)
		assert.InDelta(t, m.Band, g.Collar(Front), within)
		// Outline: top, side seam, hem, inner leg; the leg is the first line.
		leg := 0
		for outline[leg].Op != geom.Line {
			leg++
		}
		side := run(outline, 2, leg-1)
		assert.InDelta(t, m.WaistHalf, 2*side[0].X, within, "%s waist", size)
		assert.InDelta(t, m.Outseam, lengthOf(side), within, "%s outseam", size)
		hem := run(outline, leg-1, leg)
		assert.InDelta(t, m.LegHalf, hem[0].Sub(hem[len(hem)-1]).Norm(), within, "%s leg", size)
		assert.InDelta(t, m.Inseam, lengthOf(run(outline, leg, leg+1)), within, "%s inseam", size)
	}
}

func TestCollarsAreAsHighAsTheyShouldBeAllAlong(t *testing.T) {
	worst := 0.0
	eachShirt(t, func(g *Garment, s Side) {
		f := g.shape.(*frame)
		seam := f.neckFront.Flatten(0.01)
		for _, q := range f.ribFront.Flatten(0.5) {
			worst = math.Max(worst, math.Abs(distanceTo(seam, q)-f.rib)/f.rib)
		}
	})
	assert.Less(t, worst, 0.10, "share of the collar's height, mitres included")
}
