package edges

import (
	"fmt"
	"math"
	"strings"
)

// Form is a named pair of edges without its figures.
type Form uint8

// The forms, named by their geometry. Heights are said of letters at the ends
// beside one at the middle, which keeps the letter height.
const (
	Flat             Form = iota // both edges straight
	ArchedTop                    // arched top on a straight foot: the ends are lower
	SunkenTop                    // the top's lowest point at the middle: the ends are taller
	ArchedFoot                   // straight top over an arched foot: the ends hang lower and are taller
	SunkenFoot                   // straight top, the foot's lowest point at the middle: the ends are lower
	Bulge                        // top arched up, foot arched down
	Pinch                        // top arched down, foot arched up
	VerticalArch                 // both edges arched up alike, stems upright
	VerticalArchDown             // both edges arched down alike
	Taper                        // top and foot slant towards each other
	SlantedTop                   // slanted top on a straight foot
	SlantedFoot                  // straight top over a slanted foot
	Slanted                      // both edges slant alike: a slanted baseline
)

// direction is an edge without its figure: sign is 1 for a crest up or a climb
// to the right, -1 for the other way, 0 for a straight edge.
type direction struct {
	kind Kind
	sign int8
}

func (e Edge) direction() direction {
	switch v := e.Rise + e.Radius + e.Angle; {
	case v > 0:
		return direction{e.Kind, 1}
	case v < 0:
		return direction{e.Kind, -1}
	}
	return direction{}
}

func (d direction) edge(rise, radius, angle float64) Edge {
	s := float64(d.sign)
	return Edge{d.kind, s * rise, s * radius, s * angle}
}

var forms = [...]struct {
	name        string
	top, bottom direction
}{
	Flat:             {"straight", direction{}, direction{}},
	ArchedTop:        {"arched top", direction{Arch, 1}, direction{}},
	SunkenTop:        {"sunken top", direction{Arch, -1}, direction{}},
	ArchedFoot:       {"arched foot", direction{}, direction{Arch, 1}},
	SunkenFoot:       {"sunken foot", direction{}, direction{Arch, -1}},
	Bulge:            {"bulge", direction{Arch, 1}, direction{Arch, -1}},
	Pinch:            {"pinch", direction{Arch, -1}, direction{Arch, 1}},
	VerticalArch:     {"vertical arch", direction{Arch, 1}, direction{Arch, 1}},
	VerticalArchDown: {"vertical arch down", direction{Arch, -1}, direction{Arch, -1}},
	Taper:            {"taper", direction{Slant, -1}, direction{Slant, 1}},
	SlantedTop:       {"slanted top", direction{Slant, 1}, direction{}},
	SlantedFoot:      {"slanted foot", direction{}, direction{Slant, 1}},
	Slanted:          {"slant", direction{Slant, 1}, direction{Slant, 1}},
}

// Forms returns all forms in a fixed order, Flat first.
func Forms() []Form {
	out := make([]Form, len(forms))
	for i := range out {
		out[i] = Form(i)
	}
	return out
}

// String returns the form's name in files and on screen, such as "arched top".
func (f Form) String() string {
	if int(f) < len(forms) {
		return forms[f].name
	}
	return fmt.Sprintf("form %d", uint8(f))
}

// Parse reads what String writes. The error lists the names.
func Parse(name string) (Form, error) {
	names := make([]string, len(forms))
	for i := range forms {
		if forms[i].name == name {
			return Form(i), nil
		}
		names[i] = forms[i].name
	}
	return 0, fmt.Errorf("shape %q is unknown: use %s", name, strings.Join(names, ", "))
}

// Kind returns the kind of the form's edges that are not straight: Arch takes
// a rise or a radius, Slant a rise or an angle, Straight nothing.
func (f Form) Kind() Kind {
	if int(f) >= len(forms) {
		return Straight
	}
	return max(forms[f].top.kind, forms[f].bottom.kind)
}

// ByRise returns the form with edges of that rise over the chord, mm, over 0.
// A slanted form also takes a rise under 0, which slants the other way.
func (f Form) ByRise(rise float64) (Shape, error) {
	return f.shape("rise", f.Kind() != Straight, rise, rise, 0, 0)
}

// ByRadius returns the form with arched edges of that radius, mm, over 0.
func (f Form) ByRadius(radius float64) (Shape, error) {
	return f.shape("radius", f.Kind() == Arch, radius, 0, radius, 0)
}

// ByAngle returns the form with slanted edges of that angle, radians; under 0
// slants the other way.
func (f Form) ByAngle(angle float64) (Shape, error) {
	return f.shape("angle", f.Kind() == Slant, angle, 0, 0, angle)
}

func (f Form) shape(figure string, takes bool, value, rise, radius, angle float64) (Shape, error) {
	switch {
	case int(f) >= len(forms):
		return Shape{}, fmt.Errorf("%v is unknown", f)
	case !takes:
		return Shape{}, fmt.Errorf("%v takes no %s: use %s", f, figure, [...]string{"none", "a rise or a radius", "a rise or an angle"}[f.Kind()])
	case math.IsNaN(value) || math.IsInf(value, 0) || value == 0:
		return Shape{}, fmt.Errorf("%s of the %v is %g; it must not be 0", figure, f, value)
	case value < 0 && f.Kind() == Arch:
		return Shape{}, fmt.Errorf("%s of the %v is %g mm; it must be over 0", figure, f, value)
	}
	return Shape{Top: forms[f].top.edge(rise, radius, angle), Bottom: forms[f].bottom.edge(rise, radius, angle)}, nil
}
