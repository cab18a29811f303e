package garment

import (
	"fmt"
	"math"
	"slices"
)

// Measures are the finished measures of a garment laid flat, closed and
// relaxed, in millimetres; 0 where the cut has no such measure. How a garment is
// measured flat is the subject of ISO 18890:2018 (scope read, no values in it).
type Measures struct {
	ChestHalf     float64 // straight across at the underarm point
	BodyLength    float64 // from the high point of shoulder (HPS) straight down to the hem
	ShoulderWidth float64 // between the shoulder points; tanks: outer strap edges; raglan: a virtual point
	NeckWidth     float64 // between the two HPS, seam to seam
	NeckDropFront float64 // HPS level to the neck seam at centre front
	NeckDropBack  float64 // the same at centre back
	SleeveLength  float64 // shoulder point to hem along the top fold; raglan: from HPS; 0 sleeveless
	ArmholeDepth  float64 // HPS level to the underarm point
	ShoulderDrop  float64 // HPS level to the shoulder point
	StrapWidth    float64 // tanks
	RacerWidth    float64 // racerback: narrowest width of the back
	PlacketLength float64 // two-button: neck seam to the placket's foot
	YokeDepth     float64 // football: HPS level to the yoke seam

	WaistHalf float64 // shorts: along the top of the waistband, elastic relaxed
	HipHalf   float64 // shorts: straight across, three quarters of the front rise below the top
	FrontRise float64 // shorts: top of the waistband to the crotch at centre front
	BackRise  float64 // shorts: the same at the back; the difference stands above the front waistband
	Outseam   float64 // shorts: top of the waistband to the hem along the side
	Inseam    float64 // shorts: crotch to hem along the inner leg
	LegHalf   float64 // shorts: flat width of the leg at the hem
	Band      float64 // shorts: height of the waistband
}

// field returns the measure that the table calls name, or nil.
func (m *Measures) field(name string) *float64 {
	switch name {
	case "chest half":
		return &m.ChestHalf
	case "body length":
		return &m.BodyLength
	case "shoulder width":
		return &m.ShoulderWidth
	case "neck width":
		return &m.NeckWidth
	case "neck drop front":
		return &m.NeckDropFront
	case "neck drop back":
		return &m.NeckDropBack
	case "sleeve length":
		return &m.SleeveLength
	case "armhole depth":
		return &m.ArmholeDepth
	case "shoulder drop":
		return &m.ShoulderDrop
	case "strap width":
		return &m.StrapWidth
	case "racer width":
		return &m.RacerWidth
	case "placket length":
		return &m.PlacketLength
	case "yoke depth":
		return &m.YokeDepth
	}
	return m.shortsField(name)
}

func (m *Measures) shortsField(name string) *float64 {
	switch name {
	case "waist half":
		return &m.WaistHalf
	case "hip half":
		return &m.HipHalf
	case "front rise":
		return &m.FrontRise
	case "back rise":
		return &m.BackRise
	case "outseam":
		return &m.Outseam
	case "inseam":
		return &m.Inseam
	case "leg half":
		return &m.LegHalf
	case "band":
		return &m.Band
	}
	return nil
}

// required returns the names of the measures that a cut must have.
func required(c Cut) []string {
	if c == Shorts {
		return []string{"waist half", "hip half", "front rise", "back rise", "outseam", "inseam", "leg half", "band"}
	}
	names := []string{"chest half", "body length", "shoulder width", "neck width", "neck drop front", "neck drop back", "armhole depth", "shoulder drop"}
	switch c {
	case BasketballTank:
		return append(names, "strap width")
	case RacerbackTank:
		return append(names, "strap width", "racer width")
	case TwoButton:
		names = append(names, "placket length")
	case FootballYoke:
		names = append(names, "yoke depth")
	}
	return append(names, "sleeve length")
}

// The rules that the measures of one garment obey. They are what the drawing
// needs, and the table was made to them (common practice, no source).
const (
	leastShoulder  = 40.0   // shoulder width is over the neck width by more than this: 20 mm of shoulder a side
	leastBelowArm  = 100.0  // body length is over the armhole depth by more than this
	longestMeasure = 3000.0 // anything longer was written in another unit
	rounding       = 1e-9   // equal but for floating-point noise
)

// check reports the first rule that the measures break for a cut.
func (m Measures) check(c Cut) error {
	for _, name := range required(c) {
		if v := *m.field(name); !(v > 0 && v < longestMeasure) {
			return fmt.Errorf("%s of a %s is %g mm: give a length over 0", name, c, v)
		}
	}
	if c == Shorts {
		return m.checkShorts()
	}
	switch {
	case m.NeckWidth+leastShoulder >= m.ShoulderWidth:
		return fmt.Errorf("neck width %g leaves no shoulder within shoulder width %g", m.NeckWidth, m.ShoulderWidth)
	case m.ShoulderWidth > m.ChestHalf:
		return fmt.Errorf("shoulder width %g is over chest half %g", m.ShoulderWidth, m.ChestHalf)
	case m.ArmholeDepth+leastBelowArm >= m.BodyLength:
		return fmt.Errorf("armhole depth %g leaves under %g mm of side in body length %g", m.ArmholeDepth, leastBelowArm, m.BodyLength)
	case m.NeckDropFront >= m.ArmholeDepth:
		return fmt.Errorf("neck drop front %g is not above armhole depth %g", m.NeckDropFront, m.ArmholeDepth)
	case m.NeckDropBack > m.NeckDropFront:
		return fmt.Errorf("neck drop back %g is below neck drop front %g", m.NeckDropBack, m.NeckDropFront)
	case m.ShoulderDrop >= m.ArmholeDepth:
		return fmt.Errorf("shoulder drop %g is not above armhole depth %g", m.ShoulderDrop, m.ArmholeDepth)
	}
	return m.checkParts(c)
}

// checkParts holds the rules of single cuts.
func (m Measures) checkParts(c Cut) error {
	straps := m.NeckWidth + 2*m.StrapWidth
	switch {
	case slices.Contains(required(c), "strap width") && math.Abs(m.ShoulderWidth-straps) > rounding:
		return fmt.Errorf("shoulder width %g of a %s is not neck width and two straps, %g", m.ShoulderWidth, c, straps)
	case c == RacerbackTank && m.RacerWidth >= m.ShoulderWidth:
		return fmt.Errorf("racer width %g is not under shoulder width %g", m.RacerWidth, m.ShoulderWidth)
	case c == FootballYoke && m.YokeDepth <= m.NeckDropFront:
		return fmt.Errorf("yoke depth %g lies above the front neck seam at %g: the yoke would fall into two pieces", m.YokeDepth, m.NeckDropFront)
	case c == FootballYoke && m.YokeDepth >= m.ArmholeDepth:
		return fmt.Errorf("yoke depth %g is not above armhole depth %g", m.YokeDepth, m.ArmholeDepth)
	case c == TwoButton && m.NeckDropFront+m.PlacketLength >= m.BodyLength:
		return fmt.Errorf("placket length %g runs past the hem", m.PlacketLength)
	}
	return nil
}

func (m Measures) checkShorts() error {
	switch {
	case m.HipHalf < m.WaistHalf:
		return fmt.Errorf("hip half %g is under waist half %g", m.HipHalf, m.WaistHalf)
	case m.BackRise < m.FrontRise:
		return fmt.Errorf("back rise %g is under front rise %g", m.BackRise, m.FrontRise)
	case m.Band >= m.FrontRise/2:
		return fmt.Errorf("band %g takes half of front rise %g", m.Band, m.FrontRise)
	}
	return nil
}
