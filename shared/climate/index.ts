/** Engine 2: the night as a balance of heat, moisture and energy. */
export type {
  BatteryParameters,
  BedHeater,
  CabinParameters,
  EnergyBalance,
  Fault,
  FaultOutcome,
  FrontPoint,
  GlassPane,
  HeaterParameters,
  LegOutcome,
  LegParameters,
  LeisureParameters,
  NightCautionCode,
  NightDecisions,
  NightInput,
  NightOutcome,
  NightSearch,
  NightSeries,
  Sleeper,
  SleeperBedding,
  SleeperVerdict,
  SunTimes,
  SupplyLimit,
  SupplyOutcome,
  SupplyParameters,
  SupplyReading,
  WeatherStep,
} from './types.ts'
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
export { weatherForNight } from './weather.ts'
export type { Forecast, ForecastHour, NightWeatherInput } from './weather.ts'
export { bagCloFromComfort, comfortFromClo } from './bedding.ts'
