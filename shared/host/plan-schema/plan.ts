/** Generated from the types of shared/plan by `tsx test/support/plan-schema/main.ts`; do not edit. */
import { z } from '../zod.ts'
import {
  beddingSetSchema,
  calibrationSchema,
  faultOutcomeSchema,
  legParametersSchema,
  measuredNightSchema,
  nightInputSchema,
  nightOutcomeSchema,
  nightSearchSchema,
  nightStandardsSchema,
  sunTimesSchema,
} from './climate.ts'
import { checklistOutcomeSchema, stepSchema } from './checklist.ts'
import { packingInputSchema, packingOutcomeSchema } from './packing.ts'
import { problemSchema } from './result.ts'
import { utcSchema } from './units.ts'

export const zonedInstantSchema = z.object({
  atUtc: utcSchema,
  zone: z.string(),
})

export const planHomeSchema = z.object({
  leave: zonedInstantSchema.nullable(),
  back: zonedInstantSchema.nullable(),
})

export const verdictSchema = z.object({
  holds: z.boolean(),
  shortfalls: z.number(),
  depart01: z.number().nullable(),
  legMarginWh: z.number().nullable(),
  coldestBedC: z.number(),
  coldestBedUtc: utcSchema,
  movesAtDusk: z.number(),
})

export const nightClockSchema = z.object({
  zone: z.string(),
  sun: sunTimesSchema,
  arriveUtc: utcSchema,
  bedtimeUtc: utcSchema,
  wakeUtc: utcSchema,
  departUtc: utcSchema,
  beAtTargetUtc: utcSchema.nullable(),
  quietFromUtc: utcSchema.nullable(),
  quietToUtc: utcSchema.nullable(),
  banFromUtc: utcSchema.nullable(),
  banToUtc: utcSchema.nullable(),
  gateFromUtc: utcSchema.nullable(),
  gateToUtc: utcSchema.nullable(),
  checkOutUtc: utcSchema.nullable(),
})

export const pitchAdviceSchema = z.object({
  park: z.enum(['not-known', 'nose-in', 'nose-out', 'either']),
  headUphill: z.boolean().nullable(),
  rampUnder: z.enum(['left', 'right', 'front', 'rear']).nullable(),
  rampMm: z.number(),
  riseOverBedMm: z.number(),
  leadReaches: z.boolean().nullable(),
})

export const nightPlanSchema = z.object({
  nightId: z.string(),
  clock: nightClockSchema,
  input: nightInputSchema,
  outcome: nightOutcomeSchema,
  standards: z.exactOptional(nightStandardsSchema),
  beddingSets: z.array(beddingSetSchema),
  search: nightSearchSchema.nullable(),
  faults: z.array(faultOutcomeSchema),
  pitch: pitchAdviceSchema,
  cost: z.number(),
})

export const tripCalibrationSchema = z.object({
  fit: calibrationSchema,
  from: z.array(measuredNightSchema),
  legs: z.array(
    z.object({
      leg: legParametersSchema,
      usableWh: z.number(),
      usedWh: z.number().nullable(),
      from01: z.number().nullable(),
      to01: z.number().nullable(),
    }),
  ),
})

export const nightStoresSchema = z.object({
  nightId: z.string(),
  waterMl: z.number(),
  waterShortMl: z.number(),
  waterLeftMl: z.number(),
  foodG: z.number(),
  foodShortG: z.number(),
  foodLeftG: z.number(),
  dirtyG: z.number(),
  loadG: z.number(),
  payloadMarginG: z.number(),
})

export const findingAreaSchema = z.enum(['site', 'night', 'load', 'leg', 'clock', 'checklist'])

export const findingSchema = z.object({
  id: z.string(),
  severity: z.enum(['shortfall', 'caution', 'note']),
  area: findingAreaSchema,
  nightId: z.string().nullable(),
  problem: problemSchema,
})

export const differenceSchema = z.object({
  code: z.enum([
    'holds-no-more',
    'holds-now',
    'shortfall-added',
    'shortfall-gone',
    'caution-added',
    'comfort',
    'depart',
    'leg-margin',
    'moves',
    'bed-other-place',
    'drive-other-place',
    'bedding-wanted',
    'steps-added',
    'steps-gone',
  ]),
  nightId: z.string().nullable(),
  params: z.record(z.string(), z.union([z.boolean(), z.string(), z.number(), z.array(z.string())])),
  problem: z.exactOptional(problemSchema),
  steps: z.exactOptional(z.array(stepSchema)),
})

