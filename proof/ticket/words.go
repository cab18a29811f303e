package ticket

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/tally"
)

// an puts the article before a word.
func an(words string) string {
	if strings.ContainsRune("aeiou", rune(words[0])) {
		return "an " + words
	}
	return "a " + words
}

// length prints a length in the job's unit, to the nearest step.
func (d *document) length(mm float64) string { return length.Page(mm, d.order.Units, length.Nearest) }

// span prints the lengths from least to most; one of them where they look alike.
func (d *document) span(least, most float64) string {
	a, b := d.length(least), d.length(most)
	if a == b {
		return a
	}
	if i := strings.LastIndexFunc(a, unicode.IsSpace); i > 0 {
		a = a[:i] // the unit is said once
	}
	return a + "–" + b
}

// area prints an area in square inches or square centimetres.
func (d *document) area(mm2 float64) string {
	if d.order.Units == length.Inch {
		return fmt.Sprintf("%.0f sq in", mm2/(25.4*25.4))
	}
	return fmt.Sprintf("%.0f cm²", mm2/100)
}

// whole prints a length of material in whole inches or centimetres, rounded up.
func (d *document) whole(mm float64) string {
	if d.order.Units == length.Inch {
		return fmt.Sprintf("%.0f\u00a0in", math.Ceil(mm/25.4))
	}
	return fmt.Sprintf("%.0f\u00a0cm", math.Ceil(mm/10))
}

// bought prints a length as rolls are sold: yards or metres, rounded up.
func (d *document) bought(mm float64) string {
	if d.order.Units == length.Inch {
		return fmt.Sprintf("%.1f\u00a0yd", math.Ceil(mm/91.44)/10)
	}
	return fmt.Sprintf("%.1f\u00a0m", math.Ceil(mm/100)/10)
}

// noun is what the wearer calls the garment.
func (d *document) noun() string {
	if info, ok := d.order.Garment.Cut.Info(); ok {
		return info.Noun
	}
	return "garment"
}

// each says one garment of its kind: shirt, pair of shorts.
func each(noun string) string {
	if strings.HasSuffix(noun, "s") {
		return "pair of " + noun
	}
	return noun
}

// oneGroup reports whether all known sizes are of one group.
func (d *document) oneGroup() bool {
	var first garment.Group
	for _, p := range d.in.Sized.Players {
		switch {
		case p.Garment == nil:
		case first == "":
			first = p.Size.Group
		case first != p.Size.Group:
			return false
		}
	}
	return true
}

// sizeLabel is a size as tables write it: the letter alone where all sizes are of
// one group.
func (d *document) sizeLabel(s garment.Size) string {
	if d.oneGroup() {
		return s.Letter
	}
	return s.Label()
}

// sizeWords is a size in a sentence: women’s M, youth L, adult XL.
func sizeWords(s garment.Size) string {
	group := string(s.Group)
	if s.Group == garment.Women {
		group = "women’s"
	}
	return group + " " + s.Letter
}

// cloth names the garments' colours: navy with gold.
func (d *document) clothWords() string {
	words := tally.ColourName(d.order.Garment.Colour)
	if trim := d.order.Garment.Trim; trim.Hex != "" {
		words += " with " + tally.ColourName(trim)
	}
	return words
}

// inline sets a text of two lines in one.
func inline(text string) string { return strings.ReplaceAll(text, "\n", " / ") }

// typeset gives a sentence its apostrophes, and figures that do not leave their
// units.
func typeset(text string) string {
	return strings.NewReplacer("'", "’", " °C", "\u00a0°C", " °F", "\u00a0°F", " %", "\u00a0%", " s,", "\u00a0s,", " ppm", "\u00a0ppm").Replace(text)
}

// sentence begins with a capital letter.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return text
	}
	return string(unicode.ToUpper(r)) + text[n:]
}

func lowerFirst(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return text
	}
	return string(unicode.ToLower(r)) + text[n:]
}

// plural says how many of a thing there are: 1 player, 12 players.
func plural(n int, thing string) string {
	switch {
	case n == 1:
	case strings.HasSuffix(thing, "ss"):
		thing += "es"
	case !strings.HasSuffix(thing, "s"):
		thing += "s"
	}
	return fmt.Sprintf("%d %s", n, thing)
}

// counted is plural at the start of a sentence: Two presses.
func counted(n int, thing string) string {
	words := []string{"No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine"}
	text := plural(n, thing)
	if n < len(words) {
		return words[n] + strings.TrimPrefix(text, fmt.Sprint(n))
	}
	return text
}

// list joins words: a, b and c.
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// thing is the last word of a place that is said under its side: number.
func thing(p order.Place) string {
	words := strings.Fields(string(p))
	return words[len(words)-1]
}

// pieceWord is what is measured of a piece: its letters or its digits.
func pieceWord(p order.Place) string {
	if order.IsNumber(p) {
		return "digits"
	}
	return "letters"
}
