/** What is told of a whole load, in loads small enough to say it beforehand: units, nights, reach, rounds spent. */
import { describe, expect, it } from 'vitest'
import { packLoad, settlingRounds } from '../../../shared/packing/index.ts'
import type {
  NightState,
  PackBin,
  PackBudget,
  PackLock,
  PackNight,
  PackPiece,
  Vec3,
} from '../../../shared/packing/index.ts'
import { solveNight } from '../../../shared/packing/pack-night.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import { Run } from '../../../shared/packing/search/solve.ts'
import { plainBay, plainBin, plainInput, plainNight, plainPiece } from '../../support/generators/planted-load.ts'

const cube: Vec3 = [100, 100, 100]
const boot = plainBay('boot', [0, 0, 0], [500, 400, 300])
const crate: PackBin = plainBin('crate', [320, 220, 120], [300, 200, 100])
const nightOf = (id: string, states: Readonly<Record<string, NightState>> = {}): PackNight => plainNight(id, { states })
const NOW: PackBudget = { seed: 1, iterations: 0 }
const box = (id: string, change: Partial<PackPiece> = {}, sizeMm: Vec3 = cube): PackPiece =>
  plainPiece(id, sizeMm, { uprightEdges: [2], ...change })
const fixed = (
  bayId: string,
  cells: Vec3,
  layouts: readonly PackLock['layout'][] = ['drive', 'bed'],
): readonly PackLock[] =>
  layouts.map((layout) => ({
    layout,
    bayId,
    atMm: [cells[0] * 100, cells[1] * 100, cells[2] * 100],
    sizeMm: null,
  }))

describe('the units of a load', () => {
  it('are its bins with what is in them, its loose pieces, and what did not go in its bin', () => {
    const outcome = packLoad(
      plainInput(
        [boot],
        [
          box('cup', { binId: 'crate', massG: 200 }),
          box('rope', { massG: 700, access: ['evening'] }, [90, 80, 70]),
          box('plank', { binId: 'crate', massG: 900 }, [400, 90, 90]),
        ],
        { bins: [crate] },
      ),
      NOW,
    )
    expect(outcome.units).toEqual([
      { id: 'crate', kind: 'bin', pieceIds: ['cup'], sizeMm: [320, 220, 120], massG: 700 },
      { id: 'rope', kind: 'piece', pieceIds: ['rope'], sizeMm: [90, 80, 70], massG: 700 },
      { id: 'plank', kind: 'piece', pieceIds: ['plank'], sizeMm: [400, 90, 90], massG: 900 },
    ])
    expect(outcome.bins.map(({ binId, placements }) => [binId, placements.map(({ unitId }) => unitId)])).toEqual([
      ['crate', ['cup']],
    ])
    expect(outcome.drive.placements.map(({ unitId }) => unitId)).toEqual(['crate', 'rope'])
    expect(outcome.driveUnplaced.map(({ unitId, why }) => [unitId, why[0]?.bayId])).toEqual([['plank', 'crate']])
    expect(outcome.mass.loadG).toBe(1400)
    expect(outcome.loadingOrder.toSorted()).toEqual(['crate', 'rope'])
  })

  it('are told off bay by bay before those that did not go in their bin', () => {
    const outcome = packLoad(
      plainInput([boot], [box('plank', { binId: 'crate' }, [400, 90, 90]), box('mast', {}, [900, 90, 90])], {
        bins: [crate],
      }),
      NOW,
    )
    expect(outcome.driveUnplaced.map(({ unitId }) => unitId)).toEqual(['mast', 'plank'])
  })

  it('pass no limit untold: faults of the load first, then of the nights', () => {
    const input = plainInput([{ ...boot, reachFromBed: false }], [box('torch', { access: ['night'], massG: 3000 })], {
      nights: [nightOf('n')],
    })
    const outcome = packLoad({ ...input, vehicle: { ...input.vehicle, payloadG: 2999 } }, NOW)
    expect(outcome.faults).toEqual([
      { rule: 'payload', amount: 3000, limit: 2999, bayId: null, unitId: null, nightId: null },
      { rule: 'reach', amount: 0, limit: 0, bayId: 'boot', unitId: 'torch', nightId: 'n' },
    ])
    const loose = packLoad(plainInput([{ ...boot, restraint: 'none' }], [box('pan', { massG: 2000 })]), NOW)
    expect(loose.cautions.map(({ code, unitId, bayId }) => [code, unitId, bayId])).toEqual([
      ['unrestrained', 'pan', 'boot'],
    ])
  })
})

