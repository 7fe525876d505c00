/** The recommended plan of a night as lines, each with how its number came about. */
import { sayReason, saySensitivity, recommended } from '../../../shared/cards/index.ts'
import type { Reason, Spoken } from '../../../shared/cards/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import type { HowInput } from '../../ui/HowNumber.vue'

export type AdviceLine = {
  readonly id: string
  readonly says: string
  readonly formula: string
  readonly source: string
  readonly inputs: readonly HowInput[]
}

const HOW = {
  'warm-in-hand': 'margin',
  'too-cold-by': 'margin',
  'leg-in-hand': 'leg',
  'leg-short-by': 'leg',
  'stop-to-charge': 'leg',
  'saves-money': 'money',
  'saves-moves': 'moves',
  bedding: 'bedding',
  'bed-heat-first': 'bedHeat',
  'lower-asleep': 'setPoint',
  'pre-warm': 'preWarm',
  'less-current': 'current',
  'charge-enough': 'limit',
  'covers-up': 'covers',
  'window-open': 'gap',
} as const satisfies Record<Reason['code'], string>

type How = (typeof HOW)[Reason['code']] | 'sensitivity'

/** Reasons of the recommended plan, most weighty first; empty before the search has run. */
export function adviceLines(spoken: Spoken): readonly AdviceLine[] {
  const { night, text } = spoken
  return (night.search?.reasons ?? []).map((reason, index) => ({
    id: `${reason.code}-${index}`,
    says: sayReason(spoken, reason),
    ...howOf(text, HOW[reason.code]),
    inputs: inputsOf(spoken, HOW[reason.code]),
  }))
}

/** What becomes of it when the night is colder or the leg takes more. */
export const sensitivityLines = (spoken: Spoken): readonly AdviceLine[] =>
  saySensitivity(spoken).map((says, index) => ({
    id: `sensitivity-${index}`,
    says,
    ...howOf(spoken.text, 'sensitivity'),
    inputs: [...inputsOf(spoken, 'margin'), ...inputsOf(spoken, 'leg')],
  }))

const howOf = (text: Text, how: How): Pick<AdviceLine, 'formula' | 'source'> => ({
  formula: text.t(`window.because.${how}.formula`),
  source: text.t(`window.because.${how}.source`),
})

/** Read off the recommended plan and the night it is for. */
function inputsOf({ night, text, trip }: Spoken, how: How): readonly HowInput[] {
  const point = recommended(night)
  if (point === undefined) return []
  const { outcome, input } = night
  switch (how) {
    case 'margin':
    case 'covers':
    case 'setPoint':
    case 'bedHeat':
      return [
        { label: text.t('window.input.margin'), value: text.temperatureDifference(point.comfortMarginK).text },
        { label: text.t('window.input.outside'), value: text.temperature(outcome.coldestOutsideC).text },
      ]
    case 'leg':
    case 'limit':
      return [
        ...(point.depart01 === null
          ? []
          : [{ label: text.t('window.input.departure'), value: text.percent(point.depart01).text }]),
        ...(outcome.leg === null
          ? []
          : [
              { label: text.t('window.input.need'), value: text.energy(outcome.leg.needWh).text },
              { label: text.t('window.input.reserve'), value: text.energy(outcome.leg.reserveWh).text },
            ]),
      ]
    case 'money':
      return [{ label: text.t('window.input.cost'), value: text.money(point.cost, trip.preferences.currency) }]
    case 'moves':
      return [{ label: text.t('window.input.moves'), value: text.number(point.moves ?? 0, 0) }]
    case 'bedding':
      return [
        { label: text.t('window.input.moves'), value: text.number(point.moves ?? 0, 0) },
        { label: text.t('window.input.room'), value: text.volume(point.beddingVolumeMm3 ?? 0).text },
      ]
    case 'current':
      return outcome.supply === null
        ? []
        : [
            { label: text.t('window.input.usableA'), value: text.current(outcome.supply.usableA).text },
            { label: text.t('window.input.volts'), value: text.voltage(outcome.supply.voltsAtLoad).text },
          ]
    case 'gap':
      return [{ label: text.t('window.input.sleepers'), value: text.number(input.sleepers.length, 0) }]
    case 'preWarm':
    case 'sensitivity':
      return []
  }
}
