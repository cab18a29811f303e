package order_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/order"
)

const soldJob = `yokeline: 1
team: Herons
market: US
wearer: child
garment: {cut: crew-tee, colour: "#ffffff"}
pieces:
  back number: {face: graduate, height: 8in, colour: "#000000"}
players: [{name: Ng, number: 1, size: M}]
`

func TestMarketAndWearerAreRead(t *testing.T) {
	job, faults := order.ReadJob("job.yaml", []byte(soldJob))
	require.Empty(t, faults)
	assert.Equal(t, [2]string{order.MarketUS, order.WearerChild}, [2]string{job.Order.Market, job.Order.Wearer})
	job, faults = order.ReadJob("job.yaml", []byte(strings.NewReplacer("market: US\n", "", "wearer: child\n", "").Replace(soldJob)))
	require.Empty(t, faults)
	assert.Empty(t, job.Order.Market+job.Order.Wearer, "neither is guessed")
}

func TestUnknownMarketsAndWearersAreFaultsWithTheirPlace(t *testing.T) {
	_, faults := order.ReadJob("job.yaml", []byte(strings.NewReplacer("market: US", "market: EUU", "wearer: child", "wearer: grown-ups").Replace(soldJob)))
	require.Len(t, faults, 2)
	text := faults.Error()
	assert.Contains(t, text, `job.yaml:3:9`)
	assert.Contains(t, text, `market: "EUU" is not a market`)
	assert.Contains(t, text, "did you mean EU?")
	assert.Contains(t, text, `job.yaml:4:9`)
	assert.Contains(t, text, "use adult, child or toddler")
}
