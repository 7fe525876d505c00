/** The arithmetic of a time chart: scales, ticks, paths, and labels that do not lie on each other. */

export type ChartLine = {
  readonly id: string
  readonly label: string
  readonly values: readonly number[]
  readonly look: 'strong' | 'plain' | 'dashed' | 'dotted' | 'fine' | 'accent'
}

export type Scale = { readonly low: number; readonly high: number; readonly px: number }

/** Round numbers for an axis: about `count` of them between the ends. */
export function niceTicks(low: number, high: number, count: number): readonly number[] {
  const span = high - low
  if (!(span > 0) || count < 1) return [low]
  const rough = span / count
  const power = 10 ** Math.floor(Math.log10(rough))
  const unit = [1, 2, 5, 10].find((each) => each * power >= rough) ?? 10
  const step = unit * power
  const ticks: number[] = []
  for (let value = Math.ceil(low / step) * step; value <= high + step * 1e-6; value += step)
    ticks.push(Number(value.toPrecision(12)))
  return ticks
}

/** The least and greatest of some lines, widened so that the curves do not touch the frame. */
export function valueRange(
  lines: readonly ChartLine[],
  least: number,
): { readonly low: number; readonly high: number } {
  let low = Infinity
  let high = -Infinity
  for (const { values } of lines) {
    for (const value of values) {
      if (value < low) low = value
      if (value > high) high = value
    }
  }
  if (low > high) return { low: 0, high: least }
  const spare = Math.max(0, least - (high - low)) / 2 + (high - low) * 0.06
  return { low: low - spare, high: high + spare }
}

/** Pixels from the top for a value. */
export const yOf = ({ low, high, px }: Scale, value: number): number => px - ((value - low) / (high - low)) * px

/** An SVG path through the points of a line. */
export function linePath(xs: readonly number[], values: readonly number[], scale: Scale): string {
  let path = ''
  for (let index = 0; index < values.length; index += 1) {
    const x = xs[index]
    const value = values[index]
    if (x === undefined || value === undefined) continue
    path += `${path === '' ? 'M' : 'L'}${x.toFixed(1)} ${yOf(scale, value).toFixed(1)}`
  }
  return path
}

export type PlacedLabel = { readonly id: string; readonly label: string; readonly y: number }

/** Labels at the ends of their lines, pushed apart so that each can be read, kept within the frame. */
export function placeLabels(wanted: readonly PlacedLabel[], gapPx: number, heightPx: number): readonly PlacedLabel[] {
  const sorted = [...wanted].sort((a, b) => a.y - b.y)
  const placed: PlacedLabel[] = []
  for (const label of sorted) {
    const above = placed[placed.length - 1]
    placed.push({ ...label, y: Math.max(label.y, above === undefined ? gapPx / 2 : above.y + gapPx) })
  }
  let floor = heightPx
  for (let index = placed.length - 1; index >= 0; index -= 1) {
    const label = placed[index]
    if (label === undefined) continue
    const y = Math.min(label.y, floor)
    placed[index] = { ...label, y }
    floor = y - gapPx
  }
  return placed
}

/** Where a plot lies in its figure, px, and which instants it spans. */
export type TimeAxis = { readonly from: number; readonly to: number; readonly leftPx: number; readonly plotPx: number }

/** The instant under a pointer, kept within the plot; `clientX` and the figure's left edge in px of the page. */
export function instantAt(clientX: number, figureLeftPx: number, { from, to, leftPx, plotPx }: TimeAxis): number {
  const share = (clientX - figureLeftPx - leftPx) / plotPx
  return from + Math.min(1, Math.max(0, share)) * (to - from)
}
