/** Where each thing may go at all, by day and by night: one bay, one thing, one rule at a time. */
import { describe, expect, it } from 'vitest'
import type { PackBay, PackBin, PackingInput, PackNight, PackPiece, Vec3 } from '../../../shared/packing/index.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import { plainBay, plainBin, plainInput, plainNight, plainPiece } from '../../support/generators/planted-load.ts'

const NIGHT: PackNight = plainNight('night')
const SIZE: Vec3 = [500, 400, 300]
const THING: Vec3 = [300, 200, 100]
const { traits: PLAIN } = plainPiece('thing', THING)

type Case = {
  readonly bay?: Partial<PackBay>
  readonly piece?: Partial<PackPiece>
  readonly traits?: Partial<PackPiece['traits']>
  /** By day where there is none. */
  readonly night?: Partial<PackNight>
}

const bin = (id: string): PackBin => plainBin(id, [200, 200, 100], [190, 190, 90])

const admissionIn = ({ bay = {}, piece = {}, traits = {}, night }: Case): readonly [string | null, number] => {
  const thing = plainPiece('thing', THING, { ...piece, traits: { ...PLAIN, ...traits } })
  const one = night === undefined ? null : { ...NIGHT, ...night }
  const other = plainBay('other', [2000, 0, 0], SIZE)
  const input = plainInput([plainBay('bay', [0, 0, 0], SIZE, bay), other], [thing], {
    nights: one === null ? [] : [one],
  })
  const { admissions } = sceneOf(packModelOf(input), one)
  const found = admissions[0]?.[0]
  return [found?.rule ?? null, found?.tier ?? -1]
}

const lock = (layout: 'drive' | 'bed', bayId: string) => ({ locks: [{ layout, bayId, atMm: null, sizeMm: null }] })
const opening = (face: 'x-' | 'y+' | 'z+', a: number, b: number): Partial<PackBay> => ({
  openings: [{ id: 'hole', face, fromMm: [50, 20], toMm: [50 + a, 20 + b], door: 'door', opensFromInside: false }],
})
const soft = { form: 'soft', squeezeTo01: 0.5, uprightEdges: [2] } as const
const up = { uprightEdges: [2] } as const

describe('a thing by day', () => {
  it.each<readonly [string, Case, string | null, number]>([
    ['may go into a plain bay', {}, null, 0],
    ['does not go into a bay of the site', { bay: { belongsTo: 'site' } }, 'site-bay-while-driving', 0],
    ['finds no bay that is there at night only', { bay: { usable: { drive: false, bed: true } } }, 'absent', 0],
    ['may use a bay that is there by day only', { bay: { usable: { drive: true, bed: false } } }, null, 0],
    ['stays out of other bays than its lock', { piece: lock('drive', 'other') }, 'locked', 0],
    ['goes to its lock', { piece: lock('drive', 'bay') }, null, 0],
    ['does not mind a lock of the night', { piece: lock('bed', 'other') }, null, 0],
    [
      'is too heavy one gram over the limit of a bay for single things',
      { bay: { unitLimitG: 999 } },
      'unit-too-heavy',
      0,
    ],
    ['is light enough at the very limit for single things', { bay: { unitLimitG: 1000 } }, null, 0],
    ['is too much one gram over the load limit', { bay: { loadLimitG: 999 } }, 'bay-load-limit', 0],
    ['is no load too much at the very limit', { bay: { loadLimitG: 1000 } }, null, 0],
    ['stays out of a bay for soft things', { bay: { softOnly: true } }, 'soft-only', 0],
    ['goes into a bay for soft things if soft', { bay: { softOnly: true }, piece: soft }, null, 0],
    ['of value is not left unlocked', { bay: { lockable: false }, traits: { valuable: true } }, 'not-lockable', 0],
    ['of value may lie where it can be locked', { traits: { valuable: true } }, null, 0],
    ['of no value may lie unlocked', { bay: { lockable: false } }, null, 0],
    ['of 4 kg needs no restraint', { bay: { restraint: 'none' }, piece: { massG: 4000 } }, null, 0],
    ['heavier than 4 kg needs one', { bay: { restraint: 'none' }, piece: { massG: 4001 } }, 'restraint', 0],
    ['heavier than 4 kg may lie behind a net', { bay: { restraint: 'net' }, piece: { massG: 4001 } }, null, 0],
    ['marked so needs one', { bay: { restraint: 'none' }, traits: { needsRestraint: true } }, 'restraint', 0],
    ['with fuel goes where one sleeps only in need', { traits: { fuel: true } }, null, 2],
    ['with fuel is welcome elsewhere', { bay: { sleepingSpace: false }, traits: { fuel: true } }, null, 0],
    ['goes into a bay of last resort only in need', { bay: { lastResort: true } }, null, 2],
    ['longer than the bay does not fit', { piece: { sizeMm: [501, 200, 100] } }, 'does-not-fit', 0],
    ['as long as the bay fits', { piece: { sizeMm: [500, 200, 100] } }, null, 0],
    ['that must stand may be too tall', { piece: { sizeMm: [200, 100, 301], ...up } }, 'does-not-fit', 0],
    ['too tall may lie down', { piece: { sizeMm: [200, 100, 301] } }, null, 0],
    ['passes an opening of its own outline', { bay: opening('x-', 200, 100), piece: up }, null, 0],
    ['may be turned to pass', { bay: opening('x-', 300, 100), piece: up }, null, 0],
    ['does not pass an opening too narrow', { bay: opening('x-', 199, 100), piece: up }, 'opening-too-small', 0],
    ['does not pass an opening too low', { bay: opening('x-', 200, 99), piece: up }, 'opening-too-small', 0],
    ['passes a side opening', { bay: opening('y+', 200, 100), piece: up }, null, 0],
    ['does not pass a side opening too low', { bay: opening('y+', 200, 99), piece: up }, 'opening-too-small', 0],
    ['goes down through a hole of its plan', { bay: opening('z+', 300, 200), piece: up }, null, 0],
    ['does not go down through less', { bay: opening('z+', 299, 200), piece: up }, 'opening-too-small', 0],
    ['may be pressed through if soft', { bay: opening('x-', 100, 100), piece: soft }, null, 0],
    ['may not be pressed further', { bay: opening('x-', 99, 100), piece: soft }, 'opening-too-small', 0],
    ['needs no opening where the bay has none', { bay: { openings: [] } }, null, 0],
  ])('%s', (_, one, rule, tier) => {
    expect(admissionIn(one)).toEqual([rule, tier])
  })
})

