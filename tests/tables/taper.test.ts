import { expect, it } from 'vitest'
import { parseTaper } from '../../src/tables/taper.ts'

it.each([
  ['7:24', 7 / 24],
  ['1 : 20.047', 1 / 20.047],
  ['0.59941 in/ft', 0.59941 / 12],
  ['16 deg 51 min', 2 * Math.tan((16.85 * Math.PI) / 360)],
  ['60°', 2 * Math.tan(Math.PI / 6)],
])('%s', (written, taper) => {
  expect(parseTaper(written)).toBeCloseTo(taper, 12)
})

it.each([
  '',
  '7',
  '7/24',
  '7:0',
  '0:24',
  '-7:24',
  '7:24:1',
  '0.6 in',
  '0.6 mm/ft',
  '0 deg',
  '-8 deg',
  '91 deg',
  '1e9:1',
])('does not read %j', (written) => {
  expect(parseTaper(written)).toBeUndefined()
})
