/** The vehicle: bays, openings, masses, bed, heat, battery, charging. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import {
  currentASchema,
  energyWhSchema,
  fraction01Schema,
  idSchema,
  labelSchema,
  lengthMmSchema,
  massGSchema,
  noteSchema,
  offsetMmSchema,
  pointMmSchema,
  powerWSchema,
  sizeMmSchema,
  tempCSchema,
} from './values.ts'

/** Which wall of a bay: low or high end of the axis. `z+` is the top, lifted from above. */
export const faceSchema = z.enum(['x-', 'x+', 'y-', 'y+', 'z+'])

/** A hole one reaches through. The rectangle lies on the face, in the bay's own frame, on the two other axes in x, y, z order. */
export const openingSchema = z.strictObject({
  id: idSchema,
  name: labelSchema,
  face: faceSchema,
  fromMm: z.tuple([offsetMmSchema, offsetMmSchema]),
  toMm: z.tuple([offsetMmSchema, offsetMmSchema]),
  /** The door that must be opened to use it; several openings may share one. */
  door: labelSchema,
  opensFromInside: z.boolean(),
})

export const baySchema = z.strictObject({
  id: idSchema,
  name: labelSchema,
  kind: z.enum([
    'cargo',
    'seat',
    'footwell',
    'under-floor',
    'front-compartment',
    'roof-box',
    'pocket',
    'bedside',
    'shelf',
    'outside',
    'locker',
  ]),
  /** Corner nearest the rear, left, floor; vehicle frame. */
  originMm: pointMmSchema,
  sizeMm: sizeMmSchema,
  /** Solid boxes inside the bay, such as wheel arches; bay frame. */
  obstacles: z.array(z.strictObject({ label: labelSchema, atMm: pointMmSchema, sizeMm: sizeMmSchema })).max(40),
  /** Walls that lean inwards: how far in at the floor and at the top. */
  slopes: z
    .array(
      z.strictObject({
        label: labelSchema,
        face: z.enum(['x-', 'x+', 'y-', 'y+']),
        insetFloorMm: z.int().min(0).max(5000),
        insetTopMm: z.int().min(0).max(5000),
      }),
    )
    .max(4),
  openings: z.array(openingSchema).min(1).max(8),
  usable: z.strictObject({ drive: z.boolean(), bed: z.boolean() }),
  /** `site` for a food locker or a spot outside: it carries no vehicle mass and does not travel. */
  belongsTo: z.enum(['vehicle', 'site']),
  loadLimitG: massGSchema,
  unitLimitG: massGSchema.optional(),
  softOnly: z.boolean(),
  lastResort: z.boolean(),
  lockable: z.boolean(),
  /** Kept near cabin temperature at night. */
  heatedAtNight: z.boolean(),
  /** Shares the air that people sleep in. */
  sleepingSpace: z.boolean(),
  /** Reached only by lifting the bed away: closed from bedtime to morning. */
  closedByBed: z.boolean(),
  restraint: z.enum(['barrier', 'belt', 'strap', 'net', 'lid', 'wedge', 'none']),
  reachFromBed: z.boolean(),
  reachFromDriverSeat: z.boolean(),
  note: noteSchema.optional(),
})

export const bedSchema = z.strictObject({
  /** Corner nearest the rear, left, bottom of the made bed; vehicle frame. */
  atMm: pointMmSchema,
  /** Length, width and thickness of the made bed with its mattress. */
  sizeMm: sizeMmSchema,
  flatLengthMm: lengthMmSchema,
  flatWidthMm: lengthMmSchema,
  /** Roof lining to the bare platform. */
  headroomMm: lengthMmSchema,
  headEnd: z.enum(['front', 'rear']),
  /** Largest step in the sleeping surface after padding. */
  stepMm: z.int().min(0).max(500),
  mattressPieceIds: z.array(idSchema).max(8),
  /** Insulation of a mattress that stays in the vehicle and is no piece of the load, m2K/W. */
  fittedMattressM2KPerW: z.number().min(0).max(5).optional(),
  /** What must be folded, slid or bridged, in order, in the user's words. */
  prepare: z.array(labelSchema).max(20),
  /** What stays free so that one can drive off, in the user's words. */
  keepClear: z.array(labelSchema).max(20),
  /** The door one leaves by from the bed. */
  exitDoor: labelSchema.optional(),
})

const axleSchema = z.strictObject({ limitG: massGSchema, readyG: massGSchema })

export const massesSchema = z.strictObject({
  permittedG: massGSchema,
  /** Ready to drive, including a driver of `driverIncludedG`. */
  readyG: massGSchema,
  driverIncludedG: massGSchema,
  frontAxle: axleSchema.optional(),
  rearAxle: axleSchema.optional(),
  /** Rear axle, forward from the rear sill. */
  rearAxleXMm: offsetMmSchema.optional(),
  wheelbaseMm: lengthMmSchema.optional(),
  roofLimitG: massGSchema.optional(),
  /** Bars and box already on the roof; not part of `readyG`. */
  roofFittedG: massGSchema.optional(),
})

