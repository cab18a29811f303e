package outline

import "fmt"

// Join is how an outline goes round a corner.
type Join uint8

// The joins. Round keeps the distance all the way round; Mitre runs the edges
// on until they meet, up to MitreLimit; Bevel cuts straight across.
const (
	Round Join = iota
	Mitre
	Bevel
)

var joinNames = [...]string{Round: "round", Mitre: "mitre", Bevel: "bevel"}

// String returns the word for the join in files and on the command line.
func (j Join) String() string {
	if int(j) < len(joinNames) {
		return joinNames[j]
	}
	return fmt.Sprintf("join %d", uint8(j))
}

// ParseJoin reads what String writes.
func ParseJoin(text string) (Join, error) {
	for j, name := range joinNames {
		if text == name {
			return Join(j), nil
		}
	}
	return 0, fmt.Errorf("join %q is unknown: use %s, %s or %s", text, Round, Mitre, Bevel)
}
