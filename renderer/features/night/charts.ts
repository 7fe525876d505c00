/** The four charts of a night as data: which columns, how they look, what they are called. */
import type { Plan } from '../../../shared/plan/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { toFahrenheit } from '../../../shared/units/index.ts'
import type { ChartLine } from '../../ui/chart-geometry.ts'

type NightPlan = Plan['nights'][number]
type Series = NightPlan['outcome']['series']
type Column = Exclude<keyof Series, 'atUtc'>

export type ChartName = 'temperature' | 'power' | 'charge' | 'moisture'

export type ChartPlan = {
  readonly name: ChartName
  readonly title: string
  readonly unit: string
  readonly lines: readonly ChartLine[]
  readonly leastSpan: number
  readonly range: { readonly low: number; readonly high: number } | null
  readonly zeroLine: number | null
}

/** Least span of each axis, so that a flat line is not drawn as a mountain. */
const LEAST_SPAN_C = 10
const LEAST_SPAN_KW = 1
const W_PER_KW = 1000

/** The temperature chart with the bed's air as it would be with a fault in the night. */
export function withFault(chart: ChartPlan, bedAirC: readonly number[], text: Text): ChartPlan {
  const values = text.temperature(0).unit.includes('F') ? bedAirC.map(toFahrenheit) : bedAirC
  return {
    ...chart,
    lines: [...chart.lines, { id: 'fault', label: text.t('window.line.fault'), values, look: 'accent' }],
  }
}

export function chartOf(name: ChartName, night: NightPlan, text: Text): ChartPlan {
  const { series } = night.outcome
  const fahrenheit = text.temperature(0).unit.includes('F')
  const warmth = (column: Column): readonly number[] => (fahrenheit ? series[column].map(toFahrenheit) : series[column])
  const line = (id: string, values: readonly number[], look: ChartLine['look']): ChartLine => ({
    id,
    label: text.t(LINE_NAMES[id] ?? 'window.line.bed'),
    values,
    look,
  })
  if (name === 'temperature') {
    return {
      name,
      title: text.t('window.chart.temperature'),
      unit: text.temperature(0).unit,
      lines: [
        line('outside', warmth('outsideC'), 'fine'),
        line('front', warmth('frontAirC'), 'dotted'),
        line('bed', warmth('bedAirC'), 'strong'),
        line('feet', warmth('feetC'), 'dashed'),
      ],
      leastSpan: LEAST_SPAN_C,
      range: null,
      zeroLine: fahrenheit ? toFahrenheit(0) : 0,
    }
  }
  if (name === 'power') {
    const kw = (column: Column): readonly number[] => series[column].map((value) => value / W_PER_KW)
    const supply = night.input.supply === null ? [] : [line('supply', kw('supplyW'), 'plain')]
    return {
      name,
      title: text.t('window.chart.power'),
      unit: 'kW',
      lines: [...supply, line('heat', kw('heatW'), 'strong'), line('heatElectric', kw('heatingElectricW'), 'dashed')],
      leastSpan: LEAST_SPAN_KW,
      range: null,
      zeroLine: 0,
    }
  }
  if (name === 'charge') {
    const percent = (column: Column): readonly number[] => series[column].map((value) => value * 100)
    const lines = [
      ...(night.input.battery === null ? [] : [line('charge', percent('charge01'), 'strong')]),
      ...(night.input.leisure === null ? [] : [line('leisure', percent('leisure01'), 'dashed')]),
    ]
    return {
      name,
      title: text.t('window.chart.charge'),
      unit: '%',
      lines,
      leastSpan: 10,
      range: { low: 0, high: 100 },
      zeroLine: null,
    }
  }
  return {
    name,
    title: text.t('window.chart.moisture'),
    unit: text.temperature(0).unit,
    lines: [
      line('bed', warmth('bedAirC'), 'fine'),
      line('glass', warmth('glassC'), 'dashed'),
      line('dew', warmth('dewPointC'), 'strong'),
    ],
    leastSpan: LEAST_SPAN_C,
    range: null,
    zeroLine: fahrenheit ? toFahrenheit(0) : 0,
  }
}

const LINE_NAMES: Readonly<
  Record<
    string,
    | 'window.line.bed'
    | 'window.line.outside'
    | 'window.line.front'
    | 'window.line.feet'
    | 'window.line.supply'
    | 'window.line.heat'
    | 'window.line.heatElectric'
    | 'window.line.charge'
    | 'window.line.leisure'
    | 'window.line.glass'
    | 'window.line.dew'
  >
> = {
  bed: 'window.line.bed',
  outside: 'window.line.outside',
  front: 'window.line.front',
  feet: 'window.line.feet',
  supply: 'window.line.supply',
  heat: 'window.line.heat',
  heatElectric: 'window.line.heatElectric',
  charge: 'window.line.charge',
  leisure: 'window.line.leisure',
  glass: 'window.line.glass',
  dew: 'window.line.dew',
}

/** A tick of a chart's axis as a person says it: the axis is already in the shown unit. */
export const sayTick = (chart: ChartPlan, value: number, text: Text): string =>
  text.number(value, chart.name === 'power' && Math.abs(value % 1) > 1e-9 ? 1 : 0)
