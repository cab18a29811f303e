package order

// The words for the room that a 1 has among other digits, as package numeral
// defines them.
const ownWidth, fullWidth = "own width", "full width"

// ones reads how much room a 1 has.
func ones(full *bool) func(value) {
	return func(v value) {
		s, ok := v.word("room for a 1", []string{ownWidth, fullWidth})
		set(full)(s == fullWidth, ok)
	}
}
