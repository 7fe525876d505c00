/** The rows' adaptors at points that no row holds, against arithmetic written here anew from the sources, or against a library. */
import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import psychrolib from 'psychrolib'
import { getPosition } from 'suncalc'
import { describe, expect, it } from 'vitest'
import { AREAS } from '../support/check-values/areas.ts'
import { parseRows } from '../support/check-values/rows.ts'
import type { Ours, Row } from '../support/check-values/rows.ts'
import { runRow } from '../support/check-values/run.ts'

const POINTS = 60

/** Uniform numbers 0 to 1 from a seed (mulberry32). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

type Given = Record<string, number | string | boolean>
type Case = {
  readonly name: string
  readonly area: string
  readonly inputs: (between: (low: number, high: number) => number) => Given
  readonly expected: (inputs: Readonly<Record<string, number>>) => Readonly<Record<string, number>>
  /** Relative, of the larger of value and 1. */
  readonly within: number
}

const psi = (tempC: number): number => {
  psychrolib.SetUnitSystem(psychrolib.SI)
  return psychrolib.GetSatVapPres(tempC)
}

/** Room temperature by many small steps: nothing of the closed form. */
function euler(start: number, rate: (value: number) => number, seconds: number): number {
  const steps = 20_000
  let value = start
  for (let step = 0; step < steps; step += 1) {
    const middle = value + (rate(value) * seconds) / steps / 2
    value += (rate(middle) * seconds) / steps
  }
  return value
}