describe('reach by day and by night', () => {
  /** Two cells deep, open at the near end: the box stands before the torch. */
  const tunnel = plainBay('tunnel', [0, 0, 0], [200, 100, 100], {
    openings: [{ id: 'back', face: 'x-', fromMm: [0, 0], toMm: [100, 100], door: 'tailgate', opensFromInside: true }],
  })
  const torch = box('torch', { access: ['night'], uses: { drive: 2, bed: 3 }, locks: fixed('tunnel', [1, 0, 0]) })
  const before = box('before', { locks: fixed('tunnel', [0, 0, 0]), uses: { drive: 1, bed: 1 } })

  it('is a fault where a thing wanted in the night lies behind another, by as many', () => {
    const nights = [nightOf('first'), nightOf('second', { before: 'outside' })]
    const outcome = packLoad(plainInput([tunnel], [torch, before], { nights }), NOW)
    expect(outcome.faults).toEqual([
      { rule: 'reach', amount: 1, limit: 0, bayId: 'tunnel', unitId: 'torch', nightId: 'first' },
    ])
    expect(outcome.nights.map(({ reach }) => reach.find(({ unitId }) => unitId === 'torch')?.blockedBy)).toEqual([
      ['before'],
      [],
    ])
    // By day two uses times one before it; by night three on the first and none on the second, in the mean.
    expect(outcome.weightedReach).toBe(2 + 3 / 2)
    expect(outcome.driveReach.map(({ unitId, blockedBy }) => [unitId, blockedBy]).toSorted()).toEqual([
      ['before', []],
      ['torch', ['before']],
    ])
  })

  it('is no fault for what is not wanted in the night', () => {
    const outcome = packLoad(
      plainInput([tunnel], [{ ...torch, access: ['evening'] }, before], { nights: [nightOf('first')] }),
      NOW,
    )
    expect(outcome.faults).toEqual([])
  })

  it('counts the day alone where there is no night', () => {
    expect(packLoad(plainInput([tunnel], [torch, before]), NOW).weightedReach).toBe(2)
  })
})

