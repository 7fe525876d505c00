/** Where one unit is put: against judging every place there is, and on plain cases where the right place is plain. */
import { describe, expect, it } from 'vitest'
import { copyBay, freeSpaces, poseRule } from '../../../shared/packing/bay-state.ts'
import { boxAt } from '../../../shared/packing/geometry.ts'
import type { Box } from '../../../shared/packing/geometry.ts'
import type { PackBay, PackingInput, PackNight, PackPiece, Placement, Vec3 } from '../../../shared/packing/index.ts'
import { layoutOf, stateFrom } from '../../../shared/packing/layout.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { insert } from '../../../shared/packing/search/insert.ts'
import type { Origin } from '../../../shared/packing/search/objective.ts'
import { SpotList } from '../../../shared/packing/search/spot-list.ts'
import { branch, clashes } from '../../../shared/packing/search/state.ts'
import type { SceneState } from '../../../shared/packing/search/state.ts'
import { plainBay, plainInput, plainPiece, standing } from '../../support/generators/planted-load.ts'
import { scattered } from '../../support/generators/scattered.ts'
import { smallLoad } from '../../support/generators/small-load.ts'
import { bestPlaces } from '../../support/oracle/best-place.ts'
import type { Place } from '../../support/oracle/best-place.ts'
import type { Solid } from '../../support/oracle/boxes.ts'

const CASES = 60
const NOISE_01 = 0.5

const solidOfBox = (box: Box): Solid => ({ lo: [box.x1, box.y1, box.z1], hi: [box.x2, box.y2, box.z2] })
const noNoise = (origin: Origin | null) => ({ random: randomFrom(1), noise01: 0, origin, list: new SpotList() })

/** A few units scattered, the others yet to be put in. */
const begun = (scene: Scene, seed: number): SceneState => {
  const few = { ...scene, traits: scene.traits.map((traits, unit) => (unit % 2 === seed % 2 ? traits : null)) }
  return scattered(few, randomFrom(seed))
}

describe('a unit put in', () => {
  it(`goes where it costs least of all places looked at, in ${CASES} loads begun at random`, () => {
    let put = 0
    let nowhere = 0
    let stayed = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const input = smallLoad(randomFrom(seed))
      const night = seed % 2 === 0 ? (input.nights[0] ?? null) : null
      const scene = sceneOf(packModelOf(input), night)
      const state = begun(scene, seed)
      const { placements } = layoutOf(scene, state)
      const homes = layoutOf(scene, begun(scene, seed + 1)).placements
      const origin: Origin | null =
        seed % 5 === 0
          ? null
          : scene.model.units.map(
              ({ id }) => homes.find(({ unitId }) => unitId === id) ?? (seed % 4 === 0 ? null : 'free'),
            )
      // Judgements off by a half one way, the other way, or not at all: the same number for every place.
      const drawn = [0.5, 0, 1][seed % 3] ?? 0.5
      const options = { random: () => drawn, noise01: NOISE_01, origin, list: new SpotList() }
      const factor = 1 + NOISE_01 * (2 * drawn - 1)
      const spaces = state.bays.map((bay) => freeSpaces(bay).map(solidOfBox))
      const parts = scene.model.bays.map(({ solids }) =>
        solids.map(({ box, face }) => ({ solid: solidOfBox(box), face })),
      )
      for (const { index: unit, id } of scene.model.units) {
        if (scene.traits[unit] === null || (state.where[unit] ?? -1) >= 0) continue
        const spot = origin?.[unit] ?? null
        const home = spot === 'free' ? null : spot
        const allowed = ({ bay: at, atMm, sizeMm }: Place): boolean => {
          const bay = state.bays[at]
          const box = boxAt(atMm, sizeMm)
          return bay !== undefined && poseRule(scene, bay, unit, box) === null && !clashes(scene, state, at, box)
        }
        const judged = bestPlaces({ scene, unit, placements, spaces, parts, home, allowed, factor })
        const fresh: SceneState = { ...branch(state), bays: state.bays.map(copyBay) }
        const done = insert(scene, fresh, unit, new Set(), options)
        const label = `seed ${seed}, ${id}`
        expect([label, done]).toEqual([label, judged.length > 0])
        const [best] = judged
        if (best === undefined) {
          expect([label, fresh.where[unit]]).toEqual([label, -1])
          nowhere++
          continue
        }
        const now = layoutOf(scene, fresh).placements.find(({ unitId }) => unitId === id)
        const bayAt = scene.model.bays.findIndex(({ bay }) => bay.id === now?.bayId)
        expect([label, fresh.where[unit]]).toEqual([label, bayAt])
        const own = judged.find(
          ({ bay, atMm, sizeMm }) =>
            bay === bayAt && atMm.join() === now?.atMm.join() && sizeMm.join() === now?.sizeMm.join(),
        )
        expect([label, own !== undefined]).toEqual([label, true])
        expect([label, (own?.cost ?? Infinity) - best.cost < 1e-9]).toEqual([label, true])
        put++
        if (home !== null && now?.atMm.join() === home.atMm.join() && now.bayId === home.bayId) stayed++
      }
    }
    expect(put).toBeGreaterThan(CASES)
    expect(nowhere).toBeGreaterThan(5)
    expect(stayed).toBeGreaterThan(5)
  })
})

