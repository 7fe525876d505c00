/** Where the viewer stands: two angles, a middle and a scale. Pure, so that keys and pointer share it. */
import type { Box, Vec3 } from './types.ts'

export type Camera = {
  /** Angle round the vehicle, rad: 0 looks along the nose from behind, positive walks round its right side. */
  readonly turn: number
  /** Angle above the floor, rad: 0 is level, a quarter turn looks straight down. */
  readonly tilt: number
  readonly zoom: number
  readonly panMm: readonly [number, number]
}

export type CameraView = 'corner' | 'plan' | 'side' | 'rear'

const QUARTER = Math.PI / 2
const HIGHEST_TILT = QUARTER - 0.001

export const CAMERA_VIEWS: Readonly<Record<CameraView, Camera>> = {
  corner: { turn: 0.7, tilt: 0.7, zoom: 1, panMm: [0, 0] },
  plan: { turn: QUARTER, tilt: HIGHEST_TILT, zoom: 1, panMm: [0, 0] },
  side: { turn: QUARTER, tilt: 0, zoom: 1, panMm: [0, 0] },
  rear: { turn: 0, tilt: 0, zoom: 1, panMm: [0, 0] },
}

export const orbit = (camera: Camera, turn: number, tilt: number): Camera => ({
  ...camera,
  turn: camera.turn + turn,
  tilt: Math.min(HIGHEST_TILT, Math.max(-0.2, camera.tilt + tilt)),
})

export const zoomBy = (camera: Camera, factor: number): Camera => ({
  ...camera,
  zoom: Math.min(8, Math.max(0.4, camera.zoom * factor)),
})

export const panBy = (camera: Camera, rightMm: number, upMm: number): Camera => ({
  ...camera,
  panMm: [camera.panMm[0] + rightMm, camera.panMm[1] + upMm],
})

/** Unit vector from the viewer into the scene, vehicle frame. */
export function viewVector({ turn, tilt }: Camera): Vec3 {
  return [Math.cos(turn) * Math.cos(tilt), -Math.sin(turn) * Math.cos(tilt), -Math.sin(tilt)]
}

/** Unit vectors to the right and up on the screen, vehicle frame. */
export function screenAxes(camera: Camera): { readonly right: Vec3; readonly up: Vec3 } {
  const { turn, tilt } = camera
  return {
    right: [Math.sin(turn), Math.cos(turn), 0],
    up: [Math.cos(turn) * Math.sin(tilt), -Math.sin(turn) * Math.sin(tilt), Math.cos(tilt)],
  }
}

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

export type Framing = { readonly middleMm: Vec3; readonly mmPerPx: number }

const ROOM = 0.95

/** Where to look and how large to draw so that all points are seen at zoom 1. */
export function frame(camera: Camera, points: readonly Vec3[], widthPx: number, heightPx: number): Framing {
  const { right, up } = screenAxes(camera)
  const view = viewVector(camera)
  const span = (axis: Vec3): readonly [middle: number, length: number] => {
    let low = Infinity
    let high = -Infinity
    for (const point of points) {
      const at = dot(axis, point)
      low = Math.min(low, at)
      high = Math.max(high, at)
    }
    return low > high ? [0, 1000] : [(low + high) / 2, Math.max(1, high - low)]
  }
  const [r, wide] = span(right)
  const [u, high] = span(up)
  const [v] = span(view)
  const [panRight, panUp] = camera.panMm
  const at = (axis: 0 | 1 | 2): number => right[axis] * (r - panRight) + up[axis] * (u - panUp) + view[axis] * v
  return {
    middleMm: [at(0), at(1), at(2)],
    mmPerPx: Math.max(wide / (widthPx * ROOM), high / (heightPx * ROOM)) / camera.zoom,
  }
}

/** Distance along the ray at which it enters the box, or null where it misses. */
export function hitBox(origin: Vec3, direction: Vec3, box: Box): number | null {
  let near = -Infinity
  let far = Infinity
  for (const axis of [0, 1, 2] as const) {
    const low = box.atMm[axis]
    const high = low + box.sizeMm[axis]
    if (Math.abs(direction[axis]) < 1e-9) {
      if (origin[axis] < low || origin[axis] > high) return null
      continue
    }
    const a = (low - origin[axis]) / direction[axis]
    const b = (high - origin[axis]) / direction[axis]
    near = Math.max(near, Math.min(a, b))
    far = Math.min(far, Math.max(a, b))
  }
  return near > far ? null : near
}
