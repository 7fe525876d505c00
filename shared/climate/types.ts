/**
 * What the climate engine is given and what it gives back.
 * °C, W, Wh, s, A, V, m2, m3/h; times are `Utc` seconds; fractions 0 to 1.
 */
import type { Utc } from '../units/index.ts'

export type WeatherStep = {
  readonly atUtc: Utc
  readonly tempC: number
  readonly windMPerS: number
  readonly humidity01: number
  readonly cloud01: number
}

export type GlassPane = {
  readonly id: 'windscreen' | 'front-sides' | 'rear-sides' | 'tailgate' | 'roof'
  readonly areaM2: number
  readonly skyView01: number
}

export type CabinParameters = {
  readonly bodyClass: 'hatchback' | 'estate' | 'crossover' | 'van-bare' | 'van-insulated'
  readonly airVolumeM3: number
  readonly panes: readonly GlassPane[]
  readonly bodyAreaM2: number
  readonly bodyUWPerM2K: number
  /** Overrides of the whole shell at still air; null: from glass and body. */
  readonly lossBareWPerK: number | null
  readonly lossCoveredWPerK: number | null
  readonly windFactorPerMPerS: number | null
  readonly coverM2KPerW: number
  readonly leakagePerH: number
  readonly heatCapacityKJPerK: number
  readonly freshAirM3PerH: number
  readonly lossScale: number
}

export type HeaterParameters = {
  readonly kind: 'heat-pump' | 'resistance' | 'mains-fan-heater' | 'none'
  readonly maxHeatW: number
  readonly minHeatW: number
  readonly cop: readonly { readonly outsideC: number; readonly value: number }[]
  readonly canCool: boolean
  readonly awakeLoadW: number
  readonly mayRunAllNight: boolean
  readonly switchesOffAfterS: number | null
  readonly switchesOffBelow01: number | null
  /** Below this outside temperature a heat pump gives way to resistance; absent or null: not known, the table rules. */
  readonly lowerLimitC?: number | null
}

export type BedHeater = {
  readonly id: string
  readonly kind: 'heated-seat' | 'underblanket' | 'foot-pad'
  readonly powerW: number
}

export type SleeperBedding = {
  /** Best comfort rating in use, ISO 23537, °C; null where nothing rated is used. */
  readonly comfortC: number | null
  /** Insulation over the sleeper, clo, with sleepwear. */
  readonly coverClo: number
  /** Insulation under the sleeper, m2K/W. */
  readonly matM2KPerW: number
}

export type Sleeper = {
  readonly id: string
  readonly label: string
  readonly heightMm: number
  readonly massG: number
  readonly sleeps: 'cold' | 'average' | 'warm'
  readonly bedding: SleeperBedding
}

export type SupplyReading = { readonly currentA: number; readonly volts: number }

/** A lead in the path to the post: its length and the copper of one conductor. */
export type Lead = { readonly lengthMm: number; readonly areaMm2: number }

export type SupplyParameters = {
  readonly connector: string
  readonly nominalV: number
  /** Voltage that mains appliances on it are rated for; absent: the nominal one. */
  readonly ratedV?: number
  readonly breakerA: number
  readonly siteLimitA: number | null
  readonly leadLimitA: number | null
  readonly adapterLimitA: number | null
  /** An adapter or an extension lead stands in the path, whether its rating is known or not; absent: only where it has one. */
  readonly usesAdapter?: boolean
  readonly usesExtension?: boolean
  /** Leads between the post and the charging unit whose copper is known; absent: none is. */
  readonly leads?: readonly Lead[]
  readonly chargingUnitLimitA: number | null
  readonly heldA: number | null
  readonly onboardMaximumA: number | null
  readonly minimumA: number
  readonly readings: readonly SupplyReading[]
  readonly earthOk: 'yes' | 'no' | 'not-known'
  readonly polarityReversed: 'yes' | 'no' | 'not-known'
  readonly otherLoadW: number
  readonly plugInUtc: Utc
  readonly unplugUtc: Utc
  /** Per kWh; null where the price does not depend on energy. */
  readonly pricePerKWh: number | null
  readonly fixedPrice: number
  readonly chargeAllowed: boolean
}

export type BatteryParameters = {
  readonly usableWh: number
  readonly reserve01: number
  readonly chargeLimit01: number
  readonly efficiency01: number
  readonly overheadW: number
  readonly coldOverheadW: number
  readonly arrive01: number
  readonly fastMaxW: number
}

