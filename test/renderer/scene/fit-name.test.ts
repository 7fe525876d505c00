/** A name on a unit: in the lines that let it be written largest, and never beyond its face. */
import { describe, expect, it } from 'vitest'
import { fitName } from '../../../renderer/scene/flat-drawing.ts'

const face = (width: number, height: number) => ({ x: 0, y: 0, width, height })

describe('a name on its unit', () => {
  it('stands in one line where the face is long, in more where it is narrow', () => {
    expect(fitName('Recording crate', face(400, 30), 40).lines).toEqual(['Recording crate'])
    expect(fitName('Recording crate', face(100, 100), 40).lines).toEqual(['Recording', 'crate'])
  })

  it('grows no larger than it may and stays within its face', () => {
    const { lines, letters } = fitName('Two pairs of boots on a tray', face(120, 80), 12)
    expect(letters).toBeLessThanOrEqual(12)
    expect(lines.length * letters).toBeLessThanOrEqual(80)
    for (const line of lines) expect(line.length * letters * 0.52).toBeLessThanOrEqual(120)
  })
})
