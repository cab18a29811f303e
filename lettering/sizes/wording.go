package sizes

import (
	"strings"

	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

// Wording returns a text as a name in the face draws it: apostrophes alike, in
// the case, and with the indexes of the letters of a prefix that is raised. A
// face without the curved apostrophe draws the straight one.
func Wording(text string, face *typeface.Face, c spelling.Case, lang string, raise bool) (string, []int) {
	text = spelling.Apostrophes(text, lang)
	for _, other := range [...][2]string{{"’", "'"}, {"‘", "ʻ"}} {
		if !face.Has([]rune(other[0])[0]) && face.Has([]rune(other[1])[0]) {
			text = strings.ReplaceAll(text, other[0], other[1])
		}
	}
	if raise {
		return spelling.Raise(text, c, lang)
	}
	return spelling.Apply(text, c, lang), nil
}