describe('a thing by night', () => {
  const cold = (lowC: number): Partial<PackNight> => ({ lowTempC: { bay: lowC } })
  const hot = (highC: number): Partial<PackNight> => ({ highTempC: { bay: highC } })
  const outside = { kind: 'outside' } as const
  const site = { belongsTo: 'site' } as const
  it.each<readonly [string, Case, string | null, number]>([
    ['may go into a plain bay', { night: {} }, null, 0],
    [
      'finds no bay that is there by day only',
      { night: {}, bay: { usable: { drive: true, bed: false } } },
      'absent',
      0,
    ],
    ['finds no bay of the site that the night does not name', { night: {}, bay: site }, 'absent', 0],
    ['finds none where another is named', { night: { foodBayIds: ['other'] }, bay: site }, 'absent', 0],
    ['had better leave the larder of the site to food', { night: { foodBayIds: ['bay'] }, bay: site }, null, 1],
    ['that is food is welcome there', { night: { foodBayIds: ['bay'] }, bay: site, traits: { food: true } }, null, 0],
    ['that smells is welcome there', { night: { foodBayIds: ['bay'] }, bay: site, traits: { scented: true } }, null, 0],
    ['that is food goes nowhere else', { night: { foodBayIds: ['other'] }, traits: { food: true } }, 'food-place', 0],
    ['that smells goes nowhere else', { night: { foodBayIds: ['other'] }, traits: { scented: true } }, 'food-place', 0],
    ['that is food may stay where no rule is', { night: {}, traits: { food: true } }, null, 0],
    ['that is no food may stay', { night: { foodBayIds: ['other'] } }, null, 0],
    [
      'does not go outside where that is not allowed',
      { night: {}, bay: outside, traits: { mayStandOutside: true } },
      'outside-not-allowed',
      0,
    ],
    [
      'does not go outside where it may not',
      { night: { outsideStorage: true }, bay: outside },
      'outside-not-allowed',
      0,
    ],
    [
      'may go outside if both allow it',
      { night: { outsideStorage: true }, bay: outside, traits: { mayStandOutside: true } },
      null,
      0,
    ],
    [
      'is as welcome outside on the site as beside the car',
      {
        night: { outsideStorage: true, foodBayIds: ['bay'] },
        bay: { ...outside, ...site },
        traits: { mayStandOutside: true },
      },
      null,
      0,
    ],
    ['with fuel does not sleep with people', { night: {}, traits: { fuel: true } }, 'fuel-in-sleeping-space', 0],
    ['with fuel may sleep elsewhere', { night: {}, bay: { sleepingSpace: false }, traits: { fuel: true } }, null, 0],
    ['freezes below its limit', { night: cold(-1), traits: { freezesBelowC: 0 } }, 'freezes', 0],
    ['does not freeze at its limit', { night: cold(0), traits: { freezesBelowC: 0 } }, null, 0],
    ['that minds no frost does not freeze', { night: cold(-20) }, null, 0],
    ['does not freeze where no cold is told', { night: {}, traits: { freezesBelowC: 0 } }, null, 0],
    ['spoils above its limit', { night: hot(9), traits: { spoilsAboveC: 8 } }, 'spoils', 0],
    ['does not spoil at its limit', { night: hot(8), traits: { spoilsAboveC: 8 } }, null, 0],
    ['that minds no heat does not spoil', { night: hot(40) }, null, 0],
    ['does not spoil where no heat is told', { night: {}, traits: { spoilsAboveC: 8 } }, null, 0],
    [
      'wanted in the night is not shut in by the bed',
      { night: {}, bay: { closedByBed: true }, piece: { access: ['night'] } },
      'closed-by-bed',
      0,
    ],
    [
      'wanted in the evening had better not be',
      { night: {}, bay: { closedByBed: true }, piece: { access: ['evening'] } },
      null,
      1,
    ],
    [
      'wanted in the morning had better not be',
      { night: {}, bay: { closedByBed: true }, piece: { access: ['morning'] } },
      null,
      1,
    ],
    ['wanted seldom may be', { night: {}, bay: { closedByBed: true } }, null, 0],
    ['wanted in the evening may lie open', { night: {}, piece: { access: ['evening'] } }, null, 0],
    ['goes into a bay of last resort only in need', { night: {}, bay: { lastResort: true } }, null, 2],
    ['stays out of other bays than its lock', { night: {}, piece: lock('bed', 'other') }, 'locked', 0],
    ['does not mind a lock of the day', { night: {}, piece: lock('drive', 'other') }, null, 0],
    ['needs no restraint', { night: {}, bay: { restraint: 'none' }, piece: { massG: 9000 } }, null, 0],
    ['that is away goes into no bay', { night: { states: { thing: 'in-use' } } }, 'absent', 0],
  ])('%s', (_, one, rule, tier) => {
    expect(admissionIn(one)).toEqual([rule, tier])
  })
})

