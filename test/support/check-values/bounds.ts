/** What a row's input may be at all, by its name: a value outside is refused by name, before anything is reckoned from it. */

type Range = {
  readonly least: number
  readonly most: number
  /** Whether the least itself is out: a volume of nothing, an efficiency of nothing. */
  readonly open?: boolean
}

const AT_LEAST_ZERO: Range = { least: 0, most: Infinity }
const OVER_ZERO: Range = { least: 0, most: Infinity, open: true }
const SHARE: Range = { least: 0, most: 1 }
const EFFICIENCY: Range = { least: 0, most: 1, open: true }
const PERCENT: Range = { least: 0, most: 100 }
/** Beyond a day nothing here is a night; it also bounds the work. */
const MINUTES_OF_A_DAY: Range = { least: 0, most: 1440 }

/** From absolute zero, °C, to hotter than anything a night meets. */
const CELSIUS: Range = { least: -273.15, most: 1000, open: true }
const FAHRENHEIT: Range = { least: -459.67, most: 1832, open: true }

const NAMES: readonly (readonly [Range, string])[] = [
  [
    AT_LEAST_ZERO,
    'clo tog Icl_clo quilt_cm v_ms vr_ms var_ms v_ankle_ms walk_ms v10_kmh speed_kmh wme persons g_per_h_each ' +
      'release_g_h hours G_L_s A_eff_m2 opening_height_m ach n0 Ag Ab Ub c_out_ppm c0_ppm thickness_m R_shell ' +
      'R_cover_m2K_W air_flow_kg_min I_dir_Wm2 amps loop_ohm contact_milliohm sites_20A sites_30A sites_50A VA_20A ' +
      'VA_30A VA_50A one_way_ft ohm_km_20C supply_A supply_W heater_W overhead_W charger_overhead_W ' +
      'min_pilot_A cabinet_kW wanted_kW mi_h_off mi_h_on v_kmh CdA_m2 crr aux_W climb_m descent_m leg_miles ' +
      'daily_range_K R_total_m2K_W pad_R_us w_kgkg m2K_W',
  ],
  [
    OVER_ZERO,
    'P_kPa T_K RQ bmr_MJ_day BMR_MJ_day mean_kg max_delta_ppm outdoor_air_m3_h volume_m3 V h_ext h_int ' +
      'lambda_W_mK UA_W_K C_kJ_K C h_stop length_m width_m rho cp U_glass cabin_area_m2 sigma volts v_open breaker_A ' +
      'evse_max_A mm2 dc_kW power_kW ac_kW kWh_mi mass_kg stop_distance_m range_full_miles udds_kWh_mi hwy_kWh_mi ' +
      'battery_kWh cop M_Wm2 air_permeability_lm2s kg m gamma b',
  ],
  [SHARE, 'rh rh_out tau f_svv f_bes asw recirculated_fraction arrive_soc start_soc regen_eff reserve_fraction'],
  [SHARE, 'dry_fraction'],
  [EFFICIENCY, 'efficiency eff charge_eff eta drivetrain_eff'],
  [PERCENT, 'rh_pct duty_pct Tu_pct'],
  [MINUTES_OF_A_DAY, 'minute minutes minutes_asleep'],
  // The film's parabola turns at 46 m/s and falls below that of still air near 93.
  [{ least: 0, most: 90 }, 'wind_ms'],
  [{ least: 0, most: 24 }, 'hour sunrise sunset'],
  [{ least: 0, most: 10 }, 'opaque_tenths'],
  [{ least: 0, most: 90 }, 'sol_altitude_deg'],
  [{ least: 0, most: 180 }, 'sharp_deg'],
  [{ least: -90, most: 90 }, 'lat'],
  [{ least: -180, most: 180 }, 'lon'],
  [{ least: 1, most: Infinity }, 'sites'],
  [{ least: -1, most: 1 }, 'grade'],
  [{ least: 0, most: 25, open: true }, 'met'],
  [{ least: -100, most: 100 }, 'vertical_K_per_m'],
  // From a thirtieth of the least that a balloon meets to ten atmospheres.
  [{ least: 1000, most: 1_000_000 }, 'p_Pa'],
  [{ least: -5000, most: 11_000 }, 'alt_m'],
  [FAHRENHEIT, 't_F t_amb_F'],
  [
    CELSIUS,
    't_C t2_C ta_C tr_C tdb_C twb_C t_dew_C t_operative_C t_floor_C t_skin_C t_in_C t_out_C t0_C t_amb_C t_cond_air_C ' +
      't_in_set_C t_out_by_hour setpoint_C Tmax Tmin label_comfort_C',
  ],
]

const RANGES: Readonly<Record<string, Range>> = Object.fromEntries(
  NAMES.flatMap(([range, names]) => names.split(' ').map((name) => [name, range] as const)),
)

/** Why a number cannot be this input, in words that name it; null where it can. */
export function refusalOf(name: string, value: number): string | null {
  if (!Number.isFinite(value)) return `${name} is no finite number`
  const range = RANGES[name]
  if (range === undefined) return null
  const { least, most, open } = range
  if (value < least || (open === true && value === least))
    return `${name} is ${value}, and has to be ${open === true ? 'over' : 'at least'} ${least}`
  return value > most ? `${name} is ${value}, and has to be at most ${most}` : null
}
