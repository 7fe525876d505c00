/** Generated from the types of shared/climate by `tsx test/support/plan-schema/main.ts`; do not edit. */
import { z } from '../zod.ts'
import { utcSchema } from './units.ts'

export const sunTimesSchema = z.object({
  sunsetUtc: utcSchema.nullable(),
  civilDuskUtc: utcSchema.nullable(),
  nauticalDawnUtc: utcSchema.nullable(),
  civilDawnUtc: utcSchema.nullable(),
  sunriseUtc: utcSchema.nullable(),
})

export const weatherStepSchema = z.object({
  atUtc: utcSchema,
  tempC: z.number(),
  windMPerS: z.number(),
  humidity01: z.number(),
  cloud01: z.number(),
})

export const glassPaneSchema = z.object({
  id: z.enum(['windscreen', 'front-sides', 'rear-sides', 'tailgate', 'roof']),
  areaM2: z.number(),
  skyView01: z.number(),
})

export const cabinParametersSchema = z.object({
  bodyClass: z.enum(['hatchback', 'estate', 'crossover', 'van-bare', 'van-insulated']),
  airVolumeM3: z.number(),
  panes: z.array(glassPaneSchema),
  bodyAreaM2: z.number(),
  bodyUWPerM2K: z.number(),
  lossBareWPerK: z.number().nullable(),
  lossCoveredWPerK: z.number().nullable(),
  windFactorPerMPerS: z.number().nullable(),
  coverM2KPerW: z.number(),
  leakagePerH: z.number(),
  heatCapacityKJPerK: z.number(),
  freshAirM3PerH: z.number(),
  lossScale: z.number(),
})

export const heaterParametersSchema = z.object({
  kind: z.enum(['none', 'heat-pump', 'resistance', 'mains-fan-heater']),
  maxHeatW: z.number(),
  minHeatW: z.number(),
  cop: z.array(
    z.object({
      outsideC: z.number(),
      value: z.number(),
    }),
  ),
  canCool: z.boolean(),
  awakeLoadW: z.number(),
  mayRunAllNight: z.boolean(),
  switchesOffAfterS: z.number().nullable(),
  switchesOffBelow01: z.number().nullable(),
  lowerLimitC: z.exactOptional(z.number().nullable()),
})

export const bedHeaterSchema = z.object({
  id: z.string(),
  kind: z.enum(['heated-seat', 'underblanket', 'foot-pad']),
  powerW: z.number(),
})

export const sleeperBeddingSchema = z.object({
  comfortC: z.number().nullable(),
  coverClo: z.number(),
  matM2KPerW: z.number(),
})

export const sleeperSchema = z.object({
  id: z.string(),
  label: z.string(),
  heightMm: z.number(),
  massG: z.number(),
  sleeps: z.enum(['cold', 'average', 'warm']),
  bedding: sleeperBeddingSchema,
})

export const leadSchema = z.object({
  lengthMm: z.number(),
  areaMm2: z.number(),
})

export const supplyReadingSchema = z.object({
  currentA: z.number(),
  volts: z.number(),
})

export const supplyParametersSchema = z.object({
  connector: z.string(),
  nominalV: z.number(),
  ratedV: z.exactOptional(z.number()),
  breakerA: z.number(),
  siteLimitA: z.number().nullable(),
  leadLimitA: z.number().nullable(),
  adapterLimitA: z.number().nullable(),
  usesAdapter: z.exactOptional(z.boolean()),
  usesExtension: z.exactOptional(z.boolean()),
  leads: z.exactOptional(z.array(leadSchema)),
  chargingUnitLimitA: z.number().nullable(),
  heldA: z.number().nullable(),
  onboardMaximumA: z.number().nullable(),
  minimumA: z.number(),
  readings: z.array(supplyReadingSchema),
  earthOk: z.enum(['yes', 'no', 'not-known']),
  polarityReversed: z.enum(['yes', 'no', 'not-known']),
  otherLoadW: z.number(),
  plugInUtc: utcSchema,
  unplugUtc: utcSchema,
  pricePerKWh: z.number().nullable(),
  fixedPrice: z.number(),
  chargeAllowed: z.boolean(),
})

