/** Lists of kit to begin with. Measures and masses are rounded common practice, to be changed to one's own. */
import type { Piece } from '../../../shared/document/index.ts'
import { plainPiece } from './paste.ts'

type Kind = Partial<Omit<Piece, 'id' | 'name' | 'sizeMm' | 'massG'>>
type Row = readonly [sizeMm: readonly [number, number, number], massG: number, kind: Kind]

const UPRIGHT: Kind = { upright: ['height'] }
const SOFT: Kind = { form: 'soft', squeezeTo01: 0.6 }

/** Each piece's name is the text `window.list.piece.<id>`. */
export const STARTER_LISTS = {
  sleep: {
    liner: [[250, 150, 80], 400, { ...SOFT, atNight: 'bed', bedding: { kind: 'quilt', clo: 0.5 } }],
    blanket: [[400, 300, 120], 1500, { ...SOFT, atNight: 'bed', bedding: { kind: 'blanket', clo: 1.5 } }],
    hotWater: [[330, 200, 50], 400, { ...SOFT, atNight: 'bed', bedding: { kind: 'hot-bottle' } }],
  },
  cook: {
    stove: [[340, 280, 110], 1900, { ...UPRIGHT, purpose: 'stove' }],
    cartridge: [
      [70, 70, 200],
      400,
      { ...UPRIGHT, traits: { fuel: true, mayStandOutside: true }, atNight: 'outside', access: ['evening'] },
    ],
    pots: [[280, 280, 180], 2200, {}],
    food: [[400, 300, 250], 7000, { ...UPRIGHT, purpose: 'food', traits: { food: true, scented: true } }],
    coolBox: [[500, 300, 400], 14_000, { ...UPRIGHT, purpose: 'cool-box', traits: { food: true, spoilsAboveC: 7 } }],
  },
  wash: {
    washBag: [[260, 150, 120], 900, { ...SOFT, access: ['evening', 'morning'], traits: { scented: true } }],
    towels: [[300, 250, 120], 900, { ...SOFT, access: ['morning'], traits: { wetAfterUse: true } }],
    toilet: [[300, 300, 300], 2000, { access: ['night'], purpose: 'toilet' }],
    rubbish: [[200, 120, 60], 300, { ...SOFT, access: ['seldom'], purpose: 'rubbish' }],
  },
  power: {
    lead: [
      [400, 350, 150],
      6500,
      { access: ['on-arrival'], atNight: 'in-use', purpose: 'lead', electrical: { limitA: 16, lengthMm: 25_000 } },
    ],
    adapter: [[250, 120, 90], 600, { access: ['on-arrival'], purpose: 'adapter', electrical: { limitA: 16 } }],
    headTorch: [[90, 70, 60], 150, { access: ['evening', 'night'], purpose: 'light' }],
    powerBank: [
      [160, 80, 30],
      400,
      { access: ['evening'], purpose: 'phone-power', traits: { lithiumWh: 74, freezesBelowC: 0 } },
    ],
  },
  help: {
    firstAid: [
      [240, 180, 90],
      900,
      { ...SOFT, access: ['emergency'], purpose: 'first-aid', traits: { mustCarry: true } },
    ],
    triangle: [
      [450, 80, 50],
      1000,
      { access: ['emergency'], purpose: 'warning-triangle', traits: { mustCarry: true } },
    ],
    extinguisher: [[130, 110, 350], 2200, { access: ['emergency'], traits: { needsRestraint: true } }],
    shovel: [[250, 170, 60], 1200, { access: ['seldom'], purpose: 'shovel' }],
    chairs: [[900, 180, 140], 3500, { access: ['on-arrival'], traits: { mayStandOutside: true } }],
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, Row>>>>

export type ListName = keyof typeof STARTER_LISTS
export const LIST_NAMES = ['sleep', 'cook', 'wash', 'power', 'help'] as const satisfies readonly ListName[]

export const rowsOf = (list: ListName): readonly (readonly [id: string, row: Row])[] =>
  Object.entries(STARTER_LISTS[list])

export const pieceOf = (id: string, name: string, [sizeMm, massG, kind]: Row): Piece => ({
  ...plainPiece(id, { name, sizeMm, massG }),
  ...kind,
})
