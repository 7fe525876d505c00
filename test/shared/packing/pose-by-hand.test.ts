/** What dragging asks, in one bay of a few boxes: each answer worked out by hand. */
import { describe, expect, it } from 'vitest'
import { freeVolume, handScene, reachOf, tryPose } from '../../../shared/packing/index.ts'
import type {
  Layout,
  PackBay,
  PackingInput,
  PackNight,
  PackPiece,
  Placement,
  RuleCode,
  Vec3,
} from '../../../shared/packing/index.ts'
import { plainBay, plainInput, plainNight, plainPiece } from '../../support/generators/planted-load.ts'

const cube: Vec3 = [100, 100, 100]
const at = (unitId: string, atMm: Vec3, sizeMm: Vec3 = cube, bayId = 'boot'): Placement => ({
  unitId,
  bayId,
  atMm,
  sizeMm,
  edges: [0, 1, 2],
})
const layout = (...placements: readonly Placement[]): Layout => ({ placements, away: [] })
const boot = plainBay('boot', [0, 0, 0], [500, 100, 200])
const night: PackNight = plainNight('night', { states: { lamp: 'in-use' } })

/** Asks for one pose in a layout of the drive. */
const ask = (
  pieces: readonly PackPiece[],
  now: Layout,
  tried: Placement,
  bays: readonly PackBay[] = [boot],
  change: Partial<PackingInput> = {},
) => tryPose(handScene(plainInput(bays, pieces, change), now, null), tried)

