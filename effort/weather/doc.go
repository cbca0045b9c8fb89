// Package weather holds the physics of air, heat and altitude that a race plan needs:
// humidity, wet bulb and wet bulb globe temperature, the standard atmosphere, the density
// of air, wind at a runner's height, and what altitude takes from the oxygen uptake.
//
// Temperatures are in °C, relative humidities in %, pressures in hPa, altitudes and heights
// in m, speeds in m/s, densities in kg/m³, directions in degrees clockwise from north.
//
// Each function is a formula of its arguments alone: it keeps no state, allocates nothing
// and may be called from any goroutine. What is NaN or infinite, and what lies outside the
// domain that a function states, gives NaN.
//
// # What it is not for
//
// These are approximations to plan a race by. They replace no measurement on the day and
// no forecast, do not know a runner's clothing, acclimatisation or health, and say nothing
// on whether it is safe to run: see HeatCaution.
package weather
