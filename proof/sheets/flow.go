package sheets

// strip is a stretch of a page, over its whole width, that is never split.
type strip struct {
	high float64
	keep bool   // stays on one page with the strip that follows
	head *strip // repeated above the strip where it is the first of a page
	draw func(f *frame, y float64)
}

// footClear stays free over the rule of the foot, mm.
const footClear = 1.5

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
	for i := 0; i < len(strips); {
		block, high := together(strips[i:])
		if high > left+rounding && len(page) > 0 {
			turn()
		}
		if high+headHigh(strips[i]) > room+rounding {
			block = strips[i : i+1] // a page of its own would not hold the block
		}
		for _, s := range block {
			if len(page) > 0 && s.high > left+rounding {
				turn()
			}
			if len(page) == 0 && s.head != nil {
				page, left = append(page, *s.head), left-s.head.high
			}
			page, left = append(page, s), left-s.high
		}
		i += len(block)
	}
	turn()
	return pages
}

// together returns the strips at the start that are kept on one page, and
// their height.
func together(strips []strip) (block []strip, high float64) {
	for i, s := range strips {
		high += s.high
		if !s.keep || i == len(strips)-1 {
			return strips[:i+1], high
		}
	}
	return nil, 0
}

func headHigh(s strip) float64 {
	if s.head == nil {
		return 0
	}
	return s.head.high
}

// drawStrips draws strips from y down and returns where the last one ends.
func (f *frame) drawStrips(strips []strip, y float64) float64 {
	for _, s := range strips {
		if s.draw != nil {
			s.draw(f, y)
		}
		y += s.high
	}
	return y
}
