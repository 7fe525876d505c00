/** The part of psychrolib 1.1.1 that is used; the package carries no types. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number
    SetUnitSystem(system: number): void
    GetSatVapPres(tempC: number): number
    GetHumRatioFromRelHum(tempC: number, humidity01: number, pressurePa: number): number
    GetHumRatioFromTWetBulb(tempC: number, wetBulbC: number, pressurePa: number): number
    GetTDewPointFromRelHum(tempC: number, humidity01: number): number
    GetTDewPointFromHumRatio(tempC: number, humidityRatio: number, pressurePa: number): number
    GetRelHumFromHumRatio(tempC: number, humidityRatio: number, pressurePa: number): number
    GetTWetBulbFromRelHum(tempC: number, humidity01: number, pressurePa: number): number
    GetMoistAirEnthalpy(tempC: number, humidityRatio: number): number
    GetMoistAirVolume(tempC: number, humidityRatio: number, pressurePa: number): number
    GetMoistAirDensity(tempC: number, humidityRatio: number, pressurePa: number): number
    GetStandardAtmPressure(altitudeM: number): number
    GetStandardAtmTemperature(altitudeM: number): number
  }
  export { psychrolib as default }
}