describe('a scene', () => {
  const scenes = (input: PackingInput) => {
    const model = packModelOf(input)
    const ids = model.units.map(({ id }) => id)
    const at = (night: PackNight | null) => {
      const scene = sceneOf(model, night)
      return { scene, held: ids.filter((_, unit) => scene.traits[unit] !== null), away: scene.away }
    }
    return { model, at }
  }
  const second: PackNight = { ...NIGHT, id: 'second', states: { tent: 'left-behind', quilt: 'bed', lamp: 'in-use' } }
  const first: PackNight = { ...NIGHT, states: { tent: 'left-behind', quilt: 'left-behind' } }
  const pieces = [
    plainPiece('lamp', [50, 50, 50], { binId: 'crate', massG: 300, uses: { drive: 1, bed: 2 } }),
    plainPiece('rope', [50, 50, 50], { binId: 'crate', massG: 200, uses: { drive: 4, bed: 8 } }),
    plainPiece('tent', THING),
    plainPiece('quilt', THING),
  ]
  const bays = [
    plainBay('boot', [0, 0, 0], SIZE),
    plainBay('front', [400, 300, 200], SIZE, { usable: { drive: false, bed: true } }),
    plainBay('far', [500, 0, 0], SIZE),
    plainBay('yard', [0, 0, 0], SIZE, { belongsTo: 'site' }),
  ]
  const { model, at } = scenes(plainInput(bays, pieces, { bins: [bin('crate')], nights: [first, second] }))

  it('has no room by day for what stays at home on every night', () => {
    expect(at(null).held).toEqual(['crate', 'quilt'])
    expect(at(null).away).toEqual([{ unitId: 'tent', state: 'left-behind' }])
  })

  it('takes all along where there is no night', () => {
    expect(scenes(plainInput(bays, pieces)).at(null).away).toEqual([])
  })

  it('leaves at night what is made into the bed or at home, but never a bin', () => {
    expect(at(first).held).toEqual(['crate'])
    expect(at(second).away).toEqual([
      { unitId: 'tent', state: 'left-behind' },
      { unitId: 'quilt', state: 'bed' },
    ])
    expect(at({ ...NIGHT, states: { crate: 'in-use' } }).held).toContain('crate')
  })

  it('weighs a bin with what is in it then, and adds up how often that is wanted', () => {
    const crate = (night: PackNight | null) => at(night).scene.traits[0]
    expect([crate(null)?.massG, crate(null)?.uses]).toEqual([500 + 300 + 200, 1 + 4])
    expect([crate(first)?.massG, crate(first)?.uses]).toEqual([500 + 300 + 200, 2 + 8])
    expect([crate(second)?.massG, crate(second)?.uses]).toEqual([500 + 200, 8])
  })

  it('knows what becomes the bed on some night', () => {
    expect([...model.bedding]).toEqual(['quilt'])
  })

  it('knows bays of the vehicle that take up the same air while both are there', () => {
    // The front bay begins 100 mm inside boot and ends 400 mm past where far begins; far touches boot only; the yard is no part of the vehicle.
    expect(at(null).scene.neighbours).toEqual([[], [], [], []])
    expect(at(first).scene.neighbours).toEqual([[1], [0, 2], [1], []])
  })
})
