package makeable

import (
	"math"

	"yokeline/lettering/geom"
)

// cells lists the walls by the cells of a square grid that they run through,
// row by row, so that the cells of a row that a box touches are one stretch.
type cells struct {
	origin        geom.Point
	size          float64
	columns, rows int
	first         []int32 // cell -> its first wall in walls; one more than cells
	walls         []int32
}

func newCells(walls []wall, box geom.Rect) *cells {
	// About as many cells as walls, but not over 400 along a side.
	size := math.Sqrt(box.Width() * box.Height() / float64(len(walls)+1))
	size = max(size, max(box.Width(), box.Height())/400)
	c := &cells{origin: box.Min, size: size, columns: int(box.Width()/size) + 1, rows: int(box.Height()/size) + 1}
	// Counting sort: count, sum up, fill from the back.
	c.first = make([]int32, c.columns*c.rows+1)
	for i := range walls {
		c.crossed(&walls[i], func(cell int) { c.first[cell]++ })
	}
	for k := 1; k < len(c.first); k++ {
		c.first[k] += c.first[k-1]
	}
	c.walls = make([]int32, c.first[len(c.first)-1])
	for i := range walls {
		c.crossed(&walls[i], func(cell int) {
			c.first[cell]--
			c.walls[c.first[cell]] = int32(i)
		})
	}
	return c
}

// crossed calls do for every cell in the wall's box that the wall may touch.
func (c *cells) crossed(w *wall, do func(cell int)) {
	left, right := c.column(w.box.Min.X), c.column(w.box.Max.X)
	for row := c.row(w.box.Min.Y); row <= c.row(w.box.Max.Y); row++ {
		for column := left; column <= right; column++ {
			middle := c.origin.Add(geom.Point{X: float64(column) + 0.5, Y: float64(row) + 0.5}.Mul(c.size))
			if math.Abs(w.inward.Dot(middle.Sub(w.a))) <= c.size*0.7072 { // half a diagonal
				do(row*c.columns + column)
			}
		}
	}
}

// span returns the rows and columns that a box touches.
func (c *cells) span(box *geom.Rect) (bottom, top, left, right int) {
	return c.row(box.Min.Y), c.row(box.Max.Y), c.column(box.Min.X), c.column(box.Max.X)
}

// stretch returns the walls in some cells of a row, some more than once.
func (c *cells) stretch(row, left, right int) []int32 {
	return c.walls[c.first[row*c.columns+left]:c.first[row*c.columns+right+1]]
}

func (c *cells) column(x float64) int { return within((x-c.origin.X)/c.size, c.columns) }
func (c *cells) row(y float64) int    { return within((y-c.origin.Y)/c.size, c.rows) }

func within(v float64, n int) int { return int(max(0, min(v, float64(n-1)))) }
