/** What the night search, the fault nights and the sleepers' hours say, in sentences; window and card share them. */
import type { Trip } from '../document/index.ts'
import type { FaultOutcome, NightPlan } from '../plan/index.ts'
import type { Text } from '../text/index.ts'

type Search = NonNullable<NightPlan['search']>
export type Reason = NonNullable<Search['reasons']>[number]
type Advice = NonNullable<FaultOutcome['advice']>
type Action = Advice['actions'][number]
type Sleeper = NightPlan['outcome']['sleepers'][number]

export type Spoken = { readonly trip: Trip; readonly text: Text; readonly night: NightPlan }

/** Names of what covers people in a bedding set: bags, quilts, blankets; mats where the set differs in them alone. */
export function beddingName({ trip, text, night }: Spoken, setId: string | undefined): string {
  const set = night.beddingSets.find(({ id }) => id === setId)
  const now = night.beddingSets[0]?.pieceIds ?? []
  const pieces = trip.kit.pieces.filter(
    ({ id, bedding }) =>
      set?.pieceIds?.includes(id) === true &&
      bedding !== undefined &&
      (['bag', 'quilt', 'blanket'].includes(bedding.kind) || (bedding.matM2KPerW !== undefined && !now.includes(id))),
  )
  return pieces.length === 0 ? text.t('night.bedding.none') : text.list(pieces.map(({ name }) => name))
}

/** One reason of the recommended plan. */
export function sayReason(spoken: Spoken, reason: Reason): string {
  const { text, trip, night } = spoken
  switch (reason.code) {
    case 'warm-in-hand':
    case 'too-cold-by':
      return text.t(`night.because.${reason.code}`, { margin: text.temperatureDifference(reason.valueK).text })
    case 'leg-in-hand':
    case 'leg-short-by':
      return text.t(`night.because.${reason.code}`, { energy: text.energy(reason.valueWh).text })
    case 'saves-money':
      return text.t('night.because.saves-money', { money: text.money(reason.value, trip.preferences.currency) })
    case 'saves-moves':
      return text.t('night.because.saves-moves', { count: reason.value })
    case 'bedding':
      return text.t('night.because.bedding', { name: beddingName(spoken, reason.setId) })
    case 'bed-heat-first':
      return text.t('night.because.bed-heat-first', { power: text.power(reason.valueW).text })
    case 'lower-asleep':
      return text.t('night.because.lower-asleep', { temperature: text.temperature(reason.valueC).text })
    case 'pre-warm': {
      const time = text.clock(reason.fromUtc, night.clock.zone)
      return text.t(reason.onSite ? 'night.because.pre-warm-on-site' : 'night.because.pre-warm', { time })
    }
    case 'less-current':
      return text.t('night.because.less-current', { current: text.current(reason.valueA).text })
    case 'charge-enough':
      return text.t('night.because.charge-enough', { charge: text.percent(reason.value01).text })
    case 'window-open':
      return text.t('night.because.window-open', {
        gap: text.length(recommended(night)?.decisions.windowGapMm ?? 0).text,
      })
    case 'stop-to-charge':
    case 'covers-up':
      return text.t(`night.because.${reason.code}`)
  }
}

export const recommended = ({ search }: NightPlan): Search['front'][number] | undefined =>
  search?.front[search.recommendedIndex]

/** What becomes of the recommended plan on a night 5 K colder, and with a leg that takes a tenth more. */
export function saySensitivity({ text, night }: Spoken): readonly string[] {
  const { sensitivity } = night.search ?? {}
  if (sensitivity === undefined) return []
  const { colder, thirstier } = sensitivity
  const short = colder.comfortMarginK < 0
  const cold = text.t(short ? 'night.sensitivity.colderShort' : 'night.sensitivity.colderHolds', {
    marginK: Math.abs(colder.comfortMarginK),
  })
  const charge =
    colder.depart01 === null ? '' : ` ${text.t('night.sensitivity.colderCharge', { share01: colder.depart01 })}`
  if (thirstier.legMarginWh === null) return [cold + charge]
  const leg = text.t(
    thirstier.legMarginWh < 0 ? 'night.sensitivity.thirstierShort' : 'night.sensitivity.thirstierHolds',
    { energyWh: Math.abs(thirstier.legMarginWh) },
  )
  return [cold + charge, leg]
}

/** One thing to do when something fails. */
export function sayAction(spoken: Spoken, action: Action): string {
  const { text } = spoken
  switch (action.code) {
    case 'lower-heating':
      return text.t('night.action.lower-heating', { temperature: text.temperature(action.tempC).text })
    case 'warmer-bedding':
      return text.t('night.action.warmer-bedding', { name: beddingName(spoken, action.setId) })
    case 'reset-lower':
      return action.heldA === null
        ? text.t('night.action.reset-lower-unknown')
        : text.t('night.action.reset-lower', { current: text.current(action.heldA).text })
    case 'heating-off':
    case 'bed-heaters-on':
    case 'covers-up':
    case 'move-indoors':
      return text.t(`night.action.${action.code}`)
  }
}

/** Until when the actions help, and whether they are enough; empty where nothing need be done. */
export function sayDeadline({ text, night }: Spoken, advice: Advice): string {
  const { zone } = night.clock
  if (advice.actions.length === 0) return text.t('night.action.none')
  const parts = [
    ...(advice.byUtc === null ? [] : [text.t('night.action.by', { time: text.clock(advice.byUtc, zone) })]),
    ...(advice.byColdUtc === null || advice.byColdUtc === advice.byUtc
      ? []
      : [text.t('night.action.byCold', { time: text.clock(advice.byColdUtc, zone) })]),
    text.t(advice.holds ? 'night.action.holds' : 'night.action.doesNotHold'),
  ]
  return parts.join(' ')
}

/** How one person sleeps, and from when their feet are cold. */
export function saySleeper({ text, trip, night }: Spoken, sleeper: Sleeper): string {
  const { zone } = night.clock
  const name = trip.travellers.find(({ id }) => id === sleeper.sleeperId)?.label ?? sleeper.sleeperId
  const margin = text.temperatureDifference(Math.abs(sleeper.marginK)).text
  const time = sleeper.coldFromUtc === null ? '' : text.clock(sleeper.coldFromUtc, zone)
  const body = text.t(`night.sleeper.${sleeper.verdict}`, { name, margin, time })
  if (sleeper.feetColdFromUtc === null) return body
  const feet = text.t('night.feetColdFrom', { time: text.clock(sleeper.feetColdFromUtc, zone) })
  return `${body} ${feet}`
}
