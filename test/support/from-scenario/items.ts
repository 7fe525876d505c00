/** Items of a scenario become pieces. */
import type { Piece, Traveller } from '../../../shared/document/index.ts'
import { MM_PER_M, MM_PER_INCH } from '../../../shared/units/index.ts'
import { beddingOf, purposeOf } from './purpose.ts'
import type { Scenario, ScenarioItem } from './scenario.ts'
import { given, gramsOf, idOf, leftoversOf, noteOf } from './words.ts'

type Access = Piece['access'][number]
type Phase = Piece['usedIn'][number]
type NightState = Piece['atNight']

/**
 * `nothing_on_top` excepts light soft things under 2.5 kg: the trip says it as a load of at most 2,499 g on top.
 * It does not say that the load must be soft, which is the milder reading.
 */
const NOTHING_BUT_LIGHT_G = 2499

const KNOWN = [
  'id',
  'name',
  'size_mm',
  'mass_kg',
  'kind',
  'squeezes_to_fraction',
  'keep_upright',
  'liquid_l',
  'freeze_below_c',
  'spoils_above_c',
  'food',
  'scented',
  'fuel',
  'lithium_wh',
  'valuable',
  'wet_after_use',
  'nothing_on_top',
  'reach_drive',
  'reach_night',
  'night_state',
  'night_state_by_night',
  'used_in',
  'must_carry',
  'bin_group',
  'fragile',
  'note',
]

const PHASES: Readonly<Record<string, Phase>> = {
  drive: 'on-the-road',
  arrival: 'arriving',
  before_dark: 'before-dark',
  bedtime: 'bedtime',
  night: 'in-the-night',
  morning: 'morning',
  target: 'at-the-target',
  checkout: 'check-out',
}

const PHASE_ACCESS: Readonly<Record<string, Access>> = {
  drive: 'en-route',
  arrival: 'on-arrival',
  before_dark: 'evening',
  bedtime: 'evening',
  night: 'evening',
  morning: 'morning',
  target: 'morning',
  checkout: 'seldom',
  any: 'emergency',
}

function accessOf(item: ScenarioItem): Access[] {
  const stated: Access[] = []
  if (item.reach_drive === 'from_seat') stated.push('en-route')
  if (item.reach_drive === 'first_out') stated.push('on-arrival')
  if (item.reach_night === true) stated.push('night')
  if (item.used_in?.includes('any') === true) stated.push('emergency')
  if (stated.length > 0) return stated
  const byPhase = (item.used_in ?? []).map((phase): Access => PHASE_ACCESS[phase] ?? 'seldom')
  return byPhase.length > 0 ? [...new Set(byPhase)] : ['seldom']
}

const nightStateOf = (state: unknown): NightState => {
  switch (state) {
    case 'bed':
      return 'bed'
    case 'in_use':
    case 'in-use':
      return 'in-use'
    case 'outside':
      return 'outside'
    case 'left_behind':
    case 'left-behind':
      return 'left-behind'
    default:
      return 'stored'
  }
}

/** `night_state_by_night` in any of its shapes: by number, as a list in order, or as a list of pairs. */
function statesByNight(value: unknown, nightIds: readonly string[]): Piece['atNightOn'][number][] {
  if (typeof value !== 'object' || value === null) return []
  const entries: readonly (readonly [string, unknown])[] = Array.isArray(value)
    ? value.map((one: unknown, index) => pairOf(one, index))
    : Object.entries(value)
  return entries.flatMap(([night, state]) => {
    const nightId = nightIds[Number(/\d+/.exec(night)?.[0] ?? '0') - 1]
    return nightId === undefined || typeof state !== 'string' ? [] : [{ nightId, state: nightStateOf(state) }]
  })
}

function pairOf(one: unknown, index: number): readonly [string, unknown] {
  if (typeof one !== 'object' || one === null) return [String(index + 1), one]
  const entries = Object.entries(one)
  const night: unknown = entries.find(([key]) => key.endsWith('night'))?.[1]
  const state: unknown = entries.find(([key]) => /state/.test(key))?.[1]
  return [typeof night === 'number' || typeof night === 'string' ? String(night) : String(index + 1), state]
}

function traitsOf(item: ScenarioItem): Piece['traits'] {
  return {
    ...given('liquidMl', item.liquid_l ? Math.round(item.liquid_l * 1000) : undefined),
    ...given('freezesBelowC', item.freeze_below_c),
    ...given('spoilsAboveC', item.spoils_above_c),
    ...given('food', item.food),
    ...given('scented', item.scented),
    ...given('valuable', item.valuable),
    ...given('fragile', item['fragile'] === true ? true : undefined),
    ...given('wetAfterUse', item.wet_after_use),
    ...given('fuel', item.fuel),
    ...given('lithiumWh', item.lithium_wh),
    ...given('mustCarry', item.must_carry),
  }
}

