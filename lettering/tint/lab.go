package tint

import "math"

// Lab is a colour in CIE L*a*b*: L is its lightness, 0 for black to 100 for
// white; A runs from green to red, B from blue to yellow.
type Lab struct{ L, A, B float64 }

// lab goes by the four-decimal matrix that IEC 61966-2-1 prints. Its rows add
// up to the printed D65 white (0.9505, 1, 1.0890), so greys come out without
// hue, and its Y is the luminance of WCAG, so that L* and the contrast ratio
// never disagree on which of two colours is the lighter. Matrices with more
// digits differ by 0.01 in L*.
func (l light) lab() Lab {
	x := cubeRoot((0.4124*l[0] + 0.3576*l[1] + 0.1805*l[2]) / 0.9505)
	y := cubeRoot(l.luminance())
	z := cubeRoot((0.0193*l[0] + 0.1192*l[1] + 0.9505*l[2]) / 1.0890)
	return Lab{L: 116*y - 16, A: 500 * (x - y), B: 200 * (y - z)}
}

// cubeRoot is the function f of CIE 15:2004, 8.2.1: a cube root with a
// straight foot near black.
func cubeRoot(t float64) float64 {
	if t > 216.0/24389 {
		return math.Cbrt(t)
	}
	return (t*24389/27 + 16) / 116
}

// CIEDE2000 returns the difference of two colours by the CIEDE2000 formula
// with all its weights 1: about 1 is the least that a trained eye sees side by
// side. It is the same in either order. The formula jumps where two hues face
// each other exactly.
//
// Source: Sharma, Wu and Dalal, The CIEDE2000 Color-Difference Formula:
// Implementation Notes, Supplementary Test Data, and Mathematical
// Observations, Color Research and Application 30(1), 2005, 21 to 30.
func CIEDE2000(one, two Lab) float64 {
	g := 0.5 * (1 - chromaShare((math.Hypot(one.A, one.B)+math.Hypot(two.A, two.B))/2))
	a1, a2 := (1+g)*one.A, (1+g)*two.A
	c1, c2 := math.Hypot(a1, one.B), math.Hypot(a2, two.B)
	h1, h2 := hue(a1, one.B), hue(a2, two.B)
	step, mean := hues(h1, h2, c1*c2 == 0)

	lightness, chroma := (one.L+two.L)/2, (c1+c2)/2
	t := 1 - 0.17*cos(mean-30) + 0.24*cos(2*mean) + 0.32*cos(3*mean+6) - 0.20*cos(4*mean-63)
	off := (lightness - 50) * (lightness - 50)
	blue := (mean - 275) / 25
	turn := -2 * chromaShare(chroma) * sin(60*math.Exp(-blue*blue))

	dl := (two.L - one.L) / (1 + 0.015*off/math.Sqrt(20+off))
	dc := (c2 - c1) / (1 + 0.045*chroma)
	dh := 2 * math.Sqrt(c1*c2) * sin(step/2) / (1 + 0.015*chroma*t)
	// The turn never outweighs the squares, but rounding may.
	return math.Sqrt(max(0, dl*dl+dc*dc+dh*dh+turn*dc*dh))
}

// chromaShare is the square root of c^7 / (c^7 + 25^7).
func chromaShare(c float64) float64 {
	c7 := math.Pow(c, 7)
	return math.Sqrt(c7 / (c7 + 6103515625))
}

// hue returns the angle of a colour in degrees, 0 to 360; 0 for a grey.
func hue(a, b float64) float64 {
	h := math.Atan2(b, a) * 180 / math.Pi
	if h < 0 {
		h += 360
	}
	return h
}

// opposite is by how much, degrees, two hues may pass half a turn and still
// count as facing each other: what rounding of the angles can add, and far
// less than any two hues that a screen can tell apart.
const opposite = 1e-9

// hues returns the way from one hue to the other, -180 to 180, and the hue
// half way, both in degrees. A grey has no hue: the way is then 0, and the sum
// stands for the half, since the hue of the grey counts as 0.
func hues(one, two float64, grey bool) (step, mean float64) {
	step, mean = two-one, (one+two)/2
	switch {
	case grey:
		return 0, one + two
	case math.Abs(step) <= 180+opposite:
		return step, mean
	case one+two < 360:
		mean += 180
	default:
		mean -= 180
	}
	return math.Remainder(step, 360), mean
}

func sin(degrees float64) float64 { return math.Sin(degrees * math.Pi / 180) }
func cos(degrees float64) float64 { return math.Cos(degrees * math.Pi / 180) }
