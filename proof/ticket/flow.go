package ticket

// strip is a stretch of a page, over its whole width, that is never split.
type strip struct {
	high float64
	keep bool   // stays on one page with the strip that follows
	head *strip // repeated above the strip where it is the first of a page
	turn bool   // begins a page
	draw func(f *frame, y float64) error
}

const (
	footClear = 1.5  // stays free over the rule of the foot, mm
	rounding  = 1e-6 // mm
)

// flow deals strips out to pages that have room mm. Strips that are kept
// together go to the next page together, unless they are too high for one.
func flow(strips []strip, room float64) [][]strip {
	var pages [][]strip
	var page []strip
	left := room
	turn := func() {
		if len(page) > 0 {
			pages = append(pages, page)
		}
		page, left = nil, room
	}
	put := func(s strip) {
		if len(page) == 0 && s.head != nil {
			page, left = append(page, *s.head), left-s.head.high
		}
		page, left = append(page, s), left-s.high
	}
	for i := 0; i < len(strips); {
		n, high := together(strips[i:])
		if strips[i].turn || high > left+rounding {
			turn()
		}
		for _, s := range strips[i : i+n] {
			if s.high > left+rounding {
				turn()
			}
			put(s)
		}
		i += n
	}
	turn()
	return pages
}

// together returns how many strips at the start are kept on one page, and their
// height.
func together(strips []strip) (n int, high float64) {
	for n < len(strips) {
		high += strips[n].high
		if n++; !strips[n-1].keep {
			break
		}
	}
	return n, high
}

// drawStrips draws strips from y down.
func (f *frame) drawStrips(strips []strip, y float64) error {
	for _, s := range strips {
		if s.draw != nil {
			if err := s.draw(f, y); err != nil {
				return err
			}
		}
		y += s.high
	}
	return nil
}

// space is an empty strip.
func space(high float64) strip { return strip{high: high} }