const CASES: readonly Case[] = [
  {
    name: 'moist air',
    area: 'air.psychro',
    inputs: (between) => ({ t_C: between(-30, 45), rh: between(0.05, 0.98), p_Pa: between(70_000, 103_000) }),
    expected: ({ t_C = 0, rh = 0, p_Pa = 0 }) => {
      const ratio = psychrolib.GetHumRatioFromRelHum(t_C, rh, p_Pa)
      return {
        w_kgkg: (0.621945 * rh * psi(t_C)) / (p_Pa - rh * psi(t_C)),
        t_dew_C: psychrolib.GetTDewPointFromRelHum(t_C, rh),
        twb_C: psychrolib.GetTWetBulbFromRelHum(t_C, rh, p_Pa),
        h_Jkg: psychrolib.GetMoistAirEnthalpy(t_C, ratio),
        v_m3kg: psychrolib.GetMoistAirVolume(t_C, ratio, p_Pa),
      }
    },
    within: 1e-4,
  },
  {
    name: 'steady humidity',
    area: 'air.moisture',
    inputs: (between) => ({
      t_out_C: between(-15, 12),
      rh_out: between(0.5, 0.95),
      release_g_h: between(20, 90),
      outdoor_air_m3_h: between(25, 80),
      t_in_C: between(14, 22),
      p_Pa: between(85_000, 102_000),
    }),
    expected: ({ t_out_C = 0, rh_out = 0, release_g_h = 0, outdoor_air_m3_h = 0, p_Pa = 0 }) => {
      const outside = psychrolib.GetHumRatioFromRelHum(t_out_C, rh_out, p_Pa)
      const kgPerH = outdoor_air_m3_h / psychrolib.GetMoistAirVolume(t_out_C, outside, p_Pa)
      return { w_in_kgkg: outside + release_g_h / 1000 / kgPerH }
    },
    within: 1e-6,
  },
  {
    name: 'carbon dioxide of one person by the equation, where the table holds no such basal rate',
    area: 'air.co2',
    inputs: (between) => ({ sex: 'male', age: '21-30', mean_kg: between(50, 110), bmr_MJ_day: between(5, 7.5) }),
    expected: ({ bmr_MJ_day = 0 }) => ({
      L_s_1met: (0.85 * bmr_MJ_day * 273 * 0.000211) / 101,
      L_s_1p2met: (1.2 * 0.85 * bmr_MJ_day * 273 * 0.000211) / 101,
    }),
    within: 1e-9,
  },
  {
    name: 'carbon dioxide in a room',
    area: 'air.co2',
    inputs: (between) => ({
      G_L_s: between(0.002, 0.02),
      volume_m3: between(2, 12),
      ach: between(0.2, 8),
      hours: between(0.2, 9),
      c_out_ppm: between(400, 450),
      c0_ppm: between(400, 3000),
    }),
    expected: ({ G_L_s = 0, volume_m3 = 1, ach = 1, hours = 0, c_out_ppm = 0, c0_ppm = 0 }) => ({
      ppm: euler(c0_ppm, (ppm) => (G_L_s / 1000 / volume_m3) * 1e6 + ((c_out_ppm - ppm) * ach) / 3600, hours * 3600),
    }),
    within: 1e-5,
  },
  {
    name: 'glass',
    area: 'air.condensation',
    inputs: (between) => ({
      t_in_C: between(8, 24),
      t_out_C: between(-20, 7),
      wind_ms: between(0, 12),
      h_int: between(5, 9),
      thickness_m: between(0.003, 0.008),
      lambda_W_mK: between(0.7, 1.2),
    }),
    expected: ({ t_in_C = 0, t_out_C = 0, wind_ms = 0, h_int = 1, thickness_m = 0, lambda_W_mK = 1 }) => {
      const outer = 8.23 + 3.33 * wind_ms - 0.036 * wind_ms ** 2
      const u = 1 / (1 / outer + thickness_m / lambda_W_mK + 1 / h_int)
      const surface = t_in_C - (u / h_int) * (t_in_C - t_out_C)
      return { U_W_m2K: u, t_glass_in_C: surface, rh_at_onset_pct: (100 * psi(surface)) / psi(t_in_C) }
    },
    within: 1e-6,
  },
  {
    name: 'a cabin that cools',
    area: 'cabin.heat',
    inputs: (between) => ({
      UA_W_K: between(20, 140),
      C_kJ_K: between(80, 300),
      t0_C: between(10, 24),
      t_out_C: between(-20, 8),
      hours: between(0.2, 10),
      gain_W: between(0, 250),
    }),
    expected: ({ UA_W_K = 1, C_kJ_K = 1, t0_C = 0, t_out_C = 0, hours = 0, gain_W = 0 }) => ({
      t_C: euler(t0_C, (t) => (gain_W - UA_W_K * (t - t_out_C)) / C_kJ_K / 1000, hours * 3600),
      t_eq_C: t_out_C + gain_W / UA_W_K,
    }),
    within: 1e-5,
  },
  {
    name: 'the sky',
    area: 'cabin.heat',
    inputs: (between) => {
      const t_C = between(-25, 25)
      return { t_C, t_dew_C: t_C - between(0, 12), opaque_tenths: between(0, 10), sigma: 5.6697e-8 }
    },
    expected: ({ t_C = 0, t_dew_C = 0, opaque_tenths: n = 0, sigma = 0 }) => {
      const emissivity =
        (0.787 + 0.764 * Math.log((t_dew_C + 273.15) / 273)) * (1 + 0.0224 * n - 0.0035 * n * n + 0.00028 * n ** 3)
      return { eps_sky: emissivity, ir_Wm2: emissivity * sigma * (t_C + 273.15) ** 4 }
    },
    within: 1e-6,
  },
  {
    name: 'a minibus between and beyond its two published points',
    area: 'cabin.heat',
    inputs: (between) => ({ vehicle: 'minibus', t_amb_C: between(-15, 10), setpoint_C: between(18, 24) }),
    expected: ({ t_amb_C = 0, setpoint_C = 0 }) => ({
      heat_kW: 6.8 + ((6.8 - 5.6) / 7) * (setpoint_C - t_amb_C - 30),
    }),
    within: 1e-9,
  },
  {
    name: 'wind chill',
    area: 'comfort.cold',
    inputs: (between) => ({ ta_C: between(-40, 0), v10_kmh: between(5, 80) }),
    expected: ({ ta_C = 0, v10_kmh = 0 }) => ({
      twc_C: 13.12 + 0.6215 * ta_C - 11.37 * v10_kmh ** 0.16 + 0.3965 * ta_C * v10_kmh ** 0.16,
    }),
    within: 1e-9,
  },
  {
    name: 'draught',
    area: 'comfort.local',
    inputs: (between) => ({
      kind: 'draught DR',
      ta_C: between(16, 26),
      v_ms: between(0.06, 0.3),
      Tu_pct: between(10, 60),
    }),
    expected: ({ ta_C = 0, v_ms = 0, Tu_pct = 0 }) => ({
      dr_pct: Math.min(100, (34 - ta_C) * (v_ms - 0.05) ** 0.62 * (0.37 * v_ms * Tu_pct + 3.14)),
    }),
    within: 1e-9,
  },
  {
    name: 'votes of dissatisfaction',
    area: 'comfort.pmv',
    inputs: (between) => ({ pmv: between(-2, 2) }),
    expected: ({ pmv = 0 }) => ({ ppd: 100 - 95 * Math.exp(-0.03353 * pmv ** 4 - 0.2179 * pmv ** 2) }),
    within: 1e-9,
  },
  {
    name: 'a supply that sags',
    area: 'hookup',
    inputs: (between) => ({ v_open: between(110, 245), loop_ohm: between(0.1, 1.2), amps: between(2, 32) }),
    expected: ({ v_open = 0, loop_ohm = 0, amps = 0 }) => ({
      v_load: v_open - loop_ohm * amps,
      power_W: (v_open - loop_ohm * amps) * amps,
    }),
    within: 1e-9,
  },
  {
    name: 'a lead by gauge',
    area: 'hookup',
    inputs: (between) => ({ awg: '10', one_way_ft: between(10, 300), amps: between(5, 30), volts: 120, phases: 1 }),
    expected: ({ one_way_ft = 0, amps = 0, volts = 1 }) => {
      const ohm = (2 * 1.21 * one_way_ft) / 1000
      return { drop_V: ohm * amps, drop_pct: (100 * ohm * amps) / volts, loss_W: ohm * amps ** 2 }
    },
    within: 1e-9,
  },
  {
    name: 'power into the battery',
    area: 'charge',
    inputs: (between) => ({
      volts: between(110, 245),
      amps: between(8, 40),
      overhead_W: between(100, 500),
      efficiency: between(0.8, 0.95),
    }),
    expected: ({ volts = 0, amps = 0, overhead_W = 0, efficiency = 0 }) => ({
      battery_W: (volts * amps - overhead_W) * efficiency,
    }),
    within: 1e-9,
  },
  {
    name: 'the pilot below 85 %',
    area: 'charge',
    inputs: (between) => ({ duty_pct: between(10, 85) }),
    expected: ({ duty_pct = 0 }) => ({ amps: 0.6 * duty_pct }),
    within: 1e-9,
  },
  {
    name: 'road load',
    area: 'drive',
    inputs: (between) => ({
      v_kmh: between(40, 130),
      mass_kg: between(1200, 3500),
      CdA_m2: between(0.5, 1.6),
      crr: between(0.006, 0.02),
      rho: between(1.1, 1.4),
      drivetrain_eff: between(0.8, 0.95),
      aux_W: between(0, 3000),
      grade: between(-0.01, 0.04),
    }),
    expected: ({ v_kmh = 1, mass_kg = 0, CdA_m2 = 0, crr = 0, rho = 0, drivetrain_eff = 1, aux_W = 0, grade = 0 }) => {
      const v = v_kmh / 3.6
      const force = 0.5 * rho * CdA_m2 * v * v + mass_kg * 9.80665 * (crr + grade)
      return { Wh_km: ((force * v) / drivetrain_eff + aux_W) / v_kmh }
    },
    within: 1e-6,
  },
  {
    name: 'a label that is not one of the table’s',
    area: 'drive',
    inputs: (between) => ({ fastsim_row: 17, udds_kWh_mi: between(0.3, 0.4), hwy_kWh_mi: between(0.3, 0.45) }),
    expected: ({ udds_kWh_mi = 0, hwy_kWh_mi = 0 }) => ({ comb_kWh_mi: 0.55 * udds_kWh_mi + 0.45 * hwy_kWh_mi }),
    within: 1e-9,
  },
  {
    name: 'range lost between the measured cold and mild weather',
    area: 'drive',
    inputs: (between) => ({ t_F: between(20, 75), hvac: true }),
    expected: ({ t_F = 0 }) => ({ range_loss_pct: (41 * (75 - t_F)) / 55 }),
    within: 1e-9,
  },
  {
    name: 'a stop',
    area: 'safety',
    inputs: (between) => ({ speed_kmh: between(20, 120), stop_distance_m: between(0.2, 2) }),
    expected: ({ speed_kmh = 0, stop_distance_m = 1 }) => ({
      g: (speed_kmh / 3.6) ** 2 / 2 / stop_distance_m / 9.80665,
    }),
    within: 1e-9,
  },
  {
    name: 'a constant night',
    area: 'night',
    inputs: (between) => ({
      UA_W_K: between(25, 60),
      t_in_C: between(12, 22),
      t_out_C: between(-15, 5),
      occupants_W: between(0, 150),
      supply_W: between(3000, 9000),
      charger_overhead_W: between(0, 400),
      charge_eff: between(0.8, 0.95),
      hours: between(5, 12),
      cop: between(1, 2.5),
      battery_kWh: between(30, 90),
    }),
    expected: (i) => {
      const heat = (i['UA_W_K'] ?? 0) * ((i['t_in_C'] ?? 0) - (i['t_out_C'] ?? 0)) - (i['occupants_W'] ?? 0)
      const battery =
        ((i['supply_W'] ?? 0) - Math.max(0, heat) / (i['cop'] ?? 1) - (i['charger_overhead_W'] ?? 0)) *
        (i['charge_eff'] ?? 0)
      const hours = i['hours'] ?? 0
      return {
        heater_W: Math.max(0, heat),
        battery_W: battery,
        battery_kWh: (battery * hours) / 1000,
        soc_gain_pct: (battery * hours) / 10 / (i['battery_kWh'] ?? 1),
      }
    },
    within: 1e-9,
  },
]

