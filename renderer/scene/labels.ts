/** Names drawn on the faces that look at the viewer: one canvas holds all of them, one mesh shows them. */
import { CanvasTexture, LinearFilter, SRGBColorSpace } from 'three'
import type { Box, Vec3 } from './types.ts'

const ROW_PX = 44
const FONT_PX = 32
const WIDTH_PX = 1024
const COLUMNS = 2
const RIM_PX = 8

type Cell = { readonly u0: number; readonly v0: number; readonly u1: number; readonly v1: number; readonly aspect: number }

export type LabelSheet = { readonly texture: CanvasTexture; readonly cells: ReadonlyMap<string, Cell> }

/** A sheet with each name once, in `ink` with a rim of `ground` that keeps hatching off the letters. */
export function drawLabelSheet(names: readonly string[], fontFamily: string, ink: string, ground: string): LabelSheet {
  const rows = Math.max(1, Math.ceil(names.length / COLUMNS))
  const canvas = document.createElement('canvas')
  canvas.width = WIDTH_PX
  canvas.height = rows * ROW_PX
  const context = canvas.getContext('2d')
  const cells = new Map<string, Cell>()
  if (context !== null) {
    context.font = `500 ${FONT_PX}px ${fontFamily}`
    context.fillStyle = ink
    context.strokeStyle = ground
    context.lineWidth = RIM_PX
    context.lineJoin = 'round'
    context.textBaseline = 'middle'
    names.forEach((name, index) => {
      const x = (index % COLUMNS) * (WIDTH_PX / COLUMNS)
      const y = Math.floor(index / COLUMNS) * ROW_PX
      const text = shorten(name, WIDTH_PX / COLUMNS - 8, (part) => context.measureText(part).width)
      const width = Math.ceil(context.measureText(text).width) + RIM_PX
      context.strokeText(text, x + RIM_PX / 2, y + ROW_PX / 2)
      context.fillText(text, x + RIM_PX / 2, y + ROW_PX / 2)
      cells.set(name, {
        u0: x / WIDTH_PX,
        u1: (x + width) / WIDTH_PX,
        v0: 1 - (y + ROW_PX) / canvas.height,
        v1: 1 - y / canvas.height,
        aspect: width / ROW_PX,
      })
    })
  }
  const texture = new CanvasTexture(canvas)
  texture.colorSpace = SRGBColorSpace
  texture.minFilter = LinearFilter
  texture.generateMipmaps = false
  return { texture, cells }
}

function shorten(text: string, most: number, measure: (part: string) => number): string {
  if (measure(text) <= most) return text
  let length = text.length - 1
  while (length > 1 && measure(`${text.slice(0, length)}…`) > most) length -= 1
  return `${text.slice(0, length)}…`
}

export type LabelFace = 'top' | 'end' | 'side'

export type LabelQuad = {
  readonly face: LabelFace
  /** Middle of the name, and the half-vectors along and up the writing; vehicle frame. */
  readonly centre: Vec3
  readonly along: Vec3
  readonly up: Vec3
}

const SHARE_OF_FACE = 0.86
const LARGEST_MM = 74
const LIFT_MM = 3

/** The quads for a box's name on its best face: the one that shows the largest letters to a viewer looking along `view`. */
export function placeLabel(box: Box, aspect: number, view: Vec3, smallestMm: number): LabelQuad | null {
  const [length, width, height] = box.sizeMm
  const forward = view[1] < 0 ? 1 : -1
  const rearward = view[0] > 0
  const options: readonly { face: LabelFace; wide: number; high: number; seen: number }[] = [
    { face: 'top', wide: length, high: width, seen: Math.abs(view[2]) },
    { face: 'end', wide: width, high: height, seen: Math.abs(view[0]) },
    { face: 'side', wide: length, high: height, seen: Math.abs(view[1]) },
  ]
  let best: { readonly face: LabelFace; readonly letters: number; readonly seen: number } | null = null
  for (const { face, wide, high, seen } of options) {
    const letters = Math.min(LARGEST_MM, high * SHARE_OF_FACE, (wide * SHARE_OF_FACE) / aspect)
    const worth = letters * (0.25 + seen)
    if (best === null || worth > best.letters * (0.25 + best.seen)) best = { face, letters, seen }
  }
  if (best === null || best.letters < smallestMm) return null
  const [x, y, z] = box.atMm
  const halfHigh = best.letters / 2
  const halfWide = halfHigh * aspect
  const middle: Vec3 = [x + length / 2, y + width / 2, z + height / 2]
  if (best.face === 'top') {
    return {
      face: 'top',
      centre: [middle[0], middle[1], z + height + LIFT_MM],
      along: [halfWide * forward, 0, 0],
      up: [0, -halfHigh * forward, 0],
    }
  }
  if (best.face === 'end') {
    return {
      face: 'end',
      centre: [rearward ? x - LIFT_MM : x + length + LIFT_MM, middle[1], middle[2]],
      along: [0, rearward ? halfWide : -halfWide, 0],
      up: [0, 0, halfHigh],
    }
  }
  return {
    face: 'side',
    centre: [middle[0], view[1] < 0 ? y + width + LIFT_MM : y - LIFT_MM, middle[2]],
    along: [halfWide * forward, 0, 0],
    up: [0, 0, halfHigh],
  }
}
