/** What each number of the night is made of: formula, inputs, source. */
import type { Plan } from '../../../shared/plan/index.ts'
import type { Quantity, Text } from '../../../shared/text/index.ts'

type NightPlan = Plan['nights'][number]

export type NightNumber = {
  readonly id: string
  readonly label: string
  readonly quantity: Quantity
  readonly formula: string
  readonly source: string
  readonly inputs: readonly { readonly label: string; readonly value: string }[]
}

type Name = 'coldest' | 'depart' | 'leg' | 'heating' | 'current' | 'loss' | 'co2' | 'water' | 'cost'

type Given = NightNumber['inputs'][number]
type Words = {
  readonly number: (id: Name, quantity: Quantity, inputs: readonly Given[]) => NightNumber
  readonly given: (key: InputName, value: string) => Given
}

const wordsOf = (text: Text): Words => ({
  number: (id, quantity, inputs) => ({
    id,
    label: text.t(`window.number.${id}`),
    quantity,
    formula: text.t(`window.number.${id}.formula`),
    source: text.t(`window.number.${id}.source`),
    inputs,
  }),
  given: (key, value) => ({ label: text.t(`window.input.${key}`), value }),
})

export const numbersOf = (night: NightPlan, text: Text, currency: string): readonly NightNumber[] => {
  const words = wordsOf(text)
  return [
    ...warmth(night, text, words),
    ...energy(night, text, words),
    ...air(night, text, words),
    ...money(night, text, currency, words),
  ]
}

function warmth({ outcome }: NightPlan, text: Text, { number, given }: Words): readonly NightNumber[] {
  const total = outcome.lossWPerK.total
  const lossInputs = [
    given('loss', wattsPerK(total, text)),
    given('outside', text.temperature(outcome.coldestOutsideC).text),
  ]
  return [
    number('coldest', text.temperature(outcome.coldestBedC), lossInputs),
    number('heating', text.energy(outcome.heatingWh), lossInputs),
    number('loss', { number: text.number(total, 0), unit: text.t('window.unit.wPerK'), text: wattsPerK(total, text) }, [
      given('shell', wattsPerK(outcome.lossWPerK.shell, text)),
      given('freshAir', wattsPerK(outcome.lossWPerK.freshAir, text)),
      given('gapCost', text.power(outcome.windowGapCostW).text),
    ]),
  ]
}

function energy({ input, outcome }: NightPlan, text: Text, { number, given }: Words): readonly NightNumber[] {
  const { battery, leg } = input
  const numbers: NightNumber[] = []
  if (battery !== null && outcome.depart01 !== null && outcome.arrive01 !== null)
    numbers.push(
      number('depart', text.percent(outcome.depart01), [
        given('arrive', text.percent(outcome.arrive01).text),
        given('into', text.energy(outcome.intoBatteryWh).text),
        given('heating', text.energy(outcome.heatingWh).text),
        given('usable', text.energy(battery.usableWh).text),
      ]),
    )
  if (leg !== null && outcome.leg !== null)
    numbers.push(
      number('leg', text.energy(outcome.leg.marginWh), [
        given('need', text.energy(outcome.leg.needWh).text),
        given('reserve', text.energy(outcome.leg.reserveWh).text),
        given('distance', text.distance(leg.distanceM).text),
      ]),
    )
  if (outcome.supply !== null)
    numbers.push(
      number('current', text.current(outcome.supply.usableA), [
        ...outcome.supply.limits.map(({ part, currentA }) => ({
          label: text.t(`window.limit.${part}`),
          value: text.current(currentA).text,
        })),
        given('volts', text.voltage(outcome.supply.voltsAtLoad).text),
        given('sag', text.percent(outcome.supply.sag01).text),
      ]),
    )
  return numbers
}

function air({ input, outcome }: NightPlan, text: Text, { number, given }: Words): readonly NightNumber[] {
  const ppm = Math.round(outcome.co2MaxPpm / 10) * 10
  return [
    number('co2', { number: text.number(ppm, 0), unit: 'ppm', text: `${text.number(outcome.co2MaxPpm, 0)} ppm` }, [
      given('sleepers', text.number(input.sleepers.length, 0)),
      given('gap', text.length(input.decisions.windowGapMm).text),
    ]),
    number('water', text.mass(outcome.condensateG + outcome.frostG), [
      given('condensate', text.mass(outcome.condensateG).text),
      given('frost', text.mass(outcome.frostG).text),
    ]),
  ]
}

function money({ outcome }: NightPlan, text: Text, currency: string, { number, given }: Words): readonly NightNumber[] {
  const cost = text.money(outcome.cost, currency)
  return [
    number('cost', { number: cost, unit: '', text: cost }, [
      given('fromSite', text.energy(outcome.fromSiteWh).text),
      given('wiring', text.energy(outcome.wiringLossWh).text),
    ]),
  ]
}

type InputName =
  | 'loss'
  | 'outside'
  | 'arrive'
  | 'into'
  | 'heating'
  | 'usable'
  | 'need'
  | 'reserve'
  | 'distance'
  | 'volts'
  | 'sag'
  | 'shell'
  | 'freshAir'
  | 'gapCost'
  | 'sleepers'
  | 'gap'
  | 'condensate'
  | 'frost'
  | 'fromSite'
  | 'wiring'

const wattsPerK = (value: number, text: Text): string => `${text.number(value, 0)} ${text.t('window.unit.wPerK')}`
