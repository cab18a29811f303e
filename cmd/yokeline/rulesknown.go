package main

import (
	"fmt"
	"strings"

	"yokeline/lettering/rulebook"
)

// printKnown prints what is known of every rule book by topic, as a Markdown
// table that is kept beside the books.
func printKnown(s streams) error {
	var text strings.Builder
	for i, id := range rulebook.IDs() {
		b, err := rulebook.Load(id)
		if err != nil {
			return err
		}
		topics := b.Topics()
		if i == 0 {
			knownHead(&text, topics)
		}
		fmt.Fprintf(&text, "| `%s` | %s", b.ID, b.Sport)
		for _, t := range topics {
			text.WriteString(" | " + knownCell(t))
		}
		text.WriteString(" |\n")
	}
	_, err := fmt.Fprint(s.out, text.String())
	return err
}

func knownHead(text *strings.Builder, topics []rulebook.Topic) {
	text.WriteString("| rule book | sport")
	for _, t := range topics {
		text.WriteString(" | " + t.Name)
	}
	text.WriteString(" |\n" + strings.Repeat("| --- ", len(topics)+2) + "|\n")
}

// knownCell says how many figures there are; nothing known stays empty.
func knownCell(t rulebook.Topic) string {
	var said []string
	if t.Read > 0 {
		said = append(said, fmt.Sprintf("%d read", t.Read))
	}
	if t.Memory > 0 {
		said = append(said, fmt.Sprintf("*%d memory*", t.Memory))
	}
	return strings.Join(said, ", ")
}
