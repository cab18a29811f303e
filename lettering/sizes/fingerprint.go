package sizes

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
)

// Fingerprint returns 64 hex digits that stand for exactly this order as it
// will be made: SHA-256 over its facts as FactText writes them. The ways out
// belong to it, so an order sized without them has another fingerprint than the
// proof that draws them.
func (s *Sized) Fingerprint() string {
	sum := sha256.Sum256([]byte(FactText(s.Facts())))
	return hex.EncodeToString(sum[:])
}

// FactText writes facts as the plain text that a fingerprint is taken of: one
// line a fact, each field with its length in bytes before it, so that no tab or
// line break inside a text can read as a new field. Nothing in it depends on the
// Unicode tables of a Go version, as quoting would.
func FactText(facts []Fact) string {
	var t strings.Builder
	t.WriteString("yokeline order 2\n")
	for _, f := range facts {
		fmt.Fprintf(&t, "%d %d", f.Player, f.Kind)
		for _, field := range [...]string{f.About, f.What, f.Value} {
			fmt.Fprintf(&t, " %d:%s", len(field), field)
		}
		t.WriteByte('\n')
	}
	return t.String()
}
