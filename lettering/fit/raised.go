package fit

import (
	"strconv"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/weight"
)

// raisedScale is the height of a raised small letter, such as the C of McLEAN
// set in capitals, as a share of the letter height. It stands with its head at
// the cap line. Common practice, no source.
const raisedScale = 0.72

// raisedBit marks the id of a glyph that is drawn small and raised. Glyph ids
// of a font have 16 bits.
const raisedBit = 1 << 31

// raisedPath returns the outline of a glyph of the cut by its id, which may
// carry raisedBit. The caller must not change it.
func raisedPath(cut *weight.Cut, id uint32) (geom.Path, error) {
	path, err := cut.Path(id &^ raisedBit)
	if err != nil || id&raisedBit == 0 {
		return path, err
	}
	return path.Transform(geom.Scale(raisedScale, raisedScale)), nil
}

// raisedKey writes the indexes of raised letters as a key.
func raisedKey(at []int) string {
	if len(at) == 0 {
		return ""
	}
	var b strings.Builder
	for _, i := range at {
		b.WriteString(strconv.Itoa(i))
		b.WriteByte(' ')
	}
	return b.String()
}