describe('a unit tried at a pose', () => {
  const one = plainPiece('one', cube, { uprightEdges: [2] })
  const other = plainPiece('other', cube)
  const now = layout(at('one', [0, 0, 0]), at('other', [200, 0, 0]))

  it('may stand where it is free, and is told which of its edges lie along the bay', () => {
    const verdict = ask([one, other], now, at('one', [300, 0, 0]))
    expect(verdict).toEqual({ legal: true, rule: null, nearest: at('one', [300, 0, 0]) })
    const brick = plainPiece('brick', [60, 80, 100])
    const turned = ask([brick], layout(), at('brick', [0, 0, 0], [100, 60, 80]))
    expect(turned.nearest?.edges).toEqual([2, 0, 1])
    expect(turned.legal).toBe(true)
  })

  it('is not in its own way, and stands on another that holds it', () => {
    expect(ask([one, other], now, at('one', [50, 0, 0])).legal).toBe(true)
    expect(ask([one, other], now, at('one', [200, 0, 100])).legal).toBe(true)
    expect(ask([one, other], now, at('one', [250, 0, 100]))).toMatchObject({ legal: false, rule: 'no-room' })
  })

  it('that would overlap another is offered the nearest free place, at whole millimetres', () => {
    // Free on the floor: 0 to 200 and 300 to 500. From 120.4 the nearest start is 100; from 230 it is 300.
    expect(ask([one, other], now, at('one', [120.4, 0, 0]))).toEqual({
      legal: false,
      rule: 'no-room',
      nearest: at('one', [100, 0, 0]),
    })
    // On top of the other the start would be 200, 100 mm up: hypot(30, 100) is 104 mm off against 70 to 300.
    expect(ask([one, other], now, at('one', [230, 0, 0])).nearest).toEqual(at('one', [300, 0, 0]))
    expect(ask([one, other], now, at('one', [210, 0, 90])).nearest).toEqual(at('one', [200, 0, 100]))
    expect(ask([one, other], now, at('one', [460, 0, 0]))).toEqual({
      legal: false,
      rule: 'does-not-fit',
      nearest: at('one', [400, 0, 0]),
    })
    expect(ask([one, other], now, at('one', [-30, 20, 0])).nearest).toEqual(at('one', [0, 0, 0]))
  })

  it('keeps its turn where the same turn is free not much farther off', () => {
    // Lying, 200 mm long, it starts at 0 to 100 before the wall, and not at all behind it.
    const plank = plainPiece('plank', [200, 100, 50], { uprightEdges: [2, 0] })
    const wall = plainPiece('wall', [100, 100, 200])
    const walled = layout(at('wall', [300, 0, 0], [100, 100, 200]))
    const lying = ask([plank, wall], walled, at('plank', [390, 0, 0], [200, 100, 50]))
    // Lying it goes at 100 at the most, 290 mm off; upright it fits behind the wall, 10 mm off: 160 with the turn counted.
    expect(lying).toMatchObject({ legal: false, rule: 'does-not-fit' })
    expect(lying.nearest).toMatchObject({ atMm: [400, 0, 0], sizeMm: [100, 50, 200] })
    const near = ask([plank, wall], walled, at('plank', [200, 0, 0], [200, 100, 50]))
    // Lying it is 100 mm off; upright it could stand where it was asked for, which counts 150.
    expect(near.nearest).toMatchObject({ atMm: [100, 0, 0], sizeMm: [200, 100, 50] })
  })

  it('of a size it cannot take does not fit, and is offered one that it can', () => {
    const wrong = ask([one], layout(), at('one', [10, 0, 0], [100, 100, 90]))
    expect(wrong).toEqual({ legal: false, rule: 'does-not-fit', nearest: at('one', [10, 0, 0]) })
    const bag = plainPiece('bag', cube, { form: 'soft', squeezeTo01: 0.8 })
    expect(ask([bag], layout(), at('bag', [10, 0, 0], [100, 100, 80])).legal).toBe(true)
    expect(ask([bag], layout(), at('bag', [10, 0, 0], [100, 100, 79])).legal).toBe(false)
  })

  it('has no nearest place in a bay that is full or forbids it', () => {
    const full = layout(at('other', [0, 0, 0], [500, 100, 200]))
    const big = plainPiece('other', [500, 100, 200])
    expect(ask([one, big], full, at('one', [0, 0, 0]))).toEqual({ legal: false, rule: 'no-room', nearest: null })
    const rules: readonly (readonly [Partial<PackBay>, RuleCode])[] = [
      [{ unitLimitG: 999 }, 'unit-too-heavy'],
      [{ loadLimitG: 999 }, 'bay-load-limit'],
      [{ softOnly: true }, 'soft-only'],
      [{ sizeMm: [90, 90, 90] }, 'does-not-fit'],
      [{ belongsTo: 'site' }, 'site-bay-while-driving'],
      // A bay that this layout has not is no place at all.
      [{ usable: { drive: false, bed: true } }, 'does-not-fit'],
    ]
    for (const [change, rule] of rules)
      expect([rule, ask([one], layout(), at('one', [0, 0, 0]), [{ ...boot, ...change }])]).toEqual([
        rule,
        { legal: false, rule, nearest: null },
      ])
  })

  it('is offered no place where a rule of stacking forbids each', () => {
    const frail = plainPiece('frail', [500, 100, 100], { bearsG: 999 })
    const carried = layout(at('frail', [0, 0, 0], [500, 100, 100]))
    expect(ask([one, frail], carried, at('one', [0, 0, 100]))).toEqual({
      legal: false,
      rule: 'load-on-top',
      nearest: null,
    })
    const strong = { ...frail, bearsG: 1000 }
    expect(ask([one, strong], carried, at('one', [0, 0, 100])).legal).toBe(true)
  })

  it('that carries others may only stay', () => {
    const stacked = layout(at('one', [0, 0, 0]), at('other', [0, 0, 100]))
    const here = at('one', [0, 0, 0])
    expect(ask([one, other], stacked, here)).toEqual({ legal: true, rule: null, nearest: here })
    const stays = { legal: false, rule: 'load-on-top', nearest: here }
    expect(ask([one, other], stacked, at('one', [200, 0, 0]))).toEqual(stays)
    expect(ask([one, other], stacked, at('one', [0, 0, 0], [100, 100, 99]))).toEqual(stays)
    const second = plainBay('second', [900, 0, 0], [500, 100, 200])
    expect(ask([one, other], stacked, at('one', [0, 0, 0], cube, 'second'), [boot, second])).toEqual(stays)
    expect(ask([one, other], stacked, at('other', [200, 0, 0])).legal).toBe(true)
  })

  it('does not stand in the air of a bay that lies over its own', () => {
    // The shelf bay starts 300 mm into the boot: the other at its near end takes the boot's 300 to 400.
    const shelf = plainBay('shelf', [300, 0, 0], [200, 100, 100])
    const taken = layout(at('other', [0, 0, 0], cube, 'shelf'))
    expect(ask([one, other], taken, at('one', [250, 0, 0]), [boot, shelf])).toEqual({
      legal: false,
      rule: 'no-room',
      nearest: null,
    })
    expect(ask([one, other], taken, at('one', [200, 0, 0]), [boot, shelf]).legal).toBe(true)
    expect(ask([one, other], taken, at('one', [400, 0, 0]), [boot, shelf]).legal).toBe(true)
  })

  it('that has no place yet may be given one', () => {
    expect(ask([one, other], layout(at('other', [0, 0, 0])), at('one', [100, 0, 0])).legal).toBe(true)
  })

  it('is judged by the night asked about', () => {
    const lamp = plainPiece('lamp', cube)
    const input = plainInput([boot], [one, lamp], { nights: [night] })
    const by = (nightId: string | null): boolean =>
      tryPose(handScene(input, layout(), nightId), at('lamp', [0, 0, 0])).legal
    expect([by(null), by('night'), by('no such night')]).toEqual([true, false, true])
    const closed = { ...boot, usable: { drive: true, bed: false } }
    const bed = plainInput([closed], [one], { nights: [night] })
    expect(tryPose(handScene(bed, layout(), null), at('one', [0, 0, 0])).legal).toBe(true)
    expect(tryPose(handScene(bed, layout(), 'night'), at('one', [0, 0, 0])).rule).toBe('does-not-fit')
  })
})

