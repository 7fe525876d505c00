/** Made-up loads of any size for one van, the same volume cut into few or many units: drive layout and one night. */
import { randomFrom } from '../../../shared/packing/random.ts'
import type { AccessClass, PackBay, PackingInput, PackPiece, Vec3 } from '../../../shared/packing/index.ts'
import { plainBay, plainInput, plainPiece } from '../../support/generators/planted-load.ts'

/** Share of the bays that the load fills: common practice for a van that still has to be lived in. */
const FILLED_01 = 0.3

const BAYS: readonly PackBay[] = [
  plainBay('main', [0, 0, 0], [1900, 1500, 900], { usable: { drive: true, bed: false } }),
  plainBay('under bed', [0, 0, -400], [1900, 1500, 380]),
  plainBay('front seat', [2300, 800, 300], [500, 500, 600], { reachFromDriverSeat: true }),
  plainBay('footwell', [2800, 800, 0], [450, 480, 350], { reachFromDriverSeat: true }),
  plainBay('shelf', [1950, 0, 900], [300, 1500, 300], { reachFromBed: true }),
  plainBay('lockers', [1950, 0, 0], [320, 1500, 880]),
]

const USES: Readonly<Record<AccessClass, { readonly drive: number; readonly bed: number }>> = {
  'en-route': { drive: 3, bed: 0 },
  'on-arrival': { drive: 1, bed: 0 },
  evening: { drive: 0.2, bed: 1 },
  night: { drive: 0, bed: 1 },
  morning: { drive: 0.2, bed: 1 },
  seldom: { drive: 0.05, bed: 0.05 },
  emergency: { drive: 0.01, bed: 0.01 },
}

/** Share of each access class in the load, common practice. */
const CLASSES: readonly (readonly [AccessClass, number])[] = [
  ['en-route', 0.06],
  ['on-arrival', 0.1],
  ['evening', 0.16],
  ['night', 0.04],
  ['morning', 0.12],
  ['emergency', 0.06],
  ['seldom', 0.46],
]

/** `count` pieces cut from the same volume; a fifth of them becomes the bed or is in use at night. */
export function vanLoad(count: number, seed: number): PackingInput {
  const random = randomFrom(seed)
  const volumeMm3 = BAYS.reduce((sum, { sizeMm: [x, y, z] }) => sum + x * y * z, 0) * FILLED_01
  const shares = Array.from({ length: count }, () => 0.3 + random() ** 3 * 3)
  const whole = shares.reduce((sum, share) => sum + share, 0)
  const pieces = shares.map((share, at): PackPiece => {
    const side = Math.cbrt((volumeMm3 * share) / whole)
    const long = 0.8 + random() * 0.6
    const wide = 0.8 + random() * 0.4
    const edge = (mm: number): number => Math.max(30, Math.round(mm))
    const sizeMm: Vec3 = [edge(side * long), edge(side * wide), edge(side / (long * wide))]
    const access = classOf(random())
    return plainPiece(`piece-${at}`, sizeMm, {
      massG: Math.round((volumeMm3 * share) / whole / 6000) + 50,
      form: random() < 0.3 ? 'soft' : 'rigid',
      squeezeTo01: 0.8,
      access: [access],
      uses: USES[access],
    })
  })
  const states = Object.fromEntries(
    pieces.flatMap(({ id }, at) => (at % 5 === 0 ? [[id, at % 10 === 0 ? 'bed' : 'in-use'] as const] : [])),
  )
  return plainInput(BAYS, pieces, {
    nights: [{ id: 'night-1', states, lowTempC: {}, highTempC: {}, outsideStorage: false, foodBayIds: null }],
  })
}

function classOf(drawn: number): AccessClass {
  let sum = 0
  for (const [access, share] of CLASSES) {
    sum += share
    if (drawn < sum) return access
  }
  return 'seldom'
}
