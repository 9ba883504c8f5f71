package desk

import "fmt"

// words says what an import did.
func (c Counts) words() string {
	return fmt.Sprintf("%d rows read: %d new, %d the same, %d changed, %d refused.", c.Read, c.New, c.Same, c.Changed, c.Refused)
}
