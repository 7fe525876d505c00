/** Sections of the night card that the search and the hours give: the recommended plan, what to do about faults, glass and the open window. */
import type { Block } from './model.ts'
import {
  beddingName,
  recommended,
  sayAction,
  sayDeadline,
  sayReason,
  saySensitivity,
  saySleeper,
} from './night-words.ts'
import type { Spoken } from './night-words.ts'
import type { CardInput, OneNight } from './plan-parts.ts'

const spokenOf = ({ plan }: OneNight, { trip, text }: CardInput): Spoken => ({ trip, text, night: plan })

/** The plan to take over, in sentences; none before the search has run. */
export function adviceBlocks(one: OneNight, input: CardInput): readonly Block[] {
  const { search } = one.plan
  const { text } = input
  const point = recommended(one.plan)
  if (search === null || point === undefined) return []
  const spoken = spokenOf(one, input)
  const named = (search.reasons ?? []).some(({ code }) => code === 'bedding')
  const reasons = [
    ...(search.reason === undefined ? [] : [text.t(`night.reason.${search.reason}`)]),
    ...(search.reasons ?? []).map((reason) => sayReason(spoken, reason)),
    ...(named || point.decisions.beddingSetId === undefined
      ? []
      : [text.t('night.because.bedding', { name: beddingName(spoken, point.decisions.beddingSetId) })]),
  ]
  return [
    {
      kind: 'together',
      blocks: [
        { kind: 'heading', level: 2, text: text.t('night.card.recommended') },
        { kind: 'paragraph', tone: 'plain', text: reasons.join(' ') },
        ...saySensitivity(spoken).map((line) => ({ kind: 'paragraph', tone: 'small', text: line }) as const),
      ],
    },
  ]
}

/** What to do when something fails, and until when, one paragraph a fault. */
export function drillBlocks(one: OneNight, input: CardInput): readonly Block[] {
  const { text } = input
  const spoken = spokenOf(one, input)
  const { zone } = one.plan.clock
  return one.plan.faults.flatMap(({ fault, advice }): readonly Block[] => {
    if (advice === undefined) return []
    const title = text.t(`night.fault.${fault.kind}`, { time: text.clock(fault.atUtc, zone) })
    const does = [...advice.actions.map((action) => sayAction(spoken, action)), sayDeadline(spoken, advice)]
    return [{ kind: 'paragraph', tone: 'plain', text: `${title}: ${does.join(' ')}` }]
  })
}

/** How each person sleeps, said as one says it. */
export const sleeperSentences = (one: OneNight, input: CardInput): readonly Block[] =>
  one.plan.outcome.sleepers
    .filter(({ coldFromUtc, feetColdFromUtc }) => coldFromUtc !== null || feetColdFromUtc !== null)
    .map((sleeper) => ({ kind: 'paragraph', tone: 'plain', text: saySleeper(spokenOf(one, input), sleeper) }))

/** Dew and frost pane by pane, and what an open window costs; nothing where the glass stays dry and nothing is known of windows. */
export function glassBlocks(one: OneNight, { text }: CardInput): readonly Block[] {
  const { glass = [], windowCosts = [] } = one.plan.outcome
  const { zone } = one.plan.clock
  const wet = glass.filter(({ wetFromUtc, frostFromUtc }) => wetFromUtc !== null || frostFromUtc !== null)
  const panes = wet.map((pane) => {
    const parts = [
      ...(pane.wetFromUtc === null
        ? []
        : [text.t('night.pane.dew', { dewG: pane.mostCondensateG, time: text.clock(pane.wetFromUtc, zone) })]),
      ...(pane.frostFromUtc === null
        ? []
        : [text.t('night.pane.frost', { frostG: pane.mostFrostG, time: text.clock(pane.frostFromUtc, zone) })]),
    ]
    return `${text.t(`night.pane.${pane.id}`)} ${parts.join('; ')}`
  })
  const costs = windowCosts
    .filter(({ gapMm }) => CARD_GAPS_MM.has(gapMm))
    .map(({ gapMm, heatW, electricW }) => `${text.length(gapMm).text}: ${text.power(electricW ?? heatW).text}`)
  const lines = [
    ...(panes.length === 0 ? [] : [text.t('night.card.glass', { panes: panes.join(' \u00b7 ') })]),
    ...(costs.length === 0 ? [] : [text.t('night.card.window', { costs: costs.join(' \u00b7 ') })]),
  ]
  return lines.map((line) => ({ kind: 'paragraph', tone: 'plain', text: line }))
}

/** Gaps told on paper, mm. */
const CARD_GAPS_MM: ReadonlySet<number> = new Set([5, 10, 20])
