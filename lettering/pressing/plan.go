package pressing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Level says how much a warning weighs.
type Level string

// A garment is not pressed while there is a stop.
const (
	Stop  Level = "stop"
	Warn  Level = "warning"
	Think Level = "note"
)

// Warning is one thing to know before pressing.
type Warning struct {
	Level  Level
	Text   string // a sentence
	Remedy string
	Basis  string
}

// Step is one press at a place of the garment.
type Step struct {
	Place   string
	Setting Setting
	Celsius float64 // chosen within the setting
	Seconds float64
	// Standing is how much the pressed piece itself takes later, degrees Celsius;
	// 0 when that is not known. By default a piece stands what it was pressed at.
	Standing float64
}

// NewStep takes the cool end of a setting's range, and the time in its middle,
// in whole seconds.
func NewStep(place string, s Setting) Step {
	return Step{Place: place, Setting: s, Celsius: s.FromC, Seconds: math.Round((s.FromS + s.ToS) / 2)}
}

// Ordered sorts steps so that the hottest comes first: what lies on the garment
// already then never sees more heat than it was pressed at. Steps of one
// temperature keep their order.
func Ordered(steps []Step) []Step {
	out := slices.Clone(steps)
	slices.SortStableFunc(out, func(a, b Step) int { return cmp.Compare(b.Celsius, a.Celsius) })
	return out
}

// Check holds a plan of presses, in the order in which they are made, against
// the cloth: the heat its fibres stand, what each method needs, and what lies on
// the garment already. The error is for cloth that is not known: such a plan is
// refused.
func (s *Shop) Check(c Cloth, steps []Step) ([]Warning, error) {
	ceiling, err := s.CeilingOf(c)
	if err != nil {
		return nil, err
	}
	var out []Warning
	for _, step := range steps {
		out = append(out, ceiling.judge(c, step)...)
		out = append(out, step.needs(c)...)
		out = append(out, step.within(s.Basis)...)
	}
	for _, step := range steps {
		if note := step.stretches(c); note != nil { // once is enough
			out = append(out, note...)
			break
		}
	}
	return append(out, sequence(steps)...), nil
}

// judge holds one step against the ceiling.
func (k Ceiling) judge(c Cloth, s Step) []Warning {
	at := fmt.Sprintf("%s at %s", s.Setting.Name(), Degrees(s.Celsius))
	var out []Warning
	switch {
	case s.Celsius > k.Stop:
		out = append(out, Warning{Stop, fmt.Sprintf("%s is too hot for %s: it stands %s at most (%s)", at, c, Degrees(k.Stop), k.Why),
			"choose a cooler method", k.Basis})
	case s.Celsius > k.Warn && !(k.BlockerLifts && s.Setting.Blocker()):
		remedy := "stay at or under " + Degrees(k.Warn)
		if k.BlockerLifts {
			remedy += ", or use a film with a blocker; look for bleed the next day"
		}
		out = append(out, Warning{Warn, fmt.Sprintf("%s is over %s, where %s may suffer: %s", at, Degrees(k.Warn), c, k.Why), remedy, k.Basis})
	}
	if k.WarnS > 0 && s.Seconds > k.WarnS {
		out = append(out, Warning{Warn, fmt.Sprintf("%s for %g s is longer than %g s: %s", at, s.Seconds, k.WarnS, k.Why), "press shorter, or twice with time to cool", k.Basis})
	}
	return out
}

// leastPolyester is the share that dye needs to hold on to, percent.
const leastPolyester = 65

// needs says what the method asks of the cloth.
func (s Step) needs(c Cloth) []Warning {
	if slices.Contains(s.Setting.Methods, "sublimation") && c.Share("polyester") < leastPolyester {
		return []Warning{{Stop, fmt.Sprintf("dye sublimation needs at least %d %% polyester, and this is %s with %g %%", leastPolyester, c, c.Share("polyester")),
			"choose another method", Basis}}
	}
	if !s.Setting.takes(c) {
		return []Warning{{Warn, fmt.Sprintf("%s is not made for %s", s.Setting.Name(), c), "ask the supplier of the film which adhesive it needs", Basis}}
	}
	return nil
}

// within warns of a temperature or a time outside the setting.
func (s Step) within(basis string) []Warning {
	var out []Warning
	if s.Celsius < s.Setting.FromC || s.Celsius > s.Setting.ToC {
		out = append(out, Warning{Warn, fmt.Sprintf("%s is pressed at %s to %s, not at %s", s.Setting.Name(), Degrees(s.Setting.FromC), Degrees(s.Setting.ToC), Degrees(s.Celsius)),
			"check the supplier's data sheet", basis})
	}
	if s.Seconds < s.Setting.FromS || s.Seconds > s.Setting.ToS {
		out = append(out, Warning{Warn, fmt.Sprintf("%s takes %g to %g s, not %g", s.Setting.Name(), s.Setting.FromS, s.Setting.ToS, s.Seconds),
			"check the supplier's data sheet", basis})
	}
	return out
}

// sequence warns where something that lies on the garment already sees more
// heat than it stands. The whole garment is warmed by each press, so the place
// makes no difference to the warning but to its words.
func sequence(steps []Step) []Warning {
	var out []Warning
	for i, s := range steps {
		for _, before := range steps[:i] {
			stands := cmp.Or(before.Standing, before.Celsius)
			if s.Celsius <= stands {
				continue
			}
			out = append(out, Warning{Warn, fmt.Sprintf("the %s, pressed at %s, lies on the garment when the %s is pressed at %s", before.Place, Degrees(stands), s.Place, Degrees(s.Celsius)),
				"press the hottest first", Basis})
		}
	}
	return out
}

// Fahrenheit returns a temperature in degrees Fahrenheit; the conversion is
// exact by definition.
func Fahrenheit(celsius float64) float64 { return celsius*9/5 + 32 }

// Celsius returns a temperature in degrees Celsius.
func Celsius(fahrenheit float64) float64 { return (fahrenheit - 32) * 5 / 9 }

// Degrees prints a temperature in both units, to whole degrees.
func Degrees(celsius float64) string {
	return fmt.Sprintf("%.0f °C (%.0f °F)", celsius, Fahrenheit(celsius))
}