const temperaturePointSchema = z.strictObject({ outsideC: tempCSchema, value: z.number().min(0).max(20) })

export const thermalSchema = z.strictObject({
  bodyClass: z.enum(['hatchback', 'estate', 'crossover', 'van-bare', 'van-insulated']),
  /** Each overrides the body class's own value. */
  lossBareWPerK: z.number().min(1).max(1000).optional(),
  lossCoveredWPerK: z.number().min(1).max(1000).optional(),
  windFactorPerMPerS: z.number().min(0).max(0.2).optional(),
  airVolumeM3: z.number().min(0.5).max(40).optional(),
  heatCapacityKJPerK: z.number().min(10).max(5000).optional(),
  glassAreaM2: z.number().min(0).max(30).optional(),
  /** Fresh air that the vehicle draws while its heating runs. */
  freshAirM3PerH: z.number().min(0).max(400).optional(),
  /** Fitted from the user's own nights: multiplies the loss. */
  lossScale: z.number().min(0.2).max(5).optional(),
})

export const heaterSchema = z.strictObject({
  kind: z.enum(['heat-pump', 'resistance', 'mains-fan-heater', 'none']),
  maxHeatW: powerWSchema,
  minHeatW: powerWSchema.optional(),
  /** Heat out per electricity in, by outside temperature; straight lines between. */
  cop: z.array(temperaturePointSchema).max(12),
  canCool: z.boolean(),
  /** Electricity used while the vehicle is kept awake. */
  awakeLoadW: powerWSchema,
  mayRunAllNight: z.boolean(),
  switchesOffAfterS: z.int().min(60).max(172_800).optional(),
  switchesOffBelow01: fraction01Schema.optional(),
  /** Below this outside temperature a heat pump gives way to resistance. */
  lowerLimitC: tempCSchema.optional(),
})

export const bedHeaterSchema = z.strictObject({
  id: idSchema,
  name: labelSchema,
  kind: z.enum(['heated-seat', 'underblanket', 'foot-pad']),
  powerW: powerWSchema,
})

export const chargingSchema = z.strictObject({
  efficiency01: z.number().min(0.3).max(1),
  overheadW: powerWSchema,
  minimumA: currentASchema,
  maximumA: currentASchema,
  /** Largest direct-current power at a fast charger. */
  fastMaxW: powerWSchema.optional(),
  inlet: z
    .strictObject({
      side: z.enum(['left', 'right', 'front', 'rear']),
      xMm: offsetMmSchema,
      heightMm: lengthMmSchema,
    })
    .optional(),
})

export const leisureSchema = z.strictObject({
  kind: z.enum(['lfp', 'lead']),
  usableWh: energyWhSchema,
  reserve01: fraction01Schema,
  chargerW: powerWSchema,
  loadW: powerWSchema,
  inverterMaxW: powerWSchema.optional(),
})

export const vehicleSchema = z.strictObject({
  name: labelSchema,
  drive: z.enum(['electric', 'combustion']),
  masses: massesSchema,
  /** Top of the seat backs above the load floor: nothing loose and heavy above it. */
  seatBackHeightMm: lengthMmSchema,
  bays: z.array(baySchema).min(1).max(60),
  bed: bedSchema,
  thermal: thermalSchema,
  heater: heaterSchema,
  bedHeaters: z.array(bedHeaterSchema).max(8),
  /** What the vehicle keeps on all night whatever heats: lights, an alarm, cameras. */
  keepsOnW: powerWSchema.optional(),
  /** Driving battery; absent on a combustion vehicle. */
  battery: z
    .strictObject({
      usableWh: energyWhSchema,
      reserve01: fraction01Schema,
      chargeLimit01: fraction01Schema,
      /** Power spent on warming itself before it accepts charge in frost. */
      coldOverheadW: powerWSchema.optional(),
    })
    .optional(),
  charging: chargingSchema.optional(),
  /** Battery for living loads in a vehicle without a driving battery to share. */
  leisure: leisureSchema.optional(),
  consumption: z.strictObject({
    whPerKm: z.number().min(20).max(2000),
    dragAreaM2: z.number().min(0.3).max(10).optional(),
    rollingCoefficient: z.number().min(0.002).max(0.05).optional(),
    auxiliaryW: powerWSchema.optional(),
  }),
  note: noteSchema.optional(),
})

export type Vehicle = DeepReadonly<z.infer<typeof vehicleSchema>>
export type Bay = DeepReadonly<z.infer<typeof baySchema>>
export type Opening = DeepReadonly<z.infer<typeof openingSchema>>
