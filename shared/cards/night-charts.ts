/** The two charts of the night card. */
import { toFahrenheit } from '../units/index.ts'
import { chartDrawing } from './chart-drawing.ts'
import type { ChartLine } from './chart-drawing.ts'
import { textWidthMm } from './model.ts'
import type { Block } from './model.ts'
import type { CardInput, OneNight } from './plan-parts.ts'

export function nightCharts(one: OneNight, input: CardInput): readonly Block[] {
  const { text, paper } = input
  const { series } = one.plan.outcome
  if (series.atUtc.length < 2) return []
  const degrees = (values: readonly number[]): readonly number[] =>
    text.units === 'us' ? values.map(toFahrenheit) : values
  const common = { atUtc: series.atUtc, zone: one.plan.clock.zone, text, widthMm: textWidthMm(paper) }
  const temperatures = chartDrawing({
    ...common,
    title: text.t('cards.chart.temperature', { unit: text.units === 'us' ? '\u00b0F' : '\u00b0C' }),
    lines: [
      { name: text.t('cards.chart.bed'), values: degrees(series.operativeC), weightMm: 0.7 },
      { name: text.t('cards.chart.feet'), values: degrees(series.feetC), weightMm: 0.35, dashMm: [1.6, 0.8] },
      { name: text.t('cards.chart.outside'), values: degrees(series.outsideC), weightMm: 0.35 },
      { name: text.t('cards.chart.dew'), values: degrees(series.dewPointC), weightMm: 0.3, dashMm: [0.4, 0.9] },
    ],
    moments: momentsOf(one, input),
    say: (value) => text.number(value, 0),
    steps: [1, 2, 5, 10, 20],
    leastSpan: 8,
    heightMm: 60,
  })
  const charge = chargeLines(one, input)
  const drawings =
    charge.length === 0
      ? []
      : [
          chartDrawing({
            ...common,
            title: text.t('cards.chart.charge'),
            lines: charge,
            moments: [],
            say: (value) => text.number(value, 0),
            steps: [5, 10, 20, 25],
            leastSpan: 20,
            floor: 0,
            ceiling: 100,
            heightMm: 34,
          }),
        ]
  const power = powerLines(one, input)
  return [temperatures, ...drawings, ...powerChart(power, common, input)]
}

type Common = Pick<Parameters<typeof chartDrawing>[0], 'atUtc' | 'zone' | 'text' | 'widthMm'>

const powerChart = (lines: readonly ChartLine[], common: Common, { text }: CardInput) =>
  lines.length === 0
    ? []
    : [
        chartDrawing({
          ...common,
          title: text.t('cards.chart.power'),
          lines,
          moments: [],
          say: (value) => text.number(value, 1),
          steps: [0.2, 0.5, 1, 2, 5, 10],
          leastSpan: 1,
          floor: 0,
          heightMm: 32,
        }),
      ]

const percent = (values: readonly number[]): readonly number[] => values.map((value) => value * 100)
const kilowatts = (values: readonly number[]): readonly number[] => values.map((value) => value / 1000)

function chargeLines(one: OneNight, { text }: CardInput): readonly ChartLine[] {
  const { series, depart01, leisureDepart01 } = one.plan.outcome
  const lines: ChartLine[] = []
  if (depart01 !== null)
    lines.push({ name: text.t('cards.chart.battery'), values: percent(series.charge01), weightMm: 0.7 })
  if (leisureDepart01 !== null) {
    lines.push({
      name: text.t('cards.chart.leisure'),
      values: percent(series.leisure01),
      weightMm: 0.35,
      dashMm: [1.6, 0.8],
    })
  }
  return lines
}

function powerLines(one: OneNight, { text }: CardInput): readonly ChartLine[] {
  const { series } = one.plan.outcome
  const lines: readonly ChartLine[] = [
    { name: text.t('cards.chart.supply'), values: kilowatts(series.supplyW), weightMm: 0.6 },
    {
      name: text.t('cards.chart.heating'),
      values: kilowatts(series.heatingElectricW),
      weightMm: 0.35,
      dashMm: [1.6, 0.8],
    },
  ]
  return lines.filter((line) => line.values.some((value) => value > 0.01))
}

function momentsOf({ plan }: OneNight, { text }: CardInput) {
  const { clock } = plan
  return (
    [
      ['sunset', clock.sun.sunsetUtc],
      ['bedtime', clock.bedtimeUtc],
      ['wake', clock.wakeUtc],
      ['dawn', clock.sun.civilDawnUtc],
      ['depart', clock.departUtc],
    ] as const
  ).flatMap(([key, atUtc]) => (atUtc === null ? [] : [{ name: text.t(`cards.time.${key}`), atUtc }]))
}
