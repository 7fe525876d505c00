/** Generated from the types of shared/packing by `tsx test/support/plan-schema/main.ts`; do not edit. */
import { z } from '../zod.ts'

export const vec3Schema = z.tuple([z.number(), z.number(), z.number()])

export const packedUnitSchema = z.object({
  id: z.string(),
  kind: z.enum(['bin', 'piece']),
  pieceIds: z.array(z.string()),
  sizeMm: vec3Schema,
  massG: z.number(),
})

export const placementSchema = z.object({
  unitId: z.string(),
  bayId: z.string(),
  atMm: vec3Schema,
  sizeMm: vec3Schema,
  edges: z.tuple([
    z.union([z.literal(0), z.literal(1), z.literal(2)]),
    z.union([z.literal(0), z.literal(1), z.literal(2)]),
    z.union([z.literal(0), z.literal(1), z.literal(2)]),
  ]),
})

export const innerPackingSchema = z.object({
  binId: z.string(),
  placements: z.array(placementSchema),
})

export const awayPlaceSchema = z.object({
  unitId: z.string(),
  state: z.enum(['bed', 'in-use', 'outside', 'left-behind']),
})

export const layoutSchema = z.object({
  placements: z.array(placementSchema),
  away: z.array(awayPlaceSchema),
})

export const reachSchema = z.object({
  unitId: z.string(),
  openingId: z.string().nullable(),
  blockedBy: z.array(z.string()),
  handledG: z.number(),
  fromSeatOrBed: z.boolean(),
  liftNeeded: z.boolean(),
})

export const layoutNameSchema = z.enum(['bed', 'drive'])

export const ruleCodeSchema = z.enum([
  'does-not-fit',
  'no-room',
  'opening-too-small',
  'bay-load-limit',
  'unit-too-heavy',
  'payload',
  'front-axle',
  'rear-axle',
  'roof-load',
  'soft-only',
  'freezes',
  'spoils',
  'fuel-in-sleeping-space',
  'fuel-in-cabin',
  'food-place',
  'outside-not-allowed',
  'not-lockable',
  'restraint',
  'above-seat-back',
  'load-on-top',
  'liquid-above',
  'apart',
  'locked',
  'closed-by-bed',
  'reach',
  'site-bay-while-driving',
])

export const unplacedSchema = z.object({
  unitId: z.string(),
  layout: layoutNameSchema,
  nightId: z.string().nullable(),
  why: z.array(
    z.object({
      bayId: z.string(),
      rule: ruleCodeSchema,
      shortByMm: z.number().nullable(),
    }),
  ),
  cure: z
    .union([
      z.object({
        kind: z.literal('turn'),
        edge: z.union([z.literal(0), z.literal(1), z.literal(2)]),
      }),
      z.object({
        kind: z.literal('squeeze'),
        byMm: z.number(),
      }),
      z.object({
        kind: z.literal('leave-behind'),
        unitIds: z.array(z.string()),
      }),
      z.object({
        kind: z.literal('other-bay'),
        bayId: z.string(),
        ignoring: ruleCodeSchema,
      }),
      z.object({
        kind: z.literal('other-bin'),
        binId: z.string(),
      }),
      z.object({
        kind: z.literal('empty-bin'),
        binId: z.string(),
      }),
    ])
    .nullable(),
})

export const massReportSchema = z.object({
  loadG: z.number(),
  payloadG: z.number(),
  frontAxleG: z.number().nullable(),
  rearAxleG: z.number().nullable(),
  roofG: z.number(),
  bayG: z.record(z.string(), z.number()),
  centreMm: vec3Schema,
})

export const packFaultSchema = z.object({
  rule: ruleCodeSchema,
  amount: z.number(),
  limit: z.number(),
  bayId: z.string().nullable(),
  unitId: z.string().nullable(),
  nightId: z.string().nullable(),
})

export const packCautionSchema = z.object({
  code: z.enum(['fuel-in-cabin', 'above-seat-back', 'unrestrained', 'heavy-high']),
  unitId: z.string(),
  bayId: z.string(),
  forceKn: z.tuple([z.number(), z.number()]).nullable(),
})

export const moveSchema = z.object({
  unitId: z.string(),
  from: z.union([placementSchema, awayPlaceSchema]),
  to: z.union([placementSchema, awayPlaceSchema]),
  waits: z.boolean(),
  door: z.string().nullable(),
})

export const binMoveSchema = z.object({
  pieceId: z.string(),
  binId: z.string(),
  state: z.enum(['bed', 'in-use', 'outside', 'left-behind']),
  afterMoves: z.number().nullable(),
})

export const changeoverSchema = z.object({
  moves: z.array(moveSchema),
  binMoves: z.exactOptional(z.array(binMoveSchema)),
  lowerBound: z.number(),
  optimal: z.boolean(),
  stuckUnitIds: z.array(z.string()),
})

export const nightPackingSchema = z.object({
  nightId: z.string(),
  bed: layoutSchema,
  reach: z.array(reachSchema),
  changeover: changeoverSchema,
  changeback: changeoverSchema,
  unplaced: z.array(unplacedSchema),
})

export const packingOutcomeSchema = z.object({
  units: z.array(packedUnitSchema),
  bins: z.array(innerPackingSchema),
  drive: layoutSchema,
  driveReach: z.array(reachSchema),
  driveUnplaced: z.array(unplacedSchema),
  mass: massReportSchema,
  faults: z.array(packFaultSchema),
  cautions: z.array(packCautionSchema),
  nights: z.array(nightPackingSchema),
  loadingOrder: z.array(z.string()),
  weightedReach: z.number(),
  iterations: z.number(),
  cancelled: z.boolean(),
})

