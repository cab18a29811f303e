package page

import (
	"math"
	"strconv"
)

// AppendNumber appends v with at most the given number of decimals (0 to 9),
// halves away from zero, without trailing zeros: how every output writes
// coordinates. v must be under 10⁹ either way.
func AppendNumber(b []byte, v float64, decimals int) []byte {
	scale := int64(1)
	for range decimals {
		scale *= 10
	}
	n := int64(math.Round(v * float64(scale)))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/scale, 10)
	rest := n % scale
	if rest == 0 {
		return b
	}
	b = append(b, '.')
	for rest > 0 {
		scale /= 10
		b = append(b, byte('0'+rest/scale))
		rest %= scale
	}
	return b
}
