/** The vehicle of a scenario: masses, bed, heat, batteries, charging. */
import type { Vehicle } from '../../../shared/document/index.ts'
import { baysOf } from './compartments.ts'
import type { Scenario } from './scenario.ts'
import { given, gramsOf, idOf, leftoversOf, noteOf, numberLike, textLike } from './words.ts'
import type { Loose } from './words.ts'

/** Values where a scenario is silent, each common practice. */
const DRIVER_INCLUDED_KG = 75
const SEAT_BACK_HEIGHT_MM = 600
const HEADROOM_MM = 900
const AC_MINIMUM_A = 6
const ONBOARD_EFFICIENCY01 = 0.88
const WH_PER_KM = { electric: 200, combustion: 650 }
/** A fitted foam bed of about 80 mm, m2K/W. */
const FITTED_MATTRESS_M2K_PER_W = 1
const LEISURE_VOLTS = 12.8

export function bodyClassOf(text: string): Vehicle['thermal']['bodyClass'] {
  const words = text.toLowerCase()
  if (/van|camper|bus/.test(words))
    return /bare|uninsulated|empty/.test(words) || !/insulat|convers|camper/.test(words) ? 'van-bare' : 'van-insulated'
  if (/hatch|small car|city car/.test(words)) return 'hatchback'
  if (/crossover|suv|4x4|off-road/.test(words)) return 'crossover'
  return 'estate'
}

const axleOf = (limit: number | null | undefined, ready: number | null | undefined) =>
  limit && ready ? { limitG: gramsOf(limit), readyG: gramsOf(ready) } : undefined

function massesOf(mass: Scenario['vehicle']['mass']): Vehicle['masses'] {
  const driver = /driver (\d+(?:\.\d+)?) ?kg/.exec(mass.ready_includes ?? '')
  return {
    permittedG: gramsOf(mass.max_permitted_kg),
    readyG: gramsOf(mass.ready_to_drive_kg),
    driverIncludedG: gramsOf(
      driver === null ? (/no driver/.test(mass.ready_includes ?? '') ? 0 : DRIVER_INCLUDED_KG) : Number(driver[1]),
    ),
    ...given('frontAxle', axleOf(mass.front_axle_max_kg, mass.front_axle_ready_kg)),
    ...given('rearAxle', axleOf(mass.rear_axle_max_kg, mass.rear_axle_ready_kg)),
    ...given('rearAxleXMm', mass.rear_axle_x_mm ? Math.round(mass.rear_axle_x_mm) : undefined),
    ...given('wheelbaseMm', mass.wheelbase_mm ? Math.round(mass.wheelbase_mm) : undefined),
    ...given('roofLimitG', mass.roof_max_kg ? gramsOf(mass.roof_max_kg) : undefined),
    ...given('roofFittedG', mass.roof_box_and_bars_kg ? gramsOf(mass.roof_box_and_bars_kg) : undefined),
  }
}

/** Where the bed lies across the vehicle: against the side without a bedside bay, else in the middle. */
export function bedOf(scenario: Scenario): Vehicle['bed'] {
  const bed = scenario.vehicle.bed
  const mattressIds =
    bed.mattress_item ??
    scenario.items
      .filter((one) => one.night_state === 'bed' && /mattress|sleeping mat|pad\b/.test(one.name.toLowerCase()))
      .map((one) => one.id)
  const flatLengthMm = Math.round(
    bed.flat_length_mm ?? bed.laid_mm?.[0] ?? (scenario.party.tallest_sleeper_mm ?? 1800) + 50,
  )
  const flatWidthMm = Math.round(bed.flat_width_mm ?? bed.laid_mm?.[1] ?? 600 * scenario.party.sleepers)
  const sizeMm: [number, number, number] = bed.laid_mm
    ? [Math.round(bed.laid_mm[0]), Math.round(bed.laid_mm[1]), Math.round(bed.laid_mm[2])]
    : [flatLengthMm, flatWidthMm, 80]
  const load = scenario.vehicle.compartments.find((one) => one.id === 'bay') ?? scenario.vehicle.compartments[0]
  const leftMm = load?.origin_mm[1] ?? 0
  const middleMm = leftMm + (load?.size_mm[1] ?? sizeMm[1]) / 2
  const strips = scenario.vehicle.compartments.filter((one) => /strip|beside/.test(`${one.id} ${one.name ?? ''}`))
  const right = strips.some((one) => one.origin_mm[1] + one.size_mm[1] / 2 > middleMm)
  const left = strips.some((one) => one.origin_mm[1] + one.size_mm[1] / 2 < middleMm)
  const centred = middleMm - sizeMm[1] / 2
  const rightMm = leftMm + (load?.size_mm[1] ?? sizeMm[1]) - sizeMm[1]
  const yMm = right && !left ? leftMm : left && !right ? rightMm : centred
  const doors = new Set(scenario.vehicle.compartments.flatMap((one) => one.doors ?? []))
  const exits = [
    /sliding|side door/,
    right ? /left rear/ : /right rear/,
    /left rear|right rear/,
    /left front|right front/,
  ]
  const exitDoor = exits.flatMap((pattern) => [...doors].filter((door) => pattern.test(door)))[0]
  return {
    atMm: [0, Math.round(yMm), Math.round(numberLike(bed, /platform.*(height|z)|height_of_platform/) ?? 0)],
    sizeMm,
    flatLengthMm,
    flatWidthMm,
    headroomMm: Math.round(bed.headroom_mm ?? HEADROOM_MM),
    headEnd: /front|nose/.test(bed.head_end ?? 'front') ? 'front' : 'rear',
    stepMm: Math.round(numberLike(bed, /step/) ?? 0),
    mattressPieceIds: mattressIds.map(idOf),
    ...(mattressIds.length === 0 ? { fittedMattressM2KPerW: FITTED_MATTRESS_M2K_PER_W } : {}),
    prepare: bed.needs ?? [],
    keepClear: bed.keep_clear_at_night ?? [],
    ...given('exitDoor', exitDoor),
  }
}

