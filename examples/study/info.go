package main

import (
	"runtime"
	"runtime/debug"
)

// runInfo is what it takes to repeat a study.
type runInfo struct {
	Go, System, Module, Revision string
	Dependencies                 map[string]string
	Options                      options
	Inputs                       []input
}

func (s *study) info() runInfo {
	r := runInfo{
		Go: runtime.Version(), System: runtime.GOOS + "/" + runtime.GOARCH, Dependencies: map[string]string{},
		Options: s.o, Inputs: s.inputs,
	}
	// Where files lie is the reader's own affair, and workers change no digit.
	r.Options.Results, r.Options.Splits, r.Options.Profiles, r.Options.Out, r.Options.Workers = "", "", "", "", 0
	built, ok := debug.ReadBuildInfo()
	if !ok {
		return r
	}
	r.Module = built.Main.Path + " " + built.Main.Version
	for _, d := range built.Deps {
		r.Dependencies[d.Path] = d.Version
	}
	for _, v := range built.Settings {
		if v.Key == "vcs.revision" || v.Key == "vcs.modified" && v.Value == "true" {
			r.Revision += v.Value + " "
		}
	}
	return r
}
