package order

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"

	"go.yaml.in/yaml/v4"

	"yokeline/lettering/source"
)

// reader collects what is wrong with a job file while it is read.
type reader struct {
	file   *source.File
	faults source.Faults
	notes  []Note
	known  known
}

func (r *reader) fault(line, column, width int, hint, format string, args ...any) {
	r.faults = append(r.faults, r.file.Fault(line, column, width, fmt.Sprintf(format, args...), hint))
}

// whole adds a fault of the file as a whole, which has no line to show.
func (r *reader) whole(hint, format string, args ...any) {
	r.faults = append(r.faults, source.Fault{
		Place:   source.Place{File: r.file.Name(), Line: 1, Column: 1},
		Message: fmt.Sprintf(format, args...), Hint: hint,
	})
}

// bom is the byte order mark that some editors put first.
const bom = "\ufeff"

// load turns data into one YAML mapping whose shape is sound: no deeper, wider
// or trickier than a job needs. Nil means that nothing more can be read.
func (r *reader) load(name string, data []byte) *yaml.Node {
	r.file = source.NewFile(name, "")
	if len(data) > jobBytes {
		r.whole("a job is a page of text; players go into a roster file", "the job is %d bytes: at most %d (1 MiB) are read", len(data), jobBytes)
		return nil
	}
	if b, line, column, bad := source.BadByte(data); bad {
		r.file = source.NewFile(name, strings.ToValidUTF8(string(data), "\ufffd"))
		r.fault(line, column, 1, "save the file as UTF-8", "byte 0x%02X is not UTF-8 text", b)
		return nil
	}
	text := strings.TrimPrefix(string(data), bom)
	r.file = source.NewFile(name, text)
	if !r.plainCharacters(text) {
		return nil
	}
	doc, ok := r.parse(text)
	if !ok {
		return nil
	}
	root := doc.Content[0]
	if root.Kind != yaml.MappingNode {
		r.fault(root.Line, root.Column, 1, "start with yokeline: 1", "a job is a list of keys and values, such as team: Herons")
		return nil
	}
	if !r.sound(root, 1) {
		return nil
	}
	return root
}

// plainCharacters refuses control characters, which YAML does not allow, at
// their place.
func (r *reader) plainCharacters(text string) bool {
	at := strings.IndexFunc(text, func(c rune) bool {
		return c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f || c >= 0x80 && c < 0xa0 && c != 0x85 || c == 0xfffe || c == 0xffff
	})
	if at < 0 {
		return true
	}
	line, column := position(text, at)
	c := []rune(text[at:])[0]
	r.fault(line, column, 1, "delete it", "control character U+%04X", c)
	return false
}

// position gives the line and the column in characters of a byte offset.
func position(text string, at int) (line, column int) {
	head := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text[:at])
	return strings.Count(head, "\n") + 1, len([]rune(head[strings.LastIndex(head, "\n")+1:])) + 1
}

// parse reads exactly one document. Into a yaml.Node the library's work is
// linear in the number of keys; into a struct it is quadratic.
func (r *reader) parse(text string) (*yaml.Node, bool) {
	dec := yaml.NewDecoder(bytes.NewReader([]byte(text)))
	var doc, next yaml.Node
	err := dec.Decode(&doc)
	if errors.Is(err, io.EOF) || err == nil && len(doc.Content) == 0 {
		r.whole("yokeline start DIR writes a job to begin with", "the job is empty")
		return nil, false
	}
	if err != nil {
		r.broken(err)
		return nil, false
	}
	switch err := dec.Decode(&next); {
	case errors.Is(err, io.EOF):
		return &doc, true
	case err != nil:
		r.broken(err)
	default:
		line := r.secondDocument(next.Line)
		r.fault(line, 1, 3, "keep each order in a file of its own", "a second document starts here: a job file holds one order")
	}
	return nil, false
}

// secondDocument finds the --- that opens the document whose content starts
// at or after line.
func (r *reader) secondDocument(line int) int {
	for n := min(max(line, 1), r.file.Lines()); n > 1; n-- {
		if strings.HasPrefix(r.file.Line(n), "---") {
			return n
		}
	}
	return max(line, 1)
}

// broken turns the library's syntax error into a fault at its place.
func (r *reader) broken(err error) {
	var load *yaml.LoadError
	if !errors.As(err, &load) {
		r.whole("", "the file is not YAML: %v", err)
		return
	}
	line := min(max(load.Mark.Line, 1), r.file.Lines())
	column := max(load.Mark.Column, 1)
	open := load.ContextMark
	if at := r.bareColour(open.Line); at > 0 {
		r.fault(open.Line, at, 1, "put the colour in quotes, such as \"#14284b\"", "a # starts a comment: the rest of the line is not read")
		return
	}
	// An unclosed bracket or quote is noticed at the end of the file: show
	// where it was opened.
	unclosed := strings.Contains(load.Message, "expected ','") || strings.Contains(load.Message, "end of stream")
	if unclosed && open.Line > 0 && open.Line != line {
		r.fault(open.Line, max(open.Column, 1), 1, yamlHint(load.Message), "the file is not YAML: %s, noticed in line %d", load.Message, line)
		return
	}
	column = min(column, len([]rune(r.file.Line(line)))+1)
	message := load.Message
	if text := []rune(r.file.Line(line)); column <= len(text) && text[column-1] == '\t' {
		message = "a tab character stands where spaces must"
	}
	r.fault(line, column, 1, yamlHint(message), "the file is not YAML: %s", message)
}

// commented matches a colour that a # without quotes has turned into a comment.
var commented = regexp.MustCompile(`[:,\[]\s+(#[0-9A-Fa-f]{3})`)

// bareColour is the column of such a colour in a line, or 0.
func (r *reader) bareColour(line int) int {
	text := r.file.Line(line)
	at := commented.FindStringSubmatchIndex(text)
	if at == nil {
		return 0
	}
	return len([]rune(text[:at[2]])) + 1
}

// yamlHint says what the common slips of the pen behind a message are.
func yamlHint(message string) string {
	switch {
	case strings.Contains(message, "mapping values are not allowed"):
		return "put text with a colon in quotes, and give keys of one list the same indent"
	case strings.Contains(message, "tab character"), strings.Contains(message, "cannot start any token"):
		return "indent with spaces, and put text that starts with a sign in quotes"
	case strings.Contains(message, "expected ',' or"):
		return "a comma or a closing bracket is missing"
	case strings.Contains(message, "end of stream"):
		return "a closing quote is missing"
	case strings.Contains(message, "expected key"):
		return "give keys of one list the same indent"
	}
	return ""
}
