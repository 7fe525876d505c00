/** Nights of a scenario become nights of the trip. */
import type { Leg, Night, Piece } from '../../../shared/document/index.ts'
import { chargingRuleOf, hookupOf } from './hookup.ts'
import type { Scenario, ScenarioNight } from './scenario.ts'
import {
  clockOf,
  given,
  leftoversOf,
  minutesOf,
  mmOf,
  noteOf,
  numberLike,
  perNight,
  shiftClock,
  spanOf,
  textLike,
} from './words.ts'
import type { Loose } from './words.ts'

/** Values where a scenario is silent, each common practice. */
const ARRIVE_BEFORE_PLUG_MIN = 15
const ARRIVE_BEFORE_SUNSET_MIN = 60
const MORNING_MIN = 45
const FAST_CHARGER_W = 50_000
const HUMIDITY01 = 0.8
const CLOUD01 = 0.3
const EVENING = '17:00'
const SLEEP = { from: '22:00', to: '06:00' }

const NIGHT_KNOWN = [
  'date',
  'site',
  'lat',
  'lon',
  'utc_offset_h',
  'elevation_m',
  'check_in',
  'check_out_by',
  'quiet',
  'vehicle_movement_banned',
  'gate_closed',
  'rules',
  'pitch',
  'weather',
  'hookup',
  'climate_target_c',
  'sleep',
  'target',
  'sun',
  'arrive',
  'arrive_at',
]
const RULES_KNOWN = [
  'sleeping_in_the_vehicle_allowed',
  'tent_or_awning_allowed',
  'anything_outside_overnight_allowed',
  'food_locker_required',
  'vehicle_must_be_on_the_hard_pad',
  'vehicle_charging_from_hookup',
]
const PITCH_KNOWN = ['surface', 'slope_percent', 'slope_down_towards', 'post_side', 'cable_run_m', 'to_toilets_m']
const WEATHER_KNOWN = [
  'high_c',
  'low_c',
  'wind_m_s',
  'relative_humidity_percent',
  'snow_overnight_mm_water',
  'hours',
  'rain_mm',
  'cloud_percent',
]
const TARGET_KNOWN = ['name', 'be_there_min_before_sunrise', 'drive_km', 'drive_min', 'walk_min', 'lat', 'lon']
const LEG_KNOWN = ['after_night', 'km', 'wh_per_km', 'notes', 'fast_charger_on_route_at_km', 'climb_m', 'outside_c']

/** `+01:00` from hours. */
export function zoneOf(offsetH: number): string {
  const minutes = Math.round(Math.abs(offsetH) * 60)
  const clock = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
  return `${offsetH < 0 ? '-' : '+'}${clock}`
}

const yesNo = (value: unknown): 'yes' | 'no' | 'not-known' =>
  value === true ? 'yes' : value === false ? 'no' : 'not-known'

function arriveOf(night: ScenarioNight): string {
  const stated = clockOf(textLike(night, /^arrive/))
  if (stated !== undefined) return stated
  const checkIn = spanOf(night.check_in)
  const plugIn = clockOf(night.hookup?.plug_in)
  const sunset = clockOf(night.sun?.sunset)
  const wanted =
    plugIn !== undefined
      ? shiftClock(plugIn, -ARRIVE_BEFORE_PLUG_MIN)
      : sunset !== undefined
        ? shiftClock(sunset, -ARRIVE_BEFORE_SUNSET_MIN)
        : EVENING
  return checkIn !== undefined && minutesOf(wanted) < minutesOf(checkIn.from) ? checkIn.from : wanted
}

function rulesOf(night: ScenarioNight, scenario: Scenario): Night['rules'] {
  const rules: Loose = night.rules ?? {}
  const locker = scenario.vehicle.compartments.find((one) => /^site|food.?locker/.test(one.id))
  const required = rules['food_locker_required'] === true
  const size = locker?.size_mm.map(Math.round)
  const [x, y, z] = size ?? []
  return {
    sleepInVehicle: yesNo(rules['sleeping_in_the_vehicle_allowed']),
    chargeFromPost: chargingRuleOf(textLike(rules, /charging/) ?? '').allowed,
    tentOrAwning: rules['tent_or_awning_allowed'] === true,
    outsideStorage: rules['anything_outside_overnight_allowed'] === true,
    foodLockerRequired: required,
    ...(required && x !== undefined && y !== undefined && z !== undefined ? { foodLockerMm: [x, y, z] } : {}),
    fire: yesNo(rules['fire_allowed'] ?? rules['open_fire_allowed']),
    mustStandOnHardPad: rules['vehicle_must_be_on_the_hard_pad'] === true,
  }
}

