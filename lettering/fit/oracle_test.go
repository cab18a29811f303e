package fit_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// The oracle works by brute force from the measured definitions alone: it
// shapes, flattens very finely, places every single point and takes the box.

var long = flag.Bool("long", false, "check ten times as many random fits by brute force")

// size is what decides how large a line comes out.
type size struct{ height, scale, tracking, wdth float64 }

type dots map[uint32][]geom.Point

type oracle struct {
	t       testing.TB
	r       fit.Request
	shapers map[*typeface.Face]*typeface.Shaper
	dots    map[*typeface.Face]dots
}

func newOracle(t testing.TB) *oracle {
	return &oracle{t: t, shapers: map[*typeface.Face]*typeface.Shaper{}, dots: map[*typeface.Face]dots{}}
}

func (o *oracle) face(wdth float64) *typeface.Face {
	values := map[string]float64{}
	if !math.IsNaN(wdth) {
		values["wdth"] = wdth
	}
	if !math.IsNaN(o.r.Wght) {
		values["wght"] = o.r.Wght
	}
	face, err := o.r.Face.Instance(values)
	require.NoError(o.t, err)
	return face
}

func (o *oracle) points(face *typeface.Face, id uint32) []geom.Point {
	if o.dots[face] == nil {
		if len(o.dots) > 60 {
			clear(o.dots)
		}
		o.dots[face] = dots{}
	}
	if p, ok := o.dots[face][id]; ok {
		return p
	}
	var out []geom.Point
	for _, ring := range face.Outline(id).Flatten(2e-6 * face.UnitsPerEm()) {
		out = append(out, ring...)
	}
	if len(face.Axes()) == 0 {
		// Used hundreds of times: a box only needs the hull, however it turns.
		out = geom.Hull(out)
	}
	o.dots[face][id] = out
	return out
}

func (o *oracle) shape(face *typeface.Face) typeface.Line {
	if o.shapers[face] == nil {
		if len(o.shapers) > 60 {
			clear(o.shapers)
		}
		o.shapers[face] = face.NewShaper()
	}
	l, err := o.shapers[face].Shape(o.r.Text, o.r.Lang)
	require.NoError(o.t, err)
	return l
}

func (o *oracle) radius() float64 {
	if o.r.Rise > 0 {
		c := o.r.Limit
		return c*c/(8*o.r.Rise) + o.r.Rise/2
	}
	return o.r.Radius
}

// bare returns the box of all points in the plane and the half angle.
func (o *oracle) bare(z size) (lo, hi, half float64) {
	face := o.face(z.wdth)
	l := o.shape(face)
	sy := z.height / face.CapHeight()
	sx := sy * z.scale
	before := make([]int, len(l.Glyphs))
	pens, pen := make([]float64, len(l.Glyphs)), 0.0
	for i, g := range l.Glyphs {
		if i > 0 {
			before[i] = before[i-1]
			if g.Cluster != l.Glyphs[i-1].Cluster {
				before[i]++
			}
		}
		pens[i] = pen
		pen += g.Advance
	}
	each := func(f func(i int, x, y float64)) {
		for i, g := range l.Glyphs {
			for _, p := range o.points(face, g.ID) {
				f(i, sx*(g.X+p.X)+z.tracking*float64(before[i]), sy*(g.Y+p.Y))
			}
		}
	}
	lo, hi = math.Inf(1), math.Inf(-1)
	each(func(_ int, x, _ float64) { lo, hi = math.Min(lo, x), math.Max(hi, x) })
	R := o.radius()
	if o.r.Shape != fit.RadialArch && o.r.Shape != fit.RadialArchDown {
		return lo, hi, 0
	}
	mid, rs := (lo+hi)/2, R
	if o.r.Spacing == fit.Middle {
		rs += z.height / 2
		if o.r.Shape == fit.RadialArchDown {
			rs -= z.height
		}
	}
	half = (hi - lo) / 2 / rs
	lo, hi = math.Inf(1), math.Inf(-1)
	carrier := 0
	centre := make([]float64, len(l.Glyphs))
	for i, g := range l.Glyphs {
		if !g.Mark {
			carrier = i
		}
		centre[i] = sx*(pens[carrier]+l.Glyphs[carrier].Advance/2) + z.tracking*float64(before[carrier])
	}
	sins, coss := make([]float64, len(centre)), make([]float64, len(centre))
	for i, c := range centre {
		sins[i], coss[i] = math.Sincos((c - mid) / rs)
	}
	each(func(i int, x, y float64) {
		// The letter stands on top (or at the bottom) of the circle, then turns.
		x -= centre[i]
		var at float64
		if o.r.Shape == fit.RadialArch {
			at = x*coss[i] + (y+R)*sins[i]
		} else {
			at = x*coss[i] - (y-R)*sins[i]
		}
		lo, hi = math.Min(lo, at), math.Max(hi, at)
	})
	return lo, hi, half
}

