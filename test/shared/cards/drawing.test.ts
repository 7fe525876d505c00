/** Drawings and small parts: hatching, lettering, layers, places, coordinates, SVG. */
import { assert, double, integer, property, string } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sexagesimalCoordinates, drawingToSvg } from '../../../shared/cards/index.ts'
import { chartDrawing } from '../../../shared/cards/chart-drawing.ts'
import { escapeMarkup } from '../../../shared/cards/escape.ts'
import { hatchRect } from '../../../shared/cards/hatch.ts'
import { layersOf } from '../../../shared/cards/layers.ts'
import { wordsWidthMm, wrapWords } from '../../../shared/cards/lettering.ts'
import { createText } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const text = createText('en', 'metric')
const SEED = 20261113

describe('hatching', () => {
  it('stays within its rectangle', () => {
    assert(
      property(
        double({ min: 0.5, max: 80, noNaN: true }),
        double({ min: 0.5, max: 80, noNaN: true }),
        (width, height) => {
          for (const line of hatchRect([10, 20], [width, height], 1.3)) {
            if (line.kind !== 'line') throw new Error('hatching is lines')
            for (const [x, y] of [line.fromMm, line.toMm]) {
              expect(x).toBeGreaterThanOrEqual(10 - 1e-9)
              expect(x).toBeLessThanOrEqual(10 + width + 1e-9)
              expect(y).toBeGreaterThanOrEqual(20 - 1e-9)
              expect(y).toBeLessThanOrEqual(20 + height + 1e-9)
            }
          }
        },
      ),
      { seed: SEED, numRuns: 200 },
    )
  })
})

describe('lettering', () => {
  it('wraps to the width and never beyond the lines given', () => {
    assert(
      property(
        string({ maxLength: 60 }),
        integer({ min: 5, max: 60 }),
        integer({ min: 1, max: 3 }),
        (words, width, lines) => {
          const wrapped = wrapWords(words, width, 3, lines)
          expect(wrapped.length).toBeLessThanOrEqual(lines)
          const wide = wrapped.filter((line) => [...line].length > 2 && wordsWidthMm(line, 3) > width)
          expect(wide).toEqual([])
        },
      ),
      { seed: SEED, numRuns: 300 },
    )
  })

  it('marks words that were cut', () => {
    expect(wrapWords('Hookup lead, twenty-five metres', 20, 3, 1)[0]).toMatch(/…$/)
  })
})

const unit = (unitId: string, x: number, z: number, high: number) => ({
  unitId,
  bayId: 'b',
  atMm: [x, 0, z] as const,
  sizeMm: [100, 100, high] as const,
  edges: [0, 1, 2] as const,
})

describe('layers', () => {
  it('puts what stands on another one layer higher', () => {
    const layers = layersOf([
      unit('top', 50, 200, 50),
      unit('a', 0, 0, 200),
      unit('b', 100, 0, 100),
      unit('c', 300, 0, 10),
      unit('on-b', 160, 100, 40),
    ])
    expect(layers.map((layer) => layer.map((one) => one.unitId).sort())).toEqual([
      ['a', 'b', 'c'],
      ['on-b', 'top'],
    ])
  })

  it('loses none of the units', () => {
    expect(layersOf([]).flat()).toEqual([])
    const many = Array.from({ length: 12 }, (_, index) => unit(`u${index}`, 0, index * 10, 10))
    expect(layersOf(many).map((layer) => layer.length)).toEqual(Array.from({ length: 12 }, () => 1))
  })
})

describe('coordinates', () => {
  it.each([
    [0, 0, '0°00′00.0″ N, 0°00′00.0″ E'],
    [-33.5, 151.25, '33°30′00.0″ S, 151°15′00.0″ E'],
    [59.999_999, -0.000_1, '60°00′00.0″ N, 0°00′00.4″ W'],
    [61.999_72, 10.999_986, '61°59′59.0″ N, 10°59′59.9″ E'],
  ])('%d, %d is %s', (latitude, longitude, expected) => {
    expect(sexagesimalCoordinates(latitude, longitude, text)).toBe(expected)
  })
})

describe('charts', () => {
  it('draw flat, negative and tiny series without losing a number', () => {
    for (const values of [
      [0, 0, 0],
      [-12, -12, -12],
      [0.001, 0.002, 0.003],
      [-40, 5, 60],
    ]) {
      const drawing = chartDrawing({
        title: 'x',
        atUtc: [0, 3600, 7200].map((at) => at as Utc),
        zone: 'UTC',
        lines: [{ name: 'line', values, weightMm: 0.5 }],
        moments: [],
        say: String,
        steps: [1, 5, 10, 20],
        leastSpan: 8,
        widthMm: 180,
        heightMm: 60,
        text,
      })
      expect(JSON.stringify(drawing)).not.toMatch(/null|NaN/)
    }
  })
})

describe('markup', () => {
  it('carries no character that could end an element or an attribute', () => {
    expect(escapeMarkup(`<b title="x" o='y'>&\u0000\ud800`)).toBe(
      '&lt;b title=&quot;x&quot; o=&#39;y&#39;&gt;&amp;\ufffd\ufffd',
    )
  })

  it('escapes labels in drawings', () => {
    const svg = drawingToSvg(
      {
        kind: 'drawing',
        widthMm: 10,
        heightMm: 10,
        description: '"&',
        shapes: [{ kind: 'label', atMm: [1, 1], text: '</svg><script>', heightMm: 3, anchor: 'start' }],
      },
      { ink: '#000', paper: '#fff', sizing: 'mm' },
    )
    expect(svg).not.toContain('<script>')
    expect(svg).toContain('&lt;/svg&gt;')
  })
})