describe('a night', () => {
  it('leaves all where it rides where that will do, and needs no move', () => {
    const pieces = ['a', 'b', 'c'].map((id) => box(id))
    const outcome = packLoad(plainInput([boot], pieces, { nights: [nightOf('n'), nightOf('m')] }), NOW)
    for (const { bed, changeover, changeback, unplaced } of outcome.nights) {
      expect(bed.placements).toEqual(outcome.drive.placements)
      expect([changeover.moves, changeback.moves, unplaced]).toEqual([[], [], []])
    }
    expect(outcome.nights.map(({ nightId }) => nightId)).toEqual(['n', 'm'])
  })

  it('names once each thing that is elsewhere: loose, out of its bin, or never in it', () => {
    const outcome = packLoad(
      plainInput(
        [boot],
        [
          box('quilt'),
          box('cup', { binId: 'crate' }),
          box('plank', { binId: 'crate' }, [400, 90, 90]),
          box('pan', { access: ['evening'] }),
        ],
        {
          bins: [crate],
          nights: [nightOf('n', { quilt: 'bed', cup: 'in-use', plank: 'outside', pan: 'stored' }), nightOf('m')],
        },
      ),
      NOW,
    )
    const [first, second] = outcome.nights
    expect(first?.bed.away.toSorted((a, b) => a.unitId.localeCompare(b.unitId))).toEqual([
      { unitId: 'cup', state: 'in-use' },
      { unitId: 'plank', state: 'outside' },
      { unitId: 'quilt', state: 'bed' },
    ])
    expect(second?.bed.away).toEqual([])
    expect(first?.bed.placements.map(({ unitId }) => unitId)).toEqual(['crate', 'pan'])
    expect(first?.changeover.moves.map(({ unitId, to }) => [unitId, to])).toEqual([
      ['quilt', { unitId: 'quilt', state: 'bed' }],
    ])
    expect(first?.changeover.binMoves).toEqual([{ pieceId: 'cup', binId: 'crate', state: 'in-use', afterMoves: 0 }])
    expect(second?.changeover.moves).toEqual([])
  })

  it('lacks what the day left out, for the same reason, unless it is elsewhere that night', () => {
    const outcome = packLoad(
      plainInput([boot], [box('mast', {}, [900, 90, 90]), box('pan')], {
        nights: [nightOf('n'), nightOf('m', { mast: 'outside' })],
      }),
      NOW,
    )
    const byDay = { unitId: 'mast', why: [{ bayId: 'boot', rule: 'does-not-fit', shortByMm: 400 }], cure: null }
    expect(outcome.driveUnplaced).toEqual([{ ...byDay, layout: 'drive', nightId: null }])
    expect(outcome.nights.map(({ unplaced }) => unplaced)).toEqual([[{ ...byDay, layout: 'bed', nightId: 'n' }], []])
  })

  it('has a thing that must go elsewhere not go where it would wait for one that itself bars', () => {
    // By day u stands in the tunnel before v. By night v has its place in the pit and w the tunnel's mouth; u may take v's place,
    // and would have to be put down on the way while v comes out, or the pit's second cell, and goes straight there.
    const tunnel = plainBay('tunnel', [0, 0, 0], [200, 100, 100], {
      openings: [{ id: 'back', face: 'x-', fromMm: [0, 0], toMm: [100, 100], door: 'tailgate', opensFromInside: true }],
    })
    const pit = plainBay('pit', [900, 0, 0], [200, 100, 100], { usable: { drive: false, bed: true } })
    const seat = plainBay('seat', [1800, 0, 0], [100, 100, 100], { usable: { drive: true, bed: false } })
    const pieces = [
      box('u', { locks: fixed('tunnel', [0, 0, 0], ['drive']) }),
      box('v', { locks: [...fixed('tunnel', [1, 0, 0], ['drive']), ...fixed('pit', [0, 0, 0], ['bed'])] }),
      box('w', { locks: [...fixed('seat', [0, 0, 0], ['drive']), ...fixed('tunnel', [0, 0, 0], ['bed'])] }),
    ]
    const weights = { reach: 0, dusk: 1, lowAndCentral: 0, baysKeptFree: 0 }
    for (const bays of [
      [tunnel, pit, seat],
      [pit, seat, tunnel],
    ]) {
      const outcome = packLoad(plainInput(bays, pieces, { nights: [nightOf('n')], weights }), {
        seed: 1,
        iterations: 40,
      })
      const [night] = outcome.nights
      expect(night?.changeover.moves.map(({ unitId, waits }) => [unitId, waits])).toEqual([
        ['u', false],
        ['v', false],
        ['w', false],
      ])
      expect(night?.bed.placements.find(({ unitId }) => unitId === 'u')).toMatchObject({
        bayId: 'pit',
        atMm: [100, 0, 0],
      })
    }
  })

  it('is not reached by what stays at home on every night', () => {
    const outcome = packLoad(
      plainInput([boot], [box('spare'), box('pan')], {
        nights: [nightOf('n', { spare: 'left-behind' }), nightOf('m', { spare: 'left-behind' })],
      }),
      NOW,
    )
    expect(outcome.drive.away).toEqual([{ unitId: 'spare', state: 'left-behind' }])
    expect(outcome.driveUnplaced).toEqual([])
    expect(outcome.nights.map(({ changeover, unplaced }) => [changeover.moves, unplaced])).toEqual([
      [[], []],
      [[], []],
    ])
  })

  it('of more units than are made whole is broken off once the host wants an end: nothing has a place, and no reason is told', () => {
    const solved = (units: number) => {
      const ids = Array.from({ length: units - 1 }, (_, at) => `piece-${at}`)
      const states = Object.fromEntries(ids.slice(1).map((id) => [id, 'outside' as const]))
      const night = nightOf('n', states)
      const model = packModelOf(
        plainInput([boot], [...ids.map((id) => box(id)), box('cup', { binId: 'crate' })], {
          bins: [crate],
          nights: [night, nightOf('m')],
        }),
      )
      const drive = {
        placements: [
          { unitId: 'piece-0', bayId: 'boot', atMm: [0, 0, 0], sizeMm: cube, edges: [0, 1, 2] },
          { unitId: 'piece-1', bayId: 'boot', atMm: [100, 0, 0], sizeMm: cube, edges: [0, 1, 2] },
        ],
        away: [],
      } as const
      const job = {
        model,
        night,
        driveScene: sceneOf(model, null),
        drive,
        driveReach: [],
        driveUnplaced: [],
        earlier: null,
        rounds: 0,
      }
      return solveNight(job, new Run({ seed: 1, iterations: 1, shouldStop: () => true }))
    }
    const { packing, faults, weightedReach } = solved(501)
    const none = { moves: [], lowerBound: 0, optimal: false, stuckUnitIds: ['piece-0', 'piece-1'] }
    expect(packing).toMatchObject({ nightId: 'n', reach: [], changeover: none, changeback: none })
    expect(packing.bed.placements).toEqual([])
    // A bin stays whatever is in it.
    expect(packing.unplaced).toEqual(
      ['crate', 'piece-0'].map((unitId) => ({ unitId, layout: 'bed', nightId: 'n', why: [], cure: null })),
    )
    expect([faults, weightedReach]).toEqual([[], 0])
    const whole = solved(500).packing
    expect(whole.unplaced).toEqual([])
    expect(whole.bed.placements.map(({ unitId }) => unitId)).toEqual(['crate', 'piece-0'])
    expect(whole.bed.away).toHaveLength(498)
  })
})

