// oxlint-disable-next-line typescript/triple-slash-reference -- the package has no types; every layer that reaches this file needs them
/// <reference path="./psychrolib.d.ts" />
/** Moist air by psychrolib in SI units (ASHRAE Fundamentals 2017, chapter 1), one name a quantity. */
import psychrolib from 'psychrolib'
import { G_PER_KG } from '../../units/index.ts'

psychrolib.SetUnitSystem(psychrolib.SI)

/** Saturation pressure of water vapour, Pa: over ice below 0.01 °C, over water above. Source: ASHRAE equations 5 and 6. */
export const saturationPressurePa = (tempC: number): number => psychrolib.GetSatVapPres(tempC)

/** Humidity ratio, kg water a kg dry air, from °C, relative humidity 0 to 1 and Pa. */
export const humidityRatio = (tempC: number, humidity01: number, pressurePa: number): number =>
  psychrolib.GetHumRatioFromRelHum(tempC, humidity01, pressurePa)

/** Humidity ratio, kg/kg, from dry and wet bulb, °C, and Pa. */
export const humidityRatioFromWetBulb = (tempC: number, wetBulbC: number, pressurePa: number): number =>
  psychrolib.GetHumRatioFromTWetBulb(tempC, wetBulbC, pressurePa)

/** Dew point (frost point below 0 °C), °C, from °C and relative humidity 0 to 1. */
export const dewPointC = (tempC: number, humidity01: number): number =>
  psychrolib.GetTDewPointFromRelHum(tempC, humidity01)

/** Dew point of a humidity ratio, °C; not above the air's own temperature. */
export const dewPointOfRatioC = (tempC: number, ratio: number, pressurePa: number): number =>
  psychrolib.GetTDewPointFromHumRatio(tempC, ratio, pressurePa)

/** Relative humidity 0 to 1 (above 1 where supersaturated) from °C, kg/kg and Pa. */
export const relativeHumidity01 = (tempC: number, ratio: number, pressurePa: number): number =>
  psychrolib.GetRelHumFromHumRatio(tempC, ratio, pressurePa)

/** Wet bulb, °C, from °C, relative humidity 0 to 1 and Pa. */
export const wetBulbC = (tempC: number, humidity01: number, pressurePa: number): number =>
  psychrolib.GetTWetBulbFromRelHum(tempC, humidity01, pressurePa)

/** Enthalpy, J a kg of dry air, from °C and kg/kg. */
export const enthalpyJPerKg = (tempC: number, ratio: number): number => psychrolib.GetMoistAirEnthalpy(tempC, ratio)

/** Volume, m3 a kg of dry air, from °C, kg/kg and Pa. */
export const volumeM3PerKg = (tempC: number, ratio: number, pressurePa: number): number =>
  psychrolib.GetMoistAirVolume(tempC, ratio, pressurePa)

/** Density of moist air, kg/m3, from °C, kg/kg and Pa. */
export const moistDensityKgPerM3 = (tempC: number, ratio: number, pressurePa: number): number =>
  psychrolib.GetMoistAirDensity(tempC, ratio, pressurePa)

/** Water in a cubic metre of moist air, g/m3. */
export const absoluteHumidityGPerM3 = (tempC: number, ratio: number, pressurePa: number): number =>
  (moistDensityKgPerM3(tempC, ratio, pressurePa) * ratio * G_PER_KG) / (1 + ratio)

/** Pressure of the standard atmosphere at a height, Pa; height in m. */
export const standardPressurePa = (altitudeM: number): number => psychrolib.GetStandardAtmPressure(altitudeM)

/** Temperature of the standard atmosphere at a height, °C; height in m. */
export const standardTemperatureC = (altitudeM: number): number => psychrolib.GetStandardAtmTemperature(altitudeM)