export const batteryParametersSchema = z.object({
  usableWh: z.number(),
  reserve01: z.number(),
  chargeLimit01: z.number(),
  efficiency01: z.number(),
  overheadW: z.number(),
  coldOverheadW: z.number(),
  arrive01: z.number(),
  fastMaxW: z.number(),
})

export const leisureParametersSchema = z.object({
  kind: z.enum(['lfp', 'lead']),
  usableWh: z.number(),
  reserve01: z.number(),
  chargerW: z.number(),
  loadW: z.number(),
  arrive01: z.number(),
  inverterMaxW: z.number(),
})

export const legParametersSchema = z.object({
  distanceM: z.number(),
  whPerKm: z.number(),
  speedKmPerH: z.number().nullable(),
  climbM: z.number(),
  outsideC: z.number(),
  reserve01: z.number(),
  massG: z.number(),
  dragAreaM2: z.number().nullable(),
  rollingCoefficient: z.number().nullable(),
  auxiliaryW: z.number().nullable(),
  consumptionScale: z.exactOptional(z.number()),
  fastChargers: z.array(
    z.object({
      atM: z.number(),
      powerW: z.number(),
      name: z.string().nullable(),
    }),
  ),
})

export const nightDecisionsSchema = z.object({
  setPoints: z.array(
    z.object({
      fromUtc: utcSchema,
      tempC: z.number().nullable(),
    }),
  ),
  bedHeaterIds: z.array(z.string()),
  currentA: z.number().nullable(),
  chargeLimit01: z.number(),
  windowGapMm: z.number(),
  windowSides: z.number(),
  covers: z.boolean(),
  beddingSetId: z.exactOptional(z.string()),
  bedHeatersFromUtc: z.exactOptional(utcSchema),
  coversFromUtc: z.exactOptional(utcSchema),
})

export const beddingSetSchema = z.object({
  id: z.string(),
  bySleeper: z.array(
    z.object({
      sleeperId: z.string(),
      bedding: sleeperBeddingSchema,
    }),
  ),
  moves: z.number(),
  volumeMm3: z.number(),
  pieceIds: z.exactOptional(z.array(z.string())),
  aboard: z.exactOptional(z.boolean()),
})

export const nightInputSchema = z.object({
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number(),
  arriveUtc: utcSchema,
  sleepFromUtc: utcSchema,
  sleepToUtc: utcSchema,
  departUtc: utcSchema,
  weather: z.array(weatherStepSchema),
  cabin: cabinParametersSchema,
  heater: heaterParametersSchema,
  bedHeaters: z.array(bedHeaterSchema),
  sleepers: z.array(sleeperSchema),
  supply: supplyParametersSchema.nullable(),
  battery: batteryParametersSchema.nullable(),
  leisure: leisureParametersSchema.nullable(),
  leg: legParametersSchema.nullable(),
  decisions: nightDecisionsSchema,
  stepS: z.number(),
  fault: z
    .union([
      z.object({
        kind: z.literal('supply-lost'),
        atUtc: utcSchema,
      }),
      z.object({
        kind: z.literal('breaker-trips'),
        atUtc: utcSchema,
        heldA: z.number().nullable(),
        resetUtc: utcSchema.nullable(),
      }),
      z.object({
        kind: z.literal('heater-fails'),
        atUtc: utcSchema,
      }),
    ])
    .nullable(),
  keepsOnW: z.exactOptional(z.number()),
  beddingSets: z.exactOptional(z.array(beddingSetSchema)),
  coversOwned: z.exactOptional(z.boolean()),
  coverMoves: z.exactOptional(z.number()),
  arriveInsideC: z.exactOptional(z.number().nullable()),
})

