/** Reference libraries and published programs over grids: how far ours is from each, at most. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { getPosition, getTimes } from 'suncalc'
import { describe, expect, it } from 'vitest'
import { sunDay, sunPosition } from '../../shared/climate/sun.ts'
import { ireq } from '../../shared/climate/sources/ireq.ts'
import { pmv, ppdPercent } from '../../shared/climate/sources/pmv.ts'
import * as air from '../../shared/climate/sources/psychrometrics.ts'
import { sleepCourse } from '../../shared/climate/sources/sleep-two-node.ts'
import type { SleepClock } from '../../shared/climate/sources/sleep-two-node.ts'
import { standardEffectiveC } from '../../shared/climate/sources/two-node.ts'
import type { LocalDate } from '../../shared/units/index.ts'

type Cells = Readonly<Record<string, string>>

function grid(name: string, rows: number): readonly Cells[] {
  const text = readFileSync(fileURLToPath(new URL(`./grids/${name}.csv`, import.meta.url)), 'utf8')
  const [header = '', ...lines] = text.trim().split('\n')
  const names = header.split(',')
  expect(lines, `${name} carries all its rows`).toHaveLength(rows)
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, index) => [names[index] ?? '', cell])))
}

const at = (cells: Cells, name: string): number => {
  const cell = cells[name]
  if (cell === undefined || cell === '') throw new Error(`no ${name}`)
  return Number(cell)
}

/** Largest difference of each quantity over a grid; a value that is not a number is infinitely far. */
function worst(
  rows: readonly Cells[],
  ours: (cells: Cells) => Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  const largest: Record<string, number> = {}
  for (const cells of rows) {
    for (const [name, value] of Object.entries(ours(cells))) {
      const distance = Number.isFinite(value) ? Math.abs(value - at(cells, name)) : Infinity
      largest[name] = Math.max(largest[name] ?? 0, distance)
    }
  }
  return largest
}

function report(name: string, rows: readonly Cells[], largest: Readonly<Record<string, number>>): void {
  const parts = Object.entries(largest).map(([quantity, distance]) => `${quantity} ${distance.toPrecision(2)}`)
  console.log(`grid ${name}, ${rows.length} rows, largest difference: ${parts.join(', ')}`)
}

const comfort = (cells: Cells) => ({
  airC: at(cells, 'tdb'),
  radiantC: at(cells, 'tr'),
  speedMPerS: at(cells, 'v'),
  humidity01: at(cells, 'rh') / 100,
  met: at(cells, 'met'),
  clo: at(cells, 'clo'),
})

