/** A drawing as one SVG element, for the pocket sheet, the window's preview and the PDF alike. */
import { assertNever } from '../result/index.ts'
import { escapeMarkup } from './escape.ts'
import type { Drawing, Shape } from './model.ts'

export type SvgOptions = {
  /** Ink and paper; `currentColor` and a variable where a theme decides. */
  readonly ink: string
  readonly paper: string
  /** Markup of a label's text; splits it into fonts where the host must. Gets raw text, returns escaped markup. */
  readonly label?: (text: string, bold: boolean) => string
  /** `mm` for paper; `fluid` fills the width it is given. */
  readonly sizing: 'mm' | 'fluid'
}

export function drawingToSvg(drawing: Drawing, options: SvgOptions): string {
  const { widthMm, heightMm } = drawing
  const size =
    options.sizing === 'mm'
      ? `xmlns="http://www.w3.org/2000/svg" width="${number(widthMm)}mm" height="${number(heightMm)}mm"`
      : 'width="100%" role="img"'
  const title = options.sizing === 'fluid' ? `<title>${escapeMarkup(drawing.description)}</title>` : ''
  const shapes = runsOf(drawing.shapes)
    .map((run) => runToSvg(run, options))
    .join('')
  return `<svg ${size} viewBox="0 0 ${number(widthMm)} ${number(heightMm)}" fill="${options.ink}" text-anchor="middle">${title}${shapes}</svg>`
}

/** Lines and open rectangles of one weight that follow each other, as one run; any other shape alone. */
function runsOf(shapes: readonly Shape[]): readonly (readonly Shape[])[] {
  const runs: Shape[][] = []
  for (const shape of shapes) {
    const run = runs.at(-1)
    const first = run?.[0]
    if (run !== undefined && first !== undefined && strokeOnly(shape) && strokeOnly(first) && sameStroke(shape, first))
      run.push(shape)
    else runs.push([shape])
  }
  return runs
}

type Stroked = Extract<Shape, { kind: 'line' | 'rect' }>

const strokeOnly = (shape: Shape): shape is Stroked =>
  shape.kind === 'line' || (shape.kind === 'rect' && shape.fill === 'none')

const sameStroke = (a: Stroked, b: Stroked): boolean =>
  a.weightMm === b.weightMm && a.dashMm?.join() === b.dashMm?.join()

/** A run is one path: hatching and the outlines of a load would else make most of a file. */
function runToSvg(run: readonly Shape[], options: SvgOptions): string {
  const [first] = run
  if (first === undefined) return ''
  if (run.length === 1 || !strokeOnly(first)) return run.map((shape) => shapeToSvg(shape, options)).join('')
  const path = run
    .filter(strokeOnly)
    .map((shape) => strokeToPath(shape, options))
    .join('')
  return `<path d="${path}" fill="none"${stroke(first, options)}/>`
}

function strokeToPath(shape: Stroked, options: SvgOptions): string {
  const at = (mm: number): string => place(mm, options)
  if (shape.kind === 'line') {
    const [[x1, y1], [x2, y2]] = [shape.fromMm, shape.toMm]
    const to = x1 === x2 ? `V${at(y2)}` : y1 === y2 ? `H${at(x2)}` : `L${at(x2)} ${at(y2)}`
    return `M${at(x1)} ${at(y1)}${to}`
  }
  const [[x, y], [width, height]] = [shape.atMm, shape.sizeMm]
  return `M${at(x)} ${at(y)}h${at(width)}v${at(height)}h${at(-width)}z`
}

function shapeToSvg(shape: Shape, options: SvgOptions): string {
  switch (shape.kind) {
    case 'line':
      return `<line x1="${place(shape.fromMm[0], options)}" y1="${place(shape.fromMm[1], options)}" x2="${place(shape.toMm[0], options)}" y2="${place(shape.toMm[1], options)}"${stroke(shape, options)}/>`
    case 'rect': {
      const fill = shape.fill === 'ink' ? '' : ` fill="${shape.fill === 'none' ? 'none' : options.paper}"`
      return `<rect x="${place(shape.atMm[0], options)}" y="${place(shape.atMm[1], options)}" width="${place(shape.sizeMm[0], options)}" height="${place(shape.sizeMm[1], options)}"${fill}${stroke(shape, options)}/>`
    }
    case 'polyline': {
      const points = shape.pointsMm.map(([x, y]) => `${place(x, options)},${place(y, options)}`).join(' ')
      const fill = shape.fill === 'paper' ? options.paper : 'none'
      return `<${shape.closed === true ? 'polygon' : 'polyline'} points="${points}" fill="${fill}" stroke-linejoin="round"${stroke(shape, options)}/>`
    }
    case 'label':
      return labelToSvg(shape, options)
    default:
      return assertNever(shape)
  }
}

/** What the drawing's own element says already is not said again: middle anchor, ink. */
function labelToSvg(shape: Extract<Shape, { kind: 'label' }>, options: SvgOptions): string {
  const [x, y] = shape.atMm.map((mm) => place(mm, options))
  const bold = shape.bold === true
  const turn = shape.turnDeg === undefined ? '' : ` transform="rotate(${shape.turnDeg} ${x} ${y})"`
  const anchor = shape.anchor === 'middle' ? '' : ` text-anchor="${shape.anchor}"`
  const inner = options.label?.(shape.text, bold) ?? escapeMarkup(shape.text)
  const common = `x="${x}" y="${y}" font-size="${number(shape.heightMm)}"${anchor}${bold ? ' font-weight="bold"' : ''}${turn}`
  const [own, around] = shape.onInk === true ? [options.paper, options.ink] : [options.ink, options.paper]
  const fill = shape.onInk === true ? ` fill="${own}"` : ''
  if (shape.halo !== true) return `<text ${common}${fill}>${inner}</text>`
  const halo = ` stroke="${around}" stroke-width="0.9"`
  // Not every reader of print knows the order of painting: there the halo is a text of its own.
  return options.sizing === 'fluid'
    ? `<text ${common}${fill}${halo} paint-order="stroke">${inner}</text>`
    : `<text ${common} fill="none"${halo}>${inner}</text><text ${common}${fill}>${inner}</text>`
}

function stroke(
  shape: { readonly weightMm: number; readonly dashMm?: readonly number[] },
  options: SvgOptions,
): string {
  if (shape.weightMm === 0) return ''
  const dash = shape.dashMm === undefined ? '' : ` stroke-dasharray="${shape.dashMm.map(number).join(' ')}"`
  return ` stroke="${options.ink}" stroke-width="${number(shape.weightMm)}"${dash}`
}

/** A place on the drawing: a tenth of a mm is finer than a phone's screen and half the file. */
const place = (mm: number, { sizing }: SvgOptions): string =>
  sizing === 'fluid' ? String(Math.round(mm * 10) / 10) : number(mm)

/** Hundredths of a mm are finer than any printer. */
const number = (value: number): string => String(Math.round(value * 100) / 100)
