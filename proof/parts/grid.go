package parts

import "yokeline/proof/page"

// Margins and columns of every sheet, mm.
const (
	SideMargin = 14.0
	HeadTop    = 11.0
	FootMargin = 10.0
	Gutter     = 4.0
	columns    = 12

	contentTop = 42.0
	footRule   = 21.4 // above the lower edge
)

// Grid is the frame of a page: twelve columns between two margins.
type Grid struct {
	Left, Right float64
	Top, Bottom float64 // of the content
	Column      float64 // width of one column
	Height      float64 // of the sheet
	Wide        bool
}

// NewGrid returns the frame of a sheet.
func NewGrid(s page.Sheet) Grid {
	live := s.W - 2*SideMargin
	return Grid{
		Left: SideMargin, Right: s.W - SideMargin, Top: contentTop, Bottom: s.H - footRule,
		Column: (live - (columns-1)*Gutter) / columns, Height: s.H, Wide: s.Wide(),
	}
}

// Live returns the width between the margins.
func (g Grid) Live() float64 { return g.Right - g.Left }

// X returns the left edge of a column, counted from 1.
func (g Grid) X(column int) float64 { return g.Left + float64(column-1)*(g.Column+Gutter) }

// Span returns the width of n columns and the gutters between them.
func (g Grid) Span(n int) float64 { return float64(n)*g.Column + float64(n-1)*Gutter }
