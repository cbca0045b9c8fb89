module isoeffort.example

go 1.26.0

require (
	github.com/google/go-cmp v0.7.0 // indirect
	github.com/pymaxion/geographiclib-go v1.1.0 // indirect
	github.com/tkrajina/gpxgo v1.5.0 // indirect
	golang.org/x/net v0.62.0 // indirect
	golang.org/x/text v0.44.0 // indirect
	gonum.org/v1/gonum v0.17.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
