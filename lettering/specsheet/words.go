package specsheet

import (
	"regexp"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// plain writes a heading in one way: lower case, British, a half as a word, and
// spaces for everything that is neither letter nor figure.
func plain(text string) string {
	text = strings.NewReplacer("½", " half ", "1/2", " half ", "_", " ", "-", " ").Replace(strings.ToLower(text))
	text = strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r == '\'' || r == '’':
			return -1
		}
		return ' '
	}, text)
	words := strings.Fields(text)
	for i, w := range words {
		switch w {
		case "center":
			words[i] = "centre"
		case "gauge", "measurement", "measurements", "finished":
			words[i] = ""
		case "circumference", "round", "around":
			words[i] = "girth"
		}
	}
	return strings.Join(strings.Fields(strings.Join(words, " ")), " ")
}

// measure is what a heading means: a measure of the garment table, and the
// share of what is written that it is.
type measure struct {
	name  string
	share float64
}

// synonyms are the words that spec sheets have for the measures. A word that
// means different things to different makers (chest, waist, armhole) is not among
// them: see unclear.
func synonyms(name string) []string {
	switch name {
	case "chest half":
		return []string{"half chest", "chest width", "chest flat", "pit to pit", "underarm to underarm", "body width"}
	case "body length":
		return []string{"length", "full length", "total length", "length from hps", "body length from hps", "hps length", "length hps to hem"}
	case "shoulder width":
		return []string{"shoulder", "shoulders", "across shoulder", "across shoulders", "shoulder to shoulder"}
	case "neck width":
		return []string{"neck opening width", "neck width seam to seam", "neckline width"}
	case "neck drop front":
		return []string{"front neck drop", "front neck depth", "neck depth front", "front drop"}
	case "neck drop back":
		return []string{"back neck drop", "back neck depth", "neck depth back", "back drop"}
	case "sleeve length":
		return []string{"sleeve", "sleeve length from shoulder"}
	case "armhole depth":
		return []string{"scye depth", "armscye depth", "armhole drop", "armhole straight"}
	case "shoulder drop":
		return []string{"shoulder slope", "shoulder slant"}
	case "strap width":
		return []string{"strap", "shoulder strap", "shoulder strap width"}
	case "racer width":
		return []string{"racerback width", "racer back width", "across racerback"}
	case "placket length":
		return []string{"placket"}
	case "yoke depth":
		return []string{"yoke", "yoke height"}
	case "outseam":
		return []string{"out seam", "outside leg", "side length"}
	case "inseam":
		return []string{"in seam", "inside leg", "inner leg"}
	case "waist half":
		return []string{"half waist", "waist width", "waist flat", "waist relaxed half"}
	case "hip half":
		return []string{"half hip", "hip width", "hip flat"}
	case "leg half":
		return []string{"half leg", "leg width", "hem width", "leg opening half", "half leg opening"}
	case "band":
		return []string{"waistband", "waistband height", "waistband width", "band height"}
	}
	return nil
}

// girths are the measures that may be given all round: twice the flat width.
func girths() map[string]string {
	return map[string]string{
		"chest girth": "chest half", "full chest": "chest half", "waist girth": "waist half", "full waist": "waist half",
		"hip girth": "hip half", "full hip": "hip half", "leg girth": "leg half", "leg opening girth": "leg half",
	}
}

// unclear are words that could be one measure or another, with what to write.
func unclear(word string) string {
	switch word {
	case "chest", "waist", "hip", "hips", "seat", "leg opening", "bust":
		first := strings.Fields(strings.TrimSuffix(strings.Replace(strings.Replace(word, "bust", "chest", 1), "seat", "hip", 1), "s"))[0]
		return "write " + first + " half for the width laid flat, or " + first + " girth for the measure all round"
	case "armhole", "armscye":
		return "write armhole depth for the straight drop from the high point of shoulder; the curved seam is not used"
	case "neck", "neck opening", "neckline":
		return "write neck width for the flat width between the shoulder seams; the girth of the neck is not used"
	case "rise":
		return "write front rise or back rise"
	}
	return ""
}

// measureOf reads a heading or the word in a row; why says what to write where
// the word could mean two things.
func measureOf(text string) (m measure, ok bool, why string) {
	word := plain(text)
	if name, girth := girths()[word]; girth {
		return measure{name, 0.5}, true, ""
	}
	for _, cut := range garment.Cuts() {
		for _, name := range garment.MeasureNames(cut.Cut) {
			if word == name {
				return measure{name, 1}, true, ""
			}
			for _, s := range synonyms(name) {
				if word == s {
					return measure{name, 1}, true, ""
				}
			}
		}
	}
	return measure{}, false, unclear(word)
}

// unitWord returns the unit that a word names.
func unitWord(word string) (length.Unit, bool) {
	switch strings.Trim(strings.ToLower(strings.TrimSpace(word)), ".") {
	case "in", "inch", "inches", "\"", "″", "”":
		return length.Inch, true
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return length.Centimetre, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return length.Millimetre, true
	}
	return 0, false
}

// trailing is a heading that ends in a word, in brackets or after a comma or space.
var trailing = regexp.MustCompile(`^(.+?)(?:\s*[(\[]\s*([^()\[\]]+?)\s*[)\]]|[\s,]+([^\s,]+))$`)

// unitOf parts a heading from the unit it ends in.
func unitOf(text string) (rest string, unit length.Unit, ok bool) {
	if m := trailing.FindStringSubmatch(text); m != nil {
		if unit, ok := unitWord(m[2] + m[3]); ok {
			return strings.TrimSpace(m[1]), unit, true
		}
	}
	return text, 0, false
}

// spoken finds the unit in a title: all measures in inches.
var spoken = regexp.MustCompile(`(?i)\b(?:in|units?:?)\s+(inch(?:es)?|cm|centimet(?:re|er)s?|mm|millimet(?:re|er)s?)\b`)
