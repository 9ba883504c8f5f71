package casefile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"
)

// object is a JSON object with its keys in order and those given twice.
type object struct {
	keys   []string
	values map[string]any
	twice  []string
}

// mostDepth is how deep a document may nest; a case needs nine levels.
const mostDepth = 64

// parse returns the document as a tree of *object, []any, string, json.Number, bool and nil.
// Errors: text that is not UTF-8 or not JSON, with line and column; more than one document; too deep.
func parse(data []byte) (any, error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, errors.New("empty")
	}
	if !utf8.Valid(data) {
		return nil, errors.New("not UTF-8 text")
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	v, err := value(d, 0)
	if err == nil {
		if _, more := d.Token(); more != io.EOF {
			err = errors.New("there is more after the end of the document")
		}
	}
	if err != nil {
		return nil, place(data, d.InputOffset(), err)
	}
	return v, nil
}

// place says where in the text an error lies.
func place(data []byte, offset int64, err error) error {
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		offset = syntax.Offset
	}
	before := data[:min(int(offset), len(data))]
	line := 1 + bytes.Count(before, []byte("\n"))
	column := len(before) - bytes.LastIndexByte(before, '\n')
	if errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) {
		err = errors.New("the text ends too early")
	}
	return fmt.Errorf("not JSON at line %d, column %d: %w", line, column, err)
}

func value(d *json.Decoder, depth int) (any, error) {
	if depth > mostDepth {
		return nil, errors.New("nested too deep")
	}
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch t {
	case json.Delim('{'):
		return members(d, depth)
	case json.Delim('['):
		list := []any{}
		for d.More() {
			v, err := value(d, depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err := d.Token()
		return list, err
	}
	return t, nil
}

func members(d *json.Decoder, depth int) (any, error) {
	o := &object{values: map[string]any{}}
	for d.More() {
		t, err := d.Token()
		if err != nil {
			return nil, err
		}
		key := t.(string) // the decoder lets nothing else stand here
		v, err := value(d, depth+1)
		if err != nil {
			return nil, err
		}
		if _, seen := o.values[key]; seen {
			o.twice = append(o.twice, key)
		} else {
			o.keys = append(o.keys, key)
		}
		o.values[key] = v
	}
	_, err := d.Token()
	return o, err
}
