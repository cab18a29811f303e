package sizes_test

import (
	"context"
	"fmt"
	"runtime"
	"strconv"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// league is a roster of n invented players: surnames built from two parts, so
// that 10,000 of them are 10,000 different texts.
func league(n int) []order.Player {
	front := []string{"Alder", "Brook", "Corn", "Dun", "Ember", "Fal", "Gar", "Hol", "Iv", "Jar", "Kel", "Lind", "Mar", "Nor", "Oak", "Pem", "Quil", "Ros", "Stan", "Thorn"}
	back := []string{"bury", "croft", "dale", "field", "gate", "ham", "ingham", "ley", "mont", "ness", "qvist", "shaw", "ston", "thwaite", "ton", "vale", "wick", "wood", "worth", "y"}
	all := garment.AllSizes()
	out := make([]order.Player, n)
	for i := range out {
		name := front[i%20] + back[i/20%20]
		if i >= 400 {
			name += "-" + front[i/400%20] + string(rune('a'+i/8000%26))
		}
		size := all[i*7%len(all)]
		out[i] = player(name, strconv.Itoa(i%100), size.Group, size.Letter)
	}
	return out
}

// BenchmarkSizing sizes whole orders: a radial name with an outline and a
// number each, ways out included.
func BenchmarkSizing(b *testing.B) {
	for _, n := range []int{15, 1000, 10000} {
		b.Run(fmt.Sprintf("players=%d", n), func(b *testing.B) {
			o := herons(league(n)...)
			for b.Loop() {
				_, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: runtime.GOMAXPROCS(0)})
				require.NoError(b, err)
			}
			b.ReportMetric(float64(n)*float64(b.N)/b.Elapsed().Seconds(), "players/s")
			var usage syscall.Rusage
			if syscall.Getrusage(syscall.RUSAGE_SELF, &usage) == nil {
				b.ReportMetric(float64(usage.Maxrss)/1024, "MB-peak")
			}
		})
	}
}
