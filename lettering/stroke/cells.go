package stroke

import (
	"math"

	"yokeline/lettering/geom"
)

// across is how many cells the longer side of a shape is divided into.
const across = 40

// cells lists, for each cell of a square grid over a shape, the walls that run
// through it.
type cells struct {
	origin        geom.Point
	size          float64
	columns, rows int
	first         []int32 // cell -> its first entry in walls; one more than cells
	walls         []int32
}

func newCells(walls []wall, box geom.Rect) cells {
	c := cells{origin: box.Min, size: math.Max(box.Width(), box.Height()) / across}
	c.columns = int(box.Width()/c.size) + 1
	c.rows = int(box.Height()/c.size) + 1
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

// column and row return the cell of a coordinate, that of the border for one
// outside.
func (c *cells) column(x float64) int {
	return int(math.Min(math.Max(0, (x-c.origin.X)/c.size), float64(c.columns-1)))
}

func (c *cells) row(y float64) int {
	return int(math.Min(math.Max(0, (y-c.origin.Y)/c.size), float64(c.rows-1)))
}

// crossed calls do for every cell that the wall may run through: row by row,
// those between where it enters and leaves the row, and one more on either
// side where that lies on a cell's border.
func (c *cells) crossed(w *wall, do func(cell int)) {
	low, high := w.a, w.b
	if low.Y > high.Y {
		low, high = high, low
	}
	hair := c.size * 1e-6
	for row := c.row(low.Y - hair); row <= c.row(high.Y+hair); row++ {
		x0, x1 := low.X, high.X
		if high.Y > low.Y {
			bottom := c.origin.Y + float64(row)*c.size
			x0 = low.Lerp(high, share(bottom-hair, low.Y, high.Y)).X
			x1 = low.Lerp(high, share(bottom+c.size+hair, low.Y, high.Y)).X
		}
		for col := c.column(math.Min(x0, x1) - hair); col <= c.column(math.Max(x0, x1)+hair); col++ {
			do(row*c.columns + col)
		}
	}
}

// share is where v lies between low and high, from 0 to 1.
func share(v, low, high float64) float64 {
	return math.Min(1, math.Max(0, (v-low)/(high-low)))
}

// visit calls do for every wall that runs through the box, some more than once.
func (c *cells) visit(box geom.Rect, do func(wall int)) {
	left, right := c.column(box.Min.X), c.column(box.Max.X)
	for row := c.row(box.Min.Y); row <= c.row(box.Max.Y); row++ {
		low, high := c.first[row*c.columns+left], c.first[row*c.columns+right+1]
		for _, w := range c.walls[low:high] {
			do(int(w))
		}
	}
}