const numbersOf = (inputs: Given): Record<string, number> =>
  Object.fromEntries(
    Object.entries(inputs).flatMap(([key, value]) => (typeof value === 'number' ? [[key, value]] : [])),
  )

describe('points that no row holds', () => {
  it.each(CASES.map((of) => [of.name, of] as const))(`%s: ${POINTS} of them agree (seeds 1 to ${POINTS})`, (_, of) => {
    for (let seed = 1; seed <= POINTS; seed += 1) {
      const random = randomFrom(seed)
      const inputs = of.inputs((low, high) => low + (high - low) * random())
      const wanted = of.expected(numbersOf(inputs))
      const ours: Ours = AREAS[of.area]?.(inputs, Object.keys(wanted)) ?? {}
      for (const [name, value] of Object.entries(wanted)) {
        const our = ours[name]
        if (typeof our !== 'number') throw new Error(`seed ${seed}: no ${name}`)
        expect(Math.abs(our - value), `seed ${seed}, ${name}`).toBeLessThanOrEqual(
          of.within * Math.max(1, Math.abs(value)),
        )
      }
    }
  })

  it('the sun at any place and instant stands within a tenth of a degree of suncalc 2, which has no height above sea level', () => {
    for (let seed = 1; seed <= POINTS; seed += 1) {
      const random = randomFrom(seed)
      const at = new Date(1_700_000_000_000 + Math.floor(random() * 4e7) * 1000)
      const [lat, lon] = [-65 + 130 * random(), -180 + 360 * random()]
      const ours = AREAS['sun']?.({ lat, lon, utc: at.toISOString() }, ['elevation_deg']) ?? {}
      const theirs = getPosition(at, lat, lon)
      if (theirs.altitude < 2) continue
      expect(Math.abs(Number(ours['apparent_elevation_deg']) - theirs.altitude), `seed ${seed}`).toBeLessThan(0.1)
    }
  })
})

