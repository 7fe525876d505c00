/** Each night: place, clock, rules, pitch, weather, hookup, heating plan, target and next leg. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import {
  clockSchema,
  clockSpanSchema,
  currentASchema,
  dateSchema,
  fraction01Schema,
  idSchema,
  labelSchema,
  massGSchema,
  noteSchema,
  powerWSchema,
  sizeMmSchema,
  tempCSchema,
  voltageVSchema,
  yesNoUnknownSchema,
  zoneSchema,
} from './values.ts'

/** Open connector standards; `other` is described in words. */
export const connectorSchema = z.enum([
  'nema-5-15',
  'nema-5-20',
  'nema-6-20',
  'nema-6-50',
  'nema-10-30',
  'nema-tt-30',
  'nema-14-30',
  'nema-14-50',
  'iec-60309-16-blue',
  'iec-60309-32-blue',
  'iec-60309-16-red',
  'iec-60309-32-red',
  'cee-7-3-schuko',
  'cee-7-5-french',
  'bs-1363',
  'as-nzs-3112',
  'iec-62196-type-1',
  'iec-62196-type-2',
  'other',
])

/** The two systems behind a North American two-pole post: both legs of a split phase, or two phases of three. */
export const lineSystemSchema = z.enum(['split-phase-240', 'two-of-three-208', 'not-known'])

export const siteSchema = z.strictObject({
  name: labelSchema,
  /** North and east positive, WGS 84. */
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
  elevationM: z.number().min(-450).max(6000),
  zone: zoneSchema,
  phone: labelSchema.optional(),
  gateCode: labelSchema.optional(),
  indoorFallback: labelSchema.optional(),
  nearestCharger: labelSchema.optional(),
})

export const siteRulesSchema = z.strictObject({
  sleepInVehicle: yesNoUnknownSchema,
  chargeFromPost: yesNoUnknownSchema,
  tentOrAwning: z.boolean(),
  outsideStorage: z.boolean(),
  foodLockerRequired: z.boolean(),
  /** Inside of the locker; absent where there is none. */
  foodLockerMm: sizeMmSchema.optional(),
  fire: yesNoUnknownSchema,
  mustStandOnHardPad: z.boolean(),
})

export const pitchSchema = z.strictObject({
  surface: labelSchema,
  slope01: z.number().min(0).max(0.3),
  slopeDownTowards: z.enum(['nose', 'tail', 'left', 'right', 'level']),
  postSide: z.enum(['left-front', 'right-front', 'left-rear', 'right-rear', 'not-known']),
  cableRunMm: z.int().min(0).max(100_000),
  toToiletsMm: z.int().min(0).max(5_000_000),
  /** True bearing that the nose points to, degrees clockwise from north. */
  noseBearingDeg: z.number().min(0).max(360).optional(),
})

export const weatherSchema = z.strictObject({
  highC: tempCSchema,
  lowC: tempCSchema,
  windMPerS: z.number().min(0).max(60),
  windFromDeg: z.number().min(0).max(360).optional(),
  humidity01: fraction01Schema,
  cloud01: fraction01Schema,
  snowMm: z.number().min(0).max(2000),
  rainMm: z.number().min(0).max(1000),
  /** Readings or forecast by the hour; where absent the night is drawn from high and low. */
  hours: z
    .array(
      z.strictObject({
        clock: clockSchema,
        tempC: tempCSchema,
        windMPerS: z.number().min(0).max(60).optional(),
        humidity01: fraction01Schema.optional(),
        cloud01: fraction01Schema.optional(),
      }),
    )
    .max(48),
  /** Planned colder than the forecast by this much. */
  coldMarginK: z.number().min(0).max(20),
})

export const tariffSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('included') }),
  z.strictObject({ kind: z.literal('per-night'), price: z.number().min(0).max(10_000) }),
  z.strictObject({ kind: z.literal('per-kwh'), price: z.number().min(0).max(100) }),
  z.strictObject({ kind: z.literal('not-known') }),
])