export const nightSeriesSchema = z.object({
  atUtc: z.array(utcSchema),
  outsideC: z.array(z.number()),
  frontAirC: z.array(z.number()),
  bedAirC: z.array(z.number()),
  massC: z.array(z.number()),
  floorC: z.array(z.number()),
  glassC: z.array(z.number()),
  operativeC: z.array(z.number()),
  feetC: z.array(z.number()),
  dewPointC: z.array(z.number()),
  relativeHumidity01: z.array(z.number()),
  co2Ppm: z.array(z.number()),
  condensateG: z.array(z.number()),
  frostG: z.array(z.number()),
  heatW: z.array(z.number()),
  heatingElectricW: z.array(z.number()),
  bedHeatW: z.array(z.number()),
  supplyW: z.array(z.number()),
  chargeW: z.array(z.number()),
  wiringLossW: z.array(z.number()),
  charge01: z.array(z.number()),
  leisure01: z.array(z.number()),
})

export const supplyLimitSchema = z.enum([
  'site',
  'lead',
  'breaker',
  'socket',
  'adapter',
  'charging-unit',
  'held',
  'onboard',
  'voltage',
])

export const supplyOutcomeSchema = z.object({
  sourceOhm: z.number(),
  sourceOhmSpread: z.number(),
  measured: z.boolean(),
  noLoadV: z.number(),
  limits: z.array(
    z.object({
      part: supplyLimitSchema,
      currentA: z.number(),
    }),
  ),
  usableA: z.number(),
  askA: z.number(),
  phaseFactor: z.number(),
  limitedBy: supplyLimitSchema,
  voltsAtLoad: z.number(),
  wattsAtLoad: z.number(),
  sag01: z.number(),
  heatInWiringW: z.number(),
  pathOhm: z.exactOptional(z.number()),
  heatInPathW: z.exactOptional(z.number()),
  pilotDutyPercent: z.exactOptional(z.number().nullable()),
  contactAtWorstW: z.number(),
  belowMinimum: z.boolean(),
  holdV: z.number(),
  stepDownV: z.number(),
  stopV: z.number(),
})

export const sleeperHourSchema = z.object({
  atUtc: utcSchema,
  operativeC: z.number(),
  feetC: z.number(),
  marginK: z.number(),
  feetMarginK: z.number(),
  verdict: z.enum(['cold', 'warm', 'enough', 'cool', 'too-cold']),
  requiredClo: z.number(),
})

export const sleeperVerdictSchema = z.object({
  sleeperId: z.string(),
  marginK: z.number(),
  ruledBy: z.enum(['bag-rating', 'heat-balance']),
  verdict: z.enum(['cold', 'warm', 'enough', 'cool', 'too-cold']),
  coldFromUtc: utcSchema.nullable(),
  feetColdFromUtc: utcSchema.nullable(),
  requiredClo: z.number(),
  coldestOperativeC: z.number(),
  coldestFeetC: z.number(),
  hours: z.exactOptional(z.array(sleeperHourSchema)),
})

export const legOutcomeSchema = z.object({
  needWh: z.number(),
  reserveWh: z.number(),
  marginWh: z.number(),
  stops: z.array(
    z.object({
      atM: z.number(),
      name: z.string().nullable(),
      arrive01: z.number(),
      leave01: z.number(),
      durationS: z.number(),
      energyWh: z.number(),
    }),
  ),
  reachable: z.boolean(),
})

export const paneOutcomeSchema = z.object({
  id: z.enum(['windscreen', 'front-sides', 'rear-sides', 'tailgate', 'roof']),
  surfaceC: z.array(z.number()),
  condensateG: z.array(z.number()),
  frostG: z.array(z.number()),
  mostCondensateG: z.number(),
  mostFrostG: z.number(),
  wetFromUtc: utcSchema.nullable(),
  frostFromUtc: utcSchema.nullable(),
})

export const windowCostSchema = z.object({
  gapMm: z.number(),
  airM3PerH: z.number(),
  heatW: z.number(),
  electricW: z.number().nullable(),
})

export const energyBalanceSchema = z.object({
  heatInWh: z.number(),
  heatOutWh: z.number(),
  storedWh: z.number(),
  residualWh: z.number(),
  shellWh: z.number(),
  freshAirWh: z.number(),
  skyWh: z.number(),
  waterInG: z.number(),
  waterOutG: z.number(),
  waterStoredG: z.number(),
  waterResidualG: z.number(),
})

