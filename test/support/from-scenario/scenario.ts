/** The test format `field-scenario/1`, read loosely: unknown keys are kept, so that nothing is lost. */
import { z } from 'zod'

const size = z.tuple([z.number(), z.number(), z.number()])
const textList = z.union([z.array(z.string()), z.string().transform((one) => [one])])
const span = z.string().nullish()

export const compartmentSchema = z.looseObject({
  id: z.string(),
  name: z.string().optional(),
  origin_mm: size,
  size_mm: size,
  available: textList.optional(),
  max_load_kg: z.number().nullish(),
  opening_mm: z.array(z.number()).nullish(),
  doors: textList.nullish(),
  environment: z.string().nullish(),
  restraint: z.string().nullish(),
  cutouts_mm: z.unknown().optional(),
  reach_from_bed: z.boolean().nullish(),
  reach_from_driver_seat: z.boolean().nullish(),
  follows_outdoor_temp: z.boolean().nullish(),
  outside_the_sleeping_space: z.boolean().nullish(),
  soft_only: z.boolean().nullish(),
  max_item_kg: z.number().nullish(),
  last_resort: z.boolean().nullish(),
  not_lockable: z.boolean().nullish(),
  sleep_access: z.string().nullish(),
  note: z.string().nullish(),
})

export const itemSchema = z.looseObject({
  id: z.string(),
  name: z.string(),
  size_mm: size,
  mass_kg: z.number(),
  kind: z.string().optional(),
  squeezes_to_fraction: z.number().nullish(),
  keep_upright: z.boolean().nullish(),
  liquid_l: z.number().nullish(),
  freeze_below_c: z.number().nullish(),
  spoils_above_c: z.number().nullish(),
  food: z.boolean().nullish(),
  scented: z.boolean().nullish(),
  fuel: z.boolean().nullish(),
  lithium_wh: z.number().nullish(),
  valuable: z.boolean().nullish(),
  wet_after_use: z.boolean().nullish(),
  nothing_on_top: z.boolean().nullish(),
  reach_drive: z.string().nullish(),
  reach_night: z.boolean().nullish(),
  night_state: z.string().nullish(),
  night_state_by_night: z.unknown().optional(),
  used_in: textList.nullish(),
  must_carry: z.boolean().nullish(),
  bin_group: z.string().nullish(),
})

const hookupSchema = z.looseObject({
  connector: z.string().nullish(),
  nominal_v: z.number().nullish(),
  breaker_a: z.number().nullish(),
  site_limit_a: z.number().nullish(),
  lead_limit_a: z.number().nullish(),
  adapter_limit_a: z.number().nullish(),
  charging_unit_limit_a: z.number().nullish(),
  held_current_a: z.number().nullish(),
  no_load_v: z.number().nullish(),
  test_v: z.number().nullish(),
  test_a: z.number().nullish(),
  earth_ok: z.boolean().nullish(),
  polarity_reversed: z.boolean().nullish(),
  plug_in: span,
  unplug: span,
  event: z.string().nullish(),
  adapter_needed: z.string().nullish(),
  extension_needed: z.string().nullish(),
  other_load_w: z.number().nullish(),
})

export const scenarioNightSchema = z.looseObject({
  date: z.string(),
  site: z.string(),
  lat: z.number(),
  lon: z.number(),
  utc_offset_h: z.number(),
  elevation_m: z.number().nullish(),
  check_in: span,
  check_out_by: span,
  quiet: span,
  vehicle_movement_banned: span,
  gate_closed: span,
  rules: z.looseObject({}).optional(),
  pitch: z
    .looseObject({
      surface: z.string().nullish(),
      slope_percent: z.number().nullish(),
      slope_down_towards: z.string().nullish(),
      post_side: z.string().nullish(),
      cable_run_m: z.number().nullish(),
      to_toilets_m: z.number().nullish(),
    })
    .optional(),
  weather: z.looseObject({
    high_c: z.number().nullish(),
    low_c: z.number().nullish(),
    wind_m_s: z.number().nullish(),
    relative_humidity_percent: z.number().nullish(),
    snow_overnight_mm_water: z.number().nullish(),
    hours: z.array(z.looseObject({ hour: z.string(), temp_c: z.number() })).nullish(),
  }),
  hookup: hookupSchema.nullish(),
  climate_target_c: z.number().nullish(),
  sleep: z.tuple([z.string(), z.string()]).nullish(),
  target: z
    .looseObject({
      name: z.string().nullish(),
      be_there_min_before_sunrise: z.number().nullish(),
      drive_km: z.number().nullish(),
      drive_min: z.number().nullish(),
      walk_min: z.number().nullish(),
    })
    .nullish(),
  sun: z.looseObject({ sunset: z.string().nullish(), next_sunrise: z.string().nullish() }).nullish(),
})

export const scenarioSchema = z.looseObject({
  schema: z.literal('field-scenario/1'),
  id: z.string().optional(),
  title: z.string(),
  note: z.string().nullish(),
  party: z.looseObject({
    sleepers: z.int().min(1).max(8),
    tallest_sleeper_mm: z.number().nullish(),
    heaviest_kg: z.number(),
    second_adult_kg: z.number().nullish(),
    sleeps_cold: z.boolean().nullish(),
    purpose: z.string().nullish(),
  }),
  vehicle: z.looseObject({
    class: z.string(),
    mass: z.looseObject({
      max_permitted_kg: z.number(),
      ready_to_drive_kg: z.number(),
      ready_includes: z.string().nullish(),
      front_axle_max_kg: z.number().nullish(),
      rear_axle_max_kg: z.number().nullish(),
      front_axle_ready_kg: z.number().nullish(),
      rear_axle_ready_kg: z.number().nullish(),
      rear_axle_x_mm: z.number().nullish(),
      wheelbase_mm: z.number().nullish(),
      roof_max_kg: z.number().nullish(),
      roof_fitted: z.boolean().nullish(),
      roof_box_and_bars_kg: z.number().nullish(),
    }),
    battery: z.looseObject({}).nullish(),
    charging: z.looseObject({}).nullish(),
    thermal: z.looseObject({
      ua_bare_glass_w_per_k: z.number().nullish(),
      ua_with_window_covers_w_per_k: z.number().nullish(),
      wind_factor_per_m_s: z.number().nullish(),
      fresh_air_m3_per_h: z.number().nullish(),
      awake_load_w: z.number().nullish(),
      heater_output_per_input: z.unknown().optional(),
      max_heat_w: z.number().nullish(),
      cabin_air_m3: z.number().nullish(),
      may_run_all_night_when_parked: z.boolean().nullish(),
    }),
    compartments: z.array(compartmentSchema).min(1),
    bed: z.looseObject({
      mattress_item: textList.nullish(),
      laid_mm: size.nullish(),
      flat_length_mm: z.number().nullish(),
      flat_width_mm: z.number().nullish(),
      headroom_mm: z.number().nullish(),
      head_end: z.string().nullish(),
      needs: textList.nullish(),
      keep_clear_at_night: textList.nullish(),
    }),
  }),
  items: z.array(itemSchema),
  nights: z.array(scenarioNightSchema).min(1),
  legs: z
    .array(
      z.looseObject({
        after_night: z.int(),
        km: z.number(),
        wh_per_km: z.number().nullish(),
        notes: z.string().nullish(),
      }),
    )
    .nullish(),
})

export type Scenario = z.infer<typeof scenarioSchema>
export type Compartment = z.infer<typeof compartmentSchema>
export type ScenarioItem = z.infer<typeof itemSchema>
export type ScenarioNight = z.infer<typeof scenarioNightSchema>
