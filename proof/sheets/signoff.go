package sheets

import (
	"fmt"
	"math"
	"sort"

	"yokeline/proof/parts"
)

const signOffTitle = "Sign-off"

// The sign-off page, mm.
const (
	headsDown    = 2.6 // content top to the column heads
	headsHigh    = 4.3 // content top to the first row
	rowLeast     = 5.2
	rowMost      = 7.4
	rowStep      = 0.1
	keptWithSign = 5 // rows that the signature never stands without
)

// signOff is what all pages of the sign-off share.
type signOff struct {
	*document
	grid      parts.Grid
	questions []question
	row       float64 // height of a row with one line
	tail      signTail
	detail    bool // say in figures what each way out comes to: no page draws them
}

// planSignOff plans the pages that the coach ticks and signs: none without
// players. The rows are as high as they can be without another page; the look is
// left out before a page is added.
func (d *document) planSignOff() ([]leaf, error) {
	if len(d.in.Sized.Players) == 0 {
		return nil, nil
	}
	s := &signOff{document: d, grid: parts.NewGrid(d.in.Paper.sheet().Portrait()), questions: d.questions()}
	s.detail = d.pageOf(decideSection) == 0
	pages := s.layOut()
	var out []leaf
	for i, strips := range pages {
		l := leaf{section: signOffSection, sheet: d.in.Paper.sheet().Portrait(), title: pageTitle(signOffTitle, i, len(pages))}
		l.sentence = s.sentence(i, len(pages))
		l.draw = func(f *frame) error { return f.drawSignOff(s, strips, i == len(pages)-1) }
		out = append(out, l)
	}
	return out, nil
}

// layOut chooses the height of the rows and what stands at the end, and deals
// the rows out to pages.
func (s *signOff) layOut() [][]strip {
	room := s.grid.Bottom - s.grid.Top - footClear
	s.row, s.tail = rowLeast, s.newTail(false)
	fewest := len(flow(s.strips(), room))
	for _, look := range [2]bool{true, false} {
		s.tail = s.newTail(look)
		if look && !s.tail.look.fits {
			continue
		}
		steps := int(math.Round((rowMost - rowLeast) / rowStep))
		lower := sort.Search(steps+1, func(down int) bool {
			s.row = rowMost - float64(down)*rowStep
			return len(flow(s.strips(), room)) <= fewest
		})
		if lower <= steps {
			s.row = rowMost - float64(lower)*rowStep
			break
		}
	}
	return flow(s.strips(), room)
}

// strips lists everything on the pages from the top down.
func (s *signOff) strips() []strip {
	heads := &strip{high: headsHigh, draw: func(f *frame, y float64) { f.signHeads(y) }}
	var out []strip
	for i := range s.in.Sized.Players {
		out = append(out, s.playerStrip(i, heads))
	}
	out = append(out, s.choiceStrips()...)
	out = append(out, s.own()...)
	for i := max(0, len(out)-keptWithSign); i < len(out); i++ {
		out[i].keep = true
	}
	return append(out, s.tail.strip)
}

// sentence says what to do on a page.
func (s *signOff) sentence(i, pages int) string {
	tick := "Tick what is right. Strike through what is wrong and write the right thing beside it. "
	choose := "Then "
	if len(s.questions) > 0 {
		choose = "Then choose, "
	}
	switch {
	case pages == 1:
		return tick + choose + "sign and send the page back."
	case i == 0:
		return tick + choose + "sign on the last page and send all of them back."
	case i < pages-1:
		return fmt.Sprintf("Tick on as on the page before. You sign on the last page, %d of %d.", pages, pages)
	}
	all := "both"
	if pages > 2 {
		all = fmt.Sprintf("all %d", pages)
	}
	return choose + "sign and send " + all + " pages of the sign-off back."
}

func (f *frame) drawSignOff(s *signOff, strips []strip, last bool) error {
	f.drawStrips(strips, f.Top)
	if last {
		if err := f.drawTail(s); err != nil {
			return err
		}
	}
	f.foot("Signed for this fingerprint only. Compare it with the one on every page and on the screen: the teeth and the code must be the same.", 0)
	return nil
}