export const nightCautionCodeSchema = z.enum([
  'adapter',
  'co2-high',
  'no-fresh-air',
  'shared-wiring',
  'domestic-socket',
  'polarity-reversed',
  'earth-missing',
  'earth-not-known',
  'sag-step-down',
  'sag-stop',
  'cold-illness',
  'heat-illness',
  'heater-stops',
  'carbon-monoxide',
  'leisure-frost',
  'leisure-acid-frost',
  'extension-lead',
  'below-minimum-current',
  'two-loads',
])

export const nightOutcomeSchema = z.object({
  series: nightSeriesSchema,
  supply: supplyOutcomeSchema.nullable(),
  sleepers: z.array(sleeperVerdictSchema),
  coldestBedC: z.number(),
  coldestBedUtc: utcSchema,
  coldestOutsideC: z.number(),
  coldestOutsideUtc: utcSchema,
  heatingWh: z.number(),
  fromSiteWh: z.number(),
  wiringLossWh: z.number(),
  intoBatteryWh: z.number(),
  arrive01: z.number().nullable(),
  depart01: z.number().nullable(),
  leisureDepart01: z.number().nullable(),
  leg: legOutcomeSchema.nullable(),
  cost: z.number(),
  condensateG: z.number(),
  frostG: z.number(),
  liningG: z.exactOptional(z.number()),
  coilDrainG: z.exactOptional(z.number()),
  co2MaxPpm: z.number(),
  lossWPerK: z.object({
    shell: z.number(),
    freshAir: z.number(),
    total: z.number(),
    shellSpread01: z.exactOptional(z.number()),
  }),
  overheadWh: z.exactOptional(z.number()),
  windowGapCostW: z.number(),
  glass: z.exactOptional(z.array(paneOutcomeSchema)),
  windowCosts: z.exactOptional(z.array(windowCostSchema)),
  keptOnWh: z.exactOptional(z.number()),
  balance: energyBalanceSchema,
  cautions: z.array(
    z.object({
      code: nightCautionCodeSchema,
      atUtc: utcSchema.nullable(),
      value: z.number().nullable(),
    }),
  ),
  stopsUtc: utcSchema.nullable(),
})

export const nightStandardsSchema = z.object({
  sitting: z.object({
    atUtc: utcSchema,
    vote: z.number().nullable(),
    dissatisfied01: z.number().nullable(),
  }),
  asleep: z.object({
    atUtc: utcSchema,
    vote: z.number().nullable(),
    dissatisfied01: z.number().nullable(),
    leastClo: z.number().nullable(),
  }),
  outside: z.array(
    z.object({
      atUtc: utcSchema,
      leastClo: z.number().nullable(),
      neutralClo: z.number().nullable(),
      windChillC: z.number().nullable(),
    }),
  ),
})

export const frontPointSchema = z.object({
  decisions: nightDecisionsSchema,
  comfortMarginK: z.number(),
  depart01: z.number().nullable(),
  legMarginWh: z.number().nullable(),
  cost: z.number(),
  moves: z.exactOptional(z.number()),
  beddingVolumeMm3: z.exactOptional(z.number()),
  risingC: z.exactOptional(z.number()),
})

export const searchReasonSchema = z.union([
  z.object({
    code: z.enum(['warm-in-hand', 'too-cold-by']),
    valueK: z.number(),
  }),
  z.object({
    code: z.enum(['leg-in-hand', 'leg-short-by']),
    valueWh: z.number(),
  }),
  z.object({
    code: z.literal('stop-to-charge'),
  }),
  z.object({
    code: z.literal('saves-money'),
    value: z.number(),
  }),
  z.object({
    code: z.literal('saves-moves'),
    value: z.number(),
  }),
  z.object({
    code: z.literal('bedding'),
    setId: z.string(),
  }),
  z.object({
    code: z.literal('bed-heat-first'),
    valueW: z.number(),
  }),
  z.object({
    code: z.literal('lower-asleep'),
    valueC: z.number(),
  }),
  z.object({
    code: z.literal('pre-warm'),
    fromUtc: utcSchema,
    onSite: z.boolean(),
  }),
  z.object({
    code: z.literal('less-current'),
    valueA: z.number(),
  }),
  z.object({
    code: z.literal('charge-enough'),
    value01: z.number(),
  }),
  z.object({
    code: z.enum(['covers-up', 'window-open']),
  }),
])

