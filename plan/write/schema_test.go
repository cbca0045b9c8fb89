package write_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"testing"
	"time"

	"isoeffort.example/plan"
	"isoeffort.example/plan/write"
)

// validate checks a value against the few words of JSON Schema that the published one
// uses, and refuses any other word.
func validate(schema map[string]any, value any, at string) error {
	for word, want := range schema {
		var err error
		switch word {
		case "$schema", "$id", "title", "description", "required", "items":
		case "const":
			if value != want {
				err = fmt.Errorf("%s: %v is not %v", at, value, want)
			}
		case "enum":
			if !slices.Contains(want.([]any), value) {
				err = fmt.Errorf("%s: %v is not one of %v", at, value, want)
			}
		case "minimum":
			if v, ok := value.(float64); ok && v < want.(float64) {
				err = fmt.Errorf("%s: %g is under %v", at, v, want)
			}
		case "maximum":
			if v, ok := value.(float64); ok && v > want.(float64) {
				err = fmt.Errorf("%s: %g is over %v", at, v, want)
			}
		case "type":
			err = typed(want, value, at)
		case "properties":
			err = members(schema, value, at)
		default:
			err = fmt.Errorf("%s: the schema says %q", at, word)
		}
		if err != nil {
			return err
		}
	}
	list, ok := value.([]any)
	for i := 0; ok && i < len(list); i++ {
		if err := validate(schema["items"].(map[string]any), list[i], fmt.Sprintf("%s[%d]", at, i)); err != nil {
			return err
		}
	}
	return nil
}

func typed(want, value any, at string) error {
	kind := map[bool]string{true: "null"}[value == nil]
	switch v := value.(type) {
	case string:
		kind = "string"
	case bool:
		kind = "boolean"
	case float64:
		if kind = "number"; v == float64(int64(v)) && want == "integer" {
			kind = "integer"
		}
	case []any:
		kind = "array"
	case map[string]any:
		kind = "object"
	}
	if list, ok := want.([]any); want == kind || ok && slices.Contains(list, any(kind)) {
		return nil
	}
	return fmt.Errorf("%s: %s is not %v", at, kind, want)
}

// members checks an object, and that it has no member that the schema does not tell of.
func members(schema map[string]any, value any, at string) error {
	object, ok := value.(map[string]any)
	if !ok {
		return nil
	}
	known := schema["properties"].(map[string]any)
	for _, name := range schema["required"].([]any) {
		if _, ok := object[name.(string)]; !ok {
			return fmt.Errorf("%s: no %v", at, name)
		}
	}
	for name, v := range object {
		s, ok := known[name]
		if !ok {
			return fmt.Errorf("%s: %s is not in the schema", at, name)
		}
		if err := validate(s.(map[string]any), v, at+"."+name); err != nil {
			return err
		}
	}
	return nil
}

// What JSON prints keeps to the schema that is published, in every kind of plan.
func TestJSONSchema(t *testing.T) {
	t.Parallel()
	var schema map[string]any
	if err := json.Unmarshal(write.JSONSchema, &schema); err != nil {
		t.Fatal(err)
	}
	if validate(schema, map[string]any{"schema": write.Schema}, "plan") == nil || validate(schema, []any{}, "plan") == nil {
		t.Error("the schema takes anything")
	}
	c := lamps(t, 40_000, 6, "Lamp")
	cutoffs := []plan.Cutoff{{Name: "Gate", Distance: 20_000, Time: 4 * time.Hour}, {Distance: 40_000, Time: 8 * time.Hour}}
	for i, r := range []plan.Race{
		{},
		{Goal: 6 * time.Hour, Net: true, Start: time.Date(2026, 6, 14, 5, 30, 0, 0, time.UTC), StartDelay: time.Minute},
		{Goal: 2 * time.Hour},
		{Share: 0.3},
		{Cutoffs: cutoffs, MakeCutoffs: true},
		{Standards: []plan.Standard{{Name: "gold", Time: 5 * time.Hour}}, Stations: plan.Stations{Each: time.Minute}, Walks: plan.Walks{Every: 20 * time.Minute}},
		{Stops: []plan.Stop{{Distance: 10_000, Duration: time.Minute, Kind: plan.Sleep, Note: "nap"}}, Cutoffs: cutoffs},
	} {
		p := planned(t, c, 12, r)
		for _, every := range []plan.Spacing{plan.AtLandmarks, 5000} {
			var out bytes.Buffer
			if err := write.JSON(&out, p, every); err != nil {
				t.Fatal(err)
			}
			var value any
			if err := json.Unmarshal(out.Bytes(), &value); err != nil {
				t.Fatal(err)
			}
			if err := validate(schema, value, "plan"); err != nil {
				t.Errorf("race %d: %v", i, err)
			}
		}
	}
}
