package order

import (
	"go.yaml.in/yaml/v4"
)

// field is one key that a mapping may have.
type field struct {
	key  string
	also string // American spelling, or empty
	read func(value)
	// not says why the mapping does not take a key that others do, so that
	// nobody is told that a word he knows is unknown.
	not string
}

// fields reads a mapping by its table: known keys in the order of the table,
// so that colours are known before a piece names one, then unknown keys. It
// returns the values found under the table's own keys.
func (v value) fields(example string, table []field) (map[string]value, bool) {
	found := map[string]value{}
	if v.empty() {
		return found, true
	}
	if v.node.Kind != yaml.MappingNode {
		v.fault("such as "+example, "%s must be a list of keys and values", v.name)
		return nil, false
	}
	byKey := map[string]int{}
	var words []string
	for i, f := range table {
		byKey[f.key] = i
		if f.not == "" {
			words = append(words, f.key)
		}
		if f.also != "" {
			byKey[f.also] = i
		}
	}
	v.match(byKey, words, table, found)
	for _, f := range table {
		if x, ok := found[f.key]; ok && f.read != nil {
			f.read(x)
		}
	}
	return found, true
}

// match finds the value of each known key and faults the rest.
func (v value) match(byKey map[string]int, words []string, table []field, found map[string]value) {
	seen := map[string]bool{}
	for i := 0; i+1 < len(v.node.Content); i += 2 {
		k := v.node.Content[i]
		x := value{v.r, k, v.node.Content[i+1], v.under(k.Value)}
		if seen[k.Value] {
			continue // reported already, as a key given twice
		}
		seen[k.Value] = true
		at, ok := byKey[k.Value]
		if !ok {
			v.unknown(x, words)
			continue
		}
		key := table[at].key
		if why := table[at].not; why != "" {
			x.keyFault("delete it: "+why, "%s takes no %s", v.name, key)
			continue
		}
		if _, twice := found[key]; twice {
			x.keyFault("keep one of them", "%q and %q are the same key", key, table[at].also)
			continue
		}
		found[key] = x
	}
}

func (v value) unknown(x value, words []string) {
	where := ""
	if v.name != "" {
		where = " in " + v.name
	}
	hint := suggest(x.key.Value, words)
	if x.key.Tag == "!!merge" {
		hint = "write the keys out"
	}
	x.keyFault(hint, "unknown key %q%s", x.key.Value, where)
}

// under names the value of a key of v.
func (v value) under(key string) string {
	if v.name == "" {
		return key
	}
	return v.name + ": " + key
}