export type LeisureParameters = {
  readonly kind: 'lfp' | 'lead'
  readonly usableWh: number
  readonly reserve01: number
  readonly chargerW: number
  readonly loadW: number
  readonly arrive01: number
  /** Mains power that the leisure battery can give through its inverter, W; 0: none. */
  readonly inverterMaxW: number
}

export type LegParameters = {
  readonly distanceM: number
  readonly whPerKm: number
  readonly speedKmPerH: number | null
  readonly climbM: number
  readonly outsideC: number
  readonly reserve01: number
  readonly massG: number
  readonly dragAreaM2: number | null
  readonly rollingCoefficient: number | null
  readonly auxiliaryW: number | null
  /** Multiplies the consumption, fitted to the owner's own legs; absent: 1. */
  readonly consumptionScale?: number
  readonly fastChargers: readonly { readonly atM: number; readonly powerW: number; readonly name: string | null }[]
}

/** What the traveller decides; what the night search varies. */
export type NightDecisions = {
  /** Set-point by instant, the last one before a time rules; null tempC: off. */
  readonly setPoints: readonly { readonly fromUtc: Utc; readonly tempC: number | null }[]
  readonly bedHeaterIds: readonly string[]
  /** Null: the largest current worth asking for. */
  readonly currentA: number | null
  readonly chargeLimit01: number
  readonly windowGapMm: number
  readonly windowSides: number
  readonly covers: boolean
  /** Which of the night's bedding sets people sleep under; absent: what is on the sleepers. */
  readonly beddingSetId?: string
  /** Bed heaters only from here on; absent: from bedtime. */
  readonly bedHeatersFromUtc?: Utc
  /** Covers go up here, where they are not up already; absent: as `covers` says all night. */
  readonly coversFromUtc?: Utc
}

/** Bedding that the travellers own, as they would lay it: one choice of the night search. */
export type BeddingSet = {
  readonly id: string
  /** A sleeper left out keeps their own. */
  readonly bySleeper: readonly { readonly sleeperId: string; readonly bedding: SleeperBedding }[]
  /** Handlings that this set asks for at dusk and again at dawn: things drawn out, laid and moved out of the way. */
  readonly moves: number
  /** Room that it takes in the load, mm3. */
  readonly volumeMm3: number
  /** What it is made of, in the caller's own ids; the engine does not look at them. */
  readonly pieceIds?: readonly string[]
  /** False: still at home, so that it may be planned but not fetched in the night; absent: at hand. */
  readonly aboard?: boolean
}

export type Fault =
  | { readonly kind: 'supply-lost'; readonly atUtc: Utc }
  | {
      readonly kind: 'breaker-trips'
      readonly atUtc: Utc
      readonly heldA: number | null
      readonly resetUtc: Utc | null
    }
  | { readonly kind: 'heater-fails'; readonly atUtc: Utc }

export type NightInput = {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly elevationM: number
  readonly arriveUtc: Utc
  readonly sleepFromUtc: Utc
  readonly sleepToUtc: Utc
  readonly departUtc: Utc
  readonly weather: readonly WeatherStep[]
  readonly cabin: CabinParameters
  readonly heater: HeaterParameters
  readonly bedHeaters: readonly BedHeater[]
  readonly sleepers: readonly Sleeper[]
  readonly supply: SupplyParameters | null
  readonly battery: BatteryParameters | null
  readonly leisure: LeisureParameters | null
  readonly leg: LegParameters | null
  readonly decisions: NightDecisions
  readonly stepS: number
  readonly fault: Fault | null
  /** What the vehicle keeps on all night whatever heats: lights, an alarm, cameras, W; absent: nothing. From the driving battery, else the leisure battery. */
  readonly keepsOnW?: number
  /** Bedding to choose from, the set in use among it; absent or empty: only what is on the sleepers, at no moves. */
  readonly beddingSets?: readonly BeddingSet[]
  /** Whether window covers are aboard, so that the search may put them up; absent: as the night's decisions have them. */
  readonly coversOwned?: boolean
  /** Handlings to put all covers up, and again to take them down; absent: one for each pane. */
  readonly coverMoves?: number
  /** Inside temperature on arrival; absent or null: warm from the drive (18 °C), or as outside where that is warmer. */
  readonly arriveInsideC?: number | null
}

