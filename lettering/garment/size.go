package garment

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Group is whom a size is cut for. A letter alone is no size: youth M, women's
// M and adult M differ by a hand's breadth.
type Group string

// The three groups. Adult covers men's and unisex garments.
const (
	Youth Group = "youth"
	Women Group = "women"
	Adult Group = "adult"
)

// Size is a letter size of one group.
type Size struct {
	Group  Group
	Letter string // XS S M L XL 2XL 3XL 4XL
}

// Groups returns the groups in the order in which sizes are sorted.
func Groups() []Group { return []Group{Youth, Women, Adult} }

// letters returns every size letter from small to large.
func letters() []string { return []string{"XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL"} }

// Sizes returns the letters that a group is made in, from small to large; none
// for an unknown group. Which letters exist is common practice, no source.
func Sizes(g Group) []string {
	switch g {
	case Youth:
		return letters()[:5]
	case Women:
		return letters()[:7]
	case Adult:
		return letters()
	}
	return nil
}

// AllSizes returns every size in the order of Compare.
func AllSizes() []Size {
	var out []Size
	for _, g := range Groups() {
		for _, l := range Sizes(g) {
			out = append(out, Size{g, l})
		}
	}
	return out
}

// Compare orders sizes by group (youth, women, adult) and from small to large
// within one; it is negative when s comes first. Sizes that do not exist come last.
func (s Size) Compare(t Size) int {
	if d := cmp.Compare(s.groupRank(), t.groupRank()); d != 0 {
		return d
	}
	return cmp.Compare(s.letterRank(), t.letterRank())
}

func (s Size) groupRank() int {
	if i := slices.Index(Groups(), s.Group); i >= 0 {
		return i
	}
	return len(Groups())
}

func (s Size) letterRank() int {
	if i := slices.Index(letters(), s.Letter); i >= 0 {
		return i
	}
	return len(letters())
}

// String returns the size in words: youth M, women 2XL, adult L.
func (s Size) String() string { return string(s.Group) + " " + s.Letter }

// Label returns the short form for a drawing or a pick list: YM, W2XL, and the
// bare letter for adults.
func (s Size) Label() string {
	switch s.Group {
	case Youth:
		return "Y" + s.Letter
	case Women:
		return "W" + s.Letter
	}
	return s.Letter
}

// check reports a size that does not exist.
func (s Size) check() error {
	switch made := Sizes(s.Group); {
	case made == nil:
		return fmt.Errorf("size group %q is unknown: use youth, women or adult", s.Group)
	case !slices.Contains(made, s.Letter):
		return fmt.Errorf("there is no %s %s: %s sizes are %s", s.Group, s.Letter, s.Group, strings.Join(made, " "))
	}
	return nil
}