export const hookupSchema = z.strictObject({
  connector: connectorSchema,
  connectorNote: labelSchema.optional(),
  nominalV: voltageVSchema,
  breakerA: currentASchema,
  /** As asked of the site; where both voltages below were read, those rule. */
  lineSystem: lineSystemSchema.optional(),
  /** Read at the post with no load, between the poles and from a pole to neutral: their ratio tells 240 V from 208 V. */
  lineToLineV: voltageVSchema.optional(),
  lineToNeutralV: voltageVSchema.optional(),
  siteLimitA: currentASchema.optional(),
  leadLimitA: currentASchema.optional(),
  adapterLimitA: currentASchema.optional(),
  chargingUnitLimitA: currentASchema.optional(),
  /** Current known to hold after a breaker tripped. */
  heldA: currentASchema.optional(),
  /** What the user read at the post: no-load and under load. */
  readings: z.array(z.strictObject({ currentA: currentASchema, volts: voltageVSchema })).max(20),
  earthOk: yesNoUnknownSchema,
  polarityReversed: yesNoUnknownSchema,
  resetReachable: yesNoUnknownSchema,
  plugIn: clockSchema,
  unplug: clockSchema,
  adapterPieceId: idSchema.optional(),
  extensionPieceId: idSchema.optional(),
  /** Other load of the user's own on the same post while charging. */
  otherLoadW: powerWSchema,
  tariff: tariffSchema,
  event: noteSchema.optional(),
})

export const heatingPlanSchema = z.strictObject({
  /** Set-point by wall clock; the last one before a time rules. Empty: no heat. */
  setPoints: z.array(z.strictObject({ from: clockSchema, tempC: tempCSchema.nullable() })).max(24),
  bedHeaterIds: z.array(idSchema).max(8),
  /** Current the traveller asks for; absent: the planner chooses. */
  currentA: currentASchema.optional(),
  chargeLimit01: fraction01Schema.optional(),
})

export const targetSchema = z.strictObject({
  name: labelSchema,
  latitudeDeg: z.number().min(-90).max(90).optional(),
  longitudeDeg: z.number().min(-180).max(180).optional(),
  minutesBeforeSunrise: z.int().min(-720).max(720),
  driveM: z.int().min(0).max(2_000_000),
  driveMin: z.int().min(0).max(1440),
  walkMin: z.int().min(0).max(1440),
})

export const legSchema = z.strictObject({
  distanceM: z.int().min(0).max(3_000_000),
  whPerKm: z.number().min(20).max(2000).optional(),
  speedKmPerH: z.number().min(10).max(200).optional(),
  climbM: z.number().min(-5000).max(5000).optional(),
  outsideC: tempCSchema.optional(),
  reserve01: fraction01Schema.optional(),
  fastChargers: z
    .array(z.strictObject({ atM: z.int().min(0).max(3_000_000), powerW: powerWSchema, name: labelSchema.optional() }))
    .max(20),
  /** Stops at a fast charger that the traveller has agreed to, from the start of the leg. */
  acceptedStopsM: z.array(z.int().min(0).max(3_000_000)).max(20).optional(),
  note: noteSchema.optional(),
})

export const nightSchema = z.strictObject({
  id: idSchema,
  /** The evening's date. */
  date: dateSchema,
  site: siteSchema,
  arrive: clockSchema,
  checkIn: clockSpanSchema.optional(),
  checkOutBy: clockSchema.optional(),
  quiet: clockSpanSchema.optional(),
  movementBan: clockSpanSchema.optional(),
  gateClosed: clockSpanSchema.optional(),
  rules: siteRulesSchema,
  pitch: pitchSchema,
  weather: weatherSchema,
  hookup: hookupSchema.optional(),
  covers: z.boolean(),
  /** Window opened for air: total gap height, and on how many sides. */
  ventilation: z.strictObject({ gapMm: z.int().min(0).max(500), sides: z.int().min(0).max(2) }),
  /** Bedding chosen for this night; what is not listed stays out of the bed. */
  beddingPieceIds: z.array(idSchema).max(60),
  heating: heatingPlanSchema,
  sleep: clockSpanSchema,
  /** From waking to rolling. */
  morningMin: z.int().min(0).max(600),
  target: targetSchema.optional(),
  /** Charge on arriving; absent: carried over from the night before. */
  arriveCharge01: fraction01Schema.optional(),
  leisureCharge01: fraction01Schema.optional(),
  leg: legSchema.optional(),
  /** Taken on before leaving this site: drinking water into the cans on board, food into the load. */
  takenOn: z
    .strictObject({ waterMl: z.int().min(0).max(500_000).optional(), foodG: massGSchema.optional() })
    .optional(),
  note: noteSchema.optional(),
})

export type Night = DeepReadonly<z.infer<typeof nightSchema>>
export type Hookup = DeepReadonly<z.infer<typeof hookupSchema>>
export type Weather = DeepReadonly<z.infer<typeof weatherSchema>>
export type Leg = DeepReadonly<z.infer<typeof legSchema>>
export type Connector = DeepReadonly<z.infer<typeof connectorSchema>>
