/** Names drawn on the faces that look at the viewer: one canvas holds all of them, one mesh shows them. */
import { CanvasTexture, LinearFilter, SRGBColorSpace } from 'three'
import type { Box, Vec3 } from './types.ts'
import { wrapName } from './wrap-name.ts'

const LINE_PX = 38
const FONT_PX = 30
const SHEET_PX = 2048
const RIM_PX = 8
const GAP_PX = 2

/** A place on the sheet that holds one name in one wrapping. */
export type LabelCell = {
  readonly u0: number
  readonly v0: number
  readonly u1: number
  readonly v1: number
  /** Width over height of the whole cell. */
  readonly aspect: number
  readonly lines: number
}

export type LabelSheet = { readonly texture: CanvasTexture; readonly cells: ReadonlyMap<string, readonly LabelCell[]> }

type Spot = {
  readonly name: string
  readonly lines: readonly string[]
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A sheet with each name in up to three wrappings, in `ink` with a rim of `ground` that keeps hatching off the letters. */
export function drawLabelSheet(names: readonly string[], fontFamily: string, ink: string, ground: string): LabelSheet {
  const canvas = document.createElement('canvas')
  const context = canvas.getContext('2d')
  const font = `500 ${FONT_PX}px ${fontFamily}`
  const spots: Spot[] = []
  if (context !== null) context.font = font
  let x = 0
  let y = 0
  for (const name of names) {
    for (const lines of wrapName(name)) {
      const width = Math.min(
        SHEET_PX,
        Math.ceil(Math.max(...lines.map((line) => context?.measureText(line).width ?? 1))) + RIM_PX,
      )
      const height = 3 * LINE_PX
      if (x + width > SHEET_PX) {
        x = 0
        y += height + GAP_PX
      }
      spots.push({ name, lines, x, y, width, height: lines.length * LINE_PX })
      x += width + GAP_PX
    }
  }
  canvas.width = SHEET_PX
  canvas.height = y + 3 * LINE_PX + GAP_PX
  const cells = new Map<string, readonly LabelCell[]>()
  if (context !== null) {
    Object.assign(context, {
      font,
      fillStyle: ink,
      strokeStyle: ground,
      lineWidth: RIM_PX,
      lineJoin: 'round',
      textBaseline: 'middle',
      textAlign: 'center',
    })
    for (const spot of spots) {
      spot.lines.forEach((line, index) => {
        const at = [spot.x + spot.width / 2, spot.y + (index + 0.5) * LINE_PX] as const
        context.strokeText(line, ...at)
        context.fillText(line, ...at)
      })
      const cell: LabelCell = {
        u0: spot.x / SHEET_PX,
        u1: (spot.x + spot.width) / SHEET_PX,
        v0: 1 - (spot.y + spot.height) / canvas.height,
        v1: 1 - spot.y / canvas.height,
        aspect: spot.width / spot.height,
        lines: spot.lines.length,
      }
      cells.set(spot.name, [...(cells.get(spot.name) ?? []), cell])
    }
  }
  const texture = new CanvasTexture(canvas)
  texture.colorSpace = SRGBColorSpace
  texture.minFilter = LinearFilter
  texture.generateMipmaps = false
  return { texture, cells }
}

export type LabelQuad = {
  /** Middle of the name, and the half-vectors along and up the writing; vehicle frame. */
  readonly centre: Vec3
  readonly along: Vec3
  readonly up: Vec3
}

type Face = 'top' | 'end' | 'side'
type Option = { readonly face: Face; readonly cell: LabelCell; readonly lineMm: number; readonly worth: number }

/** A name may stand a little over the edge of its face: its rim keeps it legible. */
const SHARE_OF_FACE = 1.08
const LARGEST_LINE_MM = 120
const LIFT_MM = 3

/** A box's name on the face and in the wrapping that give the largest letters to a viewer looking along `view`; null where none is large enough. */
export function placeLabel(
  box: Box,
  cells: readonly LabelCell[],
  view: Vec3,
  smallestMm: number,
): { readonly quad: LabelQuad; readonly cell: LabelCell } | null {
  const [length, width, height] = box.sizeMm
  const faces: readonly { readonly face: Face; readonly wide: number; readonly high: number; readonly seen: number }[] =
    [
      { face: 'top', wide: length, high: width, seen: Math.abs(view[2]) },
      { face: 'end', wide: width, high: height, seen: Math.abs(view[0]) },
      { face: 'side', wide: length, high: height, seen: Math.abs(view[1]) },
    ]
  let best: Option | null = null
  for (const { face, wide, high, seen } of faces) {
    for (const cell of cells) {
      const whole = Math.min(high * SHARE_OF_FACE, (wide * SHARE_OF_FACE) / cell.aspect)
      const lineMm = Math.min(LARGEST_LINE_MM, whole / cell.lines)
      const worth = lineMm * (0.3 + seen)
      if (seen > 0.12 && (best === null || worth > best.worth)) best = { face, cell, lineMm, worth }
    }
  }
  if (best === null || best.lineMm < smallestMm) return null
  const halfHigh = (best.lineMm * best.cell.lines) / 2
  return { quad: quadOn(box, best.face, [halfHigh * best.cell.aspect, halfHigh], view), cell: best.cell }
}

function quadOn(box: Box, face: Face, [halfWide, halfHigh]: readonly [number, number], view: Vec3): LabelQuad {
  const [x, y, z] = box.atMm
  const [length, width, height] = box.sizeMm
  const middle: Vec3 = [x + length / 2, y + width / 2, z + height / 2]
  const fromRight = view[1] < 0 ? 1 : -1
  const fromRear = view[0] > 0
  if (face === 'top') {
    return {
      centre: [middle[0], middle[1], z + height + LIFT_MM],
      along: [halfWide * fromRight, 0, 0],
      up: [0, -halfHigh * fromRight, 0],
    }
  }
  if (face === 'end') {
    return {
      centre: [fromRear ? x - LIFT_MM : x + length + LIFT_MM, middle[1], middle[2]],
      along: [0, fromRear ? halfWide : -halfWide, 0],
      up: [0, 0, halfHigh],
    }
  }
  return {
    centre: [middle[0], view[1] < 0 ? y + width + LIFT_MM : y - LIFT_MM, middle[2]],
    along: [halfWide * fromRight, 0, 0],
    up: [0, 0, halfHigh],
  }
}
