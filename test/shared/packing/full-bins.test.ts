/** A piece that does not go into its bin is told with the smallest change that takes it in, or with none where nothing does. */
import { describe, expect, it } from 'vitest'
import { packLoad } from '../../../shared/packing/index.ts'
import type { PackBin, PackPiece } from '../../../shared/packing/index.ts'
import { plainBay, plainBin, plainInput, plainPiece } from '../../support/generators/planted-load.ts'

const bin: PackBin = plainBin('crate', [320, 220, 120], [300, 200, 100])
const inBin = { binId: 'crate', uprightEdges: [2] } as const
const leftOut = (pieces: readonly PackPiece[], bins: readonly PackBin[] = [bin]) =>
  packLoad(plainInput([plainBay('boot', [0, 0, 0], [600, 500, 400])], pieces, { bins }), {
    seed: 1,
    iterations: 10,
  }).driveUnplaced.map(({ unitId, why, cure }) => ({ unitId, rules: why.map(({ rule }) => rule), cure }))

describe('a piece too many for its bin', () => {
  it('goes in if it may be turned', () => {
    expect(leftOut([plainPiece('flask', [90, 90, 250], inBin)])).toEqual([
      { unitId: 'flask', rules: ['does-not-fit'], cure: { kind: 'turn', edge: 0 } },
    ])
  })

  it('goes in if the smallest that makes room stays out', () => {
    const wide = plainPiece('wide', [200, 200, 100], inBin)
    const narrow = plainPiece('narrow', [100, 200, 100], inBin)
    const late = plainPiece('late', [90, 190, 90], inBin)
    expect(leftOut([wide, narrow, late])).toEqual([
      { unitId: 'late', rules: ['no-room'], cure: { kind: 'leave-behind', unitIds: ['narrow'] } },
    ])
  })

  it('goes into another bin that closes with it, can be lifted and holds nothing it must be kept from', () => {
    const wide = plainPiece('wide', [300, 200, 90], inBin)
    const late = plainPiece('late', [90, 190, 90], inBin)
    const box: PackBin = { ...bin, id: 'box' }
    const inBox = plainPiece('cups', [150, 200, 90], { ...inBin, binId: 'box' })
    const cureOf = (bins: readonly PackBin[], held: PackPiece = inBox) => leftOut([wide, late, held], bins)[0]?.cure
    const leave = { kind: 'leave-behind', unitIds: ['wide'] }
    expect(cureOf([bin, box])).toEqual({ kind: 'other-bin', binId: 'box' })
    expect(cureOf([bin, { ...box, liftLimitG: 600 }])).toEqual(leave)
    expect(cureOf([bin, box], { ...inBox, sizeMm: [300, 200, 90] })).toEqual(leave)
    expect(cureOf([bin, box], { ...inBox, apartFrom: ['late'] })).toEqual(leave)
  })

  it('is offered nothing where the empty bin does not take it', () => {
    expect(leftOut([plainPiece('plank', [900, 90, 90], inBin)])).toEqual([
      { unitId: 'plank', rules: ['does-not-fit'], cure: null },
    ])
  })
})