function pitchOf(night: ScenarioNight): Night['pitch'] {
  const pitch = night.pitch ?? {}
  const down = pitch.slope_down_towards ?? 'level'
  const side = (pitch.post_side ?? '').toLowerCase()
  const across = /left/.test(side) ? 'left' : /right/.test(side) ? 'right' : undefined
  const along = /front/.test(side) ? 'front' : /rear/.test(side) ? 'rear' : undefined
  return {
    surface: pitch.surface ?? 'not stated',
    slope01: (pitch.slope_percent ?? 0) / 100,
    slopeDownTowards: /nose|front/.test(down)
      ? 'nose'
      : /tail|rear/.test(down)
        ? 'tail'
        : /left/.test(down)
          ? 'left'
          : /right/.test(down)
            ? 'right'
            : 'level',
    postSide: across !== undefined && along !== undefined ? `${across}-${along}` : 'not-known',
    cableRunMm: mmOf(pitch.cable_run_m ?? 0),
    toToiletsMm: mmOf(pitch.to_toilets_m ?? 0),
  }
}

function weatherOf(night: ScenarioNight): Night['weather'] {
  const weather = night.weather
  const hours = (weather.hours ?? []).flatMap((hour) => {
    const clock = clockOf(hour.hour)
    return clock === undefined ? [] : [{ clock, tempC: hour.temp_c }]
  })
  const temps = hours.map((hour) => hour.tempC)
  const lowC = weather.low_c ?? Math.min(...temps, 0)
  return {
    highC: weather.high_c ?? Math.max(...temps, lowC),
    lowC,
    windMPerS: weather.wind_m_s ?? 0,
    humidity01: (weather.relative_humidity_percent ?? HUMIDITY01 * 100) / 100,
    cloud01: share(numberLike(weather, /cloud.*percent/)) ?? CLOUD01,
    snowMm: weather.snow_overnight_mm_water ?? 0,
    rainMm: numberLike(weather, /rain/) ?? 0,
    hours,
    coldMarginK: 0,
  }
}

/** Charge on arriving: as stated; on the first night of an electric vehicle a half where nothing is stated. */
function arriveChargeOf(battery: Loose, index: number): number | undefined {
  const stated = share(perNight(battery, /^arrive_percent|^traction.*arrive/, index))
  if (stated !== undefined || index > 0) return stated
  return numberLike(battery, /^usable_kwh/, /^traction.*kwh/) === undefined ? undefined : 0.5
}

const share = (percent: number | undefined): number | undefined => (percent === undefined ? undefined : percent / 100)

function targetOf(night: ScenarioNight): Night['target'] {
  const target = night.target
  if (target === null || target === undefined) return undefined
  const sunrise = clockOf(night.sun?.next_sunrise)
  const stated = clockOf(textLike(target, /be_(at|there)/))
  const before = target.be_there_min_before_sunrise ?? (sunrise && stated ? minutesOf(sunrise) - minutesOf(stated) : 0)
  return {
    name: target.name ?? 'target',
    minutesBeforeSunrise: Math.round(before),
    driveM: Math.round((target.drive_km ?? 0) * 1000),
    driveMin: Math.round(target.drive_min ?? 0),
    walkMin: Math.round(target.walk_min ?? 0),
  }
}

