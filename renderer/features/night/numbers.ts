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

export function numbersOf(night: NightPlan, text: Text, currency: string): readonly NightNumber[] {
  const { input, outcome } = night
  const { battery, leg } = input
  const number = (id: Name, quantity: Quantity, inputs: NightNumber['inputs']): NightNumber => ({
    id,
    label: text.t(`window.number.${id}`),
    quantity,
    formula: text.t(`window.number.${id}.formula`),
    source: text.t(`window.number.${id}.source`),
    inputs,
  })
  const given = (key: InputName, value: string): NightNumber['inputs'][number] => ({
    label: text.t(`window.input.${key}`),
    value,
  })
  const lossInputs = [
    given('loss', wattsPerK(outcome.lossWPerK.total, text)),
    given('outside', text.temperature(outcome.coldestOutsideC).text),
  ]
  return [
    number('coldest', text.temperature(outcome.coldestBedC), lossInputs),
    ...(battery === null || outcome.depart01 === null || outcome.arrive01 === null
      ? []
      : [
          number('depart', text.percent(outcome.depart01), [
            given('arrive', text.percent(outcome.arrive01).text),
            given('into', text.energy(outcome.intoBatteryWh).text),
            given('heating', text.energy(outcome.heatingWh).text),
            given('usable', text.energy(battery.usableWh).text),
          ]),
        ]),
    ...(leg === null || outcome.leg === null
      ? []
      : [
          number('leg', text.energy(outcome.leg.marginWh), [
            given('need', text.energy(outcome.leg.needWh).text),
            given('reserve', text.energy(outcome.leg.reserveWh).text),
            given('distance', text.distance(leg.distanceM).text),
          ]),
        ]),
    number('heating', text.energy(outcome.heatingWh), lossInputs),
    ...(outcome.supply === null
      ? []
      : [
          number('current', text.current(outcome.supply.usableA), [
            ...outcome.supply.limits.map(({ part, currentA }) => ({
              label: text.t(`window.limit.${part}`),
              value: text.current(currentA).text,
            })),
            given('volts', text.voltage(outcome.supply.voltsAtLoad).text),
            given('sag', text.percent(outcome.supply.sag01).text),
          ]),
        ]),
    number(
      'loss',
      {
        number: text.number(outcome.lossWPerK.total, 0),
        unit: text.t('window.unit.wPerK'),
        text: wattsPerK(outcome.lossWPerK.total, text),
      },
      [
        given('shell', wattsPerK(outcome.lossWPerK.shell, text)),
        given('freshAir', wattsPerK(outcome.lossWPerK.freshAir, text)),
        given('gapCost', text.power(outcome.windowGapCostW).text),
      ],
    ),
    number(
      'co2',
      {
        number: text.number(Math.round(outcome.co2MaxPpm / 10) * 10, 0),
        unit: 'ppm',
        text: `${text.number(outcome.co2MaxPpm, 0)} ppm`,
      },
      [
        given('sleepers', text.number(input.sleepers.length, 0)),
        given('gap', text.length(input.decisions.windowGapMm).text),
      ],
    ),
    number('water', text.mass(outcome.condensateG + outcome.frostG), [
      given('condensate', text.mass(outcome.condensateG).text),
      given('frost', text.mass(outcome.frostG).text),
    ]),
    number('cost', { number: text.money(outcome.cost, currency), unit: '', text: text.money(outcome.cost, currency) }, [
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