/** Feet to millimetres. */
const MM_PER_FOOT = 12 * MM_PER_INCH

function electricalOf(name: string, purpose: Piece['purpose']): Piece['electrical'] {
  if (purpose !== 'lead' && purpose !== 'adapter' && purpose !== 'charging-unit') return undefined
  const metres = /(\d+(?:\.\d+)?)\s*m\b(?!m)/.exec(name)
  const feet = /(\d+(?:\.\d+)?)\s*(?:ft|feet)\b/.exec(name)
  const amperes = /(\d+(?:\.\d+)?)\s*A\b/.exec(name)
  const lengthMm =
    metres !== null
      ? Math.round(Number(metres[1]) * MM_PER_M)
      : feet !== null
        ? Math.round(Number(feet[1]) * MM_PER_FOOT)
        : undefined
  const electrical = {
    ...given('limitA', amperes === null ? undefined : Number(amperes[1])),
    ...given('lengthMm', lengthMm),
    ...given('fits', /TT-?30/.test(name) ? ['nema-tt-30', ...(/14-?50/.test(name) ? ['nema-14-50'] : [])] : undefined),
  }
  return Object.keys(electrical).length === 0 ? undefined : electrical
}

const roundUp = (size: readonly [number, number, number]): [number, number, number] => [
  Math.ceil(size[0]),
  Math.ceil(size[1]),
  Math.ceil(size[2]),
]

export function piecesOf(
  scenario: Scenario,
  nightIds: readonly string[],
  travellers: readonly Traveller[],
  laidThicknessMm: number,
): Piece[] {
  const handed = new Map<string, number>()
  return scenario.items.map((item) => {
    const becomesBed = item.night_state === 'bed'
    const purpose = purposeOf(item.name, item.fuel ?? false)
    const bedding = beddingOf(item.name, becomesBed, laidThicknessMm)
    const soft = item.kind === 'soft'
    const group = item.bin_group
    const electrical = electricalOf(item.name, purpose)
    return {
      id: idOf(item.id),
      name: item.name.slice(0, 200),
      sizeMm: roundUp(item.size_mm),
      massG: gramsOf(item.mass_kg),
      form: soft ? 'soft' : 'rigid',
      squeezeTo01: soft ? Math.min(1, Math.max(0.2, item.squeezes_to_fraction ?? 1)) : 1,
      upright: item.keep_upright === true ? ['height'] : ['length', 'width', 'height'],
      ...(item.nothing_on_top === true ? { bearsG: NOTHING_BUT_LIGHT_G } : {}),
      access: accessOf(item),
      usedIn: [...new Set((item.used_in ?? []).flatMap((phase) => PHASES[phase] ?? []))],
      atNight: nightStateOf(item.night_state),
      atNightOn: statesByNight(item.night_state_by_night, nightIds),
      traits: traitsOf(item),
      purpose,
      ...(electrical === undefined ? {} : { electrical }),
      ...(bedding === undefined ? {} : { bedding: withSleeper(bedding, travellers, scenario.items, handed) }),
      // Fuel sleeps apart from its group, so it is not tied to it.
      belongsWith: scenario.items
        .filter((other) => group && other.bin_group === group && other.id !== item.id && other.fuel === item.fuel)
        .map((other) => idOf(other.id)),
      apartFrom: [],
      locks: [],
      spare: false,
      ...noteOf(
        typeof item['note'] === 'string' ? item['note'] : '',
        group ? `bin group: ${group}` : '',
        leftoversOf(item, KNOWN),
      ),
    }
  })
}

/** With several sleepers, as many covers of a kind as sleepers are handed out one each, in order. */
function withSleeper(
  bedding: NonNullable<Piece['bedding']>,
  travellers: readonly Traveller[],
  items: readonly ScenarioItem[],
  handed: Map<string, number>,
): NonNullable<Piece['bedding']> {
  if (travellers.length < 2 || bedding.kind === 'mattress' || bedding.kind === 'mat') return bedding
  const ofKind = items.filter((item) => beddingOf(item.name, item.night_state === 'bed', 1)?.kind === bedding.kind)
  if (ofKind.length !== travellers.length) return bedding
  const turn = handed.get(bedding.kind) ?? 0
  handed.set(bedding.kind, turn + 1)
  const traveller = travellers[turn]
  return traveller === undefined ? bedding : { ...bedding, forTravellerId: traveller.id }
}