describe('an earlier plan', () => {
  it('is kept where it is legal', () => {
    const input = plainInput([boot], [box('a'), box('b')], { nights: [nightOf('n')] })
    const outcome = packLoad(input, NOW)
    const placements = [
      { unitId: 'a', bayId: 'boot', atMm: [170, 130, 0], sizeMm: cube, edges: [0, 1, 2] },
      { unitId: 'b', bayId: 'boot', atMm: [170, 130, 100], sizeMm: cube, edges: [0, 1, 2] },
    ] as const
    const again = packLoad(input, { ...NOW, startFrom: { ...outcome, drive: { placements, away: [] } } })
    expect(again.drive.placements).toEqual(placements)
    expect(outcome.drive.placements).not.toEqual(placements)
  })
})

describe('rounds', () => {
  it('that settle a load are 36 000 over its pieces, 800 at most', () => {
    expect([0, 1, 45, 46, 100, 400, 401, 36_000, 72_000].map(settlingRounds)).toEqual([
      800, 800, 800, 783, 360, 90, 90, 1, 1,
    ])
  })

  it('are spent as asked for: all on the day where there is no night, else two fifths on it and the rest shared', () => {
    const spent = (iterations: number, nights: number): number =>
      packLoad(
        plainInput([boot], [box('a')], { nights: Array.from({ length: nights }, (_, at) => nightOf(`${at}`)) }),
        {
          seed: 1,
          iterations,
        },
      ).iterations
    expect(spent(50, 0)).toBe(50)
    // 20 for the day, 30 for the night.
    expect(spent(50, 1)).toBe(50)
    // 4 for the day, and of 6 one for each of four nights.
    expect(spent(10, 4)).toBe(8)
    expect(spent(0, 2)).toBe(0)
  })

  it('beyond 1600 are spent in passes, all of them, and none once the host wants an end', () => {
    const empty = plainInput([boot], [])
    for (const iterations of [1600, 1601, 5000]) {
      const outcome = packLoad(empty, { seed: 1, iterations })
      expect([outcome.iterations, outcome.cancelled]).toEqual([iterations, false])
    }
    let asked = 0
    const stopped = packLoad(empty, { seed: 1, iterations: 5000, shouldStop: () => ++asked > 1000 })
    expect(stopped.cancelled).toBe(true)
    expect(stopped.iterations).toBeGreaterThanOrEqual(400)
    expect(stopped.iterations).toBeLessThan(1000)
    const atOnce = packLoad(empty, { seed: 1, iterations: 5000, shouldStop: () => true })
    expect([atOnce.cancelled, atOnce.iterations]).toEqual([true, 0])
  })

  it('are told as they go, up to all of them, the moves of each night by name', () => {
    const told: (readonly [number, string])[] = []
    packLoad(plainInput([boot], [box('a'), box('b')], { nights: [nightOf('n')] }), {
      seed: 1,
      iterations: 100,
      onProgress: (done01, note) => told.push([done01, note]),
    })
    const shares = told.map(([done01]) => done01)
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
    expect(told.at(-1)).toEqual([1, 'changeover'])
    expect(told.filter(([, note]) => note === 'changeover')).toHaveLength(1)
    const bed = told.findIndex(([, note]) => note === 'bed')
    expect(bed).toBeGreaterThan(0)
    expect(told.slice(0, bed).every(([done01, note]) => note === 'drive' && done01 <= 0.4)).toBe(true)
    const without: number[] = []
    packLoad(plainInput([boot], [box('a')], { nights: [nightOf('n')] }), {
      ...NOW,
      onProgress: (done01) => without.push(done01),
    })
    expect(without).toEqual([0])
  })

  it('the same, from the same seed, give the same plan', () => {
    const pieces = Array.from({ length: 5 }, (_, at) => box(`p${at}`, {}, [90 + 10 * at, 120, 80]))
    const input = plainInput([boot], pieces, { nights: [nightOf('n', { p0: 'bed' })] })
    expect(packLoad(input, { seed: 5, iterations: 20 })).toEqual(packLoad(input, { seed: 5, iterations: 20 }))
  })
})