function legOf(scenario: Scenario, index: number): Leg | undefined {
  const leg = (scenario.legs ?? []).find((one) => one.after_night === index + 1)
  if (leg === undefined) return undefined
  const at = leg['fast_charger_on_route_at_km']
  const stops = (Array.isArray(at) ? at : [at]).filter((one): one is number => typeof one === 'number')
  const statedW = numberLike(leg, /charger.*kw/)
  const powerW = statedW === undefined ? FAST_CHARGER_W : statedW * 1000
  return {
    distanceM: Math.round(leg.km * 1000),
    ...given('whPerKm', leg.wh_per_km),
    ...given('climbM', numberLike(leg, /climb/)),
    ...given('outsideC', numberLike(leg, /outside.*_c$|temp.*_c$/)),
    fastChargers: stops.map((km) => ({ atM: Math.round(km * 1000), powerW })),
    ...noteOf(
      leg.notes,
      stops.length > 0 && statedW === undefined ? 'The fast charger’s power is not stated: planned at 50 kW' : '',
      leftoversOf(leg, LEG_KNOWN),
    ),
  }
}

export function nightsOf(scenario: Scenario, nightIds: readonly string[], pieces: readonly Piece[]): Night[] {
  const battery: Loose = scenario.vehicle.battery ?? {}
  const bedding = pieces
    .filter((piece) => piece.bedding !== undefined && piece.atNight === 'bed')
    .map((piece) => piece.id)
  const covers = pieces.some((piece) => piece.purpose === 'window-covers')
  // A vehicle that heats all night draws fresh air itself; else a window stands ajar.
  const drawsAir =
    (scenario.vehicle.thermal.fresh_air_m3_per_h ?? 0) > 0 &&
    scenario.vehicle.thermal.may_run_all_night_when_parked === true
  return scenario.nights.map((night, index) => {
    const rules: Loose = night.rules ?? {}
    const rule = textLike(rules, /charging/) ?? ''
    const arrive = arriveOf(night)
    const sleep = night.sleep
      ? { from: clockOf(night.sleep[0]) ?? SLEEP.from, to: clockOf(night.sleep[1]) ?? SLEEP.to }
      : SLEEP
    return {
      id: nightIds[index] ?? `night-${String(index + 1)}`,
      date: night.date,
      site: {
        name: night.site,
        latitudeDeg: night.lat,
        longitudeDeg: night.lon,
        elevationM: night.elevation_m ?? 0,
        zone: zoneOf(night.utc_offset_h),
      },
      arrive,
      ...given('checkIn', spanOf(night.check_in)),
      ...given('checkOutBy', clockOf(night.check_out_by)),
      ...given('quiet', spanOf(night.quiet)),
      ...given('movementBan', spanOf(night.vehicle_movement_banned)),
      ...given('gateClosed', spanOf(night.gate_closed)),
      rules: rulesOf(night, scenario),
      pitch: pitchOf(night),
      weather: weatherOf(night),
      ...given('hookup', hookupOf(night, scenario, rule, arrive, shiftClock(sleep.to, MORNING_MIN))),
      covers,
      ventilation: drawsAir ? { gapMm: 0, sides: 0 } : { gapMm: 20, sides: 2 },
      beddingPieceIds: bedding,
      heating: {
        setPoints: typeof night.climate_target_c === 'number' ? setPointsOf(night, arrive, sleep.from) : [],
        bedHeaterIds: [],
      },
      sleep,
      morningMin: MORNING_MIN,
      ...given('target', targetOf(night)),
      ...given('arriveCharge01', arriveChargeOf(battery, index)),
      ...given('leisureCharge01', share(perNight(battery, /leisure.*arrive/, index))),
      ...given('leg', legOf(scenario, index)),
      ...noteOf(
        rule === '' ? '' : `charging: ${rule}`,
        leftoversOf(rules, RULES_KNOWN),
        leftoversOf(night.pitch ?? {}, PITCH_KNOWN),
        leftoversOf(night.weather, WEATHER_KNOWN),
        night.target ? leftoversOf(night.target, TARGET_KNOWN) : '',
        leftoversOf(night, NIGHT_KNOWN),
      ),
    }
  })
}

/** Kept above freezing while people come and go, °C: what a traveller with water on board would set, common practice. */
const FROST_GUARD_C = 3

/** The scenario states one warmth, for the hours of sleep; from arrival to bedtime the cabin is only kept from freezing. */
function setPointsOf(night: ScenarioNight, arrive: string, bedtime: string): Night['heating']['setPoints'] {
  const tempC = night.climate_target_c ?? FROST_GUARD_C
  return [
    { from: arrive, tempC: Math.min(FROST_GUARD_C, tempC) },
    { from: bedtime, tempC },
  ]
}