export const packVehicleSchema = z.object({
  payloadG: z.number(),
  frontAxle: z
    .object({
      limitG: z.number(),
      readyG: z.number(),
    })
    .nullable(),
  rearAxle: z
    .object({
      limitG: z.number(),
      readyG: z.number(),
    })
    .nullable(),
  rearAxleXMm: z.number().nullable(),
  wheelbaseMm: z.number().nullable(),
  roofLimitG: z.number().nullable(),
  seatBackHeightMm: z.number(),
  driverSide: z.enum(['left', 'right']),
})

export const faceSchema = z.enum(['x-', 'x+', 'y-', 'y+', 'z+'])

export const packOpeningSchema = z.object({
  id: z.string(),
  face: faceSchema,
  fromMm: z.tuple([z.number(), z.number()]),
  toMm: z.tuple([z.number(), z.number()]),
  door: z.string(),
  opensFromInside: z.boolean(),
})

export const restraintSchema = z.enum(['barrier', 'belt', 'strap', 'net', 'lid', 'wedge', 'none'])

export const packBaySchema = z.object({
  id: z.string(),
  kind: z.enum([
    'outside',
    'cargo',
    'seat',
    'footwell',
    'under-floor',
    'front-compartment',
    'roof-box',
    'pocket',
    'bedside',
    'shelf',
    'locker',
  ]),
  originMm: vec3Schema,
  sizeMm: vec3Schema,
  obstacles: z.array(
    z.object({
      label: z.string(),
      atMm: vec3Schema,
      sizeMm: vec3Schema,
    }),
  ),
  slopes: z.array(
    z.object({
      face: z.enum(['x-', 'x+', 'y-', 'y+']),
      insetFloorMm: z.number(),
      insetTopMm: z.number(),
    }),
  ),
  openings: z.array(packOpeningSchema),
  usable: z.object({
    drive: z.boolean(),
    bed: z.boolean(),
  }),
  belongsTo: z.enum(['vehicle', 'site']),
  loadLimitG: z.number(),
  unitLimitG: z.number().nullable(),
  softOnly: z.boolean(),
  lastResort: z.boolean(),
  lockable: z.boolean(),
  heatedAtNight: z.boolean(),
  sleepingSpace: z.boolean(),
  closedByBed: z.boolean(),
  restraint: restraintSchema,
  reachFromBed: z.boolean(),
  reachFromDriverSeat: z.boolean(),
})

export const packLockSchema = z.object({
  layout: layoutNameSchema,
  bayId: z.string(),
  atMm: vec3Schema.nullable(),
  sizeMm: vec3Schema.nullable(),
})

export const packBinSchema = z.object({
  id: z.string(),
  sizeMm: vec3Schema,
  innerMm: vec3Schema,
  massG: z.number(),
  form: z.enum(['rigid', 'soft']),
  squeezeTo01: z.number(),
  bearsG: z.number().nullable(),
  liftLimitG: z.number(),
  lid: z.boolean(),
  locks: z.array(packLockSchema),
})

export const accessClassSchema = z.enum([
  'en-route',
  'on-arrival',
  'evening',
  'night',
  'morning',
  'seldom',
  'emergency',
])

export const packTraitsSchema = z.object({
  liquidMl: z.number(),
  freezesBelowC: z.number().nullable(),
  spoilsAboveC: z.number().nullable(),
  food: z.boolean(),
  scented: z.boolean(),
  valuable: z.boolean(),
  fragile: z.boolean(),
  needsRestraint: z.boolean(),
  wetAfterUse: z.boolean(),
  fuel: z.boolean(),
  lithiumWh: z.number(),
  mayStandOutside: z.boolean(),
})

export const packPieceSchema = z.object({
  id: z.string(),
  sizeMm: vec3Schema,
  massG: z.number(),
  form: z.enum(['rigid', 'soft']),
  squeezeTo01: z.number(),
  uprightEdges: z.array(z.union([z.literal(0), z.literal(1), z.literal(2)])),
  bearsG: z.number().nullable(),
  access: z.array(accessClassSchema),
  uses: z.object({
    drive: z.number(),
    bed: z.number(),
  }),
  traits: packTraitsSchema,
  belongsWith: z.array(z.string()),
  apartFrom: z.array(z.string()),
  binId: z.string().nullable(),
  locks: z.array(packLockSchema),
})

export const nightStateSchema = z.enum(['stored', 'bed', 'in-use', 'outside', 'left-behind'])

export const packNightSchema = z.object({
  id: z.string(),
  states: z.record(z.string(), nightStateSchema),
  lowTempC: z.record(z.string(), z.number()),
  highTempC: z.record(z.string(), z.number()),
  outsideStorage: z.boolean(),
  foodBayIds: z.array(z.string()).nullable(),
})

export const packWeightsSchema = z.object({
  reach: z.number(),
  dusk: z.number(),
  lowAndCentral: z.number(),
  baysKeptFree: z.number(),
})

export const packingInputSchema = z.object({
  vehicle: packVehicleSchema,
  bays: z.array(packBaySchema),
  bins: z.array(packBinSchema),
  pieces: z.array(packPieceSchema),
  nights: z.array(packNightSchema),
  freeShare01: z.number(),
  weights: packWeightsSchema,
})
