package rulebook

import (
	"embed"
	"fmt"
	"path"
	"slices"
	"strings"
)

//go:embed books/*.yaml
var shelf embed.FS

// IDs returns the ids of the rule books that come with the program, sorted.
func IDs() []string {
	entries, err := shelf.ReadDir("books")
	if err != nil {
		return nil // cannot be: the folder is embedded
	}
	out := make([]string, len(entries))
	for i, e := range entries {
		out[i] = strings.TrimSuffix(e.Name(), ".yaml")
	}
	return out
}

// Load returns the rule book with an id or another id it answers to. The error
// of an id that is not known lists those that are near.
func Load(id string) (*Book, error) {
	if !isID(id) {
		return nil, unknownID(id)
	}
	data, err := shelf.ReadFile(path.Join("books", id+".yaml"))
	if err == nil {
		return parsed(id, data)
	}
	// Few books have other ids, so they are looked for only when needed, and
	// only in files that name the word at all.
	for _, other := range IDs() {
		data, err := shelf.ReadFile(path.Join("books", other+".yaml"))
		if err != nil || !strings.Contains(string(data), "\nalso:") || !strings.Contains(string(data), id) {
			continue
		}
		if book, err := parsed(other, data); err == nil && slices.Contains(book.Also, id) {
			return book, nil
		}
	}
	return nil, unknownID(id)
}

func parsed(id string, data []byte) (*Book, error) {
	book, faults := Read(id+".yaml", data)
	if len(faults) > 0 {
		return nil, faults
	}
	return book, nil
}

func unknownID(id string) error {
	if near := near(id); len(near) > 0 {
		return fmt.Errorf("there is no rule book %q: did you mean %s", id, strings.Join(near, ", "))
	}
	return fmt.Errorf("there is no rule book %q: yokeline rules lists the %d that there are", id, len(IDs()))
}

// near returns up to five ids that are a slip of the pen away or share a part
// with id, nearest first.
func near(id string) []string {
	var out []string
	for _, known := range IDs() {
		if distance(id, known) <= 2 || shareWord(id, known) {
			out = append(out, known)
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return distance(id, a) - distance(id, b) })
	return out[:min(len(out), 5)]
}

func shareWord(a, b string) bool {
	parts := strings.Split(strings.ToLower(a), "-")
	return slices.ContainsFunc(strings.Split(b, "-"), func(s string) bool { return len(s) > 2 && slices.Contains(parts, s) })
}

// CategoriesOf returns the groups that the book with an id has figures of its
// own for; false where there is no such book.
func CategoriesOf(id string) ([]string, bool) {
	book, err := Load(id)
	if err != nil {
		return nil, false
	}
	return book.Categories(), true
}

// ForSport returns the ids of the books for a sport as an order names it
// (softball, hockey, soccer), sorted.
func ForSport(sport string) []string {
	var out []string
	for _, id := range IDs() {
		book, err := Load(id)
		if err == nil && playedAs(book.Sport, strings.ToLower(sport)) {
			out = append(out, id)
		}
	}
	return out
}

// playedAs compares a book's sport with an order's word for it.
func playedAs(book, sport string) bool {
	if sport == "" || strings.HasPrefix(book, "field") != strings.HasPrefix(sport, "field") && strings.Contains(book, "hockey") {
		return false
	}
	switch sport {
	case "soccer":
		return strings.Contains(book, "soccer") || book == "association football"
	case "football":
		return strings.HasSuffix(book, "football") && book != "association football"
	}
	return strings.Contains(book, sport)
}
