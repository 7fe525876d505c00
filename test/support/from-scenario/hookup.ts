/** The hookup of a scenario's night: connector, limits, readings, price, and the pieces it needs. */
import type { Connector, Hookup } from '../../../shared/document/index.ts'
import type { Scenario, ScenarioNight } from './scenario.ts'
import { clockOf, given, idOf, leftoversOf } from './words.ts'

const CONNECTORS: readonly (readonly [RegExp, Connector])[] = [
  [/tt-?30/, 'nema-tt-30'],
  [/14-?50/, 'nema-14-50'],
  [/14-?30/, 'nema-14-30'],
  [/6-?50/, 'nema-6-50'],
  [/10-?30/, 'nema-10-30'],
  [/6-?20/, 'nema-6-20'],
  [/5-?20/, 'nema-5-20'],
  [/5-?15|north american domestic/, 'nema-5-15'],
  [/type ?1\b.*j1772|j1772/, 'iec-62196-type-1'],
  [/type ?2\b|62196/, 'iec-62196-type-2'],
  [/(60309|cee|round pin).*32 ?a.*(red|5.?pin)|(red|5.?pin).*32 ?a/, 'iec-60309-32-red'],
  [/(60309|cee|round pin).*16 ?a.*(red|5.?pin)|(red|5.?pin).*16 ?a/, 'iec-60309-16-red'],
  [/(60309|cee|round pin|blue).*32 ?a/, 'iec-60309-32-blue'],
  [/60309|cee 16|cee 17|round pin|blue/, 'iec-60309-16-blue'],
  [/type g|bs ?1363|three.?pin.*13|13 ?a.*three.?pin|uk domestic/, 'bs-1363'],
  [/type i|3112/, 'as-nzs-3112'],
  [/type e\b|7\/5|pin earth/, 'cee-7-5-french'],
  [/type f|schuko|7\/3|side earth|two-pin/, 'cee-7-3-schuko'],
]

export function connectorOf(text: string): Connector {
  const words = text.toLowerCase()
  return CONNECTORS.find(([pattern]) => pattern.test(words))?.[1] ?? 'other'
}

/** The site's price and current, out of its rule in words. */
export function chargingRuleOf(text: string): {
  readonly allowed: 'yes' | 'no' | 'not-known'
  readonly limitA: number | undefined
  readonly tariff: Hookup['tariff']
  readonly currency: string | undefined
} {
  const words = text.toLowerCase()
  const limit =
    /(\d+(?:\.\d+)?) ?a\b[^.;,]*(?:max|limit)|(?:max\w*|limit\w*|at most|up to)[^.;,\d]*(\d+(?:\.\d+)?) ?a\b/.exec(
      words,
    )
  const price = /(\d+(?:\.\d+)?) ?(eur|usd|gbp|cad|chf|nok|sek|dkk|aud|nzd)|(?:([€$£]) ?(\d+(?:\.\d+)?))/.exec(words)
  const amount = price === null ? undefined : Number(price[1] ?? price[4])
  const symbol = { '€': 'EUR', $: 'USD', '£': 'GBP' }
  const mark = price?.[3]
  const currency =
    price?.[2]?.toUpperCase() ??
    (mark === '€' ? symbol['€'] : mark === '$' ? symbol.$ : mark === '£' ? symbol['£'] : undefined)
  const allowed = text === '' ? 'not-known' : /^(no\b|not |forbidden|prohibited)|not allowed/.test(words) ? 'no' : 'yes'
  const tariff: Hookup['tariff'] =
    amount !== undefined
      ? /kwh|metered/.test(words)
        ? { kind: 'per-kwh', price: amount }
        : { kind: 'per-night', price: amount }
      : /included|free/.test(words)
        ? { kind: 'included' }
        : { kind: 'not-known' }
  return { allowed, limitA: limit === null ? undefined : Number(limit[1] ?? limit[2]), tariff, currency }
}

const known = (value: boolean | null | undefined): 'yes' | 'no' | 'not-known' =>
  value === true ? 'yes' : value === false ? 'no' : 'not-known'

/** `item A18 if parked nose-in` names the piece A18. */
function pieceOf(text: string | null | undefined, scenario: Scenario): string | undefined {
  const ids = (text ?? '').match(/[A-Za-z0-9_-]+/g) ?? []
  const id = ids.find((word) => scenario.items.some((item) => item.id === word))
  return id === undefined ? undefined : idOf(id)
}

const KNOWN = [
  'connector',
  'nominal_v',
  'breaker_a',
  'site_limit_a',
  'lead_limit_a',
  'adapter_limit_a',
  'charging_unit_limit_a',
  'held_current_a',
  'no_load_v',
  'test_v',
  'test_a',
  'earth_ok',
  'polarity_reversed',
  'plug_in',
  'unplug',
  'other_load_w',
  'event',
]

export function hookupOf(
  night: ScenarioNight,
  scenario: Scenario,
  rule: string,
  arrive: string,
  leave: string,
): Hookup | undefined {
  const hookup = night.hookup
  if (hookup === null || hookup === undefined) return undefined
  const charging = chargingRuleOf(rule)
  const nominalV = hookup.nominal_v ?? 230
  const siteLimits = [hookup.site_limit_a, charging.limitA].filter((one): one is number => typeof one === 'number')
  const readings = [
    ...(hookup.no_load_v ? [{ currentA: 0, volts: hookup.no_load_v }] : []),
    ...(hookup.test_v && hookup.test_a ? [{ currentA: hookup.test_a, volts: hookup.test_v }] : []),
  ]
  const words = [
    hookup.event ?? '',
    // A condition such as "if parked nose-in" has no field: the sentence is kept.
    leftoversOf(hookup, KNOWN),
  ].filter((one) => one !== '')
  return {
    connector: connectorOf(hookup.connector ?? ''),
    ...given('connectorNote', hookup.connector),
    nominalV,
    breakerA: hookup.breaker_a ?? 16,
    ...given('siteLimitA', siteLimits.length > 0 ? Math.min(...siteLimits) : undefined),
    ...given('leadLimitA', hookup.lead_limit_a),
    ...given('adapterLimitA', hookup.adapter_limit_a),
    ...given('chargingUnitLimitA', hookup.charging_unit_limit_a),
    ...given('heldA', hookup.held_current_a),
    readings,
    earthOk: known(hookup.earth_ok),
    polarityReversed: known(hookup.polarity_reversed),
    resetReachable: 'not-known',
    plugIn: clockOf(hookup.plug_in) ?? arrive,
    unplug: clockOf(hookup.unplug) ?? leave,
    ...given('adapterPieceId', pieceOf(hookup.adapter_needed, scenario)),
    ...given('extensionPieceId', pieceOf(hookup.extension_needed, scenario)),
    otherLoadW: hookup.other_load_w ?? 0,
    tariff: charging.tariff,
    ...given('event', words.length > 0 ? words.join('. ') : undefined),
  }
}
