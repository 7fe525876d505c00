/** What a night begins with, and what one row of it tells, by hand. */
import { describe, expect, it } from 'vitest'
import { saturationRatio, vapourPa } from '../../../shared/climate/moisture-saturation.ts'
import { BED, FIRST_PANE, FLOOR, FRONT, MASS } from '../../../shared/climate/network-step.ts'
import { buildNetwork } from '../../../shared/climate/network.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { record } from '../../../shared/climate/night-record.ts'
import { heatContentJ, startRun, utcOf } from '../../../shared/climate/night-state.ts'
import type { Run } from '../../../shared/climate/night-state.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import { at, night, steadyWeather, withDecisions } from './night-fixture.ts'

const start = (input: NightInput, withPanes = false): Run => startRun(prepareNight(input), input.decisions, withPanes)

describe('the start', () => {
  it('is warm from the drive, with the glass half way to the air outside', () => {
    const { temps } = start(night())
    expect(temps.slice(0, FIRST_PANE)).toEqual(Float64Array.of(18, 18, 18, 18))
    expect(temps.length).toBeGreaterThan(FIRST_PANE)
    for (const paneC of temps.slice(FIRST_PANE)) expect(paneC).toBeCloseTo((18 - 5) / 2, 12)
  })

  it('is as outside where that is warmer, and as told where it is told', () => {
    expect(start(night({ weather: steadyWeather(27) })).temps[BED]).toBe(27)
    const told = start(night({ arriveInsideC: 3 })).temps
    expect(told[FRONT]).toBe(3)
    expect(told[FIRST_PANE]).toBeCloseTo(-1, 12)
    expect(start(night({ arriveInsideC: null })).temps[BED]).toBe(18)
  })

  it('has the air’s water of outside, and no more than the coldest of the air can hold', () => {
    const run = start(night())
    const pa = run.prepared.pressurePa
    expect(run.moisture.ratio).toBeCloseTo(0.8 * saturationRatio(-5, pa), 12)
    const damp = start(night({ weather: steadyWeather(10, { humidity01: 0.9 }), arriveInsideC: 2 }))
    expect(damp.moisture.ratio).toBeCloseTo(saturationRatio(2, pa), 12)
    expect(run.startWaterKg).toBeCloseTo(run.moisture.ratio * run.prepared.airKg, 12)
    expect(run.moisture.co2Ppm).toBe(425)
    expect([...run.moisture.filmKg].every((kg) => kg === 0)).toBe(true)
  })

  it('has the batteries as they arrive, the bed heaters that are chosen and the covers that are up', () => {
    const bedHeaters = [
      { id: 'a', kind: 'underblanket', powerW: 50 },
      { id: 'b', kind: 'foot-pad', powerW: 20 },
      { id: 'c', kind: 'heated-seat', powerW: 40 },
    ] as const
    const run = start(withDecisions(night({ bedHeaters }), { bedHeaterIds: ['a', 'c'], covers: true }))
    expect(run.bedHeaterW).toBe(90)
    expect(run.power).toEqual({ charge01: 0.5, leisure01: 0 })
    expect([run.covers, run.networkCovers, run.wet.covers]).toEqual([true, true, true])
    expect(start(night({ battery: null })).power.charge01).toBe(0)
    expect(run.stopsUtc).toBeNull()
    expect([run.switchedOff, run.atReserve, run.leisureEmpty]).toEqual([false, false, false])
  })

  it('keeps panes one by one only where asked for', () => {
    expect(start(night()).panes).toEqual([])
    const kept = start(night(), true).panes
    expect(kept.length).toBe(night().cabin.panes.length)
    expect(kept[0]?.surfaceC.length).toBe(168)
  })

  it('holds heat by the capacity of each node', () => {
    const prepared = prepareNight(night())
    const network = buildNetwork(night().cabin, 0, false, prepared.airJPerM3K)
    const size = FIRST_PANE + network.panes.length
    const alone = (node: number): number => {
      const temps = new Float64Array(size)
      temps[node] = 2
      return heatContentJ(network, temps)
    }
    expect(alone(FRONT)).toBeCloseTo(2 * network.frontJPerK, 6)
    expect(alone(BED)).toBeCloseTo(2 * network.bedJPerK, 6)
    expect(alone(MASS)).toBeCloseTo(2 * network.massJPerK, 6)
    expect(alone(FLOOR)).toBeCloseTo(2 * network.floorJPerK, 6)
    network.panes.forEach((pane, index) => {
      expect(alone(FIRST_PANE + index)).toBeCloseTo(2 * pane.capacityJPerK, 6)
    })
    expect(start(night()).startJ).toBeGreaterThan(0)
  })

  it('rounds an instant to whole seconds', () => {
    expect([utcOf(10.4), utcOf(10.5), utcOf(-0.6)]).toEqual([10, 11, -1])
  })
})

