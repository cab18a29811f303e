package rulebook

import (
	"slices"
	"strings"
)

// Topic is one thing that a shop asks a book about, with how many figures there
// are and how they were come by. A topic without a figure is not known, which
// never means that anything is allowed.
type Topic struct {
	Name         string
	Read, Memory int
}

// topics are the words of a book's figures sorted by what a shop asks: a figure
// belongs to the first topic that has one of its words. The last takes the
// rest of a place's figures.
var topics = [...]struct {
	name   string
	abouts []string // "" stands for every place
	words  []string // what the figure's name begins with; none for all
}{
	{"which numbers", []string{"numbers"}, nil},
	{"places", []string{""}, []string{"required", "same as shirt"}},
	{"height", []string{""}, []string{"height"}},
	{"stroke and width", []string{""}, []string{"stroke", "digit width", "width", "gap"}},
	{"border", []string{""}, []string{"border", "each border", "shadow", "colours"}},
	{"placement", []string{""}, []string{"centred", "below collar", "upper"}},
	{"names", []string{"names"}, nil},
	{"contrast", []string{"contrast"}, nil},
}

// Topics returns what is known of the book by topic, always the same topics in
// the same order. Remarks are not counted; a figure that holds for some seasons
// or some players counts like any other.
func (b *Book) Topics() []Topic {
	out := make([]Topic, len(topics))
	for i, t := range topics {
		out[i].Name = t.name
	}
	for i := range b.Figures {
		k := topicOf(&b.Figures[i])
		switch {
		case k < 0:
		case b.Figures[i].How == HowRead:
			out[k].Read++
		default:
			out[k].Memory++
		}
	}
	return out
}

// topicOf returns the topic of a figure, -1 for a remark.
func topicOf(f *Figure) int {
	if f.Name == "note" {
		return -1
	}
	about := f.About
	if slices.Contains(places, about) {
		about = ""
	}
	for k, t := range topics {
		begins := func(word string) bool { return strings.HasPrefix(f.Name, word) }
		if slices.Contains(t.abouts, about) && (t.words == nil || slices.ContainsFunc(t.words, begins)) {
			return k
		}
	}
	return -1
}