/** Columns of equal length, one row a step: `atUtc` ends the step, powers are means over it, the rest stands at its end. */
export type NightSeries = {
  readonly atUtc: readonly Utc[]
  readonly outsideC: readonly number[]
  readonly frontAirC: readonly number[]
  readonly bedAirC: readonly number[]
  readonly massC: readonly number[]
  readonly floorC: readonly number[]
  readonly glassC: readonly number[]
  readonly operativeC: readonly number[]
  readonly feetC: readonly number[]
  readonly dewPointC: readonly number[]
  readonly relativeHumidity01: readonly number[]
  readonly co2Ppm: readonly number[]
  readonly condensateG: readonly number[]
  readonly frostG: readonly number[]
  readonly heatW: readonly number[]
  readonly heatingElectricW: readonly number[]
  readonly bedHeatW: readonly number[]
  readonly supplyW: readonly number[]
  readonly chargeW: readonly number[]
  readonly wiringLossW: readonly number[]
  readonly charge01: readonly number[]
  readonly leisure01: readonly number[]
}

/** Water and frost on one pane: columns with a row a step, and when it first wets. */
export type PaneOutcome = {
  readonly id: GlassPane['id']
  readonly surfaceC: readonly number[]
  readonly condensateG: readonly number[]
  readonly frostG: readonly number[]
  readonly mostCondensateG: number
  readonly mostFrostG: number
  readonly wetFromUtc: Utc | null
  readonly frostFromUtc: Utc | null
}

/** What a gap at the top of the open sides costs at tonight's temperatures, means over the hours asleep. */
export type WindowCost = {
  readonly gapMm: number
  readonly airM3PerH: number
  readonly heatW: number
  /** Null without a heater. */
  readonly electricW: number | null
}

export type SupplyLimit =
  'breaker' | 'socket' | 'site' | 'lead' | 'adapter' | 'charging-unit' | 'held' | 'onboard' | 'voltage'

export type SupplyOutcome = {
  readonly sourceOhm: number
  readonly sourceOhmSpread: number
  /** Whether the sag was measured; otherwise 5 % at the continuous limit is assumed. */
  readonly measured: boolean
  readonly noLoadV: number
  /** Continuous limit of each part, A. */
  readonly limits: readonly { readonly part: SupplyLimit; readonly currentA: number }[]
  readonly usableA: number
  /** Whole amperes to set, not above `usableA`. */
  readonly askA: number
  /** Power is this times volts times amperes: 1, or sqrt(3) on three phases. */
  readonly phaseFactor: number
  readonly limitedBy: SupplyLimit
  readonly voltsAtLoad: number
  readonly wattsAtLoad: number
  readonly sag01: number
  readonly heatInWiringW: number
  /** Of `sourceOhm`: the leads whose copper is known, there and back, and an adapter's contacts. */
  readonly pathOhm?: number
  /** Of `heatInWiringW`: in those. */
  readonly heatInPathW?: number
  /** Duty cycle, %, by which a charging unit tells the car the current of `askA`; null below what it can tell. */
  readonly pilotDutyPercent?: number | null
  /** Heat in the weakest contact if all resistance beyond a sound path's sat in it, W: the worst case, not a measurement. */
  readonly contactAtWorstW: number
  /** Below the smallest current a charging unit can ask for. */
  readonly belowMinimum: boolean
  /** Below this add no load. */
  readonly holdV: number
  readonly stepDownV: number
  readonly stopV: number
}

export type SleeperVerdict = {
  readonly sleeperId: string
  /** Margin to the colder of both judgements at the worst hour, K; negative: too cold. */
  readonly marginK: number
  readonly ruledBy: 'bag-rating' | 'heat-balance'
  readonly verdict: 'warm' | 'enough' | 'cool' | 'cold' | 'too-cold'
  readonly coldFromUtc: Utc | null
  readonly feetColdFromUtc: Utc | null
  readonly requiredClo: number
  readonly coldestOperativeC: number
  readonly coldestFeetC: number
  /** About once an hour asleep: what is in hand for body and feet, K, the word for it, and the cover that would just do, clo. */
  readonly hours?: readonly SleeperHour[]
}

export type SleeperHour = {
  readonly atUtc: Utc
  readonly operativeC: number
  readonly feetC: number
  readonly marginK: number
  readonly feetMarginK: number
  readonly verdict: SleeperVerdict['verdict']
  readonly requiredClo: number
}