export const nightSearchSchema = z.object({
  front: z.array(frontPointSchema),
  recommendedIndex: z.number(),
  reason: z.exactOptional(z.enum(['warm-and-leg', 'warm-with-stop', 'warm-no-leg', 'leg-first', 'warmest'])),
  reasons: z.exactOptional(z.array(searchReasonSchema)),
  sensitivity: z.exactOptional(
    z.object({
      colder: z.object({
        comfortMarginK: z.number(),
        depart01: z.number().nullable(),
        legMarginWh: z.number().nullable(),
      }),
      thirstier: z.object({
        legMarginWh: z.number().nullable(),
      }),
    }),
  ),
  evaluated: z.number(),
})

export const faultSchema = z.union([
  z.object({
    kind: z.literal('supply-lost'),
    atUtc: utcSchema,
  }),
  z.object({
    kind: z.literal('breaker-trips'),
    atUtc: utcSchema,
    heldA: z.number().nullable(),
    resetUtc: utcSchema.nullable(),
  }),
  z.object({
    kind: z.literal('heater-fails'),
    atUtc: utcSchema,
  }),
])

export const faultHourSchema = z.object({
  atUtc: utcSchema,
  outsideC: z.number(),
  bedAirC: z.number(),
  feetC: z.number(),
  marginK: z.number().nullable(),
  heatW: z.number(),
  charge01: z.number().nullable(),
  leisure01: z.number().nullable(),
})

export const faultActionSchema = z.union([
  z.object({
    code: z.enum(['covers-up', 'heating-off', 'bed-heaters-on', 'move-indoors']),
  }),
  z.object({
    code: z.literal('lower-heating'),
    tempC: z.number(),
  }),
  z.object({
    code: z.literal('warmer-bedding'),
    setId: z.string(),
  }),
  z.object({
    code: z.literal('reset-lower'),
    heldA: z.number().nullable(),
  }),
])

export const faultAdviceSchema = z.object({
  actions: z.array(faultActionSchema),
  holds: z.boolean(),
  marginK: z.number().nullable(),
  depart01: z.number().nullable(),
  legMarginWh: z.number().nullable(),
  byUtc: utcSchema.nullable(),
  byColdUtc: utcSchema.nullable(),
})

export const faultOutcomeSchema = z.object({
  fault: faultSchema,
  coldestBedC: z.number(),
  depart01: z.number().nullable(),
  legMarginWh: z.number().nullable(),
  actByUtc: utcSchema.nullable(),
  hoursOfHeatLeft: z.number().nullable(),
  hours: z.exactOptional(z.array(faultHourSchema)),
  advice: z.exactOptional(faultAdviceSchema),
  outcome: nightOutcomeSchema,
})

export const calibrationSchema = z.object({
  lossScale: z.number(),
  lossScaleSpread: z.number(),
  lossWPerK: z.number(),
  lossSpreadWPerK: z.number(),
  electricWPerK: z.number().nullable(),
  electricSpreadWPerK: z.number().nullable(),
  nights: z.number(),
  readings: z.number(),
  misfit: z.number(),
  consumption: z.exactOptional(
    z.object({
      scale: z.number(),
      scaleSpread: z.number(),
      whPerKm: z.number().nullable(),
      whPerKmSpread: z.number().nullable(),
      legs: z.number(),
      readings: z.number(),
    }),
  ),
})

export const measuredNightSchema = z.object({
  input: nightInputSchema,
  fromUtc: utcSchema,
  toUtc: utcSchema,
  heatingWh: z.number().nullable(),
  siteWh: z.number().nullable(),
  from01: z.number().nullable(),
  to01: z.number().nullable(),
  lowestInsideC: z.number().nullable(),
  meanInsideC: z.number().nullable(),
})