const pairsOf = (value: unknown): { outsideC: number; value: number }[] => {
  if (typeof value === 'number') return [{ outsideC: 0, value }]
  if (!Array.isArray(value)) return []
  return value.flatMap((pair: unknown) => {
    if (!Array.isArray(pair)) return []
    const outsideC: unknown = pair[0]
    const output: unknown = pair[1]
    return typeof outsideC === 'number' && typeof output === 'number' ? [{ outsideC, value: output }] : []
  })
}

function heaterOf(scenario: Scenario, electric: boolean): Vehicle['heater'] {
  const thermal = scenario.vehicle.thermal
  const cop = pairsOf(thermal.heater_output_per_input)
  const mains = scenario.items.find((item) =>
    /convector|fan heater|mains heater|oil.?filled/.test(item.name.toLowerCase()),
  )
  const heaterText = `${textLike(thermal, /heater(?!_output)/) ?? ''} ${mains?.name ?? ''}`.toLowerCase()
  const isMains = !electric && (mains !== undefined || /convector|fan|mains/.test(heaterText))
  const wattsInWords = /(\d+(?:[.,]\d+)?) ?(k?)w\b/.exec(heaterText)
  const spoken =
    wattsInWords === null
      ? undefined
      : Number((wattsInWords[1] ?? '').replace(',', '.')) * (wattsInWords[2] === 'k' ? 1000 : 1)
  const maxHeatW = thermal.max_heat_w ?? numberLike(thermal, /(convector|fan|mains|heater).*_w$/) ?? spoken
  const base = {
    cop,
    canCool: false,
    awakeLoadW: thermal.awake_load_w ?? 0,
    mayRunAllNight: thermal.may_run_all_night_when_parked ?? isMains,
    ...given('switchesOffAfterS', hoursToS(numberLike(thermal, /(switch|shut|turn).*off.*_h$/))),
    ...given('switchesOffBelow01', share(numberLike(thermal, /(switch|shut|turn).*off.*percent/))),
  }
  if (maxHeatW === undefined || maxHeatW === 0) return { ...base, kind: 'none', maxHeatW: 0 }
  if (isMains) return { ...base, kind: 'mains-fan-heater', maxHeatW, mayRunAllNight: true }
  const pump = cop.some((point) => point.value > 1.05)
  return { ...base, kind: pump ? 'heat-pump' : 'resistance', maxHeatW, canCool: pump }
}

const hoursToS = (hours: number | undefined): number | undefined =>
  hours === undefined ? undefined : Math.round(hours * 3600)
const share = (percent: number | undefined): number | undefined => (percent === undefined ? undefined : percent / 100)

const THERMAL_KNOWN = [
  'ua_bare_glass_w_per_k',
  'ua_with_window_covers_w_per_k',
  'wind_factor_per_m_s',
  'fresh_air_m3_per_h',
  'awake_load_w',
  'heater_output_per_input',
  'max_heat_w',
  'cabin_air_m3',
  'may_run_all_night_when_parked',
]

/** Fields of the batteries and the charging are written in several ways; leisure fields start with `leisure`. */
function leisureOf(power: Loose): Vehicle['leisure'] {
  const kwh = numberLike(power, /leisure.*usable.*kwh/, /leisure.*kwh/)
  const wh = numberLike(power, /leisure.*usable.*_wh/, /leisure.*_wh$/)
  const ah = numberLike(power, /leisure.*usable.*_ah/, /leisure.*_ah$/)
  const usableWh =
    kwh !== undefined
      ? kwh * 1000
      : (wh ?? (ah === undefined ? undefined : ah * (numberLike(power, /leisure.*_v$/) ?? LEISURE_VOLTS)))
  if (usableWh === undefined) return undefined
  const chargerA = numberLike(power, /leisure.*charg.*_a$/)
  return {
    kind: /lead|agm|gel/.test((textLike(power, /leisure.*(kind|type|chem)/) ?? '').toLowerCase()) ? 'lead' : 'lfp',
    usableWh: Math.round(usableWh),
    reserve01: share(numberLike(power, /leisure.*(never|reserve|min).*percent/)) ?? 0.1,
    chargerW:
      numberLike(power, /leisure.*charg.*_w$/) ?? (chargerA === undefined ? 0 : Math.round(chargerA * LEISURE_VOLTS)),
    loadW: numberLike(power, /leisure.*load.*_w$/, /leisure.*(base|draw|standby).*_w$/) ?? 0,
    ...given('inverterMaxW', numberLike(power, /inverter.*_w$/)),
  }
}

