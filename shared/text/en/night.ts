/** English sentences: night. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const night = {
  'night.verdict.warm': 'Warm',
  'night.verdict.enough': 'Warm enough',
  'night.verdict.cool': 'Cool',
  'night.verdict.cold': 'Cold',
  'night.verdict.too-cold': 'Too cold to sleep',
  'night.sleeper.warm': '{name} sleeps warm, {margin} in hand.',
  'night.sleeper.enough': '{name} is warm enough, {margin} in hand.',
  'night.sleeper.cool': '{name} is cool from {time}: {margin} short.',
  'night.sleeper.cold': '{name} is cold from {time}: {margin} short.',
  'night.sleeper.too-cold': '{name} cannot sleep through this: {margin} short from {time}.',
  'night.feetCold': 'Cold feet after {time}: {name}.',
  'night.ruledBy.bag-rating': 'The bag’s comfort rating rules here (ISO 23537, with 5 K in hand).',
  'night.ruledBy.heat-balance': 'Our own heat balance rules here (derived, 40 to 47 W/m²).',
  'night.requiredClo': 'Needs {needed} clo over the body; has {provided} clo.',
  'night.limit.breaker': 'breaker, 80 % for hours on end',
  'night.limit.socket': 'socket',
  'night.limit.site': 'site rule',
  'night.limit.lead': 'lead',
  'night.limit.adapter': 'adapter',
  'night.limit.charging-unit': 'charging unit',
  'night.limit.held': 'current that held',
  'night.limit.onboard': 'on-board charger',
  'night.limit.voltage': 'voltage under load',
  'night.caution.co2-high': 'Stale air: open two windows further, on opposite sides.',
  'night.caution.no-fresh-air':
    'Too little fresh air for the people aboard: open two windows by 10 to 15 mm, lee side wider.',
  'night.caution.shared-wiring':
    'The voltage sags under load: the wiring is long, thin or shared. Take less current and feel the plug after half an hour.',
  'night.caution.domestic-socket':
    'A household socket is not made for hours of load: hold the current low, feel the plug, ask the site who checked the circuit.',
  'night.caution.adapter':
    'An adapter carries no more than its own rating and protects nothing: keep it dry, off the ground, and cool.',
  'night.caution.polarity-reversed':
    'Live and neutral are swapped: pull the plug before touching any wiring, and tell the site. A licensed electrician puts it right.',
  'night.caution.earth-missing': 'No earth: do not plug in. Tell the site; a licensed electrician puts it right.',
  'night.caution.earth-not-known': 'Earth not checked: test the socket before you plug in.',
  'night.caution.sag-step-down': 'Voltage is low under load: ask for less current.',
  'night.caution.sag-stop': 'Voltage is too low under load: stop, unplug, and tell the site.',
  'night.caution.cold-illness':
    'Cold can make you ill here: shivering, slurred speech and confusion are an emergency. Wake, warm up, call for help.',
  'night.caution.heat-illness':
    'Heat can make you ill here: open up, drink, cool down. Confusion or hot dry skin is an emergency.',
  'night.caution.heater-stops': 'Heating stops before the night is over: have bedding that is enough without it.',
  'night.caution.carbon-monoxide':
    'Never burn anything inside or run an engine under snow or beside a wall. Carry a carbon monoxide alarm; it does not make a flame right.',
  'night.caution.leisure-frost': 'The living battery is below freezing and takes no charge: warm it first.',
  'night.caution.extension-lead':
    'Unwind the whole lead, keep its joints off the ground and dry, and feel them under load.',
  'night.caution.below-minimum-current':
    'The post gives less than charging control can ask for (6 A): the car will not charge here.',
  'night.caution.two-loads': 'The post cannot carry heater and charger together: run one at a time.',
  'night.reason.warm-and-leg': 'Everyone is warm enough and the leg works without a stop; the cheapest such plan.',
  'night.reason.warm-with-stop': 'Everyone is warm enough; the leg needs a stop to charge.',
  'night.reason.warm-no-leg': 'Everyone is warm enough, at the lowest price.',
  'night.reason.leg-first': 'No plan does both: this one keeps the leg and is the warmest of those.',
  'night.reason.warmest': 'No plan keeps everyone warm or makes the leg: this is the warmest.',
  'night.sensitivity.colder': 'If it is 5 K colder: {margin} in hand at the bed, {charge} on leaving.',
  'night.sensitivity.thirstier': 'If the leg takes 10 % more: {energy} in hand.',
  'night.fault.supply-lost': 'Supply lost at {time}',
  'night.fault.breaker-trips': 'Breaker trips at {time}',
  'night.fault.heater-fails': 'Heater fails at {time}',
  'night.fault.do.supply-lost':
    'Switch the heating off by {time} so that the leg still works; sleep in the warmest bedding you have.',
  'night.fault.do.breaker-trips':
    'Take the current down before you reset the breaker, by {time}; if it trips again, leave it and tell the site.',
  'night.fault.do.heater-fails': 'Bed heater on, hat on, feet covered; move indoors if anyone shivers.',
  'night.fault.noAction': 'Nothing to do for the leg.',
  'night.fault.heatLeft': 'Heat for {hours} more.',
  'night.loss.shell': 'Shell',
  'night.loss.freshAir': 'Fresh air',
  'night.loss.sky': 'Clear sky',
  'night.gapCost': 'The open window costs {power} on average.',
  'night.bedHeater.heated-seat': 'Heated seat',
  'night.bedHeater.underblanket': 'Underblanket',
  'night.bedHeater.foot-pad': 'Foot pad',
  'night.heater.heat-pump': 'Heat pump',
  'night.heater.resistance': 'Resistance heater',
  'night.heater.mains-fan-heater': 'Mains fan heater',
  'night.heater.none': 'No heater',
  'night.calibration.none': 'Nothing measured yet: the body class alone, uncertain by 30 to 40 %.',
  'night.calibration.fitted':
    'Fitted from {count} night: {loss} ± {spread} W/K. | Fitted from {count} nights: {loss} ± {spread} W/K.',
  'problem.weather-not-epw':
    'This is not an EPW weather file: its first line does not give a place. Choose an EPW file, or import a table instead.',
  'problem.weather-columns':
    'Line {line} has {columns} columns, too few for an EPW file. Save the file again from its source.',
  'problem.weather-reading-missing':
    'Line {line} gives no temperature, humidity or wind. Fill it in or leave the line out.',
  'problem.weather-date': 'Cannot read the date in line {line}: “{value}”. Write it like 2027-02-12 18:00.',
  'problem.weather-empty': 'The file holds no hours of weather.',
  'problem.weather-column-unknown': 'No column is called “{column}”. The file has: {columns}.',
  'problem.weather-order': 'Line {line} is not later than the line before it. Sort the table by time.',
  'problem.weather-night-missing':
    'The file does not cover the night from {from} to {to}. Choose another file or type the hours.',
} as const
