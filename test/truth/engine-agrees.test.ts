/** The night engine's quick inner functions against the checked sources: what the rows prove must be what the night uses. */
import { describe, expect, it } from 'vitest'
import { cabinDefaults } from '../../shared/climate/cabin-defaults.ts'
import { copAt } from '../../shared/climate/heater.ts'
import { dewPointFromPa, saturationPa, saturationRatio } from '../../shared/climate/moisture-saturation.ts'
import { co2After } from '../../shared/climate/moisture.ts'
import { glassUWPerM2K, outerFilmWPerM2K, shellFromPartsWPerK } from '../../shared/climate/network.ts'
import { pressurePa } from '../../shared/climate/network-air.ts'
import { skyC } from '../../shared/climate/network-sky.ts'
import { bodySurfaceM2 } from '../../shared/climate/sleepers-body.ts'
import { mixedPpm } from '../../shared/climate/sources/breath.ts'
import { shellLossWPerK } from '../../shared/climate/sources/cabin-shell.ts'
import { GLASS, coveredUWPerM2K, outsideFilmWPerM2K, paneUWPerM2K, skyAt } from '../../shared/climate/sources/glass.ts'
import { planningCop } from '../../shared/climate/sources/hvac.ts'
import { bodyAreaM2 } from '../../shared/climate/sources/insulation.ts'
import {
  dewPointC,
  humidityRatio,
  saturationPressurePa,
  standardPressurePa,
} from '../../shared/climate/sources/psychrometrics.ts'

const range = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step)

describe('what the night engine uses', () => {
  it('is the moist air of psychrolib from -40 to 45 °C and up to 3,000 m', () => {
    for (const tempC of range(-40, 45, 0.5)) {
      expect(saturationPa(tempC) / saturationPressurePa(tempC)).toBeCloseTo(1, 9)
      for (const altitudeM of [0, 1500, 3000]) {
        const atPa = standardPressurePa(altitudeM)
        expect(saturationRatio(tempC, atPa) / humidityRatio(tempC, 1, atPa)).toBeCloseTo(1, 6)
        expect(pressurePa(altitudeM) / atPa).toBeCloseTo(1, 5)
      }
      for (const humidity01 of [0.2, 0.5, 0.9]) {
        expect(Math.abs(dewPointFromPa(saturationPa(tempC) * humidity01) - dewPointC(tempC, humidity01))).toBeLessThan(
          0.01,
        )
      }
    }
  })

  it('is the glass of the checked rows at every wind up to a gale, bare and covered', () => {
    for (const windMPerS of range(0, 12, 0.5)) {
      const film = outsideFilmWPerM2K(windMPerS)
      const bare = paneUWPerM2K({ ...GLASS, outsideWPerM2K: film })
      expect(outerFilmWPerM2K(windMPerS)).toBeCloseTo(film, 9)
      expect(glassUWPerM2K(windMPerS, 0)).toBeCloseTo(bare, 6)
      expect(glassUWPerM2K(windMPerS, 0.25)).toBeCloseTo(coveredUWPerM2K(bare, 0.25), 6)
    }
  })

  it('is the shell of the checked body classes, air exchange apart', () => {
    for (const body of ['hatchback', 'estate', 'crossover', 'van-bare', 'van-insulated'] as const) {
      const cabin = cabinDefaults(body)
      const glassM2 = cabin.panes.reduce((sum, pane) => sum + pane.areaM2, 0)
      for (const windMPerS of [0, 1, 3, 5]) {
        const checked = shellLossWPerK(
          {
            airVolumeM3: cabin.airVolumeM3,
            glassM2,
            bodyM2: cabin.bodyAreaM2,
            bodyUWPerM2K: cabin.bodyUWPerM2K,
            exchangePerH: 0,
          },
          windMPerS,
        )
        expect(shellFromPartsWPerK(cabin, windMPerS, false)).toBeCloseTo(checked, 6)
      }
    }
  })

  it('is the checked sky, never warmer than the air', () => {
    for (const airC of range(-25, 25, 5)) {
      for (const tenths of range(0, 10, 1)) {
        const sky = skyAt(airC, airC - 4, tenths)
        expect(skyC(airC, airC - 4, tenths / 10)).toBeCloseTo(Math.min(airC, sky.skyC), 3)
      }
    }
  })

  it('is the checked balance of carbon dioxide', () => {
    const ours = co2After(600, 420, 3.8, 12, 26, 7200)
    const checked = mixedPpm({
      sourceLPerS: 26 / 3600,
      volumeM3: 3.8,
      exchangePerH: 12 / 3.8,
      hours: 2,
      outsidePpm: 420,
      startPpm: 600,
    })
    expect(ours).toBeCloseTo(checked, 6)
  })

  it('is the checked body surface', () => {
    expect(bodySurfaceM2({ heightMm: 1600, massG: 60_000 })).toBeCloseTo(bodyAreaM2(60, 1.6), 9)
  })

  it('heats by the one planning curve that the checks read', () => {
    for (let outsideC = -30; outsideC <= 20; outsideC += 0.5)
      expect(copAt({ kind: 'heat-pump', cop: [] }, outsideC)).toBeCloseTo(planningCop(outsideC), 12)
  })
})
