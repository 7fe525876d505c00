/** What each number of the night is made of: formula, inputs, source. */
import { askedA } from '../../../shared/cards/asked-current.ts'
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

function energy(night: NightPlan, text: Text, { number, given }: Words): readonly NightNumber[] {
  const { input, outcome } = night
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
      number('current', text.current(askedA(night)), [
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

function air(
  { input, outcome, clock: { zone } }: NightPlan,
  text: Text,
  { number, given }: Words,
): readonly NightNumber[] {
  const ppm = Math.round(outcome.co2MaxPpm / 10) * 10
  return [
    number('co2', { number: text.number(ppm, 0), unit: 'ppm', text: `${text.number(outcome.co2MaxPpm, 0)} ppm` }, [
      given('sleepers', text.number(input.sleepers.length, 0)),
      given('gap', text.length(input.decisions.windowGapMm).text),
    ]),
    number('water', text.mass(outcome.condensateG + outcome.frostG), [
      ...(outcome.glass ?? []).map((pane) => ({
        label: text.t(`night.pane.${pane.id}`),
        value: sayPane(pane, text, zone),
      })),
      given('condensate', text.mass(outcome.condensateG).text),
      given('frost', text.mass(outcome.frostG).text),
      ...(outcome.liningG === undefined ? [] : [given('lining', text.mass(outcome.liningG).text)]),
      ...(outcome.coilDrainG === undefined ? [] : [given('coil', text.mass(outcome.coilDrainG).text)]),
    ]),
    ...windowCost(outcome.windowCosts ?? [], input.decisions.windowGapMm, text),
  ]
}

/** Most of dew or frost on one pane, and from when it shows. */
function sayPane(pane: NonNullable<NightPlan['outcome']['glass']>[number], text: Text, zone: string): string {
  const says = [
    ...(pane.wetFromUtc === null
      ? []
      : [text.t('night.pane.dew', { dewG: pane.mostCondensateG, time: text.clock(pane.wetFromUtc, zone) })]),
    ...(pane.frostFromUtc === null
      ? []
      : [text.t('night.pane.frost', { frostG: pane.mostFrostG, time: text.clock(pane.frostFromUtc, zone) })]),
  ]
  return says.length === 0 ? text.t('night.pane.dry') : says.join('; ')
}

/** Told for a window shut: what this much would cost; for one open: what it does. */
const USUAL_GAP_MM = 10

function windowCost(
  costs: NonNullable<NightPlan['outcome']['windowCosts']>,
  gapMm: number,
  text: Text,
): readonly NightNumber[] {
  const wantedMm = gapMm > 0 ? gapMm : USUAL_GAP_MM
  const told = costs.toSorted((a, b) => Math.abs(a.gapMm - wantedMm) - Math.abs(b.gapMm - wantedMm))[0]
  if (told === undefined) return []
  return [
    {
      id: 'windowCost',
      label: text.t('window.number.windowCost', { gap: text.length(told.gapMm).text }),
      quantity: text.power(told.electricW ?? told.heatW),
      formula: text.t('window.number.windowCost.formula'),
      source: text.t('window.number.windowCost.source'),
      inputs: costs.map((cost) => ({ label: text.length(cost.gapMm).text, value: sayCost(cost, text) })),
    },
  ]
}

const sayCost = ({ heatW, electricW }: NonNullable<NightPlan['outcome']['windowCosts']>[number], text: Text): string =>
  electricW === null ? text.t('night.windowCostHeat', { heatW }) : text.t('night.windowCost', { heatW, electricW })

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
  | 'lining'
  | 'coil'
  | 'fromSite'
  | 'wiring'

/** How one person sleeps, with the hours, as a line that opens. */
export function sleeperLines(
  { input, outcome, clock: { zone } }: NightPlan,
  text: Text,
): readonly { readonly id: string; readonly inputs: NightNumber['inputs'] }[] {
  return outcome.sleepers.map((sleeper) => {
    const bedding = input.sleepers.find(({ id }) => id === sleeper.sleeperId)?.bedding
    return {
      id: sleeper.sleeperId,
      inputs: [
        { label: text.t('window.input.ruledBy'), value: text.t(`window.ruledBy.${sleeper.ruledBy}`) },
        { label: text.t('window.input.required'), value: clo(sleeper.requiredClo, text) },
        ...(bedding === undefined
          ? []
          : [{ label: text.t('window.input.provided'), value: clo(bedding.coverClo, text) }]),
        { label: text.t('window.input.feet'), value: text.temperature(sleeper.coldestFeetC).text },
        ...(sleeper.hours ?? []).map((hour) => ({
          label: text.clock(hour.atUtc, zone),
          value: text.t('window.sleeperHour', { marginK: hour.marginK, feetK: hour.feetMarginK }),
        })),
      ],
    }
  })
}

const clo = (value: number, text: Text): string => `${text.number(value, 1)}\u00a0clo`

const wattsPerK = (value: number, text: Text): string => `${text.number(value, 0)} ${text.t('window.unit.wPerK')}`
