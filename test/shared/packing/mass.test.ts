/** Axles, roof, bays and cautions of a car of three bays, by moments worked out by hand. */
import { describe, expect, it } from 'vitest'
import type {
  Layout,
  PackBay,
  PackingInput,
  PackPiece,
  PackVehicle,
  Placement,
  Vec3,
} from '../../../shared/packing/index.ts'
import { stateFrom } from '../../../shared/packing/layout.ts'
import { cautionsOf, massFaults, massReport } from '../../../shared/packing/mass.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import { plainBay, plainInput, plainPiece, standing } from '../../support/generators/planted-load.ts'

const SIZE: Vec3 = [1000, 1000, 500]
const VEHICLE: PackVehicle = {
  payloadG: 100_000,
  frontAxle: { limitG: 800_000, readyG: 700_000 },
  rearAxle: { limitG: 800_000, readyG: 600_000 },
  rearAxleXMm: 500,
  wheelbaseMm: 2500,
  roofLimitG: 50_000,
  seatBackHeightMm: 700,
  driverSide: 'left',
}

type Load = {
  readonly bays: readonly PackBay[]
  readonly pieces: readonly PackPiece[]
  readonly placements: readonly Placement[]
  readonly vehicle?: Partial<PackVehicle>
}

const judged = ({ bays, pieces, placements, vehicle = {} }: Load) => {
  const input: PackingInput = { ...plainInput(bays, pieces), vehicle: { ...VEHICLE, ...vehicle } }
  const scene = sceneOf(packModelOf(input), null)
  const layout: Layout = { placements, away: [] }
  const state = stateFrom(scene, layout)
  const report = massReport(scene, state)
  return { report, faults: massFaults(scene, report), cautions: cautionsOf(scene, state) }
}

const boot = plainBay('boot', [0, 0, 0], SIZE)
const front = plainBay('front', [2500, 0, 100], SIZE)
const roof = plainBay('roof', [1000, 0, 1500], SIZE, { kind: 'roof-box' })
const yard = plainBay('yard', [-2000, 0, 0], SIZE, { belongsTo: 'site', kind: 'outside' })
const cube: Vec3 = [200, 200, 200]

const whole: Load = {
  bays: [boot, front, roof, yard],
  pieces: [
    plainPiece('jack', cube, { massG: 20_000 }),
    plainPiece('fridge', cube, { massG: 30_000 }),
    plainPiece('board', cube, { massG: 10_000 }),
    plainPiece('stove', cube, { massG: 40_000 }),
  ],
  placements: [
    standing('jack', 'boot', [0, 100, 0], cube),
    standing('fridge', 'front', [400, 400, 0], cube),
    standing('board', 'roof', [400, 600, 0], cube),
    standing('stove', 'yard', [0, 0, 0], cube),
  ],
}

describe('the masses of a load', () => {
  it('share out over the axles by the lever rule, and leave out what stands on the site', () => {
    // Middles along x: jack 0 + 0 + 100 = 100, fridge 2500 + 400 + 100 = 3000, board 1000 + 400 + 100 = 1500.
    // Front share: (20 (100 − 500) + 30 (3000 − 500) + 10 (1500 − 500)) / 2500 kg = (−8000 + 75 000 + 10 000) / 2500 = 30.8 kg; rear 60 − 30.8 = 29.2 kg.
    // Centre: x (2000 + 90 000 + 15 000) / 60 = 1783.3; y (20 · 200 + 30 · 500 + 10 · 700) / 60 = 433.3; z (20 · 100 + 30 · 200 + 10 · 1600) / 60 = 400.
    expect(judged(whole).report).toEqual({
      loadG: 60_000,
      payloadG: 100_000,
      frontAxleG: 730_800,
      rearAxleG: 629_200,
      roofG: 10_000,
      bayG: { boot: 20_000, front: 30_000, roof: 10_000, yard: 40_000 },
      centreMm: [1783, 433, 400],
    })
  })

  it('have no axle where the vehicle does not give it', () => {
    const axles = (vehicle: Partial<PackVehicle>) => {
      const { frontAxleG, rearAxleG } = judged({ ...whole, vehicle }).report
      return [frontAxleG, rearAxleG]
    }
    expect(axles({ rearAxleXMm: null })).toEqual([null, null])
    expect(axles({ wheelbaseMm: null })).toEqual([null, null])
    expect(axles({ frontAxle: null })).toEqual([null, 629_200])
    expect(axles({ rearAxle: null })).toEqual([730_800, null])
  })

  it('have their centre at the corner where there are none', () => {
    const { report } = judged({ ...whole, placements: [] })
    expect([report.loadG, report.centreMm, report.frontAxleG]).toEqual([0, [0, 0, 0], 700_000])
  })

  it('pass a limit by one gram and not at it', () => {
    const told = (vehicle: Partial<PackVehicle>) =>
      judged({ ...whole, vehicle }).faults.map(({ rule, amount, limit }) => [rule, amount, limit])
    expect(told({})).toEqual([])
    expect(told({ payloadG: 60_000, roofLimitG: 10_000 })).toEqual([])
    expect(told({ payloadG: 59_999 })).toEqual([['payload', 60_000, 59_999]])
    expect(told({ roofLimitG: 9_999 })).toEqual([['roof-load', 10_000, 9_999]])
    expect(told({ roofLimitG: null })).toEqual([])
    expect(told({ frontAxle: { readyG: 700_000, limitG: 730_800 } })).toEqual([])
    expect(told({ frontAxle: { readyG: 700_000, limitG: 730_799 } })).toEqual([['front-axle', 730_800, 730_799]])
    expect(told({ rearAxle: { readyG: 600_000, limitG: 629_199 } })).toEqual([['rear-axle', 629_200, 629_199]])
    expect(judged({ ...whole, vehicle: { payloadG: 1 } }).faults).toEqual([
      { rule: 'payload', amount: 60_000, limit: 1, bayId: null, unitId: null, nightId: null },
    ])
  })
})

