/** Pieces brought along and the bins they ride in. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import {
  accessClassSchema,
  currentASchema,
  energyWhSchema,
  fraction01Schema,
  idSchema,
  labelSchema,
  massGSchema,
  noteSchema,
  phaseSchema,
  pointMmSchema,
  sizeMmSchema,
  tempCSchema,
} from './values.ts'

/** Which edge of the stated size may stand upright. */
export const edgeSchema = z.enum(['length', 'width', 'height'])

export const layoutNameSchema = z.enum(['drive', 'bed'])

/** A place the user has fixed. Without a position only the bay is fixed. */
export const lockSchema = z.strictObject({
  layout: layoutNameSchema,
  bayId: idSchema,
  atMm: pointMmSchema.optional(),
  sizeMm: sizeMmSchema.optional(),
})

/** Where a piece is at night. `bed` becomes part of the bed; `in-use` is mounted, worn or plugged in; `outside` stands outdoors. */
export const nightStateSchema = z.enum(['stored', 'bed', 'in-use', 'outside', 'left-behind'])

export const traitsSchema = z.strictObject({
  liquidMl: z.int().min(0).max(500_000).optional(),
  freezesBelowC: tempCSchema.optional(),
  spoilsAboveC: tempCSchema.optional(),
  food: z.boolean().optional(),
  scented: z.boolean().optional(),
  valuable: z.boolean().optional(),
  fragile: z.boolean().optional(),
  needsRestraint: z.boolean().optional(),
  wetAfterUse: z.boolean().optional(),
  /** Burns or is under pressure: outside the sleeping space at night. */
  fuel: z.boolean().optional(),
  lithiumWh: energyWhSchema.optional(),
  mayStandOutside: z.boolean().optional(),
  mustCarry: z.boolean().optional(),
})

export const beddingSchema = z.strictObject({
  kind: z.enum(['bag', 'quilt', 'blanket', 'mat', 'mattress', 'pillow', 'hot-bottle']),
  /** Comfort temperature of the rating to ISO 23537. */
  comfortC: tempCSchema.optional(),
  /** Insulation of a cover, clo. */
  clo: z.number().min(0).max(20).optional(),
  /** Mat insulation to ASTM F3340, m2K/W (1 US R unit = 0.176 m2K/W). */
  matM2KPerW: z.number().min(0).max(5).optional(),
  forTravellerId: idSchema.optional(),
})

/** What a piece does, so that rules can find it. */
export const purposeSchema = z.enum([
  'adapter',
  'lead',
  'charging-unit',
  'supply-tester',
  'window-covers',
  'co-alarm',
  'light',
  'stove',
  'water',
  'food',
  'cool-box',
  'first-aid',
  'shovel',
  'snow-chains',
  'traction-mats',
  'levelling',
  'chocks',
  'scraper',
  'screen-wash',
  'toilet',
  'documents',
  'warning-triangle',
  'clothes',
  'sleepwear',
  'footwear',
  'tools',
  'phone-power',
  'medicine',
  'fan-heater',
  'cargo-net',
  'rubbish',
  'pet',
  'target-kit',
  'fire-blanket',
  'other',
])

export const pieceSchema = z.strictObject({
  id: idSchema,
  name: labelSchema,
  /** Length, width, height as it normally stands. */
  sizeMm: sizeMmSchema,
  massG: massGSchema,
  form: z.enum(['rigid', 'soft']),
  /** Smallest share of the stated size that a soft piece may be squeezed to along one edge; 1 where it may not. */
  squeezeTo01: z.number().min(0.2).max(1),
  upright: z.array(edgeSchema).min(1).max(3),
  /** Load it may carry on its top; absent where the material does not limit it. */
  bearsG: massGSchema.optional(),
  access: z.array(accessClassSchema).min(1).max(7),
  usedIn: z.array(phaseSchema).max(10),
  atNight: nightStateSchema,
  /** Overrides `atNight` for one night. */
  atNightOn: z.array(z.strictObject({ nightId: idSchema, state: nightStateSchema })).max(60),
  traits: traitsSchema,
  purpose: purposeSchema,
  /** Electrical limits, for leads, adapters and charging units. */
  electrical: z
    .strictObject({
      limitA: currentASchema.optional(),
      lengthMm: z.int().min(0).max(100_000).optional(),
      /** Copper of one conductor, as printed on the lead. */
      areaMm2: z.number().min(0.5).max(50).optional(),
      fits: z.array(z.string().max(40)).max(12).optional(),
    })
    .optional(),
  bedding: beddingSchema.optional(),
  belongsWith: z.array(idSchema).max(20),
  apartFrom: z.array(idSchema).max(20),
  binId: idSchema.optional(),
  locks: z.array(lockSchema).max(2),
  /** Owned but not in this load: remedies may bring it. */
  spare: z.boolean(),
  note: noteSchema.optional(),
})

export const binSchema = z.strictObject({
  id: idSchema,
  name: labelSchema,
  sizeMm: sizeMmSchema,
  innerMm: sizeMmSchema,
  massG: massGSchema,
  form: z.enum(['rigid', 'soft']),
  squeezeTo01: z.number().min(0.2).max(1),
  bearsG: massGSchema.optional(),
  /** Most it should weigh when a person lifts it. */
  liftLimitG: massGSchema,
  lid: z.boolean(),
  locks: z.array(lockSchema).max(2),
})

export const kitSchema = z.strictObject({
  pieces: z.array(pieceSchema).max(5000),
  bins: z.array(binSchema).max(500),
  /** Share of each bay left unplanned for hands and wet additions. */
  freeShare01: fraction01Schema,
})

export type Kit = DeepReadonly<z.infer<typeof kitSchema>>
export type Piece = DeepReadonly<z.infer<typeof pieceSchema>>
export type Bin = DeepReadonly<z.infer<typeof binSchema>>