export const remedySchema = z.object({
  id: z.string(),
  mends: z.array(z.string()),
  change: z.union([
    z.object({
      kind: z.literal('bring-bedding'),
      nightId: z.string(),
      pieceId: z.string(),
    }),
    z.object({
      kind: z.literal('set-point'),
      nightId: z.string(),
      byK: z.number(),
    }),
    z.object({
      kind: z.literal('charge-limit'),
      nightId: z.string(),
      to01: z.number(),
    }),
    z.object({
      kind: z.literal('stop-on-the-way'),
      nightId: z.string(),
      atM: z.number(),
    }),
    z.object({
      kind: z.literal('bring-piece'),
      pieceId: z.string(),
    }),
    z.object({
      kind: z.literal('leave-behind'),
      pieceIds: z.array(z.string()),
    }),
    z.object({
      kind: z.literal('covers'),
      nightId: z.string(),
    }),
    z.object({
      kind: z.literal('bed-heater'),
      nightId: z.string(),
      heaterId: z.string(),
    }),
    z.object({
      kind: z.literal('current'),
      nightId: z.string(),
      toA: z.number(),
    }),
    z.object({
      kind: z.literal('window-gap'),
      nightId: z.string(),
      toMm: z.number(),
    }),
    z.object({
      kind: z.literal('target-later'),
      nightId: z.string(),
      byMin: z.number(),
    }),
    z.object({
      kind: z.literal('arrive-earlier'),
      nightId: z.string(),
      byMin: z.number(),
    }),
    z.object({
      kind: z.literal('leave-earlier'),
      nightId: z.string(),
      byMin: z.number(),
    }),
    z.object({
      kind: z.literal('without-hookup'),
      nightId: z.string(),
    }),
    z.object({
      kind: z.literal('turn-piece'),
      pieceId: z.string(),
    }),
    z.object({
      kind: z.literal('unlock'),
      pieceId: z.string(),
    }),
    z.object({
      kind: z.literal('together'),
      changes: z.array(
        z.union([
          z.object({
            kind: z.literal('bring-bedding'),
            nightId: z.string(),
            pieceId: z.string(),
          }),
          z.object({
            kind: z.literal('set-point'),
            nightId: z.string(),
            byK: z.number(),
          }),
          z.object({
            kind: z.literal('charge-limit'),
            nightId: z.string(),
            to01: z.number(),
          }),
          z.object({
            kind: z.literal('stop-on-the-way'),
            nightId: z.string(),
            atM: z.number(),
          }),
          z.object({
            kind: z.literal('bring-piece'),
            pieceId: z.string(),
          }),
          z.object({
            kind: z.literal('leave-behind'),
            pieceIds: z.array(z.string()),
          }),
          z.object({
            kind: z.literal('covers'),
            nightId: z.string(),
          }),
          z.object({
            kind: z.literal('bed-heater'),
            nightId: z.string(),
            heaterId: z.string(),
          }),
          z.object({
            kind: z.literal('current'),
            nightId: z.string(),
            toA: z.number(),
          }),
          z.object({
            kind: z.literal('window-gap'),
            nightId: z.string(),
            toMm: z.number(),
          }),
          z.object({
            kind: z.literal('target-later'),
            nightId: z.string(),
            byMin: z.number(),
          }),
          z.object({
            kind: z.literal('arrive-earlier'),
            nightId: z.string(),
            byMin: z.number(),
          }),
          z.object({
            kind: z.literal('leave-earlier'),
            nightId: z.string(),
            byMin: z.number(),
          }),
          z.object({
            kind: z.literal('without-hookup'),
            nightId: z.string(),
          }),
          z.object({
            kind: z.literal('turn-piece'),
            pieceId: z.string(),
          }),
          z.object({
            kind: z.literal('unlock'),
            pieceId: z.string(),
          }),
        ]),
      ),
    }),
  ]),
  cost: z.object({
    litres: z.number(),
    moves: z.number(),
    degreesK: z.number(),
    charge01: z.number(),
    money: z.number(),
    minutes: z.number(),
  }),
  score: z.number(),
  preview: z.array(differenceSchema),
})

export const planSchema = z.object({
  planVersion: z.literal(1),
  home: planHomeSchema,
  verdict: verdictSchema,
  nightVerdicts: z.array(verdictSchema),
  packing: packingOutcomeSchema,
  packingInput: packingInputSchema,
  nights: z.array(nightPlanSchema),
  calibration: tripCalibrationSchema.nullable(),
  stores: z.array(nightStoresSchema),
  checklist: checklistOutcomeSchema,
  findings: z.array(findingSchema),
  remedies: z.array(remedySchema),
  ledger: z.object({
    perNight: z.array(
      z.object({
        nightId: z.string(),
        total: z.number(),
        chargingEstimate: z.number(),
        perTraveller: z.number(),
      }),
    ),
    total: z.number(),
    perTraveller: z.number(),
    people: z.array(
      z.object({
        travellerId: z.string(),
        paid: z.number(),
        owes: z.number(),
      }),
    ),
  }),
  budget: z.object({
    seed: z.number(),
    iterations: z.number(),
    cancelled: z.boolean(),
    askedIterations: z.number(),
  }),
})
