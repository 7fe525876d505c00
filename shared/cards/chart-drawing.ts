/** The night as lines over time: temperatures above, charge and power below, on one ruler of hours with the evening's moments. */
import type { Text } from '../text/index.ts'
import { formatLocalTime } from '../units/index.ts'
import type { Utc } from '../units/index.ts'
import { wordsWidthMm } from './lettering.ts'
import type { Drawing, Point, Shape } from './model.ts'

export type ChartLine = {
  readonly name: string
  readonly values: readonly number[]
  readonly weightMm: number
  readonly dashMm?: readonly number[]
}

export type ChartInput = {
  readonly title: string
  readonly atUtc: readonly Utc[]
  readonly zone: string
  readonly lines: readonly ChartLine[]
  readonly moments: readonly { readonly name: string; readonly atUtc: Utc }[]
  /** Text of a value on the scale. */
  readonly say: (value: number) => string
  readonly steps: readonly number[]
  /** Least span of the scale, so that a flat night stays flat. */
  readonly leastSpan: number
  readonly floor?: number
  readonly ceiling?: number
  readonly widthMm: number
  readonly heightMm: number
  readonly text: Text
}

const LEFT_MM = 14
const RIGHT_MM = 34
const BOTTOM_MM = 6
const LABEL_MM = 2.7
const MOMENT_ROW_MM = 3.2
const MOST_HOUR_MARKS = 16

type Scale = {
  readonly x: (at: number) => number
  readonly y: (value: number) => number
  readonly low: number
  readonly high: number
  readonly step: number
  readonly top: number
  readonly bottom: number
}

export function chartDrawing(input: ChartInput): Drawing {
  const { widthMm, heightMm, title } = input
  const rows = momentRows(input)
  const scale = scaleOf(
    input,
    (rows.length === 0 ? 6.5 : 5) +
      (rows.length === 0 ? 0 : Math.max(...rows.map((row) => row.row + 1)) * MOMENT_ROW_MM),
  )
  const shapes: Shape[] = [
    { kind: 'label', atMm: [0, 3.4], text: title, heightMm: 3.3, anchor: 'start', bold: true },
    ...grid(input, scale),
    ...hours(input, scale),
    ...rows.flatMap((row) => momentShapes(row, scale)),
    ...input.lines.map((line): Shape => ({
      kind: 'polyline',
      pointsMm: thin(line.values.map((value, index): Point => [scale.x(input.atUtc[index] ?? 0), scale.y(value)])),
      weightMm: line.weightMm,
      ...(line.dashMm === undefined ? {} : { dashMm: line.dashMm }),
    })),
    ...lineNames(input, scale),
  ]
  return {
    kind: 'drawing',
    widthMm,
    heightMm,
    shapes,
    description: `${title}: ${input.lines.map((line) => line.name).join(', ')}`,
  }
}

function scaleOf(input: ChartInput, top: number): Scale {
  const all = input.lines.flatMap((line) => line.values)
  const lowest = Math.max(Math.min(...all), input.floor ?? -Infinity)
  const highest = Math.min(Math.max(...all), input.ceiling ?? Infinity)
  const missing = Math.max(0, input.leastSpan - (highest - lowest)) / 2
  const span = highest - lowest + 2 * missing
  const step = input.steps.find((one) => span / one <= 6) ?? input.steps.at(-1) ?? 1
  const low = Math.max(Math.floor((lowest - missing) / step) * step, input.floor ?? -Infinity)
  const high = Math.min(Math.ceil((highest + missing) / step) * step, input.ceiling ?? Infinity)
  const from = input.atUtc[0] ?? 0
  const to = input.atUtc.at(-1) ?? 1
  const bottom = input.heightMm - BOTTOM_MM
  const right = input.widthMm - RIGHT_MM
  return {
    x: (at) => LEFT_MM + ((at - from) / Math.max(1, to - from)) * (right - LEFT_MM),
    y: (value) => bottom - ((Math.min(high, Math.max(low, value)) - low) / Math.max(1e-9, high - low)) * (bottom - top),
    low,
    high,
    step,
    top,
    bottom,
  }
}

function grid(input: ChartInput, scale: Scale): readonly Shape[] {
  const shapes: Shape[] = []
  const right = input.widthMm - RIGHT_MM
  for (let index = 0; scale.low + index * scale.step <= scale.high + scale.step / 1000; index += 1) {
    const value = scale.low + index * scale.step
    const y = scale.y(value)
    shapes.push({ kind: 'line', fromMm: [LEFT_MM, y], toMm: [right, y], weightMm: 0.1 })
    shapes.push({
      kind: 'label',
      atMm: [LEFT_MM - 1.2, y + 0.9],
      text: input.say(value),
      heightMm: LABEL_MM,
      anchor: 'end',
    })
  }
  return shapes
}

