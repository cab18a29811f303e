package order

import (
	"strings"

	"go.yaml.in/yaml/v4"
)

// sound checks everything about a node that does not depend on its meaning:
// depth, size, aliases, tags, and keys that are plain and different. It
// reports whether the tree may be walked further; a repeated key may.
func (r *reader) sound(n *yaml.Node, depth int) bool {
	if depth > jobDepth {
		r.fault(n.Line, n.Column, 1, "", "lists inside lists: more than %d deep", jobDepth)
		return false
	}
	if !r.plainNode(n) {
		return false
	}
	if n.Kind != yaml.MappingNode {
		ok := true
		for _, c := range n.Content {
			ok = r.sound(c, depth+1) && ok
		}
		return ok
	}
	return r.soundMapping(n, depth)
}

// plainNode refuses what YAML offers to programs and a job has no use for.
func (r *reader) plainNode(n *yaml.Node) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		r.fault(n.Line, n.Column, len([]rune(n.Value))+1, "write the value out again", "*%s refers to another place, which a job may not do", n.Value)
	case n.Anchor != "":
		r.fault(n.Line, n.Column, len([]rune(n.Anchor))+1, "if the text starts with &, put it in quotes", "&%s marks a value for reuse, which a job may not do", n.Anchor)
	case n.Style&yaml.TaggedStyle != 0:
		r.fault(n.Line, n.Column, len([]rune(n.Tag)), "if the text starts with !, put it in quotes", "%s is a tag, which a job has no use for", n.Tag)
	default:
		return true
	}
	return false
}

func (r *reader) soundMapping(n *yaml.Node, depth int) bool {
	if len(n.Content)/2 > jobKeys {
		k := n.Content[2*jobKeys]
		r.fault(k.Line, k.Column, r.nodeWidth(k), "", "more than %d keys in one list", jobKeys)
		return false
	}
	ok := true
	seen := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode {
			r.fault(k.Line, k.Column, 1, "", "a key must be a plain word")
			ok = false
			continue
		}
		ok = r.plainNode(k) && ok
		if first := seen[k.Value]; first != nil {
			r.fault(k.Line, k.Column, r.nodeWidth(k), "keep one of them", "%q is given twice, first in line %d", k.Value, first.Line)
		} else {
			seen[k.Value] = k
		}
		ok = r.sound(v, depth+1) && ok
	}
	return ok
}

// nodeWidth is how many characters of its line a node covers.
func (r *reader) nodeWidth(n *yaml.Node) int {
	if n.Kind != yaml.ScalarNode {
		return 1
	}
	width := len([]rune(n.Value))
	if n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
		width = r.quotedWidth(n)
	}
	if strings.Contains(n.Value, "\n") || n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		return 1
	}
	return max(1, min(width, len([]rune(r.file.Line(n.Line)))-n.Column+1))
}

// quotedWidth finds the closing quote in the node's own line.
func (r *reader) quotedWidth(n *yaml.Node) int {
	line := []rune(r.file.Line(n.Line))
	if n.Column > len(line) {
		return 1
	}
	rest := line[n.Column-1:]
	for i := 1; i < len(rest); i++ {
		switch {
		case rest[0] == '"' && rest[i] == '\\':
			i++
		case rest[0] == '\'' && rest[i] == '\'' && i+1 < len(rest) && rest[i+1] == '\'':
			i++
		case rest[i] == rest[0]:
			return i + 1
		}
	}
	return len(rest)
}