export type EnergyBalance = {
  /** All the heat that entered the cabin over the night, Wh. */
  readonly heatInWh: number
  readonly heatOutWh: number
  readonly storedWh: number
  readonly residualWh: number
  readonly shellWh: number
  readonly freshAirWh: number
  readonly skyWh: number
  readonly waterInG: number
  readonly waterOutG: number
  readonly waterStoredG: number
  readonly waterResidualG: number
}

export type LegOutcome = {
  readonly needWh: number
  readonly reserveWh: number
  readonly marginWh: number
  /** Stops that make it work, in order; empty where none is needed. */
  readonly stops: readonly {
    readonly atM: number
    readonly name: string | null
    readonly arrive01: number
    readonly leave01: number
    readonly durationS: number
    readonly energyWh: number
  }[]
  readonly reachable: boolean
}

export type NightCautionCode =
  | 'co2-high'
  | 'no-fresh-air'
  | 'shared-wiring'
  | 'domestic-socket'
  | 'adapter'
  | 'polarity-reversed'
  | 'earth-missing'
  | 'earth-not-known'
  | 'sag-step-down'
  | 'sag-stop'
  | 'cold-illness'
  | 'heat-illness'
  | 'heater-stops'
  | 'carbon-monoxide'
  | 'leisure-frost'
  | 'leisure-acid-frost'
  | 'extension-lead'
  | 'below-minimum-current'
  | 'two-loads'

export type NightOutcome = {
  readonly series: NightSeries
  readonly supply: SupplyOutcome | null
  readonly sleepers: readonly SleeperVerdict[]
  readonly coldestBedC: number
  readonly coldestBedUtc: Utc
  readonly coldestOutsideC: number
  readonly coldestOutsideUtc: Utc
  readonly heatingWh: number
  readonly fromSiteWh: number
  readonly wiringLossWh: number
  readonly intoBatteryWh: number
  readonly arrive01: number | null
  readonly depart01: number | null
  readonly leisureDepart01: number | null
  readonly leg: LegOutcome | null
  readonly cost: number
  /** Most of dew and of frost on all glass together. */
  readonly condensateG: number
  readonly frostG: number
  /** Most of water on lining, trim and bedding's outside; on every simulated night. */
  readonly liningG?: number
  /** Water that cooling took out of the air and drained outside; absent where nothing cooled. */
  readonly coilDrainG?: number
  readonly co2MaxPpm: number
  readonly lossWPerK: {
    readonly shell: number
    readonly freshAir: number
    readonly total: number
    /** One standard deviation of the shell before any measured night, fraction. */
    readonly shellSpread01?: number
  }
  /** Of `heatingWh`: the heater's fan, pumps and controls, Wh. */
  readonly overheadWh?: number
  readonly windowGapCostW: number
  /** By pane; on every simulated night. */
  readonly glass?: readonly PaneOutcome[]
  /** By gap; on every simulated night. */
  readonly windowCosts?: readonly WindowCost[]
  /** What the vehicle kept on all night, Wh; absent where it keeps nothing on. */
  readonly keptOnWh?: number
  readonly balance: EnergyBalance
  readonly cautions: readonly {
    readonly code: NightCautionCode
    readonly atUtc: Utc | null
    readonly value: number | null
  }[]
  /** Where the night runs out of battery or the heater stops, if it does. */
  readonly stopsUtc: Utc | null
}

/** What ISO 7730 and ISO 11079 say of a night; null: outside the standard's range, not known by it. */
export type NightStandards = {
  /** Someone who sits in the cabin at bedtime in indoor clothes: vote -3 to 3 and share dissatisfied. */
  readonly sitting: { readonly atUtc: Utc; readonly vote: number | null; readonly dissatisfied01: number | null }
  /** A sleeper at the coldest hour: both standards end above a sleeper's heat. */
  readonly asleep: {
    readonly atUtc: Utc
    readonly vote: number | null
    readonly dissatisfied01: number | null
    readonly leastClo: number | null
  }
  /** Light work outside on arriving and before leaving: clothing that keeps warm enough and that is comfortable, clo. */
  readonly outside: readonly {
    readonly atUtc: Utc
    readonly leastClo: number | null
    readonly neutralClo: number | null
    readonly windChillC: number | null
  }[]
}

export type SunTimes = {
  readonly sunsetUtc: Utc | null
  readonly civilDuskUtc: Utc | null
  readonly nauticalDawnUtc: Utc | null
  readonly civilDawnUtc: Utc | null
  readonly sunriseUtc: Utc | null
}