/** A mark on each whole hour of the place's clock; every second or third where the night is long. */
function hours(input: ChartInput, scale: Scale): readonly Shape[] {
  const from = input.atUtc[0] ?? 0
  const to = input.atUtc.at(-1) ?? 0
  const everyH = [1, 2, 3, 6].find((hour) => (to - from) / 3600 / hour <= MOST_HOUR_MARKS) ?? 12
  const shapes: Shape[] = []
  for (let at = Math.ceil(from / 3600) * 3600; at <= to; at += 3600) {
    const clock = formatLocalTime(at as Utc, input.zone)
    if (Number(clock.slice(0, 2)) % everyH !== 0) continue
    const x = scale.x(at)
    shapes.push({ kind: 'line', fromMm: [x, scale.bottom], toMm: [x, scale.bottom + 1.2], weightMm: 0.2 })
    shapes.push({
      kind: 'label',
      atMm: [x, scale.bottom + 4.2],
      text: clock.slice(0, 2),
      heightMm: LABEL_MM,
      anchor: 'middle',
    })
  }
  return [
    ...shapes,
    { kind: 'line', fromMm: [LEFT_MM, scale.bottom], toMm: [input.widthMm - RIGHT_MM, scale.bottom], weightMm: 0.3 },
  ]
}

type MomentRow = { readonly name: string; readonly atUtc: Utc; readonly row: number; readonly leftOf: boolean }

/** Names of moments stand in as many rows as they need so as not to touch; near the right edge they stand left of their line. */
function momentRows(input: ChartInput): readonly MomentRow[] {
  const from = input.atUtc[0] ?? 0
  const to = input.atUtc.at(-1) ?? 1
  const right = input.widthMm - RIGHT_MM
  const perS = (right - LEFT_MM) / Math.max(1, to - from)
  const taken: [row: number, from: number, to: number][] = []
  return input.moments
    .filter((moment) => moment.atUtc >= from && moment.atUtc <= to)
    .toSorted((a, b) => a.atUtc - b.atUtc)
    .map((moment) => {
      const x = LEFT_MM + (moment.atUtc - from) * perS
      const width = wordsWidthMm(moment.name, LABEL_MM) + 1.5
      const leftOf = x + width > right
      const [start, end] = leftOf ? [x - width, x] : [x, x + width]
      const free = [0, 1, 2, 3, 4].find((row) =>
        taken.every((other) => other[0] !== row || other[2] <= start || other[1] >= end),
      )
      const row = free ?? 5
      taken.push([row, start, end])
      return { ...moment, row, leftOf }
    })
}

function momentShapes(moment: MomentRow, scale: Scale): readonly Shape[] {
  const x = scale.x(moment.atUtc)
  const baseline = 5 + (moment.row + 1) * MOMENT_ROW_MM - 0.9
  return [
    { kind: 'line', fromMm: [x, baseline - 2], toMm: [x, scale.bottom], weightMm: 0.15, dashMm: [0.6, 0.8] },
    {
      kind: 'label',
      atMm: [moment.leftOf ? x - 0.6 : x + 0.6, baseline],
      text: moment.name,
      heightMm: LABEL_MM,
      anchor: moment.leftOf ? 'end' : 'start',
      halo: true,
    },
  ]
}

/** Names at the right-hand end of each line, pushed apart where lines end close together. */
function lineNames(input: ChartInput, scale: Scale): readonly Shape[] {
  const gap = LABEL_MM * 1.25
  const ends = input.lines.map((line) => ({ line, y: scale.y(line.values.at(-1) ?? 0) })).toSorted((a, b) => a.y - b.y)
  const ys: number[] = []
  for (const { y } of ends) ys.push(Math.max(y, (ys.at(-1) ?? -Infinity) + gap))
  const over = Math.max(0, (ys.at(-1) ?? 0) - scale.bottom)
  const right = input.widthMm - RIGHT_MM
  return ends.flatMap(({ line, y }, index): readonly Shape[] => {
    const labelY = (ys[index] ?? y) - over
    return [
      { kind: 'line', fromMm: [right + 0.5, y], toMm: [right + 4, labelY], weightMm: 0.1 },
      {
        kind: 'line',
        fromMm: [right + 4, labelY],
        toMm: [right + 8.5, labelY],
        weightMm: line.weightMm,
        ...(line.dashMm === undefined ? {} : { dashMm: line.dashMm }),
      },
      { kind: 'label', atMm: [right + 9.5, labelY + 0.9], text: line.name, heightMm: LABEL_MM, anchor: 'start' },
    ]
  })
}

/** At most some 300 points: more cannot be seen on paper. */
function thin(points: readonly Point[]): readonly Point[] {
  const every = Math.ceil(points.length / 300)
  return every < 2 ? points : points.filter((_, index) => index % every === 0 || index === points.length - 1)
}
