package order

// Systems of size letters. The generic measures are those of the European
// standard EN 13402-3; grouped US letters that follow ASTM D6240 (both read in
// secondary texts) are about one step larger from L up.
const (
	LettersEN = "EN"
	LettersUS = "US"
)

// letters reads the system that the roster's size letters are of.
func (d *draft) letters(v value) {
	word(&d.o.Garment.Letters, "system of size letters", []string{LettersEN, LettersUS})(v)
}

// lettersKnown gives advice where the letters are of another system than the
// measures and no sheet of the maker's takes their place.
func (d *draft) lettersKnown(v value) {
	if d.o.Garment.Letters == LettersUS && d.job.Spec.File == "" {
		v.note(Advice, "garment", "the sizes are US letters, which are about one step larger than those of EN 13402-3 from L up; the generic measures are for EN letters",
			"put in the maker's spec sheet (garment: spec:), and measure one garment before you cut")
	}
}
