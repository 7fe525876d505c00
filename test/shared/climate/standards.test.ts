/** What the standards say of a night: the value where their range reaches, "not known" everywhere else. */
import { describe, expect, it } from 'vitest'
import { nightStandards, simulateNight } from '../../../shared/climate/index.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import { at, night, randomFrom, steadyWeather, withDecisions } from './night-fixture.ts'

const told = (input: NightInput) => nightStandards(input, simulateNight(input))

/** Warm enough to sit up in: 20 °C from arrival on. */
const WARM = withDecisions(night({ weather: steadyWeather(4) }), { setPoints: [{ fromUtc: at(0), tempC: 20 }] })

describe('sitting up at bedtime', () => {
  it('has a vote in a warm cabin: cool to neutral at 20 °C, 1 met and 1 clo', () => {
    const { vote, dissatisfied01, atUtc } = told(WARM).sitting
    expect(atUtc).toBe(WARM.sleepFromUtc)
    // ISO 7730 gives -0.35 at 22 °C all round (row PMV-032) and -1.77 at 18 °C in a 15 °C enclosure (row PMV-029).
    expect(vote).toBeGreaterThan(-1.77)
    expect(vote).toBeLessThan(-0.3)
    expect(dissatisfied01).toBeGreaterThan(0.05)
  })

  it('is not known in a cold cabin, whatever one would like to read', () => {
    const cold = withDecisions(night(), { setPoints: [] })
    expect(told(cold).sitting).toMatchObject({ vote: null, dissatisfied01: null })
  })
})

describe('asleep', () => {
  it('is known by neither standard on any night (seeds 1 to 40): their ranges end above the heat of a sleeper', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const random = randomFrom(seed)
      const input = withDecisions(
        night({ weather: steadyWeather(-20 + 45 * random(), { windMPerS: 10 * random() }) }),
        {
          setPoints: [{ fromUtc: at(0), tempC: 6 + 18 * random() }],
        },
      )
      expect(told(input).asleep).toMatchObject({ vote: null, dissatisfied01: null, leastClo: null })
    }
  })
})

describe('light work outside', () => {
  const outside = (tempC: number, windMPerS: number) =>
    told(night({ weather: steadyWeather(tempC, { windMPerS }) })).outside

  it('asks for clothing on arriving and before leaving, the comfortable over the least, more in the cold', () => {
    const cold = outside(-15, 3)
    expect(cold.map(({ atUtc }) => atUtc)).toEqual([at(0), at(14)])
    for (const { leastClo, neutralClo } of cold) expect(neutralClo ?? 0).toBeGreaterThan(leastClo ?? Infinity)
    expect(cold[0]?.leastClo ?? 0).toBeGreaterThan(outside(5, 3)[0]?.leastClo ?? Infinity)
    // Row CLD-016: 116 W/m2 at -15 °C and 0.4 m/s asks for 2.7 to 3.1 clo.
    expect(outside(-15, 0.4)[0]?.leastClo).toBeCloseTo(2.7, 0)
    expect(outside(-15, 0.4)[0]?.neutralClo).toBeCloseTo(3.1, 0)
  })

  it('is not known in mild or still air, where the method does not reach', () => {
    expect(outside(12, 3)[0]).toMatchObject({ leastClo: null, neutralClo: null })
    expect(outside(-5, 0.2)[0]).toMatchObject({ leastClo: null, neutralClo: null })
  })

  it('knows wind chill from 4.8 km/h on, and names none in still or mild air', () => {
    // Row CLD-002: -20 °C at 5 km/h feels like -24.3.
    expect(outside(-20, 5 / 3.6)[0]?.windChillC).toBeCloseTo(-24.3, 1)
    expect(outside(-20, 1)[0]?.windChillC).toBeNull()
    expect(outside(15, 5)[0]?.windChillC).toBeNull()
  })
})