describe('what wants saying of a load by day', () => {
  const said = (bay: Partial<PackBay>, piece: Partial<PackPiece>, z = 0): readonly string[] => {
    const own = plainBay('bay', [0, 0, 600], SIZE, { sleepingSpace: false, ...bay })
    const placements = [standing('thing', 'bay', [0, 0, z], cube)]
    return judged({ bays: [own], pieces: [plainPiece('thing', cube, piece)], placements }).cautions.map(
      ({ code }) => code,
    )
  }
  const { traits } = plainPiece('thing', cube)
  const fuel = { traits: { ...traits, fuel: true } }

  it('is fuel where one sleeps', () => {
    expect(said({ sleepingSpace: true }, fuel)).toEqual(['fuel-in-cabin'])
    expect(said({}, fuel)).toEqual([])
    expect(said({ sleepingSpace: true }, {})).toEqual([])
  })

  it('is a thing of 2 kg that nothing holds, unless it is outside', () => {
    const low = { originMm: [0, 0, 0] as const }
    expect(said({ ...low, restraint: 'none' }, { massG: 2000 })).toEqual(['unrestrained'])
    expect(said({ ...low, restraint: 'none' }, { massG: 1999 })).toEqual([])
    expect(said({ ...low, restraint: 'strap' }, { massG: 2000 })).toEqual([])
    expect(said({ ...low, restraint: 'none', kind: 'outside' }, { massG: 2000 })).toEqual([])
  })

  it('is a thing that rises above the seat backs with no net, partition or lid to hold it', () => {
    // The bay's floor is 600 mm up and the thing 200 mm high: its top is at 800 mm, the seat backs at 700 mm.
    expect(said({ restraint: 'strap' }, { massG: 2000 })).toEqual(['above-seat-back'])
    for (const restraint of ['barrier', 'net', 'lid'] as const) expect(said({ restraint }, { massG: 2000 })).toEqual([])
    expect(said({ restraint: 'strap', originMm: [0, 0, 500] }, { massG: 2000 })).toEqual([])
    expect(said({ restraint: 'strap', originMm: [0, 0, 501] }, { massG: 2000 })).toEqual(['above-seat-back'])
  })

  it('is 10 kg whose middle is higher than the seat backs', () => {
    // Middle at 600 + 100 = 700 mm: not above; 1 mm higher it is.
    expect(said({}, { massG: 10_000 })).toEqual([])
    expect(said({}, { massG: 10_000 }, 1)).toEqual(['heavy-high'])
    expect(said({}, { massG: 9_999 }, 1)).toEqual([])
  })

  it('comes with the force of a crash in kilonewtons, fuel without', () => {
    // 10 kg · 9.80665 m/s² = 98.0665 N; times 20 and 50: 1.96 and 4.90 kN.
    const bay = plainBay('bay', [0, 0, 0], SIZE, { restraint: 'none' })
    const pieces = [plainPiece('can', cube, { ...fuel, massG: 10_000 })]
    const { cautions } = judged({ bays: [bay], pieces, placements: [standing('can', 'bay', [0, 0, 0], cube)] })
    expect(cautions).toEqual([
      { code: 'fuel-in-cabin', unitId: 'can', bayId: 'bay', forceKn: null },
      { code: 'unrestrained', unitId: 'can', bayId: 'bay', forceKn: [2, 4.9] },
    ])
  })
})
