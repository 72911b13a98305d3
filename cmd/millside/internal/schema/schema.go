// Package schema describes the JSON that the commands print, as JSON Schema (draft 2020-12). What a field
// means stands in its tag, about:"...", where its name doesn't tell. A schema is made from the Go types that are
// printed, so it can't tell of a field that isn't there; what is added to a format later is allowed by it, since
// readers must let new fields pass.
package schema

import (
	"encoding"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"time"
)

// draft is the version of JSON Schema that is written.
const draft = "https://json-schema.org/draft/2020-12/schema"

// Of is the schema of a format: a structure of the type of v, in which the field "format" holds the format's
// name. Struct types with a name are described once, under $defs.
func Of(format string, v any) map[string]any {
	m := maker{defs: map[string]any{}}
	top := m.object(reflect.TypeOf(v))
	top["$schema"], top["$id"], top["title"] = draft, "urn:millside:"+format, format
	if p, ok := top["properties"].(map[string]any); ok && p["format"] != nil {
		p["format"] = map[string]any{"const": format}
	}
	if len(m.defs) > 0 {
		top["$defs"] = m.defs
	}
	return top
}

// maker gathers the definitions that a schema refers to.
type maker struct{ defs map[string]any }

var (
	textType = reflect.TypeFor[encoding.TextMarshaler]()
	timeType = reflect.TypeFor[time.Time]()
	ownType  = reflect.TypeFor[json.Marshaler]()
)

// of is the schema of a type.
func (m maker) of(t reflect.Type) map[string]any {
	switch {
	case t == timeType:
		return map[string]any{"type": "string", "format": "date-time"}
	case t.Implements(textType):
		return map[string]any{"type": "string"}
	case t.Kind() == reflect.Struct && t.Implements(ownType): // the weaver's times: texts by their names
		return map[string]any{"type": "object", "additionalProperties": map[string]any{"type": "string"}}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return m.of(t.Elem())
	case reflect.Struct:
		return m.named(t)
	case reflect.Slice, reflect.Array:
		return map[string]any{"type": "array", "items": m.of(t.Elem())}
	case reflect.Map:
		return map[string]any{"type": "object", "additionalProperties": m.of(t.Elem())}
	case reflect.String:
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Float32, reflect.Float64:
		return map[string]any{"type": "number"}
	default:
		return map[string]any{"type": "integer"}
	}
}

// named describes a struct type once and refers to it.
func (m maker) named(t reflect.Type) map[string]any {
	name := strings.ToLower(strings.TrimSuffix(t.Name(), "JSON"))
	if name == "" {
		return m.object(t)
	}
	if at := strings.LastIndexByte(t.PkgPath(), '/'); at >= 0 { // two packages may have a type of one name
		name = t.PkgPath()[at+1:] + "." + name
	}
	if m.defs[name] == nil {
		m.defs[name] = map[string]any{} // so that a type may hold itself
		m.defs[name] = m.object(t)
	}
	return map[string]any{"$ref": "#/$defs/" + name}
}

// object describes the fields of a struct as package encoding/json writes them.
func (m maker) object(t reflect.Type) map[string]any {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	properties := map[string]any{}
	required := []string{}
	m.fields(t, properties, &required)
	out := map[string]any{"type": "object", "properties": properties}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

func (m maker) fields(t reflect.Type, properties map[string]any, required *[]string) {
	for i := range t.NumField() {
		f := t.Field(i)
		tag, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && tag == "":
			inner := f.Type
			for inner.Kind() == reflect.Pointer {
				inner = inner.Elem()
			}
			m.fields(inner, properties, required)
			continue
		case !f.IsExported() || tag == "-":
			continue
		case tag == "":
			tag = f.Name
		}
		properties[tag] = described(m.of(f.Type), f.Tag.Get("about"))
		if !strings.Contains(options, "omitempty") && !strings.Contains(options, "omitzero") &&
			!slices.Contains(*required, tag) { // a field may stand in place of one of the same name within
			*required = append(*required, tag)
		}
	}
}

// described adds what a field means, where its tag says so.
func described(schema map[string]any, about string) map[string]any {
	if about != "" {
		schema["description"] = about
	}
	return schema
}

// Format is a structure that is printed: its name, a value of the type that is printed, and what its fields
// mean.
type Format struct {
	Name  string
	Value any
	About string
}

// Schema is the schema of the format.
func (f Format) Schema() map[string]any {
	s := Of(f.Name, f.Value)
	if f.About != "" {
		s["description"] = strings.Join(strings.Fields(f.About), " ")
	}
	return s
}
