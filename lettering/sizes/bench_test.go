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
// number each. All names share one look, or none; ways out are found or not.
func BenchmarkSizing(b *testing.B) {
	for _, c := range []struct {
		players int
		same    string
		ways    bool
	}{{15, "team", true}, {1000, "team", false}, {10000, "none", false}, {10000, "team", false}, {10000, "team", true}, {100000, "team", false}} {
		n := c.players
		b.Run(fmt.Sprintf("players=%d/same=%s/ways=%t", n, c.same, c.ways), func(b *testing.B) {
			o := herons(league(n)...)
			o.Fit.Same = c.same
			for b.Loop() {
				_, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: runtime.GOMAXPROCS(0), NoWaysOut: !c.ways})
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
