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
  const shapes = drawing.shapes.map((shape) => shapeToSvg(shape, options)).join('')
  return `<svg ${size} viewBox="0 0 ${number(widthMm)} ${number(heightMm)}">${title}${shapes}</svg>`
}

function shapeToSvg(shape: Shape, options: SvgOptions): string {
  switch (shape.kind) {
    case 'line':
      return `<line x1="${number(shape.fromMm[0])}" y1="${number(shape.fromMm[1])}" x2="${number(shape.toMm[0])}" y2="${number(shape.toMm[1])}"${stroke(shape, options)}/>`
    case 'rect': {
      const fill = shape.fill === 'none' ? 'none' : shape.fill === 'ink' ? options.ink : options.paper
      return `<rect x="${number(shape.atMm[0])}" y="${number(shape.atMm[1])}" width="${number(shape.sizeMm[0])}" height="${number(shape.sizeMm[1])}" fill="${fill}"${stroke(shape, options)}/>`
    }
    case 'polyline': {
      const points = shape.pointsMm.map(([x, y]) => `${number(x)},${number(y)}`).join(' ')
      const fill = shape.fill === 'paper' ? options.paper : 'none'
      return `<${shape.closed === true ? 'polygon' : 'polyline'} points="${points}" fill="${fill}" stroke-linejoin="round"${stroke(shape, options)}/>`
    }
    case 'label':
      return labelToSvg(shape, options)
    default:
      return assertNever(shape)
  }
}

function labelToSvg(shape: Extract<Shape, { kind: 'label' }>, options: SvgOptions): string {
  const [x, y] = shape.atMm
  const bold = shape.bold === true
  const turn = shape.turnDeg === undefined ? '' : ` transform="rotate(${shape.turnDeg} ${number(x)} ${number(y)})"`
  const inner = options.label?.(shape.text, bold) ?? escapeMarkup(shape.text)
  const common = `x="${number(x)}" y="${number(y)}" font-size="${number(shape.heightMm)}" text-anchor="${shape.anchor}"${bold ? ' font-weight="bold"' : ''}${turn}`
  const halo =
    shape.halo === true
      ? `<text ${common} fill="none" stroke="${options.paper}" stroke-width="0.9">${inner}</text>`
      : ''
  return `${halo}<text ${common} fill="${options.ink}">${inner}</text>`
}

function stroke(
  shape: { readonly weightMm: number; readonly dashMm?: readonly number[] },
  options: SvgOptions,
): string {
  if (shape.weightMm === 0) return ''
  const dash = shape.dashMm === undefined ? '' : ` stroke-dasharray="${shape.dashMm.map(number).join(' ')}"`
  return ` stroke="${options.ink}" stroke-width="${number(shape.weightMm)}"${dash}`
}

/** Hundredths of a mm are finer than any printer. */
const number = (value: number): string => String(Math.round(value * 100) / 100)