function chargingOf(charging: Loose): NonNullable<Vehicle['charging']> {
  const inlet = textLike(charging, /inlet/)?.toLowerCase() ?? ''
  const side = /left/.test(inlet) ? 'left' : /right/.test(inlet) ? 'right' : /front|nose/.test(inlet) ? 'front' : 'rear'
  const xMm = /x ?= ?(-?\d+)/.exec(inlet)
  const heightMm = /height ?=? ?(\d+)/.exec(inlet)
  return {
    efficiency01: numberLike(charging, /efficiency/) ?? ONBOARD_EFFICIENCY01,
    overheadW: numberLike(charging, /overhead.*_w/) ?? 0,
    minimumA: numberLike(charging, /minimum.*_a$|min.*_a$/) ?? AC_MINIMUM_A,
    maximumA: numberLike(charging, /maximum.*_a$|max.*_a$/) ?? 16,
    ...given('fastMaxW', kilowattsToW(numberLike(charging, /(fast|dc).*kw/))),
    ...(xMm !== null && heightMm !== null
      ? { inlet: { side, xMm: Number(xMm[1]), heightMm: Number(heightMm[1]) } as const }
      : {}),
  }
}

const kilowattsToW = (kilowatts: number | undefined): number | undefined =>
  kilowatts === undefined ? undefined : kilowatts * 1000

export function vehicleOf(scenario: Scenario): Vehicle {
  const { vehicle } = scenario
  const battery: Loose = vehicle.battery ?? {}
  const charging: Loose = vehicle.charging ?? {}
  const usableKWh = numberLike(battery, /^usable_kwh/, /^traction.*kwh/)
  const electric = usableKWh !== undefined
  const bed = bedOf(scenario)
  const leisure = leisureOf({ ...vehicle.thermal, ...charging, ...battery, ...looseOf(vehicle['leisure']) })
  const thermal = vehicle.thermal
  const legs = (scenario.legs ?? []).flatMap((leg) => leg.wh_per_km ?? [])
  const seat = numberLike(vehicle, /seat_back.*mm/)
  const meanWhPerKm = legs.length > 0 ? legs.reduce((sum, one) => sum + one, 0) / legs.length : undefined
  return {
    name: vehicle.class,
    drive: electric ? 'electric' : 'combustion',
    masses: massesOf(vehicle.mass),
    seatBackHeightMm: Math.round(seat ?? SEAT_BACK_HEIGHT_MM),
    bays: baysOf(vehicle.compartments, bed.atMm[1] + bed.sizeMm[1] / 2),
    bed,
    thermal: {
      bodyClass: bodyClassOf(vehicle.class),
      ...given('lossBareWPerK', thermal.ua_bare_glass_w_per_k),
      ...given('lossCoveredWPerK', thermal.ua_with_window_covers_w_per_k),
      ...given('windFactorPerMPerS', thermal.wind_factor_per_m_s),
      ...given('airVolumeM3', thermal.cabin_air_m3),
      ...given('freshAirM3PerH', thermal.fresh_air_m3_per_h),
    },
    heater: heaterOf(scenario, electric),
    bedHeaters: [],
    ...(electric
      ? {
          battery: {
            usableWh: Math.round(usableKWh * 1000),
            reserve01: share(numberLike(battery, /^never_below/)) ?? 0.1,
            chargeLimit01: share(numberLike(battery, /^charge_to/)) ?? 1,
          },
          charging: chargingOf(charging),
        }
      : {}),
    ...given('leisure', leisure),
    consumption: { whPerKm: meanWhPerKm ?? (electric ? WH_PER_KM.electric : WH_PER_KM.combustion) },
    ...noteOf(
      leftoversOf(thermal, THERMAL_KNOWN),
      leftoversOf(vehicle, ['class', 'mass', 'battery', 'charging', 'thermal', 'compartments', 'bed', 'leisure']),
      textLike(vehicle.mass, /ready_includes/),
      textLike(vehicle.bed, /headroom_note/),
      leftoversOf(battery, ['usable_kwh', 'never_below_percent', 'charge_to_percent', 'arrive_percent']),
      leftoversOf(charging, ['onboard_efficiency', 'minimum_a', 'maximum_ac_a', 'inlet_position']),
      leftoversOf(vehicle.bed, BED_KNOWN),
    ),
  }
}

const BED_KNOWN = [
  'mattress_item',
  'laid_mm',
  'flat_length_mm',
  'flat_width_mm',
  'headroom_mm',
  'headroom_note',
  'head_end',
  'needs',
  'keep_clear_at_night',
]

const looseOf = (value: unknown): Loose =>
  typeof value === 'object' && value !== null
    ? Object.fromEntries(Object.entries(value).map(([key, one]) => [`leisure_${key}`, one]))
    : {}
