package nest_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/nest"
)

// itemsFrom reads up to six small pieces from bytes: a byte for the turns and the
// group, one for the number of corners, then the corners. Rings may cross
// themselves or be flat: those must be refused or arranged, never lost.
func itemsFrom(data []byte) []nest.Item {
	var out []nest.Item
	for len(data) > 2 && len(out) < 6 {
		item := nest.Item{ID: 5 - len(out), Turns: nest.Turns(data[0] % 3), Group: []string{"", "a"}[data[0]/128]}
		n := min(3+int(data[1]%6), (len(data)-2)/2)
		var ring geom.Ring
		for i := range n {
			ring = append(ring, geom.Point{X: float64(data[2+2*i]) / 4, Y: float64(int8(data[3+2*i])) / 4})
		}
		data = data[2+2*n:]
		if (geom.Region{ring}).Area() < 0 {
			for i, j := 0, len(ring)-1; i < j; i, j = i+1, j-1 {
				ring[i], ring[j] = ring[j], ring[i]
			}
		}
		item.Shape = geom.Region{ring}
		out = append(out, item)
	}
	return out
}

func FuzzArrange(f *testing.F) {
	f.Add([]byte{0, 1, 0, 0, 40, 0, 40, 20, 0, 20, 1, 1, 0, 0, 9, 0, 9, 90, 0, 90}, byte(3), byte(2), byte(5))
	f.Add([]byte{2, 0, 0, 0, 200, 0, 0, 100, 130, 0, 0, 0, 200, 0, 0, 100, 2, 5, 0, 0, 50, 9, 99, 0, 80, 50, 50, 20, 30, 60}, byte(7), byte(0), byte(0))
	f.Add([]byte{2, 0, 0, 0, 255, 127, 128, 128}, byte(11), byte(1), byte(9))
	f.Add([]byte{0, 0, 5, 5, 5, 5, 5, 5}, byte(0), byte(0), byte(0))
	f.Fuzz(func(t *testing.T, data []byte, how, margin, gap byte) {
		items := itemsFrom(data)
		stock := nest.Stock{Width: 66 + 2*float64(margin)/8, Margin: float64(margin) / 8, Gap: float64(gap) / 16}
		switch how / 4 % 3 {
		case 1:
			stock.Height = stock.Width
		case 2:
			stock.MaxLength = stock.Width + 30
		}
		options := everyOption[how%4]
		options.Effort = 2
		out, err := nest.Arrange(items, stock, options)
		if err != nil {
			require.Regexp(t, "has no shape to cut", err.Error())
			return
		}
		if len(items) > 0 {
			requireSound(t, items, stock, out)
		}
	})
}
