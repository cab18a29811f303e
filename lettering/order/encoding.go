package order

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"yokeline/lettering/source"
)

// decode turns a roster file into text: UTF-8 with or without a byte order
// mark, UTF-16 with one, else Windows-1252, which is what spreadsheets of
// western Europe and America save without asking; that guess is noted with the
// first character it decides.
func decode(file string, data []byte) (text string, notes []Note, faults source.Faults) {
	if bytes.HasPrefix(data, []byte{0xff, 0xfe}) || bytes.HasPrefix(data, []byte{0xfe, 0xff}) {
		return decodeWide(file, data)
	}
	data = bytes.TrimPrefix(data, []byte(bom))
	if at := bytes.IndexByte(data, 0); at >= 0 {
		line, column := position(string(data), at)
		f := source.Fault{Place: source.Place{File: file, Line: line, Column: column}, Message: "a zero byte: this is not a text file", Hint: "save it as CSV UTF-8 or .xlsx"}
		return "", nil, source.Faults{f}
	}
	if utf8.Valid(data) {
		return string(data), nil, nil
	}
	return decodeWestern(file, data)
}

func decodeWide(file string, data []byte) (string, []Note, source.Faults) {
	wide, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder().Bytes(data)
	if err != nil || len(data)%2 != 0 || bytes.ContainsRune(wide, utf8.RuneError) {
		return "", nil, refuse(file, "the text is damaged UTF-16", "save it as CSV UTF-8 or .xlsx")
	}
	return string(wide), nil, nil
}

func decodeWestern(file string, data []byte) (string, []Note, source.Faults) {
	first := -1
	for i, b := range data {
		if b < utf8.RuneSelf {
			continue
		}
		if first < 0 {
			first = i
		}
		switch b {
		case 0x81, 0x8d, 0x8f, 0x90, 0x9d: // the bytes Windows-1252 leaves undefined
			line, column := position(string(data), i)
			return "", nil, source.Faults{{
				Place:   source.Place{File: file, Line: line, Column: column},
				Message: fmt.Sprintf("byte 0x%02X is neither UTF-8 nor Windows-1252 text", b), Hint: "save the file as CSV UTF-8 or .xlsx",
			}}
		}
	}
	line, column := position(string(data), first)
	var b strings.Builder
	for _, c := range data {
		b.WriteRune(charmap.Windows1252.DecodeByte(c))
	}
	return b.String(), []Note{{
		Severity: Advice, At: source.Place{File: file, Line: line, Column: column}, What: "encoding",
		Message: fmt.Sprintf("the file is not UTF-8: it is read as Windows-1252, where byte 0x%02X is %s", data[first], quote(string(charmap.Windows1252.DecodeByte(data[first])))),
		Remedy:  "check the names with accents, or save the file as CSV UTF-8",
	}}, nil
}