describe('the place of a single thing', () => {
  const NIGHT: PackNight = { id: 'n', states: {}, lowTempC: {}, highTempC: {}, outsideStorage: false, foodBayIds: null }
  type Given = {
    readonly bays: readonly PackBay[]
    readonly pieces: readonly PackPiece[]
    readonly there?: readonly Placement[]
    readonly home?: Placement
    readonly night?: boolean
    readonly change?: Partial<PackingInput>
    /** The number drawn for every judgement, each off by up to a half. */
    readonly drawn?: number
  }
  /** Where the last piece goes. */
  const placed = ({
    bays,
    pieces,
    there = [],
    home,
    night = false,
    change = {},
    drawn,
  }: Given): Placement | undefined => {
    const scene = sceneOf(
      packModelOf(plainInput(bays, pieces, { nights: night ? [NIGHT] : [], ...change })),
      night ? NIGHT : null,
    )
    const state = stateFrom(scene, { placements: there, away: [] })
    const unit = pieces.length - 1
    const origin = home === undefined ? null : pieces.map((_, at) => (at === unit ? home : null))
    const noise = drawn === undefined ? {} : { noise01: NOISE_01, random: () => drawn }
    insert(scene, state, unit, new Set(), { ...noNoise(origin), ...noise })
    return layoutOf(scene, state).placements.find(({ unitId }) => unitId === pieces[unit]?.id)
  }
  const size: Vec3 = [200, 200, 200]
  const hatch = {
    id: 'hatch',
    face: 'x-',
    fromMm: [0, 0],
    toMm: [400, 400],
    door: 'back',
    opensFromInside: false,
  } as const
  const boot = plainBay('boot', [0, 0, 0], [800, 400, 400], { openings: [hatch] })
  const seat = plainBay('seat', [1000, 0, 0], [400, 400, 400], { reachFromDriverSeat: true, reachFromBed: false })

  it('is free of the seat unless it is wanted on the road', () => {
    expect(placed({ bays: [seat, boot], pieces: [plainPiece('map', size)] })?.bayId).toBe('boot')
    expect(placed({ bays: [boot, seat], pieces: [plainPiece('map', size, { access: ['en-route'] })] })?.bayId).toBe(
      'seat',
    )
  })

  it('is in reach of the bed if it is wanted in the night, and free of it if not', () => {
    const bays = [{ ...boot, reachFromBed: false }, plainBay('side', [0, 500, 0], [800, 400, 400])]
    const lamp = (access: PackPiece['access']) =>
      placed({ bays, pieces: [plainPiece('lamp', size, { access })], night: true })
    expect(lamp(['night'])?.bayId).toBe('side')
    expect(lamp(['seldom'])?.bayId).toBe('boot')
  })

  it('is out of the way of what is wanted often', () => {
    const bread = standing('bread', 'boot', [600, 0, 0], size)
    const given = (uses: number): Given => ({
      bays: [boot],
      pieces: [plainPiece('bread', size, { uses: { drive: uses, bed: 0 } }), plainPiece('chain', size)],
      there: [bread],
    })
    // The bread lies deep on the right: what comes later goes to the other side of its way.
    expect(placed(given(5))?.atMm[1]).toBe(200)
  })

  it('is where it stays in the other layout, if that is free', () => {
    const home = standing('tent', 'boot', [310, 110, 0], size)
    const pieces = [plainPiece('stone', size), plainPiece('tent', size)]
    expect(placed({ bays: [boot], pieces, home })?.atMm).toEqual([310, 110, 0])
    expect(
      placed({ bays: [boot], pieces, home, there: [standing('stone', 'boot', [300, 100, 0], size)] })?.atMm,
    ).not.toEqual([310, 110, 0])
  })

  it('may be another than where it stays if judgements are off', () => {
    const nook = (id: string, x: number, front: boolean): PackBay =>
      plainBay(id, [x, 0, 0], size, { openings: [], reachFromDriverSeat: front, reachFromBed: false })
    const bays = [nook('front', 0, true), nook('side', 1000, false)]
    const given = (drawn: number): Given => ({
      bays,
      pieces: [plainPiece('tent', size)],
      home: standing('tent', 'front', [0, 0, 0], size),
      drawn,
    })
    // Both bays hold it exactly: −0.8 · 4 = −3.2, and 0.04 for 8 l of empty bay, 0.075 for 1 kg half way up: −3.085, times the noise.
    // Staying: 0.04, 1.5 for taking the seat, less 5 times the noise. At noise 1: −3.46, it stays; at 0.5: −0.96 against −1.54, it goes.
    expect(placed(given(0.5))?.bayId).toBe('front')
    expect(placed(given(0))?.bayId).toBe('side')
  })

  it('is its lock, whatever else would be better', () => {
    const lock = { layout: 'drive', bayId: 'seat', atMm: [50, 60, 0], sizeMm: null } as const
    expect(placed({ bays: [boot, seat], pieces: [plainPiece('cot', size, { locks: [lock] })] })).toMatchObject({
      bayId: 'seat',
      atMm: [50, 60, 0],
      sizeMm: size,
    })
    const lying = { ...lock, atMm: null, sizeMm: [100, 300, 200] as const }
    expect(
      placed({ bays: [boot, seat], pieces: [plainPiece('cot', [300, 200, 100], { locks: [lying] })] }),
    ).toMatchObject({
      bayId: 'seat',
      sizeMm: [100, 300, 200],
    })
  })

  it('is low if it is heavy, though it would waste less room on top of something', () => {
    const given = (massG: number): Given => ({
      bays: [plainBay('boot', [0, 0, 0], [900, 400, 400], { openings: [] })],
      pieces: [plainPiece('stone', [400, 400, 100]), plainPiece('iron', [400, 400, 300], { massG, uprightEdges: [2] })],
      there: [standing('stone', 'boot', [0, 0, 0], [400, 400, 100])],
    })
    // Floor: 500 mm long, so ragged 1 − 400/500 + 0.3 (1 − 300/400) − 0.4 = −0.125. On the stone: a perfect fit, −0.8, four times as much each: 2.7 for the stone.
    // Standing 100 of 400 mm up costs 2 · 0.25 = 0.5, and 0.15 · 0.25 = 0.0375 a kilogram: the floor wins from (2.7 − 0.5) / 0.0375 = 58.7 kg.
    expect(placed(given(58_000))?.atMm[2]).toBe(100)
    expect(placed(given(59_000))?.atMm[2]).toBe(0)
  })
})
