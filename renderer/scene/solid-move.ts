/** A movement of the pointer over the solid drawing as one over a flat drawing: on the floor from above, upright from the side, and lifting alone. Pure. */
import { screenAxes, viewVector } from './camera.ts'
import type { Camera } from './camera.ts'
import type { FlatView } from './flat-drawing.ts'

export type FlatMove = { readonly view: FlatView; readonly byMm: readonly [number, number] }

/** Below this angle above the floor the floor is seen too flat to move on, rad. */
const LOWEST_TILT = 0.35
/** Seen from nearer straight above than this share, a lift cannot be seen and is none. */
const LEAST_UPRIGHT = 0.2

/** `rightMm`, `upMm`: the way on the screen, mm of the scene. `lift`: only up and down. */
export function solidMove(camera: Camera, rightMm: number, upMm: number, lift: boolean): FlatMove {
  const { right, up } = screenAxes(camera)
  const view = viewVector(camera)
  if (lift) return { view: 'side', byMm: [0, up[2] < LEAST_UPRIGHT ? 0 : -upMm / up[2]] }
  if (camera.tilt >= LOWEST_TILT) {
    const det = right[0] * up[1] - right[1] * up[0]
    return {
      view: 'plan',
      byMm: [(rightMm * up[1] - upMm * right[1]) / det, (upMm * right[0] - rightMm * up[0]) / det],
    }
  }
  const across = Math.abs(view[1]) >= Math.abs(view[0]) ? 0 : 1
  const along = rightMm / right[across]
  const rise = (upMm - up[across] * along) / up[2]
  return { view: across === 0 ? 'side' : 'rear', byMm: [along, -rise] }
}
