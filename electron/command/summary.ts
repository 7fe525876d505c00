/** How the trip stands, on a screenful: verdict, load, nights, next leg, checklist, what falls short and what would help. */
import type { Plan, PlannedTrip, Trip } from '../../shared/host/index.ts'
import { stepItem } from '../../shared/cards/step-words.ts'
import { askedA, sayCost, sayRemedy, sayVerdict } from '../../shared/cards/index.ts'
import type { Text } from '../../shared/text/index.ts'

type Finding = Plan['findings'][number]

/** Remedies listed, best first. */
const MOST_REMEDIES = 8

/** Holds or not, and the numbers that say why. */
export function verdictLine({ trip, plan }: PlannedTrip, text: Text): string {
  return sayVerdict(plan.verdict, trip.nights[0]?.site.zone ?? 'UTC', text)
}

export function summary(planned: PlannedTrip, text: Text): string {
  const { trip, plan } = planned
  const sections = [
    section(trip.title, [verdictLine(planned, text)]),
    section(text.t('command.load'), loadLines(plan, trip, text)),
    section(
      text.t('command.night'),
      trip.nights.flatMap((_, index) => nightLines(plan, trip, index, text)),
    ),
    section(
      text.t('command.leg'),
      plan.nights.flatMap((night, index) => legLines(night, trip.nights[index]?.site.name ?? '', text)),
    ),
    section(text.t('command.checklist'), stepLines(plan, text)),
    section(text.t('command.shortfalls'), findingLines(plan, trip, 'shortfall', text)),
    section(text.t('command.remedies'), remedyLines(plan, trip, text)),
    section(text.t('command.cautions'), findingLines(plan, trip, 'caution', text)),
  ]
  return sections.filter((each) => each !== '').join('\n\n')
}

const section = (title: string, lines: readonly string[]): string =>
  lines.length === 0 ? '' : [title, ...lines.map((line) => `  ${line}`)].join('\n')

function loadLines({ packing }: Plan, trip: Trip, text: Text): readonly string[] {
  const { loadG, payloadG } = packing.mass
  const bays = new Set(packing.drive.placements.map((placement) => placement.bayId))
  const left = new Set(
    [...packing.driveUnplaced, ...packing.nights.flatMap((night) => night.unplaced)].map((one) => one.unitId),
  )
  const sites = new Map(trip.nights.map((night) => [night.id, night.site.name]))
  return [
    text.t('command.loadLine', { loadG, payloadG, count: bays.size }),
    ...(left.size === 0 ? [] : [text.t('command.unplaced', { count: left.size })]),
    ...packing.nights.flatMap(({ nightId, changeover }) =>
      changeover.moves.length === 0
        ? []
        : [text.t('command.bedMoves', { count: changeover.moves.length, site: sites.get(nightId) ?? nightId })],
    ),
  ]
}

function nightLines(plan: Plan, trip: Trip, index: number, text: Text): readonly string[] {
  const night = trip.nights[index]
  const planned = plan.nights[index]
  if (night === undefined || planned === undefined) return []
  const { outcome, clock } = planned
  const head = text.t('command.nightLine', {
    site: night.site.name,
    date: text.date(night.date),
    coldestC: outcome.coldestBedC,
    coldestUtc: outcome.coldestBedUtc,
    outsideC: outcome.coldestOutsideC,
    outsideUtc: outcome.coldestOutsideUtc,
    zone: clock.zone,
  })
  const sleepers = outcome.sleepers.map(({ sleeperId, verdict, marginK }) => {
    const traveller = trip.travellers.find(({ id }) => id === sleeperId)?.label ?? sleeperId
    const word = text.t(`command.sleeper.${verdict}`)
    return marginK >= 0
      ? text.t('command.sleeper', { traveller, verdict: word, marginK })
      : text.t('command.sleeperShort', { traveller, verdict: word, shortK: -marginK })
  })
  return [head, ...[...sleepers, ...energyLines(planned, text)].map((line) => `  ${line}`)]
}

function energyLines(night: Plan['nights'][number], text: Text): readonly string[] {
  const { outcome } = night
  const askA = askedA(night)
  const { supply, fromSiteWh, heatingWh, arrive01, depart01 } = outcome
  const fed =
    supply === null
      ? text.t('command.noSupply', { heatingWh })
      : askA === 0
        ? text.t('command.drawNothing', { heatingWh })
        : text.t('command.supplyLine', {
            askA,
            limit: text.t(`command.limit.${supply.limitedBy}`),
            fromSiteWh,
            heatingWh,
          })
  return arrive01 === null || depart01 === null ? [fed] : [fed, text.t('command.batteryLine', { arrive01, depart01 })]
}

function legLines({ outcome }: Plan['nights'][number], site: string, text: Text): readonly string[] {
  const { leg } = outcome
  if (leg === null) return []
  const { needWh, reserveWh, marginWh } = leg
  const line =
    marginWh >= 0
      ? text.t('command.legLine', { needWh, reserveWh, marginWh })
      : text.t('command.legShort', { needWh, reserveWh, shortWh: -marginWh })
  return [
    text.t('command.legSite', { site, line }),
    ...leg.stops.map(({ atM, energyWh, durationS }) => `  ${text.t('command.legStop', { atM, energyWh, durationS })}`),
  ]
}

function stepLines(plan: Plan, text: Text): readonly string[] {
  const { steps } = plan.checklist
  const [first] = steps
  if (first === undefined) return []
  const item = stepItem(first, plan, text)
  return [text.t('command.steps', { count: steps.length, first: [item.time ?? '', item.text].join(' ').trim() })]
}

/** Each sentence once, with the nights it holds for where there are several. */
function findingLines(plan: Plan, trip: Trip, severity: Finding['severity'], text: Text): readonly string[] {
  const sites = new Map(trip.nights.map((night) => [night.id, night.site.name]))
  const nightsOf = new Map<string, Set<string>>()
  for (const { problem, nightId } of plan.findings.filter((finding) => finding.severity === severity)) {
    const sentence = text.problem(problem)
    const nights = nightsOf.get(sentence) ?? new Set()
    if (nightId !== null) nights.add(sites.get(nightId) ?? nightId)
    nightsOf.set(sentence, nights)
  }
  const several = trip.nights.length > 1
  return [...nightsOf].map(([sentence, nights]) =>
    several && nights.size > 0 ? `– ${sentence} [${text.list([...nights])}]` : `– ${sentence}`,
  )
}

function remedyLines({ remedies, verdict }: Plan, trip: Trip, text: Text): readonly string[] {
  if (verdict.holds) return []
  if (remedies.length === 0) return [text.t('command.noRemedy')]
  return remedies
    .slice(0, MOST_REMEDIES)
    .map((remedy, index) => `${index + 1}. ${sayRemedy(remedy.change, trip, text)} (${sayCost(remedy, trip, text)})`)
}
