package order

// Method is a way to put lettering on a garment and the smallest detail it
// holds, in millimetres.
type Method struct {
	ID, Name  string
	MinStroke float64 // thinnest bar
	MinGap    float64 // narrowest opening between two parts
	MinLetter float64 // lowest letter
	Basis     string  // where the figures come from
	// Also are other words shops use for the method.
	Also []string
}

// practice marks every figure of the table below.
const practice = "common practice, no source: the supplier's data sheet decides"

// DefaultMethod is used when a job names none: what most small shops cut.
const DefaultMethod = "cut film"

// Methods returns the decoration methods in a fixed order. All figures are
// common practice, no source; where a method has two figures the safer one is
// taken.
func Methods() []Method {
	return []Method{
		{DefaultMethod, "cut heat-transfer film", 2, 1.5, 10, practice, []string{"heat transfer film", "cut heat transfer film"}},
		{"printed film", "printed-and-cut film", 2, 2, 4, practice, []string{"printed and cut film", "print and cut film"}},
		{"screen transfer", "screen-printed transfer", 0.75, 0.5, 5, practice, []string{"screen-printed transfer", "screen print transfer"}},
		{"direct-to-film", "direct-to-film transfer", 0.75, 0.5, 4, practice, []string{"dtf", "direct-to-film transfer"}},
		{"flock film", "flock or glitter film", 3, 2.5, 19, practice, []string{"flock", "glitter film"}},
		{"sewn twill", "sewn twill, zigzag edge", 8, 6, 25, practice, []string{"tackle twill", "zigzag twill", "twill"}},
		{"satin twill", "sewn twill, satin edge", 10, 8, 38, practice, []string{"satin edge twill"}},
		{"embroidery", "embroidery", 1, 1, 6, practice, nil},
		{"sublimation", "dye sublimation", 0.35, 0.5, 2, practice, []string{"dye sublimation", "sublimated"}},
	}
}

// LookupMethod returns the method a job calls by its id or by another of its
// words.
func LookupMethod(word string) (Method, bool) {
	for _, m := range Methods() {
		if squeeze(word) == squeeze(m.ID) {
			return m, true
		}
		for _, also := range m.Also {
			if squeeze(word) == squeeze(also) {
				return m, true
			}
		}
	}
	return Method{}, false
}

func methodWords() []string {
	var words []string
	for _, m := range Methods() {
		words = append(words, m.ID)
	}
	return words
}
