// Package resale answers one question: what will the finished vehicle bring, and how unsure is that, given comparables?
package resale