func (o *oracle) width(z size) float64 {
	lo, hi, half := o.bare(z)
	if half > 75*math.Pi/180 {
		return math.Inf(1)
	}
	return hi - lo + 2*outline.Reach(o.r.Outlines)
}

var oracleFaces = []string{
	"graduate", "quantico", "alfa-slab-one", "roboto-slab", "russo-one", "saira-stencil-one", "anton", "league-gothic",
	"oswald", "barlow-condensed", "saira", "archivo", "yellowtail", "damion", "oleo-script",
}

var oracleTexts = []string{
	"VANTAGGI", "O’TOOLE", "I", "LI", "AVA", "QUILL", "WOJTASIK-LEE", "DE LA FUENTE", "MÜLLER", "Ångström", "Ruiz", "ŁÓDŹKA",
	"NGUYỄN", "TRẦN", "JJ", "HERNANDEZ MONTALVO", "Tom", "St. Ives", "ŽIVKOVIĆ", "Čapek", "FJORD", "MMM", "L’ÉTOILE", "VAN DER BERG",
}

func pick[T any](r *rand.Rand, from []T) T { return from[r.IntN(len(from))] }

func between(r *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

func randomRequest(t testing.TB, r *rand.Rand) fit.Request {
	face, err := typeface.Embedded(pick(r, oracleFaces))
	require.NoError(t, err)
	q := fit.Request{
		Text: pick(r, oracleTexts), Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: between(r, 20, 110),
		Shape: fit.Shape(r.IntN(5)), Spacing: fit.Spacing(r.IntN(2)), Squash: r.IntN(3) == 0, NoWaysOut: true,
	}
	if r.IntN(8) > 0 {
		q.Limit = between(r, 100, 400)
	}
	if q.Limit > 0 && r.IntN(2) == 0 {
		q.Rise = between(r, 0.02, 0.2) * q.Limit
	} else {
		q.Radius = between(r, 180, 900)
	}
	q.Ladder = fit.Ladder{Tracking: -between(r, 0, 0.06), Width: between(r, 0.6, 1), Height: between(r, 0.4, 1) * q.Height}
	if r.IntN(5) == 0 {
		q.Ladder = fit.Ladder{Width: 1, Height: q.Height / 2}
	}
	for range r.IntN(3) {
		q.Outlines = append(q.Outlines, outline.Layer{Width: between(r, 0.5, 6)})
	}
	if len(face.Axes()) > 0 && r.IntN(2) == 0 {
		a := face.Axes()[0]
		for _, b := range face.Axes() {
			if b.Tag == "wdth" {
				a = b
			}
		}
		q.Wdth = between(r, a.Min, a.Max)
	}
	return q
}

func TestRandomFitsAgreeWithBruteForce(t *testing.T) {
	count, bisections := 2200, 60
	if *long {
		count, bisections = 22000, 2000
	}
	r := rand.New(rand.NewPCG(20260301, 5))
	f, o := fit.NewFitter(), newOracle(t)
	seen, worst := map[string]int{}, 0.0
	for i := 0; i < count; i++ {
		q := randomRequest(t, r)
		n, err := f.Name(q)
		var missing *typeface.MissingError
		if assertErrorAs(err, &missing) {
			i--
			continue
		}
		o.r = q
		var tight *fit.TooTightError
		if assertErrorAs(err, &tight) {
			seen["too tight"]++
			o.checkTooTight(f, tight)
			continue
		}
		require.NoError(t, err)
		seen[n.Verdict.String()]++
		worst = math.Max(worst, o.check(n))
		if bisections > 0 && n.Verdict != fit.Full && math.IsNaN(n.Wdth) {
			bisections--
			o.bisect(n)
		}
		if t.Failed() {
			t.Fatalf("fit %d: %+v", i, q)
		}
	}
	t.Logf("verdicts %v, worst width difference %.2g mm", seen, worst)
	for _, v := range []string{"full", "eased", "reduced", "over", "too tight"} {
		assert.Greater(t, seen[v], count/200, "the random fits hardly reach %s", v)
	}
}

func assertErrorAs[E error](err error, target *E) bool {
	e, ok := err.(E)
	*target = e
	return ok
}
