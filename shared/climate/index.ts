/**
 * Engine 2: the night as a balance of heat, moisture and energy.
 * What it assumes, each with its source at its constant:
 * five kinds of nodes (front air, bed air, trim, floor, one for each pane), well mixed each; conductances from areas and films, times one scale
 * that the owner's nights fit; sky after Clark, Allen and Walton, daylight after Haurwitz; wind at a parked car as reported, half of it in the shelter of a gap.
 * Everybody is aboard from arrival to departure; 45 g of water and 13 l of CO2 an hour asleep; moisture settles on panes and lining and never beyond saturation.
 * A heater gives its heat at the front and draws its fresh air there; part load pays for cycling; a heat pump nears 1 in deep cold.
 * Sleepers make 40 to 47 W/m2, and the colder of heat balance and bag rating rules: derived, as no standard covers a cold sleeper.
 * A supply is an open voltage behind one resistance; charging asks for no less than 6 A; batteries are linear but for the taper above 95 %.
 * Uncertain by 30 % in the shell (vans 40 %) until a night has been measured, and by 15 % in consumption until a leg has.
 */
export type {
  BatteryParameters,
  BedHeater,
  BeddingSet,
  CabinParameters,
  EnergyBalance,
  Fault,
  GlassPane,
  HeaterParameters,
  Lead,
  LegOutcome,
  LegParameters,
  LeisureParameters,
  NightCautionCode,
  NightDecisions,
  NightInput,
  NightOutcome,
  NightSeries,
  NightStandards,
  PaneOutcome,
  Sleeper,
  SleeperBedding,
  SleeperHour,
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
export { hasTwoHotPoles, lacksEarth } from './sources/connectors.ts'
export { cordRatingA } from './sources/wiring.ts'
export { chargerOutputW, chargingOverheadW, packStep } from './battery.ts'
export type { PackOutcome, PackStep } from './battery.ts'
export { legNeedWh, legOutcome, legWhPerKm } from './leg.ts'
export { sunDay, sunPosition, sunTimes } from './sun.ts'
export type { SunDay } from './sun.ts'
export { forecastHoursOf, weatherForNight } from './weather.ts'
export type { Forecast, ForecastHour, HourlyReading, NightWeatherInput } from './weather.ts'
export { parseEpw } from './sources/epw.ts'
export type { EpwFile, EpwHour } from './sources/epw.ts'
export { csvHead, parseHourlyCsv } from './sources/hourly-csv.ts'
export type { CsvColumns } from './sources/hourly-csv.ts'
export { bagCloFromComfort, comfortFromClo } from './bedding.ts'
export { simulateNight } from './simulate.ts'
export { nightStandards } from './standards.ts'
export { cabinDefaults } from './cabin-defaults.ts'
export { runFault } from './faults.ts'
export { searchNight } from './optimise/search.ts'
export type { NightSearchOptions } from './optimise/candidates.ts'
export { calibrateLegs } from './calibrate-legs.ts'
export type { ConsumptionFit, MeasuredLeg } from './calibrate-legs.ts'
export { calibrate } from './calibrate.ts'
export type { Calibration, MeasuredNight } from './calibrate.ts'
