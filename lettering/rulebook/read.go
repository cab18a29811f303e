package rulebook

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"yokeline/lettering/source"
)

// format is the version of the file format that Read understands.
const format = "1"

// largest is the size of file that Read takes: the biggest of ours has 6 kB.
const largest = 1 << 20

// Read reads a rule book file, ours or a user's own, strictly: an unknown
// word, a figure without source or a contradiction is a fault with its line
// and column, and every fault of the file is reported, not only the first. The
// name is only used in messages. The format is described in books/README.md.
func Read(name string, data []byte) (*Book, source.Faults) {
	r := &reader{}
	root := r.parse(name, data)
	if root == nil {
		return nil, r.faults
	}
	book := r.book(root)
	r.contradictions(book)
	if len(r.faults) > 0 {
		r.faults.Sort()
		return nil, r.faults
	}
	return book, nil
}

// reader collects the faults of one file.
type reader struct {
	file   *source.File
	faults source.Faults
	nodes  []*yaml.Node // the node of each figure, same order as Book.Figures
}

func (r *reader) parse(name string, data []byte) *yaml.Node {
	if b, line, column, bad := source.BadByte(data); bad {
		r.file = source.NewFile(name, "")
		r.faults = append(r.faults, r.file.Fault(line, column, 1, fmt.Sprintf("byte 0x%02x is not UTF-8", b), "save the file as UTF-8"))
		return nil
	}
	r.file = source.NewFile(name, string(data))
	if len(data) > largest {
		r.faults = append(r.faults, r.file.Fault(1, 1, 1, "the file has more than 1 MB, which no rule book has", ""))
		return nil
	}
	var doc yaml.Node
	if err := yaml.Load(data, &doc); err != nil {
		r.syntax(err)
		return nil
	}
	if doc.Kind != yaml.DocumentNode || len(doc.Content) != 1 || doc.Content[0].Kind != yaml.MappingNode {
		r.faults = append(r.faults, r.file.Fault(1, 1, 1, "a rule book is a list of keys and values", "start with: yokeline rules: 1"))
		return nil
	}
	return doc.Content[0]
}

func (r *reader) syntax(err error) {
	line, column, message := 1, 1, err.Error()
	var bad *yaml.LoadError
	if errors.As(err, &bad) {
		mark := bad.Mark
		if mark.Line == 0 {
			mark = bad.ContextMark
		}
		line, column, message = max(mark.Line, 1), max(mark.Column, 1), bad.Message
	}
	r.faults = append(r.faults, r.file.Fault(line, column, 1, "this is not YAML: "+message, "check the quotes, brackets and indents here"))
}

func (r *reader) fault(n *yaml.Node, hint, message string, args ...any) {
	width := max(utf8.RuneCountInString(n.Value), 1)
	if n.Kind != yaml.ScalarNode || strings.Contains(n.Value, "\n") {
		width = 1
	}
	r.faults = append(r.faults, r.file.Fault(n.Line, n.Column, width, fmt.Sprintf(message, args...), hint))
}

// fields are the values of a mapping by key.
type fields struct {
	at     *yaml.Node
	values map[string]*yaml.Node
}

// fields reads a mapping whose keys must be among known.
func (r *reader) fields(n *yaml.Node, what string, known []string) fields {
	out := fields{n, map[string]*yaml.Node{}}
	if n.Kind != yaml.MappingNode {
		r.fault(n, "write it as {key: value, ...}", "%s must be a list of keys and values", what)
		return out
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		switch {
		case key.Kind != yaml.ScalarNode || !slices.Contains(known, key.Value):
			r.fault(key, suggest(key.Value, known), "%s has no key %q", what, key.Value)
		case out.values[key.Value] != nil:
			r.fault(key, "keep one of the two", "%s has the key %q twice", what, key.Value)
		default:
			out.values[key.Value] = value
		}
	}
	return out
}

