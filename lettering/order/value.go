package order

import (
	"strings"

	"go.yaml.in/yaml/v4"

	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
)

// value is one value of a job with the key it stands under.
type value struct {
	r    *reader
	key  *yaml.Node // nil for an item of a list
	node *yaml.Node
	name string // how messages call it: "back name: rise"
}

// fault adds a fault that covers the value.
func (v value) fault(hint, format string, args ...any) {
	if v.empty() && v.key != nil {
		v.keyFault(hint, format, args...)
		return
	}
	v.r.fault(v.node.Line, v.node.Column, v.r.nodeWidth(v.node), hint, format, args...)
}

// keyFault adds a fault that covers the key: something below it is missing.
func (v value) keyFault(hint, format string, args ...any) {
	if v.key == nil {
		v.r.fault(v.node.Line, v.node.Column, 1, hint, format, args...)
		return
	}
	v.r.fault(v.key.Line, v.key.Column, v.r.nodeWidth(v.key), hint, format, args...)
}

// place is where the value stands.
func (v value) place() source.Place {
	return source.Place{File: v.r.file.Name(), Line: v.node.Line, Column: v.node.Column}
}

// keyPlace is where the key stands.
func (v value) keyPlace() source.Place {
	return source.Place{File: v.r.file.Name(), Line: v.key.Line, Column: v.key.Column}
}

func (v value) note(severity Severity, what, message, remedy string) {
	v.r.notes = append(v.r.notes, Note{Severity: severity, At: v.place(), What: what, Message: message, Remedy: remedy})
}

// empty reports a key without a value. The words null and Null are names that
// people have, so only YAML's own sign ~ counts besides nothing at all.
func (v value) empty() bool {
	return v.node.Kind == yaml.ScalarNode && v.node.Tag == "!!null" && (v.node.Value == "" || v.node.Value == "~")
}

// scalar returns the text as it was typed: 00 stays 00 and no stays no.
func (v value) scalar() (string, bool) {
	switch {
	case v.node.Kind != yaml.ScalarNode:
		v.fault("", "%s must be a single value, not a list", v.name)
	case v.empty() && v.commentFollows():
		v.keyFault("a # starts a comment: put the colour in quotes, such as \"#14284b\"", "%s is left empty", v.name)
	case v.empty():
		v.keyFault("give it a value or delete the line", "%s is left empty", v.name)
	default:
		return v.node.Value, true
	}
	return "", false
}

// commentFollows reports whether the rest of the key's line is a comment, as
// it is when a colour such as #fff stands without quotes.
func (v value) commentFollows() bool {
	if v.key == nil {
		return false
	}
	line := []rune(v.r.file.Line(v.key.Line))
	from := min(v.key.Column-1+v.r.nodeWidth(v.key), len(line))
	rest := strings.TrimLeft(string(line[from:]), " \t:")
	return strings.HasPrefix(rest, "#")
}

// text returns one line of cleaned text of at most longest characters.
func (v value) text(longest int) (string, bool) {
	s, ok := v.scalar()
	if !ok {
		return "", false
	}
	if strings.ContainsAny(strings.TrimRight(s, "\n"), "\n\r") {
		v.fault("", "%s must be one line", v.name)
		return "", false
	}
	clean, problems := spelling.Clean(s)
	if clean == "" {
		v.fault("give it a value or delete the line", "%s is left empty", v.name)
		return "", false
	}
	if n := len([]rune(clean)); n > longest {
		v.fault("", "%s has %d characters: at most %d are read", v.name, n, longest)
		return "", false
	}
	if said := told(problems); said != "" {
		v.note(Advice, "text", v.name+": "+said, "check the text")
	}
	return clean, true
}

// raw returns text that must stay as it is, such as the name of a file.
func (v value) raw(longest int) (string, bool) {
	s, ok := v.scalar()
	if ok && (len([]rune(s)) > longest || strings.TrimSpace(s) == "" || strings.ContainsAny(s, "\n\r\x00")) {
		v.fault("", "%s: a name of at most %d characters is needed", v.name, longest)
		return "", false
	}
	return s, ok
}

// word returns one of the known words, or a fault that names the nearest.
func (v value) word(what string, known []string) (string, bool) {
	return v.wordElse(what, known, "use "+list(known))
}

// wordElse is word with a hint for a word that is near none, where there are
// too many to list.
func (v value) wordElse(what string, known []string, far string) (string, bool) {
	s, ok := v.scalar()
	if !ok {
		return "", false
	}
	for _, k := range known {
		if s == k {
			return k, true
		}
	}
	hint := far
	if k := near(s, known); k != "" {
		hint = didYouMean(k)
	}
	v.fault(hint, "%s: %q is not a %s", v.name, s, what)
	return "", false
}

// suggest is the hint for an unknown word.
func suggest(s string, known []string) string {
	if k := near(s, known); k != "" {
		return didYouMean(k)
	}
	return "use " + list(known)
}

func didYouMean(word string) string { return "did you mean " + word + "?" }

func (v value) flag() (on, ok bool) {
	s, ok := v.scalar()
	if !ok {
		return false, false
	}
	switch strings.ToLower(s) {
	case "true", "yes":
		return true, true
	case "false", "no":
		return false, true
	}
	v.fault("use true or false", "%s: %q is neither true nor false", v.name, s)
	return false, false
}

// items returns the values of a list; a single mapping counts as a list of one.
func (v value) items() ([]value, bool) {
	if v.node.Kind == yaml.MappingNode {
		return []value{{v.r, v.key, v.node, v.name}}, true
	}
	if v.node.Kind != yaml.SequenceNode {
		v.fault("start each item with a hyphen", "%s must be a list", v.name)
		return nil, false
	}
	var out []value
	for _, n := range v.node.Content {
		out = append(out, value{v.r, nil, n, v.name})
	}
	return out, true
}
