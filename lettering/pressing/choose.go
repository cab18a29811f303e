package pressing

import (
	"fmt"
	"slices"
	"strings"
)

// PaleFrom is the relative luminance (0 to 1) from which dyed polyester counts
// as pale: little dye, so little that moves. Common practice, no source.
const PaleFrom = 0.7

// Unpressed is the method, by its id in package order, that sees no press.
const Unpressed = "embroidery"

// Tack is how long a layer of film is pressed that a further layer covers, in
// words; the last layer has the full time. Common practice, no source.
const Tack = "2-3 s"

// Layered reports a method whose layers of film are pressed one on the other.
func Layered(method string) bool { return method == "cut film" || method == "flock film" }

// fullColour marks transfers that are another product than those of plain
// colours, so they are taken only when they are named.
const fullColour = "full colour"

// Choose returns the setting of a method for cloth: the one whose variant holds
// the word, or where the word is empty the coolest. The others that would do are
// named beside it. The error says what to write; it wraps ErrUnknownFibre for
// cloth without a fibre.
func (s *Shop) Choose(method, variant string, c Cloth) (Setting, []Setting, error) {
	if len(c.Parts) == 0 {
		return Setting{}, nil, fmt.Errorf("%w: write fibre: in the job, from the sewn-in label", ErrUnknownFibre)
	}
	all := s.For(method, c)
	if len(all) == 0 {
		return Setting{}, nil, fmt.Errorf("no press setting for %s on %s%s: take another method, or write a row with the supplier's figures in the shop's press file", method, c, s.madeFor(method))
	}
	at := 0
	switch {
	case variant != "":
		at = slices.IndexFunc(all, func(set Setting) bool {
			return strings.Contains(strings.ToLower(set.Variant), strings.ToLower(variant))
		})
		if at < 0 {
			return Setting{}, nil, fmt.Errorf("no press setting for %s, %s on %s: use %s", method, variant, c, names(all))
		}
	default:
		at = max(0, slices.IndexFunc(all, func(set Setting) bool { return !strings.Contains(set.Variant, fullColour) }))
	}
	others := slices.Concat(all[:at:at], all[at+1:])
	return all[at], others, nil
}

// madeFor says for which fibres there are settings of a method.
func (s *Shop) madeFor(method string) string {
	var fibres []string
	for _, set := range s.Settings {
		if !slices.Contains(set.Methods, method) {
			continue
		}
		for _, f := range set.Fibres {
			if !slices.Contains(fibres, f) {
				fibres = append(fibres, f)
			}
		}
	}
	if len(fibres) == 0 {
		return ""
	}
	return ", only on " + strings.Join(fibres, ", ")
}

func names(all []Setting) string {
	var out []string
	for _, s := range all {
		out = append(out, s.Variant)
	}
	return strings.Join(out, "; ")
}

// stretches notes that film on cloth with spandex has to stretch with it.
func (s Step) stretches(c Cloth) []Warning {
	if c.Share("spandex") == 0 || strings.Contains(s.Setting.Variant, "stretch") || slices.Contains(s.Setting.Methods, "sublimation") {
		return nil
	}
	return []Warning{{Think, fmt.Sprintf("the cloth stretches: it has %g %% spandex", c.Share("spandex")),
		"take a film that stretches, and pull a test piece once it is cold", Basis}}
}