describe('the reach of a layout as it is given', () => {
  it('names what goes first, outermost first', () => {
    const deep = plainBay('boot', [0, 0, 0], [300, 100, 100], {
      openings: [
        { id: 'back', face: 'x-', fromMm: [0, 0], toMm: [100, 100], door: 'tailgate', opensFromInside: false },
      ],
    })
    const pieces = ['a', 'b', 'c'].map((id, x) => plainPiece(id, cube, { massG: 100 * (x + 1) }))
    const hand = handScene(
      plainInput([deep], pieces),
      layout(at('c', [200, 0, 0]), at('b', [100, 0, 0]), at('a', [0, 0, 0])),
      null,
    )
    const by = new Map(reachOf(hand).map((reach) => [reach.unitId, reach]))
    expect(by.get('a')).toMatchObject({ openingId: 'back', blockedBy: [], handledG: 0, liftNeeded: false })
    expect(by.get('c')).toMatchObject({ openingId: 'back', blockedBy: ['a', 'b'], handledG: 300 })
  })
})

describe('the free volume of bays', () => {
  it('is what obstacles and things leave of each bay that the layout has, in litres', () => {
    const stepped = { ...boot, obstacles: [{ label: 'arch', atMm: [400, 0, 0], sizeMm: [100, 100, 100] }] } as const
    const bays = [
      stepped,
      plainBay('day', [900, 0, 0], [100, 100, 100], { usable: { drive: true, bed: false } }),
      plainBay('night', [1900, 0, 0], [100, 100, 100], { usable: { drive: false, bed: true } }),
    ]
    const input = plainInput(bays, [plainPiece('one', cube), plainPiece('two', [200, 100, 50])])
    const now = layout(at('one', [0, 0, 0]), at('two', [100, 0, 0], [200, 100, 50]), at('one', [0, 0, 0], cube, 'day'))
    // Ten litres of boot, one of arch, one and one litre of things.
    expect(freeVolume(input, now, 'drive')).toEqual([
      { bayId: 'boot', freeL: 7, wholeL: 9 },
      { bayId: 'day', freeL: 0, wholeL: 1 },
    ])
    expect(freeVolume(input, now, 'bed')).toEqual([
      { bayId: 'boot', freeL: 7, wholeL: 9 },
      { bayId: 'night', freeL: 1, wholeL: 1 },
    ])
  })
})
