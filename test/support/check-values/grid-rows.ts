/** Grids of library outputs (a header of column names, one point a line) as rows of the same areas, so that one command runs both. */
import type { Row, Value } from './rows.ts'

type Grid = {
  /** Columns that tell this grid from the others. */
  readonly has: readonly string[]
  readonly area: string
  /** Column to input name. */
  readonly inputs: Readonly<Record<string, string>>
  /** Column to quantity. */
  readonly expected: Readonly<Record<string, string>>
  readonly tolerance: Row['tolerance']
}

const COMFORT = { tdb: 'ta_C', tr: 'tr_C', v: 'v_ms', rh: 'rh_pct', met: 'met', clo: 'clo' } as const
const same = (...names: readonly string[]): Readonly<Record<string, string>> =>
  Object.fromEntries(names.map((name) => [name, name]))

const GRIDS: readonly Grid[] = [
  {
    has: ['pmv', 'ppd'],
    area: 'comfort.pmv',
    inputs: COMFORT,
    expected: same('pmv', 'ppd'),
    tolerance: { pmv: 0.02, ppd: 0.6 },
  },
  { has: ['tdb', 'set'], area: 'comfort.set', inputs: COMFORT, expected: { set: 'set_C' }, tolerance: { set_C: 0.2 } },
  {
    has: ['wetbulb_C'],
    area: 'air.psychro',
    inputs: { tdb_C: 't_C', rh: 'rh', p_Pa: 'p_Pa' },
    expected: {
      ...same('psat_Pa', 'w_kgkg', 'h_Jkg', 'v_m3kg', 'rho_kgm3'),
      dewpoint_C: 't_dew_C',
      wetbulb_C: 'twb_C',
    },
    tolerance: { t_dew_C: 0.05, twb_C: 0.05, w_rel: 0.002, rho_rel: 0.001, v_rel: 0.001, h: 1, psat: 0.01 },
  },
  {
    has: ['IREQmin_clo'],
    area: 'comfort.cold',
    inputs: {
      ...same('M_Wm2', 'ta_C', 'tr_C', 'v_ms', 'rh_pct', 'Icl_clo'),
      p_lm2s: 'air_permeability_lm2s',
      w_ms: 'walk_ms',
    },
    expected: same('IREQmin_clo', 'IREQneutral_clo', 'ICLmin_clo', 'ICLneutral_clo'),
    tolerance: { clo: 0.1 },
  },
  {
    has: ['quilt_cm'],
    area: 'comfort.sleep',
    inputs: { ...same('v_ms', 'rh_pct', 'clo', 'quilt_cm', 'minute'), tdb_C: 'ta_C', tr_C: 'tr_C' },
    expected: same('set_C', 't_core_C', 't_skin_C', 'wettedness', 't_sens'),
    tolerance: { abs: 0.01, rel: 0.005 },
  },
  {
    has: ['elev_true_deg'],
    area: 'sun',
    inputs: same('lat', 'lon', 'utc'),
    expected: { elev_true_deg: 'elevation_deg', azimuth_deg_from_N: 'azimuth_deg' },
    tolerance: { elev: 0.05, az: 0.1 },
  },
  {
    has: ['sunrise_utc_astronomy_engine'],
    area: 'sun',
    inputs: { lat: 'lat', lon: 'lon', date: 'local_date' },
    expected: { sunrise_utc_astronomy_engine: 'sunrise_utc', sunset_utc_astronomy_engine: 'sunset_utc' },
    tolerance: { seconds: 120 },
  },
]

const cellOf = (cell: string): Value => (cell === '' ? null : Number.isNaN(Number(cell)) ? cell : Number(cell))

/** The rows of a grid; null where the text is no grid of a kind that is known. `name` of the file tells the sleep model's variant. */
export function gridRows(text: string, name: string): readonly Row[] | null {
  const [header = '', ...lines] = text
    .replace(/^\uFEFF/, '')
    .trim()
    .split(/\r?\n/)
  const columns = header.split(',').map((column) => column.trim())
  const grid = GRIDS.find(({ has }) => has.every((column) => columns.includes(column)))
  if (grid === undefined) return null
  const minutes = grid.area === 'comfort.sleep' && name.includes('minutes')
  return lines.map((line, index) => {
    const cells = line.split(',')
    const taken = (names: Readonly<Record<string, string>>, make: (cell: string) => Value) =>
      Object.fromEntries(
        columns.flatMap((column, place) => {
          const known = names[column]
          return known === undefined ? [] : [[known, make(cells[place]?.trim() ?? '')] as const]
        }),
      )
    return {
      id: `line ${index + 2}`,
      area: grid.area,
      inputs: { ...taken(grid.inputs, cellOf), ...(minutes ? { polynomial_argument: 'minutes' } : {}) },
      expected: taken(grid.expected, cellOf),
      tolerance: grid.tolerance,
      source: name,
    }
  })
}
