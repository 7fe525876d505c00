/** Engine 2: the night as a balance of heat, moisture and energy. */
export type {
  BatteryParameters,
  BedHeater,
  BeddingSet,
  CabinParameters,
  EnergyBalance,
  Fault,
  GlassPane,
  HeaterParameters,
  LegOutcome,
  LegParameters,
  LeisureParameters,
  NightCautionCode,
  NightDecisions,
  NightInput,
  NightOutcome,
  NightSeries,
  PaneOutcome,
  Sleeper,
  SleeperBedding,
  SleeperVerdict,
  SunTimes,
  SupplyLimit,
  SupplyOutcome,
  SupplyParameters,
  SupplyReading,
  WeatherStep,
  WindowCost,
} from './types.ts'
export type {
  FaultAction,
  FaultAdvice,
  FaultHour,
  FaultOutcome,
  FrontPoint,
  NightSearch,
  SearchReason,
} from './answers.ts'
export {
  CONTINUOUS_FACTOR,
  PILOT_MINIMUM_A,
  currentForPower,
  fitSource,
  lineSystem,
  resistivePowerW,
  supplyOutcome,
  twoLoads,
  voltageFloors,
  voltsAt,
  wattsAt,
} from './circuit.ts'
export type { SourceFit } from './circuit.ts'
export { chargerOutputW, chargingOverheadW, packStep } from './battery.ts'
export type { PackOutcome, PackStep } from './battery.ts'
export { legNeedWh, legOutcome, legWhPerKm } from './leg.ts'
export { sunDay, sunPosition, sunTimes } from './sun.ts'
export type { SunDay } from './sun.ts'
export { forecastHoursOf, weatherForNight } from './weather.ts'
export type { Forecast, ForecastHour, HourlyReading, NightWeatherInput } from './weather.ts'
export { parseEpw } from './sources/epw.ts'
export type { EpwFile, EpwHour } from './sources/epw.ts'
export { parseHourlyCsv } from './sources/hourly-csv.ts'
export type { CsvColumns } from './sources/hourly-csv.ts'
export { bagCloFromComfort, comfortFromClo } from './bedding.ts'
export { simulateNight } from './simulate.ts'
export { cabinDefaults } from './cabin-defaults.ts'
export { runFault } from './faults.ts'
export { searchNight } from './optimise/search.ts'
export type { NightSearchOptions } from './optimise/candidates.ts'
export { calibrateLegs } from './calibrate-legs.ts'
export type { ConsumptionFit, MeasuredLeg } from './calibrate-legs.ts'
export { calibrate } from './calibrate.ts'
export type { Calibration, MeasuredNight } from './calibrate.ts'