describe('a row', () => {
  /** A row of 300 s of a night in still air at -5 °C, at temperatures and films of the test's own. */
  function rowOf(set: (run: Run) => void): Run {
    const run = start(night(), true)
    set(run)
    record(run, 0, at(300 / 3600), 300)
    return run
  }

  it('tells temperatures, water and charge as they stand, and powers as means', () => {
    const { columns, prepared, moisture } = rowOf((run) => {
      run.temps.set([11, 10, 9, 8])
      Object.assign(run.sums, { heatJ: 300, electricJ: 600, bedJ: 900, supplyJ: 1200, chargeJ: -1500, wiringJ: 1800 })
      run.power.charge01 = 0.42
      run.power.leisure01 = 0.7
      run.moisture.co2Ppm = 900
    })
    const first = Object.fromEntries(Object.entries(columns).map(([name, column]) => [name, column[0]]))
    expect(first).toMatchObject({
      atUtc: at(300 / 3600),
      outsideC: -5,
      frontAirC: 11,
      bedAirC: 10,
      massC: 9,
      floorC: 8,
      co2Ppm: 900,
      heatW: 1,
      heatingElectricW: 2,
      bedHeatW: 3,
      supplyW: 4,
      chargeW: -5,
      wiringLossW: 6,
      charge01: 0.42,
      leisure01: 0.7,
    })
    expect(first['vapourPa']).toBe(vapourPa(moisture.ratio, prepared.pressurePa))
  })

  it('tells water on glass above 0 °C, frost below, and what lies on the lining apart', () => {
    const { columns, panes } = rowOf((run) => {
      const lining = run.moisture.filmKg.length - 1
      run.moisture.filmKg.fill(0)
      run.moisture.filmKg.set([0.01, 0.02, 0.04])
      run.moisture.filmKg[lining] = 0.5
      run.temps.set([0, -0.1, 3], FIRST_PANE)
    })
    expect(columns.condensateG[0]).toBeCloseTo(50, 9)
    expect(columns.frostG[0]).toBeCloseTo(20, 9)
    expect(columns.liningG[0]).toBeCloseTo(500, 9)
    expect([panes[1]?.surfaceC[0], panes[1]?.filmKg[0]]).toEqual([-0.1, 0.02])
  })

  it('feels as warm as the air where all surfaces are, and half of what a colder surrounding is', () => {
    const even = rowOf((run) => run.temps.fill(-5)).columns
    expect(even.operativeC[0]).toBeCloseTo(-5, 9)
    expect(even.feetC[0]).toBeCloseTo(-5, 9)
    expect(even.glassC[0]).toBeCloseTo(-5, 9)
    // Feet: half the floor, three tenths air, two tenths what radiates on them.
    const onFloor = rowOf((run) => {
      run.temps.fill(-5)
      run.temps[FLOOR] = 5
    }).columns
    expect(onFloor.feetC[0]).toBeCloseTo(-5 + 0.5 * 10, 9)
    expect(onFloor.operativeC[0]).toBeCloseTo(-5, 9)
  })

  it('sees the same surfaces whatever the loss is multiplied by: the scale is not in the films', () => {
    const feltAt = (lossScale: number): readonly number[] => {
      const cabin = { ...night().cabin, lossScale }
      const run = start(night({ cabin }))
      run.temps.fill(10)
      run.temps.fill(-1, FIRST_PANE)
      record(run, 0, at(300 / 3600), 300)
      return [run.columns.operativeC[0] ?? 0, run.columns.feetC[0] ?? 0]
    }
    const [operativeC = 0, feetC = 0] = feltAt(1)
    expect(feltAt(1.7)).toEqual([expect.closeTo(operativeC, 9), expect.closeTo(feetC, 9)])
  })

  it('weighs air by a half, and the other half by area: walls, seats and the glass beside the bed', () => {
    const air = rowOf((run) => {
      run.temps.fill(10)
    })
    const { network, prepared, columns } = air
    const { cabin } = prepared.input
    // Walls without floor and front: 0.8 x 0.55 of the body; seats as much again.
    const wallM2 = cabin.bodyAreaM2 * 0.8 * 0.55
    // The inside of the wall lies under the air by its loss over the inner film of 7.7 W/m2K.
    const wallC = 10 - (network.bedBodyWPerK / wallM2 / 7.7) * 15
    const beside = network.panes.filter((pane) => !pane.atFront)
    expect(beside.length).toBeGreaterThan(0)
    const glassM2 = beside.reduce((sum, pane) => sum + pane.areaM2, 0)
    const radiantC = (wallM2 * wallC + wallM2 * 10 + glassM2 * 10) / (2 * wallM2 + glassM2)
    expect(columns.operativeC[0]).toBeCloseTo((10 + radiantC) / 2, 9)
    expect(columns.feetC[0]).toBeCloseTo(0.5 * 10 + 0.3 * 10 + 0.2 * radiantC, 9)
    // Bare glass: its inner conductance is the film itself, so that what one faces is the glass.
    const cold = rowOf((run) => {
      run.temps.fill(10)
      network.panes.forEach((pane, index) => {
        run.temps[FIRST_PANE + index] = pane.atFront ? -30 : 0
      })
    }).columns
    const radiantColdC = (wallM2 * wallC + wallM2 * 10) / (2 * wallM2 + glassM2)
    expect(cold.operativeC[0]).toBeCloseTo((10 + radiantColdC) / 2, 9)
    const allM2 = network.panes.reduce((sum, pane) => sum + pane.areaM2, 0)
    expect(cold.glassC[0]).toBeCloseTo((-30 * (allM2 - glassM2)) / allM2, 9)
    const seats = rowOf((run) => {
      run.temps.fill(10)
      run.temps[MASS] = 4
    }).columns
    expect((columns.operativeC[0] ?? 0) - (seats.operativeC[0] ?? 0)).toBeCloseTo(
      (6 * wallM2) / (2 * wallM2 + glassM2) / 2,
      9,
    )
  })
})
