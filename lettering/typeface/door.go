package typeface

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"time"

	"github.com/go-text/typesetting/font"
)

// opening says under what name a font file comes in.
type opening struct {
	file     string // for messages
	id, name string // name empty: the file's own
	zero     rune
}

// patience is how long reading one font may take. The checks bound the work
// to far less; this is the last resort. Go cannot stop a goroutine, so a file
// that gets this far leaves one behind until its work is done.
const patience = 5 * time.Second

// Open reads a font file through the guarded door; name is used in messages
// and as the face's identifier. Single TrueType and OpenType files with
// outlines are taken, up to MaxFileSize. Font files are programs from
// elsewhere, and both parsers behind this door panic or ask for gigabytes on
// some of them, so the tables are walked and bounded first, the parsing is
// bounded in time and its panics caught, and a face is admitted only if its H
// and digits have ink, every layout table was understood and two independent
// parsers agree on its measures. Every refusal names the file, what is wrong
// and what to do.
func Open(name string, data []byte) (*Face, error) {
	return open(opening{file: name, id: name}, data)
}

func open(o opening, data []byte) (*Face, error) {
	type result struct {
		face *Face
		err  error
	}
	done := make(chan result, 1)
	go func() {
		var r result
		defer func() {
			if fault := recover(); fault != nil {
				r = result{err: fmt.Errorf("reading it failed (%v); %s", fault, another)}
			}
			done <- r
		}()
		r.face, r.err = read(o, data)
	}()
	late := time.NewTimer(patience)
	defer late.Stop()
	select {
	case r := <-done:
		if r.err != nil {
			return nil, fmt.Errorf("font file %q cannot be used: %w", o.file, r.err)
		}
		return r.face, nil
	case <-late.C:
		return nil, fmt.Errorf("font file %q cannot be used: reading it took longer than %v; %s", o.file, patience, another)
	}
}

func read(o opening, data []byte) (*Face, error) {
	file, err := cut(data)
	if err != nil {
		return nil, err
	}
	found, err := file.check()
	if err != nil {
		return nil, err
	}
	parsed, err := font.ParseTTF(bytes.NewReader(file.pack(shaping)))
	if err != nil {
		return nil, fmt.Errorf("the shaper's parser refuses it (%w); %s", err, another)
	}
	sum := sha256.Sum256(data)
	s := &source{
		id: o.id, name: o.name, zero: o.zero, digest: hex.EncodeToString(sum[:]),
		font: parsed.Font, upem: float64(found.upem), glyphs: found.glyphs, axes: found.axes,
	}
	if err := s.understood(file, found); err != nil {
		return nil, err
	}
	if err := s.equipped(); err != nil {
		return nil, err
	}
	settings, err := s.settingsOf(nil)
	if err != nil {
		return nil, err
	}
	if s.root, err = s.instance(settings); err != nil {
		return nil, err
	}
	if err := s.admit(); err != nil {
		return nil, err
	}
	return s.root, s.compare(file)
}