describe('grids of reference programs', () => {
  it('votes lie within 0.02 of jsthermalcomfort 1.4.0 (all rows; both iterate, to different ends)', () => {
    const rows = grid('pmv-ppd', 1943)
    const largest = worst(rows, (cells) => {
      const vote = pmv(comfort(cells))
      return { pmv: vote, ppd: ppdPercent(vote) }
    })
    report('pmv-ppd', rows, largest)
    expect(largest['pmv']).toBeLessThan(0.02)
    expect(largest['ppd']).toBeLessThan(0.6)
  })

  it('standard temperatures lie within 0.01 K of jsthermalcomfort 1.4.0 (all rows)', () => {
    const rows = grid('set', 1727)
    const largest = worst(rows, (cells) => ({ set: standardEffectiveC(comfort(cells)) }))
    report('set', rows, largest)
    expect(largest['set']).toBeLessThan(0.01)
  })

  it('moist air is that of psychrolib 1.1.1 to the last printed digit (all rows)', () => {
    const rows = grid('psychrolib', 320)
    const largest = worst(rows, (cells) => {
      const [tempC, humidity01, pressurePa] = [at(cells, 'tdb_C'), at(cells, 'rh'), at(cells, 'p_Pa')]
      const ratio = air.humidityRatio(tempC, humidity01, pressurePa)
      return {
        psat_Pa: air.saturationPressurePa(tempC),
        w_kgkg: ratio,
        dewpoint_C: air.dewPointC(tempC, humidity01),
        wetbulb_C: air.wetBulbC(tempC, humidity01, pressurePa),
        h_Jkg: air.enthalpyJPerKg(tempC, ratio),
        v_m3kg: air.volumeM3PerKg(tempC, ratio, pressurePa),
        rho_kgm3: air.moistDensityKgPerM3(tempC, ratio, pressurePa),
      }
    })
    report('psychrolib', rows, largest)
    expect(largest).toEqual({
      psat_Pa: expect.closeTo(0, 3),
      w_kgkg: expect.closeTo(0, 6),
      dewpoint_C: expect.closeTo(0, 3),
      wetbulb_C: expect.closeTo(0, 3),
      h_Jkg: expect.closeTo(0, 0),
      v_m3kg: expect.closeTo(0, 4),
      rho_kgm3: expect.closeTo(0, 4),
    })
  })

  it('required insulation lies within 0.01 clo of the published ISO 11079 program (all rows)', () => {
    const rows = grid('ireq', 61)
    const largest = worst(rows, (cells) => {
      const required = ireq({
        metabolicWPerM2: at(cells, 'M_Wm2'),
        workWPerM2: 0,
        airC: at(cells, 'ta_C'),
        radiantC: at(cells, 'tr_C'),
        permeabilityLPerM2S: at(cells, 'p_lm2s'),
        walkMPerS: at(cells, 'w_ms'),
        windMPerS: at(cells, 'v_ms'),
        humidity01: at(cells, 'rh_pct') / 100,
        wornClo: at(cells, 'Icl_clo'),
      })
      return {
        IREQmin_clo: required?.minimal.ireqClo ?? Infinity,
        IREQneutral_clo: required?.neutral.ireqClo ?? Infinity,
        ICLmin_clo: required?.minimal.basicClo ?? Infinity,
        ICLneutral_clo: required?.neutral.basicClo ?? Infinity,
      }
    })
    report('ireq', rows, largest)
    for (const distance of Object.values(largest)) expect(distance).toBeLessThan(0.01)
  })

  it.each<[string, SleepClock]>([
    ['sleep-published-hours', 'published-hours'],
    ['sleep-minutes', 'minutes'],
  ])('sleepers lie within the last printed digit of %s (all rows)', (name, clock) => {
    const rows = grid(name, 38)
    const largest = worst(rows, (cells) => {
      const point = {
        airC: at(cells, 'tdb_C'),
        radiantC: at(cells, 'tr_C'),
        speedMPerS: at(cells, 'v_ms'),
        humidity01: at(cells, 'rh_pct') / 100,
        clo: at(cells, 'clo'),
        quiltCm: at(cells, 'quilt_cm'),
      }
      const state = sleepCourse(point, [at(cells, 'minute')], clock)[0]
      return {
        set_C: state?.setC ?? Infinity,
        t_core_C: state?.coreC ?? Infinity,
        t_skin_C: state?.skinC ?? Infinity,
        wettedness: state?.wettedness ?? Infinity,
        t_sens: state?.sensation ?? Infinity,
        met_shivering_Wm2: state?.shiveringW ?? Infinity,
      }
    })
    report(name, rows, largest)
    for (const distance of Object.values(largest)) expect(distance).toBeLessThan(0.001)
  })

  it('the sun stands where astronomy-engine puts it, and within 0.06 degrees of suncalc 2 above the horizon', () => {
    const rows = grid('solar-position', 53)
    const largest = worst(rows, (cells) => {
      const position = sunPosition({
        latitudeDeg: at(cells, 'lat'),
        longitudeDeg: at(cells, 'lon'),
        atUtc: Date.parse(cells['utc'] ?? '') / 1000,
      })
      return { elev_true_deg: position.elevationDeg, azimuth_deg_from_N: position.azimuthDeg }
    })
    report('solar-position', rows, largest)
    expect(largest['elev_true_deg']).toBeLessThan(0.001)
    expect(largest['azimuth_deg_from_N']).toBeLessThan(0.001)
    for (const cells of rows.filter((row) => at(row, 'elev_true_deg') > 1)) {
      const suncalc = getPosition(new Date(cells['utc'] ?? ''), at(cells, 'lat'), at(cells, 'lon'))
      expect(Math.abs(suncalc.altitude - at(cells, 'elev_refracted_deg'))).toBeLessThan(0.06)
      expect(Math.abs(suncalc.azimuth - at(cells, 'azimuth_deg_from_N'))).toBeLessThan(0.06)
    }
  })

  it('rise and set lie within 5 s of astronomy-engine and 60 s of suncalc 2, and are absent where they are absent', () => {
    const rows = grid('sunrise-sunset', 26)
    const events = rows.flatMap((cells) => {
      const place = { latitudeDeg: at(cells, 'lat'), longitudeDeg: at(cells, 'lon') }
      const day = sunDay({ ...place, date: (cells['date'] ?? '') as LocalDate })
      const suncalc = getTimes(new Date(day.transitUtc * 1000), place.latitudeDeg, place.longitudeDeg)
      return (['sunrise', 'sunset'] as const).map((event) => ({
        published: cells[`${event}_utc_astronomy_engine`] ?? '',
        ours: event === 'sunrise' ? day.sunriseUtc : day.sunsetUtc,
        suncalc: suncalc[event],
        steep: Math.abs(place.latitudeDeg) < 60,
      }))
    })
    const absent = events.filter((event) => event.published === '')
    expect(absent.map((event) => event.ours)).toEqual(absent.map(() => null))
    const present = events.filter((event) => event.published !== '')
    const apartS = present.map((event) => Math.abs((event.ours ?? Infinity) - Date.parse(event.published) / 1000))
    console.log(`grid sunrise-sunset, ${rows.length} rows, largest difference: ${Math.max(...apartS)} s`)
    expect(Math.max(...apartS)).toBeLessThanOrEqual(5)
    // Near the polar circle the sun grazes the horizon and the two libraries part by minutes.
    const bySuncalc = present.filter((event) => event.steep)
    expect(bySuncalc.length).toBeGreaterThan(20)
    const apartFromSuncalcS = bySuncalc.map(
      (event) => (event.suncalc?.getTime() ?? Infinity) / 1000 - (event.ours ?? 0),
    )
    expect(Math.max(...apartFromSuncalcS.map(Math.abs))).toBeLessThan(60)
  })
})
