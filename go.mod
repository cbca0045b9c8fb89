module isoeffort.example

go 1.26.0

require (
	codeberg.org/go-fonts/liberation v0.5.0
	github.com/pymaxion/geographiclib-go v1.1.0
	github.com/tkrajina/gpxgo v1.5.0
	golang.org/x/image v0.30.0
	golang.org/x/net v0.62.0
	golang.org/x/text v0.44.0
	gonum.org/v1/gonum v0.17.0
	gonum.org/v1/plot v0.17.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/davecgh/go-spew v1.1.1 // indirect
	github.com/pmezard/go-difflib v1.0.0 // indirect
	github.com/stretchr/testify v1.8.4 // indirect
	golang.org/x/tools v0.52.0 // indirect
	gopkg.in/yaml.v3 v3.0.1 // indirect
)
