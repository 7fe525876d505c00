/** A movement over the solid drawing goes where the pointer goes: whatever the view, the unit stays under it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CAMERA_VIEWS, dot, screenAxes } from '../../../renderer/scene/camera.ts'
import type { Camera } from '../../../renderer/scene/camera.ts'
import { VIEW_AXES } from '../../../renderer/scene/flat-drawing.ts'
import { solidMove } from '../../../renderer/scene/solid-move.ts'
import type { FlatMove } from '../../../renderer/scene/solid-move.ts'

/** The movement in the vehicle frame, as a hand makes it of the one on the drawing. */
function inSpace({ view, byMm }: FlatMove): [number, number, number] {
  const { across, down, flipDown } = VIEW_AXES[view]
  const way: [number, number, number] = [0, 0, 0]
  way[across] += byMm[0]
  way[down] += flipDown ? -byMm[1] : byMm[1]
  return way
}
const onScreen = (camera: Camera, move: FlatMove): readonly [number, number] => {
  const { right, up } = screenAxes(camera)
  const way = inSpace(move)
  return [dot(right, way), dot(up, way)]
}

describe('a movement over the solid drawing', () => {
  it('keeps the unit under the pointer from every side, seed 7', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: -0.2, max: 1.5, noNaN: true }),
        fc.integer({ min: -500, max: 500 }),
        fc.integer({ min: -500, max: 500 }),
        (turn, tilt, rightMm, upMm) => {
          const camera: Camera = { ...CAMERA_VIEWS.corner, turn, tilt }
          const [right, up] = onScreen(camera, solidMove(camera, rightMm, upMm, false))
          expect(right).toBeCloseTo(rightMm, 6)
          expect(up).toBeCloseTo(upMm, 6)
        },
      ),
      { seed: 7, numRuns: 300 },
    )
  })

  it('stays on the floor from above and lifts only when it is to lift', () => {
    expect(inSpace(solidMove(CAMERA_VIEWS.corner, 80, -40, false))[2]).toBe(0)
    const lifted = inSpace(solidMove(CAMERA_VIEWS.corner, 80, 40, true))
    expect(lifted[0]).toBe(0)
    expect(lifted[2]).toBeCloseTo(40 / Math.cos(CAMERA_VIEWS.corner.tilt), 6)
  })

  it('lifts nothing seen straight from above', () => {
    expect(inSpace(solidMove(CAMERA_VIEWS.plan, 0, 40, true))).toEqual([0, 0, 0])
  })
})