const folder = join(import.meta.dirname, 'rows')
const ROWS: readonly Row[] = readdirSync(folder).flatMap((file) => parseRows(readFileSync(join(folder, file), 'utf8')))

describe('every row moved a little', () => {
  it('each number 1 % up or down leaves every answer a number where it was one, and moves none by more than a tenth, but where the quantity itself has steps', () => {
    const jumps: string[] = []
    for (const row of ROWS) {
      const names = Object.keys(row.expected)
      const before = AREAS[row.area]?.(row.inputs, names) ?? {}
      for (const [key, value] of Object.entries(row.inputs)) {
        if (typeof value !== 'number' || value === 0) continue
        for (const factor of [0.99, 1.01]) {
          const result = runRow({ ...row, inputs: { ...row.inputs, [key]: value * factor } })
          for (const { name, ours } of result.judgements) {
            const from = before[name]
            if (typeof from !== 'number' || typeof ours !== 'number') continue
            if (!Number.isFinite(ours)) throw new Error(`${row.id}: ${name} is ${ours}`)
            if (Math.abs(ours - from) > 0.1 * Math.max(5, Math.abs(from), Math.abs(value)))
              jumps.push(`${row.id} ${key}`)
          }
        }
      }
    }
    // A pilot past 96 % asks for nothing, hours in the cold grow without bound near balance, and breakers come in sizes.
    expect([...new Set(jumps)]).toEqual(['CHG-012 duty_pct', 'CLD-016 Icl_clo', 'HKP-050 evse_max_A'])
  })
})
