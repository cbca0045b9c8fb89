// Package csvtext reads what people's spreadsheets write into CSV files: either delimiter,
// columns in any order, decimal commas, times by the clock. The readers of results and of
// runners share it. How a file falls into rows and fields is theirs, and so are the causes
// that their errors wrap.
package csvtext
