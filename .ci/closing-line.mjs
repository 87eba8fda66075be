// The line that tells CI how many tests ran. A skipped test is a failure here.
import { readFileSync } from 'node:fs'

const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(readFileSync(process.argv[2], 'utf8'))
const skipped = numPendingTests + numTodoTests
console.log(`${numPassedTests} passed, ${numFailedTests} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`)
process.exit(numFailedTests + skipped > 0 || numPassedTests === 0 ? 1 : 0)
