package memory

import (
	"cmp"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"math"
	"reflect"
	"slices"
	"sync"
)

// Key is the name of a content.
type Key [sha256.Size]byte

// Of returns the key of the values in their order: equal contents have equal keys, a nil slice or map that of an empty one.
// Limits: functions, channels and interfaces are no content: they are a bug and panic.
func Of(values ...any) Key {
	room := rooms.Get().(*[]byte)
	text := (*room)[:0]
	for _, v := range values {
		text = write(text, reflect.ValueOf(v))
	}
	key := Key(sha256.Sum256(text))
	*room = text
	rooms.Put(room)
	return key
}

// rooms are where contents are written out, one after the other.
var rooms = sync.Pool{New: func() any { return new([]byte) }}

// write appends a value so that no two contents of one type read the same.
func write(text []byte, v reflect.Value) []byte {
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			return append(text, 1)
		}
		return append(text, 0)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return number(text, uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return number(text, v.Uint())
	case reflect.Float32, reflect.Float64:
		return number(text, math.Float64bits(v.Float()))
	case reflect.String:
		return append(number(text, uint64(v.Len())), v.String()...)
	case reflect.Pointer:
		if v.IsNil() {
			return append(text, 0)
		}
		return write(append(text, 1), v.Elem())
	case reflect.Slice, reflect.Array:
		text = number(text, uint64(v.Len()))
		for i := range v.Len() {
			text = write(text, v.Index(i))
		}
		return text
	case reflect.Map:
		return writeMap(text, v)
	case reflect.Struct:
		for i := range v.NumField() {
			text = write(text, v.Field(i))
		}
		return text
	}
	panic(fmt.Sprintf("memory: a %s is no content", v.Kind()))
}

// writeMap appends a map in the order of its keys, which are strings.
func writeMap(text []byte, v reflect.Value) []byte {
	text = number(text, uint64(v.Len()))
	keys := v.MapKeys()
	slices.SortFunc(keys, func(a, b reflect.Value) int { return cmp.Compare(a.String(), b.String()) })
	for _, k := range keys {
		text = write(write(text, k), v.MapIndex(k))
	}
	return text
}

func number(text []byte, x uint64) []byte { return binary.LittleEndian.AppendUint64(text, x) }
