package findings_test

import (
	"context"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// crowd is the demo's job with a roster of n invented players.
func crowd(t testing.TB, n int) (*order.Order, *rulebook.Rules) {
	t.Helper()
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) },
		order.WithFaces("oswald", "quantico", "yellowtail"), order.WithRules("nfhs-softball"))
	require.NoError(t, err)
	random := rand.New(rand.NewPCG(7, 11))
	syllables := strings.Fields("an bel cor den el far gil hol in jor kel lin mar nor os pel quin ros sal tor ul ven wil yar zel")
	all := garment.AllSizes()
	o.Notes, o.Players = nil, make([]order.Player, n)
	for i := range o.Players {
		var text strings.Builder
		for range 1 + random.IntN(5) {
			text.WriteString(syllables[random.IntN(len(syllables))])
		}
		o.Players[i] = order.Player{
			Name: text.String(), FullName: fmt.Sprintf("P%d %s", i, &text), Number: fmt.Sprint(random.IntN(100)),
			Size: all[random.IntN(len(all))], SizeKnown: true,
		}
	}
	book, err := rulebook.Load("nfhs-softball")
	require.NoError(t, err)
	rules, err := book.In("2027")
	require.NoError(t, err)
	return o, rules
}

// BenchmarkCheckBesideSizing prints what a check of 10,000 players costs beside
// sizing them: as seconds, and as a ratio.
func BenchmarkCheckBesideSizing(b *testing.B) {
	o, rules := crowd(b, 10_000)
	var sizing, checking time.Duration
	for b.Loop() {
		begin := time.Now()
		s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Rules: rules, Workers: 2, NoWaysOut: true, NumberWays: true})
		if err != nil {
			b.Fatal(err)
		}
		sizing += time.Since(begin)
		begin = time.Now()
		findings.Check(rules, findings.Of(s))
		checking += time.Since(begin)
	}
	b.ReportMetric(sizing.Seconds()/float64(b.N), "sizing-s")
	b.ReportMetric(checking.Seconds()/float64(b.N), "checking-s")
	b.ReportMetric(checking.Seconds()/sizing.Seconds(), "ratio")
}
