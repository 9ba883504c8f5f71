package wal

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"math/bits"
)

// Log is what a write-ahead file holds.
type Log struct {
	Headed   bool // it starts with a header that is whole
	Bare     bool // nothing stands behind its header
	PageSize int
	Frames   int // that belong to a commit
	Commits  int
	Torn     bool // behind them stand frames under its salts that are not whole
	Cut      int  // commits from the first frame that is not whole on
}

// Damaged reports whether more is missing than a crash can cut off: the last transaction, which alone was not waited for, holds one
// commit, and the header was waited for before any frame. So a bit that flipped anywhere before the last transaction shows. One within it
// can't be told from a crash, which leaves some of its sectors unwritten.
func (l Log) Damaged() bool { return !l.Headed && !l.Bare || l.Cut > 1 }

const (
	headSize  = 32
	frameHead = 24
	little    = 0x377f0682 // [1] 4.1: the checksum is over little-endian words; the magic of big-endian ones is one higher
)

// sum is the running checksum of [1] 4.2.
type sum struct {
	order  binary.ByteOrder
	s0, s1 uint32
}

func (s *sum) add(data []byte) {
	for ; len(data) >= 8; data = data[8:] {
		s.s0 += s.order.Uint32(data) + s.s1
		s.s1 += s.order.Uint32(data[4:]) + s.s0
	}
}

// is reports whether the sum is what is written in eight bytes.
func (s *sum) is(stored []byte) bool {
	return s.s0 == binary.BigEndian.Uint32(stored) && s.s1 == binary.BigEndian.Uint32(stored[4:])
}

// Scan reads a write-ahead file and calls applied, in order, with every page that its commits hold; the bytes are good for that
// call only. An empty file holds nothing and is headless. Errors: it cannot be read.
func Scan(r io.Reader, applied func(page uint32, data []byte)) (l Log, err error) {
	buffered := bufio.NewReaderSize(r, 1<<20)
	head := make([]byte, headSize)
	if _, err := io.ReadFull(buffered, head); err != nil {
		return l, ended(err)
	}
	running, ok := l.head(head)
	_, err = buffered.Peek(1)
	if l.Bare = err != nil; !ok || l.Bare {
		return l, ended(err)
	}
	return l, l.frames(buffered, head[16:24], running, applied)
}

// head reads the header of the file.
func (l *Log) head(head []byte) (sum, bool) {
	magic := binary.BigEndian.Uint32(head)
	running := sum{order: binary.LittleEndian}
	if magic == little|1 {
		running.order = binary.BigEndian
	}
	running.add(head[:24])
	size := binary.BigEndian.Uint32(head[8:])
	if magic|1 != little|1 || size < 512 || size > 65536 || size&(size-1) != 0 || !running.is(head[24:]) {
		return running, false
	}
	l.Headed, l.PageSize = true, int(size)
	return running, true
}

// held is a page of a transaction whose commit has not come yet.
type held struct {
	page uint32
	data []byte
}

// frames reads what follows the header.
func (l *Log) frames(r io.Reader, salts []byte, running sum, applied func(uint32, []byte)) error {
	var open []held
	frame := make([]byte, frameHead+l.PageSize)
	for whole := true; ; {
		if _, err := io.ReadFull(r, frame); err != nil {
			return ended(err)
		}
		before := running
		running.add(frame[:8])
		running.add(frame[frameHead:])
		commits, ours := binary.BigEndian.Uint32(frame[4:]) > 0, near(frame[8:16], salts)
		whole = whole && bytes.Equal(frame[8:16], salts) && running.is(frame[16:24])
		running.s0, running.s1 = binary.BigEndian.Uint32(frame[16:]), binary.BigEndian.Uint32(frame[20:]) // a frame goes with the one before it
		switch {
		case whole:
			open = append(open, held{binary.BigEndian.Uint32(frame), bytes.Clone(frame[frameHead:])})
			if commits {
				l.commit(open, applied)
				open = open[:0]
			}
		case ours:
			if l.Torn = true; commits || before.committed(frame) {
				l.Cut++
			}
		}
	}
}

// near reports whether a frame stands under the salts of the header, but for one bit. An older frame's differ in many: half of the salts
// is drawn by lot for each round of the file ([1] 4.4).
func near(salts, of []byte) bool {
	return bits.OnesCount64(binary.BigEndian.Uint64(salts)^binary.BigEndian.Uint64(of)) <= 1
}

// committed reports whether a frame that says it ends no transaction would be whole if one bit of that word stood otherwise: then it did
// end one.
func (s sum) committed(frame []byte) bool {
	if binary.BigEndian.Uint32(frame[4:]) != 0 {
		return false
	}
	for bit := range 32 {
		again, head := s, bytes.Clone(frame[:8])
		binary.BigEndian.PutUint32(head[4:], 1<<bit)
		again.add(head)
		if again.add(frame[frameHead:]); again.is(frame[16:24]) {
			return true
		}
	}
	return false
}

// commit hands the pages of a transaction on.
func (l *Log) commit(pages []held, applied func(uint32, []byte)) {
	l.Commits++
	l.Frames += len(pages)
	for _, p := range pages {
		if applied != nil {
			applied(p.page, p.data)
		}
	}
}

// ended returns nil where a file ends, which it may do anywhere.
func ended(err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return nil
	}
	return err
}
