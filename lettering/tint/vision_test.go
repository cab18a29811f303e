package tint

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func dot(a, b light) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// answers returns what the three kinds of cones say to a colour.
func answers(l light) (long, middle, short float64) {
	x, y, z := cones()
	return dot(x, l), dot(y, l), dot(z, l)
}

// Viénot, Brettel and Mollon (1999) print the projections as L = 2.02344 M -
// 2.52581 S for protanopes and M = 0.494207 L + 1.24827 S for deuteranopes
// (from memory). Ours is made from the cones and the plane only; that it lands
// there checks both sets of figures against each other.
func TestSimulatedColoursLieOnThePublishedProjections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := inside(t)
		long, middle, short := answers(c.seen(Protan))
		assert.InDelta(t, 2.02344*middle-2.52581*short, long, 0.001)
		long, middle, short = answers(c.seen(Deutan))
		assert.InDelta(t, 0.494207*long+1.24827*short, middle, 0.001)
	})
}

// inside draws a colour that the simulation does not push off the screen.
func inside(t *rapid.T) light {
	l := anyColour().Draw(t, "c").light()
	l[2] = 0.03 + 0.94*l[2]
	return l
}

func TestTheConesThatAreLeftAnswerTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := inside(t)
		_, middle, short := answers(c)
		_, gotMiddle, gotShort := answers(c.seen(Protan))
		assert.InDelta(t, middle, gotMiddle, 1e-9)
		assert.InDelta(t, short, gotShort, 1e-9)
		long, _, short := answers(c)
		gotLong, _, gotShort := answers(c.seen(Deutan))
		assert.InDelta(t, long, gotLong, 1e-9)
		assert.InDelta(t, short, gotShort, 1e-9)
	})
}

// The projections as matrices in linear red, green and blue are printed so by
// open simulators that follow the same paper (from memory).
func TestSimulationInLinearLightIsThePublishedMatrix(t *testing.T) {
	for _, tt := range []struct {
		vision Vision
		from   light
		want   light
	}{
		{Protan, light{1, 0, 0}, light{0.11238, 0.11238, 0.00401}},
		{Protan, light{0, 1, 0.5}, light{0.88762, 0.88762, 0.49599}},
		{Deutan, light{0, 1, 0.5}, light{0.70725, 0.70725, 0.52234}},
		{Deutan, light{1, 0, 0.5}, light{0.29275, 0.29275, 0.47766}},
	} {
		got := tt.from.seen(tt.vision)
		for i := range got {
			assert.InDelta(t, tt.want[i], got[i], 0.00002, "%s %v", tt.vision, tt.from)
		}
	}
}

func TestSimulationLeavesGreysBlueAndYellow(t *testing.T) {
	for _, v := range []Vision{Usual, Protan, Deutan} {
		for _, c := range []Colour{{}, {255, 255, 255}, {0x77, 0x77, 0x77}, {0, 0, 255}, {255, 255, 0}} {
			assert.Equal(t, c, Simulate(c, v), "%s %s", v, c)
		}
	}
}

func TestSimulatingTwiceIsSimulatingOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyColour().Draw(t, "c").light()
		v := rapid.SampledFrom([]Vision{Usual, Protan, Deutan}).Draw(t, "vision")
		once := l.seen(v)
		twice := once.seen(v)
		for i := range once {
			assert.InDelta(t, once[i], twice[i], 1e-12)
			assert.GreaterOrEqual(t, once[i], 0.0)
			assert.LessOrEqual(t, once[i], 1.0)
		}
	})
}

func TestUsualVisionSeesTheColourItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyColour().Draw(t, "c")
		assert.Equal(t, c, Simulate(c, Usual))
	})
}

func TestRedLooksDarkToAProtanEyeOnly(t *testing.T) {
	red := Colour{R: 255}
	assert.Less(t, Simulate(red, Protan).Luminance(), 0.6*red.Luminance())
	assert.Greater(t, Simulate(red, Deutan).Luminance(), red.Luminance())
}