// text returns the value of a key as it is written, "" if it is missing.
func (r *reader) text(f fields, key, what string, needed bool) string {
	n := f.values[key]
	switch {
	case n == nil && needed:
		r.fault(f.at, "", "%s has no %s", what, key)
		return ""
	case n == nil:
		return ""
	case n.Kind != yaml.ScalarNode || n.Tag == "!!null":
		r.fault(n, "write one value, in quotes if it has a colon or a comma", "%s of %s must be one value", key, what)
		return ""
	case n.Anchor != "" || n.Style&yaml.TaggedStyle != 0:
		r.fault(n, "write the value out", "%s of %s has an anchor or a tag", key, what)
		return ""
	}
	value := strings.TrimSpace(n.Value)
	if value == "" {
		r.fault(n, "", "%s of %s is empty", key, what)
	}
	return value
}

var (
	bookKeys   = []string{"yokeline rules", "id", "also", "body", "sport", "level", "edition", "played", "sources", "figures"}
	sourceKeys = []string{"title", "publisher", "season", "kind"}
	figureKeys = []string{"about", "figure", "is", "rule", "source", "how", "from", "until", "for", "advice", "note"}
	played     = []string{"autumn", "winter", "spring", "all year"}
	kinds      = []string{"primary", "reprint", "secondary", "unseen"}
)

func (r *reader) book(root *yaml.Node) *Book {
	f := r.fields(root, "the rule book", bookKeys)
	if v := r.text(f, "yokeline rules", "the rule book", true); v != "" && v != format {
		r.fault(f.values["yokeline rules"], "this version reads 1", "format %q is not known", v)
	}
	b := &Book{
		ID: r.text(f, "id", "the rule book", true), Also: list(r.text(f, "also", "the rule book", false)),
		Body: r.text(f, "body", "the rule book", true), Sport: r.text(f, "sport", "the rule book", true),
		Level: r.text(f, "level", "the rule book", true), Edition: r.text(f, "edition", "the rule book", true),
		Played: r.oneOf(f, "played", "the rule book", played),
	}
	if at := f.values["id"]; at != nil && !isID(b.ID) && b.ID != "" {
		r.fault(at, "write it like nfhs-softball", "an id has small letters, digits and hyphens only")
	}
	r.sources(f, b)
	r.figures(f, b)
	return b
}

func (r *reader) sources(f fields, b *Book) {
	n := f.values["sources"]
	if n == nil || n.Kind != yaml.MappingNode || len(n.Content) == 0 {
		r.fault(orRoot(n, f), "name where the figures come from, or kind: unseen", "the rule book has no sources")
		return
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if key.Kind != yaml.ScalarNode || key.Value == "" {
			r.fault(key, "call it by one word, such as page-2016", "a source has no name to be cited by")
			continue
		}
		if slices.ContainsFunc(b.Sources, func(s Source) bool { return s.Key == key.Value }) {
			r.fault(key, "keep one of the two", "source %q is there twice", key.Value)
			continue
		}
		what := fmt.Sprintf("source %q", key.Value)
		s := r.fields(value, what, sourceKeys)
		b.Sources = append(b.Sources, Source{
			Key: key.Value, Title: r.text(s, "title", what, true), Publisher: r.text(s, "publisher", what, true),
			Season: r.text(s, "season", what, false), Kind: r.oneOf(s, "kind", what, kinds),
		})
	}
}

func orRoot(n *yaml.Node, f fields) *yaml.Node {
	if n == nil {
		return f.at
	}
	return n
}

// oneOf reads a value that must be one of the words.
func (r *reader) oneOf(f fields, key, what string, words []string) string {
	v := r.text(f, key, what, true)
	if v != "" && !slices.Contains(words, v) {
		r.fault(f.values[key], suggest(v, words), "%s of %s cannot be %q", key, what, v)
	}
	return v
}

func isID(s string) bool {
	return s != "" && !strings.ContainsFunc(s, func(c rune) bool {
		return (c < 'a' || c > 'z') && (c < '0' || c > '9') && c != '-'
	})
}

func list(s string) []string {
	var out []string
	for _, part := range strings.Split(s, ",") {
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, part)
		}
	}
	return out
}
